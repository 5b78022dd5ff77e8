// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.List;

/**
 * Cubes that together hold the points of a function and none that is forbidden.
 *
 * @param axes the axes of the diagram that the cubes are about, in order
 * @param cubes the cubes, in a fixed order
 * @param quality what is known about them
 * @param left points that the cubes leave out, as a function of the diagram; {@link Diagram#NONE} unless partial
 */
public record Cover(int[] axes, List<Cube> cubes, Quality quality, int left) {
    /** How good a cover is known to be. */
    public enum Quality {
        /** Fewest cubes; among these, fewest words. */
        LEAST,
        /** As {@link #LEAST}, on the axes that suffice to tell the points from the forbidden ones. */
        LEAST_ON_SUPPORT,
        /** No cube is needless, and no axis of a cube that does not have all its members. */
        IRREDUNDANT,
        /** There are more cubes than allowed; the points that are left are not covered. */
        PARTIAL
    }

    public Cover {
        cubes = cubes.stream().sorted(Cube::compare).toList();
    }
}
