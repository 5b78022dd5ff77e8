// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

/**
 * What choices have brought so far, by which the next one is made. Of a side it is known by how much it raises the
 * bound on the average (pseudo-costs: Bénichou et al., Mathematical Programming 1, 1971), and of all choices how often
 * they led nowhere of late. The searches for one trunk tell each other: what was decisive under one limit or for one
 * sum mostly is so again.
 */
final class Branching {

    private static final double FADING = 0.95;
    /** A side that leads nowhere counts as if it raised the bound by so many grid steps of all unknowns. */
    private static final double CLOSED = 10;
    private static final double LEAST = 0.001;

    private final double[] activity;
    private final double[] gain;
    private final int[] count;

    Branching(int asks, int unknowns) {
        this.activity = new double[asks + unknowns];
        this.gain = new double[2 * asks];
        this.count = new int[2 * asks];
    }

    private static int key(int ask, boolean behind) {
        return 2 * ask + (behind ? 1 : 0);
    }

    /** How decisive a choice has been of late: an ask, or the number of asks and an unknown. */
    double activity(int choice) {
        return activity[choice];
    }

    /** A choice led nowhere. */
    void closed(int choice) {
        for (int i = 0; i < activity.length; i++) {
            activity[i] *= FADING;
        }
        activity[choice]++;
    }

    /** A side raised the bound by so many times what a grid step of all unknowns comes to; infinite for a dead end. */
    void raised(int ask, boolean behind, double share) {
        gain[key(ask, behind)] += Math.clamp(share, 0, CLOSED);
        count[key(ask, behind)]++;
    }

    boolean isKnown(int ask, boolean behind) {
        return count[key(ask, behind)] > 0;
    }

    /** How much is expected of deciding an ask: both sides count. */
    double promise(int ask) {
        return mean(key(ask, true)) * mean(key(ask, false));
    }

    private double mean(int key) {
        return Math.max(LEAST, count[key] == 0 ? 0 : gain[key] / count[key]);
    }
}
