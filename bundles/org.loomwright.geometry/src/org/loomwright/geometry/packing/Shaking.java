// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.Arrays;
import java.util.Random;

/**
 * One search: presses circles together, shakes the heap, and keeps it when it has become smaller; begins with a new
 * heap when nothing has helped for long. Not for more than one thread.
 *
 * <p>A heap is judged under ever less pressure, and left alone as soon as it is plainly larger than the best.
 */
final class Shaking {

    private static final long SEED = 1_967;
    private static final int FIRST_ROUNDS = 40;
    private static final int ENOUGH_ROUNDS = 400;
    private static final int MORE_ROUNDS = 16;
    private static final int PATIENCE = 2;

    private static final double LOOSE = 0.3;
    private static final double FIRM = 0.1;
    private static final double JUDGED = 1e-4;
    private static final double NEARLY_RIGID = 1e-7;
    private static final double RIGID = 1e-11;
    private static final double EASING = 0.1;
    private static final int COARSE_STEPS = 60;
    private static final int FINE_STEPS = 400;
    private static final double COARSE_REST = 0.1;
    private static final double FINE_REST = 1e-3;
    /** How much too large a heap may look under a pressure, as a share of the pressure. */
    private static final double DOUBT = 0.1;
    /** A gain smaller than this is none. */
    private static final double WORTHWHILE = 1e-5;
    private static final double EXACT = 1e-10;
    private static final double NUDGE = 0.8;
    private static final int NEAR_SIZES = 3;

    private final double[] radii;
    private final int n;
    private final Press press;
    private final Random random = new Random(SEED);
    private final double limit;
    private double[] best;
    private double bestRadius;
    private double[] judged;
    private double judgedRadius;

    /**
     * Runs the search.
     *
     * @param radii    falling
     * @param laid     places to begin with
     * @param mostWork pairs after which nothing new is tried
     */
    Shaking(double[] radii, double[] laid, long mostWork) {
        this.radii = radii;
        n = radii.length;
        press = new Press(radii);
        best = laid;
        bestRadius = Proportions.radius(radii, laid);
        judgedRadius = Double.POSITIVE_INFINITY;
        double root = Math.sqrt(Arrays.stream(radii).map(r -> r * r).sum());
        limit = Math.max(root, n > 1 ? radii[0] + radii[1] : radii[0]);
        if (!isLeast()) {
            shake(mostWork);
            finish();
        }
    }

    /** Pairs looked at. */
    long work() {
        return press.work();
    }

    private boolean isLeast() {
        return bestRadius <= limit * (1 + EXACT);
    }

    private void shake(long mostWork) {
        int rounds = Math.max(Math.min(ENOUGH_ROUNDS, FIRST_ROUNDS * n), MORE_ROUNDS * n);
        double[] now = Arrays.copyOf(best, 2 * n + 1);
        now[2 * n] = bestRadius;
        double radius = settle(now, FIRM);
        int idle = 0;
        for (int round = 1; round < rounds && press.work() < mostWork && !isLeast(); round++) {
            boolean fresh = idle > PATIENCE * n;
            double[] next = fresh ? heap() : shaken(now);
            double reached = settle(next, fresh ? LOOSE : FIRM);
            if (fresh || reached < radius * (1 - WORTHWHILE)) {
                now = next;
                radius = reached;
                idle = 0;
            } else {
                idle++;
            }
        }
    }

    /** Presses a heap together and notes it when it is the smallest so far; the radius that it seems to come to. */
    private double settle(double[] state, double from) {
        double radius = bestRadius;
        for (double pressure = from; pressure > JUDGED / 2; pressure *= EASING) {
            radius = press.rest(state, pressure, COARSE_STEPS, COARSE_REST);
            if (radius >= judgedRadius * (1 - WORTHWHILE + DOUBT * pressure)) {
                return radius;
            }
        }
        judged = state.clone();
        judgedRadius = radius;
        if (radius < limit * (1 + WORTHWHILE)) {
            finish();
        }
        return radius;
    }

    /** Eases the best heap until nothing overlaps. */
    private void finish() {
        ease(press, judged, JUDGED);
        double reached = Proportions.radius(radii, judged);
        if (reached < bestRadius) {
            bestRadius = reached;
            best = Arrays.copyOf(judged, 2 * n);
        }
    }

    private static void ease(Press press, double[] state, double from) {
        for (double pressure = from; pressure > RIGID / 2; pressure *= EASING) {
            press.rest(state, pressure, FINE_STEPS, FINE_REST);
        }
    }

    /**
     * The best packing, eased once more for circles that are not quite as thick as those that were packed.
     *
     * @param exact radii, each within some billionths of the one that was packed
     */
    double[] fitted(double[] exact) {
        Press last = new Press(exact);
        double[] state = Arrays.copyOf(best, 2 * n + 1);
        state[2 * n] = bestRadius;
        ease(last, state, NEARLY_RIGID);
        double[] fitted = Arrays.copyOf(state, 2 * n);
        return Proportions.radius(exact, fitted) < Proportions.radius(exact, best) ? fitted : best;
    }

    private double[] heap() {
        double[] state = new double[2 * n + 1];
        for (int i = 0; i < n; i++) {
            put(state, i, bestRadius);
        }
        state[2 * n] = bestRadius;
        return state;
    }

    private double[] shaken(double[] now) {
        double[] next = now.clone();
        boolean mixed = radii[n - 1] < radii[0];
        switch (random.nextInt(mixed ? 6 : 2)) {
            case 0 -> nudge(next);
            case 1 -> put(next, random.nextInt(n), now[2 * n]);
            case 2 -> swap(next, random.nextInt(n), random.nextInt(n));
            default -> {
                int thick = Math.min(random.nextInt(n), random.nextInt(n));
                swap(next, thick, nextSize(thick, 1 + random.nextInt(NEAR_SIZES)));
            }
        }
        return next;
    }

    private void nudge(double[] state) {
        double most = NUDGE * radii[n - 1];
        for (int i = 0; i < 2 * n; i++) {
            state[i] += most * (2 * share() - 1);
        }
    }

    /** A circle so many places on in the order of sizes, leaving out those of the same size. */
    private int nextSize(int circle, int places) {
        int other = circle;
        int left = places;
        for (int k = 0; k < n && left > 0; k++) {
            other = (other + 1) % n;
            if (radii[other] != radii[circle]) {
                left--;
            }
        }
        return other;
    }

    private static void swap(double[] state, int i, int j) {
        for (int axis = 0; axis < 2; axis++) {
            double kept = state[2 * i + axis];
            state[2 * i + axis] = state[2 * j + axis];
            state[2 * j + axis] = kept;
        }
    }

    /** Puts a circle anywhere within a radius of the origin. */
    private void put(double[] state, int circle, double within) {
        double room = Math.max(0, within - radii[circle]);
        double x;
        double y;
        do {
            x = 2 * share() - 1;
            y = 2 * share() - 1;
        } while (x * x + y * y > 1);
        state[2 * circle] = x * room;
        state[2 * circle + 1] = y * room;
    }

    /** From 0 to 1, in steps of a millionth or so. */
    private double share() {
        return random.nextInt(1 << 20) / (double) (1 << 20);
    }
}
