// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

/**
 * What lies around a bundle and makes it thicker: tape, braid, tube.
 *
 * @param thicknessMm from the wires to the outside in mm, all layers and overlaps together; 0 or more
 */
public record BundleCover(double thicknessMm) {

    /**
     * @throws IllegalArgumentException if the thickness is negative or no number
     */
    public BundleCover {
        if (!(thicknessMm >= 0) || Double.isInfinite(thicknessMm)) {
            throw new IllegalArgumentException("a cover has a thickness");
        }
    }

    /** Outside diameter in mm over a bundle of a diameter in mm: there is a wall on both sides. */
    public double outsideMm(double bundleMm) {
        return bundleMm + 2 * thicknessMm;
    }
}
