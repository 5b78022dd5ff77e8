// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

/**
 * Places circles so that a small circle holds them all.
 *
 * <p>The answer does not depend on the order of the diameters, on earlier questions or on the machine. Implementations
 * keep nothing between questions and may be asked by many threads.
 */
public interface PackingSearch {

    /**
     * A placement of all circles.
     *
     * @param diameters at least one, all positive and finite, in any unit
     * @throws IllegalArgumentException if there is no circle or one has no thickness
     */
    Found search(double... diameters);

    /**
     * What was found.
     *
     * @param packing the placement
     * @param work    pairs of circles looked at, the measure of the effort
     */
    record Found(Packing packing, long work) {
    }
}
