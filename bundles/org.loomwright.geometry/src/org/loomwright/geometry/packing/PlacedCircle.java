// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

/**
 * A circle at its place.
 *
 * @param x        of its centre, from the centre of the circle around all
 * @param y        of its centre, likewise
 * @param diameter its own diameter, in the same unit
 */
public record PlacedCircle(double x, double y, double diameter) {

    /** How far it reaches from the centre of the circle around all. */
    double reach() {
        return Math.sqrt(x * x + y * y) + diameter / 2;
    }

    /** How deep it lies in another, as a share of the distance at which they touch; negative when they are apart. */
    double depth(PlacedCircle other) {
        double dx = x - other.x;
        double dy = y - other.y;
        return 1 - 2 * Math.sqrt(dx * dx + dy * dy) / (diameter + other.diameter);
    }
}
