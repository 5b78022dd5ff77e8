// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.Arrays;

/**
 * Lays circles one after the other, the thickest first, each where it touches two that lie already and comes nearest to
 * a point.
 *
 * <p>O(n²): each of the circles that lie has few others near it, and whatever touches it can only run into those.
 */
final class Layer {

    private static final double TOUCHING = 1e-12;
    private static final int CENTRINGS = 256;

    private final double[] radii;
    private final int n;
    private final int[][] near;
    private final int[] counts;
    private long work;

    /**
     * For some circles.
     *
     * @param radii falling
     */
    Layer(double[] radii) {
        this.radii = radii;
        n = radii.length;
        near = new int[n][8];
        counts = new int[n];
    }

    /** Pairs looked at so far. */
    long work() {
        return work;
    }

    /**
     * Places of all circles, about the centre of a circle that holds them.
     *
     * @param between false when the others come as near as they can to the centre of the thickest, true when to the
     *                middle of the two thickest
     */
    double[] lay(boolean between) {
        double[] places = new double[2 * n];
        Arrays.fill(counts, 0);
        if (n > 1) {
            places[0] = between ? -radii[1] : 0;
            places[2] = places[0] + radii[0] + radii[1];
            join(1, places);
        }
        for (int next = 2; next < n; next++) {
            layNext(next, places);
            join(next, places);
        }
        centre(places);
        return places;
    }

    /** Notes which circles are so near to a new one that a later one could run into both. */
    private void join(int added, double[] places) {
        double later = radii[Math.min(added + 1, n - 1)];
        work += added;
        for (int i = 0; i < added; i++) {
            double reach = radii[i] + radii[added] + 2 * later;
            double dx = places[2 * i] - places[2 * added];
            double dy = places[2 * i + 1] - places[2 * added + 1];
            if (dx * dx + dy * dy <= reach * reach * (1 + TOUCHING)) {
                note(i, added);
                note(added, i);
            }
        }
    }

    private void note(int circle, int neighbour) {
        if (counts[circle] == near[circle].length) {
            near[circle] = Arrays.copyOf(near[circle], 2 * counts[circle]);
        }
        near[circle][counts[circle]] = neighbour;
        counts[circle]++;
    }

    private void layNext(int next, double[] places) {
        double radius = radii[next];
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < next; i++) {
            double ri = radii[i] + radius;
            for (int b = 0; b < counts[i] && near[i][b] < i; b++) {
                int j = near[i][b];
                double rj = radii[j] + radius;
                double dx = places[2 * j] - places[2 * i];
                double dy = places[2 * j + 1] - places[2 * i + 1];
                double square = dx * dx + dy * dy;
                work++;
                if (square > (ri + rj) * (ri + rj)) {
                    continue;
                }
                double along = (square + ri * ri - rj * rj) / (2 * square);
                double high = ri * ri / square - along * along;
                double across = high > 0 ? Math.sqrt(high) : 0;
                for (int side = -1; side <= 1; side += 2) {
                    double x = places[2 * i] + along * dx - side * across * dy;
                    double y = places[2 * i + 1] + along * dy + side * across * dx;
                    double far = x * x + y * y;
                    if (far < best * (1 - TOUCHING) && isFree(i, places, x, y, radius)) {
                        best = far;
                        places[2 * next] = x;
                        places[2 * next + 1] = y;
                    }
                }
            }
        }
    }

    /** True when a circle that touches another runs into none. */
    private boolean isFree(int touched, double[] places, double x, double y, double radius) {
        for (int a = 0; a < counts[touched]; a++) {
            int i = near[touched][a];
            work++;
            double dx = places[2 * i] - x;
            double dy = places[2 * i + 1] - y;
            double touch = (radii[i] + radius) * (1 - TOUCHING);
            if (dx * dx + dy * dy < touch * touch) {
                return false;
            }
        }
        return true;
    }

    /** Moves the origin toward whatever reaches farthest, by ever smaller steps, and keeps the best. */
    private void centre(double[] places) {
        double x = 0;
        double y = 0;
        double bestX = 0;
        double bestY = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int step = 1; step <= CENTRINGS; step++) {
            int farthest = 0;
            double reach = 0;
            for (int i = 0; i < radii.length; i++) {
                double dx = places[2 * i] - x;
                double dy = places[2 * i + 1] - y;
                double far = Math.sqrt(dx * dx + dy * dy) + radii[i];
                if (far > reach) {
                    reach = far;
                    farthest = i;
                }
            }
            if (reach < least) {
                least = reach;
                bestX = x;
                bestY = y;
            }
            double dx = places[2 * farthest] - x;
            double dy = places[2 * farthest + 1] - y;
            double distance = Math.sqrt(dx * dx + dy * dy);
            if (distance == 0) {
                break;
            }
            double move = reach / (step + 1) / distance;
            x += dx * Math.min(1, move);
            y += dy * Math.min(1, move);
        }
        for (int i = 0; i < radii.length; i++) {
            places[2 * i] -= bestX;
            places[2 * i + 1] -= bestY;
        }
    }
}
