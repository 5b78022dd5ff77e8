// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

/**
 * Whether the wires of a bundle go through a round hole, and what says so.
 *
 * @param boreMm diameter of the hole in mm
 * @param fits   true when a way to lay the wires within the bore is known
 * @param by     the figure that decided: a bound when they cannot, a packing or a bound that is reached when they can,
 *               and when neither is known the smallest packing that was found
 */
public record BoreAnswer(double boreMm, boolean fits, BundleSize.Figure by) {

    /** False when no way was found, yet nobody has proven that there is none. */
    public boolean isCertain() {
        return fits || by.method().isBound();
    }

    /** What the bore has beyond the figure that decided, in mm; negative when it is too small. */
    public double spareMm() {
        return boreMm - by.mm();
    }
}
