// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Circles by falling size, with radii as shares of the greatest in steps of 2^-26, about 15 billionths. Diameters that
 * differ by a unit of length, or by rounding when they were converted, so start the same search.
 */
final class Proportions {

    private static final double STEPS = 1 << 26;

    private final double[] diameters;
    private final double[] radii;

    Proportions(double... given) {
        double[] rising = given.clone();
        Arrays.sort(rising);
        int n = rising.length;
        if (n == 0 || !(rising[0] > 0) || !Double.isFinite(rising[n - 1])) {
            throw new IllegalArgumentException("there are circles, and each has a thickness");
        }
        diameters = new double[n];
        radii = new double[n];
        for (int i = 0; i < n; i++) {
            diameters[i] = rising[n - 1 - i];
            radii[i] = Math.max(1, Math.rint(STEPS * (diameters[i] / diameters[0]))) / STEPS;
        }
    }

    /** Radii in steps, the first is 1, none is greater than the one before it. */
    double[] radii() {
        return radii.clone();
    }

    /** The same radii, not rounded to steps. */
    double[] exact() {
        return Arrays.stream(diameters).map(each -> each / diameters[0]).toArray();
    }

    /**
     * The circles in their true sizes at given places, which are in units of the greatest radius. Places are drawn
     * apart until no two circles overlap.
     *
     * @param places x and y of each
     */
    Packing at(double[] places) {
        double unit = diameters[0] / 2;
        double apart = 1;
        for (int i = 0; i < diameters.length; i++) {
            for (int j = 0; j < i; j++) {
                double touch = (diameters[i] + diameters[j]) / diameters[0];
                apart = Math.max(apart, touch / distance(places, i, j));
            }
        }
        List<PlacedCircle> circles = new ArrayList<>();
        for (int i = 0; i < diameters.length; i++) {
            circles.add(new PlacedCircle(places[2 * i] * apart * unit, places[2 * i + 1] * apart * unit,
                    diameters[i]));
        }
        return new Packing(circles);
    }

    /**
     * Radius of the circle around the origin once the places are drawn apart until no circles overlap; infinite when
     * two centres fall together.
     */
    static double radius(double[] radii, double[] places) {
        double apart = 1;
        for (int i = 0; i < radii.length; i++) {
            for (int j = 0; j < i; j++) {
                apart = Math.max(apart, (radii[i] + radii[j]) / distance(places, i, j));
            }
        }
        double reach = 0;
        for (int i = 0; i < radii.length; i++) {
            double x = places[2 * i];
            double y = places[2 * i + 1];
            reach = Math.max(reach, apart * Math.sqrt(x * x + y * y) + radii[i]);
        }
        return reach;
    }

    private static double distance(double[] places, int i, int j) {
        double dx = places[2 * i] - places[2 * j];
        double dy = places[2 * i + 1] - places[2 * j + 1];
        return Math.sqrt(dx * dx + dy * dy);
    }
}
