// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.List;

/**
 * Circles that lie side by side in a circle around the origin. Making one checks each pair: O(n²).
 *
 * @param circles at least one, the thickest first; none overlaps another by more than {@link #TOLERANCE}
 */
public record Packing(List<PlacedCircle> circles) {

    /** Greatest overlap, as a share of the distance at which two circles touch. */
    public static final double TOLERANCE = 1e-9;

    /**
     * @throws IllegalArgumentException if there is no circle, one has no thickness or no place, or two overlap
     */
    public Packing {
        circles = List.copyOf(circles);
        if (circles.isEmpty()) {
            throw new IllegalArgumentException("a packing has circles");
        }
        for (int i = 0; i < circles.size(); i++) {
            PlacedCircle circle = circles.get(i);
            if (!(circle.diameter() > 0) || !Double.isFinite(circle.reach())) {
                throw new IllegalArgumentException("not a circle in the plane: " + circle);
            }
            for (int j = 0; j < i; j++) {
                if (circle.depth(circles.get(j)) > TOLERANCE) {
                    throw new IllegalArgumentException(circle + " overlaps " + circles.get(j));
                }
            }
        }
    }

    /** Diameter of the circle around the origin that holds all, from their places. */
    public double diameter() {
        return 2 * circles.stream().mapToDouble(PlacedCircle::reach).max().orElseThrow();
    }

    /** The greatest overlap of two circles, as a share of the distance at which they touch; 0 when none overlap. */
    public double overlap() {
        double most = 0;
        for (int i = 0; i < circles.size(); i++) {
            for (int j = 0; j < i; j++) {
                most = Math.max(most, circles.get(i).depth(circles.get(j)));
            }
        }
        return most;
    }
}
