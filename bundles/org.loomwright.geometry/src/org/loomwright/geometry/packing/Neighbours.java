// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.Arrays;

/**
 * The pairs of circles that can touch while no circle has moved farther than a slack from where it was when the pairs
 * were written down. Renewed when one has: O(n²) then, O(n) otherwise.
 */
final class Neighbours {

    private static final double SLACK_SHARE = 0.4;

    private final double[] radii;
    private final int n;
    private final double slack;
    private final double[] noted;
    private final int[] starts;
    private int[] partners;
    private boolean empty = true;
    private long work;

    Neighbours(double[] radii) {
        this.radii = radii;
        n = radii.length;
        slack = SLACK_SHARE * Arrays.stream(radii).sum() / n;
        noted = new double[2 * n];
        starts = new int[n + 1];
        partners = new int[8 * n];
    }

    /** Pairs looked at so far while writing down. */
    long work() {
        return work;
    }

    /** Makes the pairs good for these places. */
    void follow(double[] places) {
        boolean holds = !empty;
        for (int i = 0; i < n && holds; i++) {
            double dx = places[2 * i] - noted[2 * i];
            double dy = places[2 * i + 1] - noted[2 * i + 1];
            holds = dx * dx + dy * dy <= slack * slack;
        }
        if (!holds) {
            write(places);
        }
    }

    /** Where the partners of a circle begin; they end where those of the next begin. */
    int start(int circle) {
        return starts[circle];
    }

    /** A partner, with a lower index than the circle that it belongs to; rising from one partner to the next. */
    int partner(int at) {
        return partners[at];
    }

    /** How many pairs there are. */
    int count() {
        return starts[n];
    }

    private void write(double[] places) {
        System.arraycopy(places, 0, noted, 0, 2 * n);
        empty = false;
        work += (long) n * (n - 1) / 2;
        int count = 0;
        for (int i = 0; i < n; i++) {
            starts[i] = count;
            if (partners.length < count + i) {
                partners = Arrays.copyOf(partners, 2 * (count + i));
            }
            for (int j = 0; j < i; j++) {
                double dx = places[2 * i] - places[2 * j];
                double dy = places[2 * i + 1] - places[2 * j + 1];
                double near = radii[i] + radii[j] + 2 * slack;
                if (dx * dx + dy * dy < near * near) {
                    partners[count] = j;
                    count++;
                }
            }
        }
        starts[n] = count;
    }
}
