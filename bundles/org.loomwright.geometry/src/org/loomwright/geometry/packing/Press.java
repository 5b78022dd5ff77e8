// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.Arrays;

/**
 * Presses soft circles together by a shrinking circle around them until they rest.
 *
 * <p>Minimises pressure x R + the sum of squared overlaps, over the places of the circles and the radius R of the
 * circle around the origin, with the limited-memory method of Broyden, Fletcher, Goldfarb and Shanno. As the pressure
 * falls to nothing the overlaps do, and R tends to that of a rigid packing from below. O(n) a step, and O(n²) now and
 * then to see who is near. Not for more than one thread.
 */
final class Press {

    private static final int MEMORY = 4;
    private static final int HALVINGS = 20;
    private static final double FIRST_STEP = 0.2;
    private static final double DESCENT = 1e-4;

    private final double[] radii;
    private final int n;
    private final int size;
    private final double[] gradient;
    private final double[] direction;
    private final double[] trial;
    private final double[] trialGradient;
    private final double[][] steps;
    private final double[][] changes;
    private final Neighbours near;
    private final double[] products = new double[MEMORY];
    private final double[] shares = new double[MEMORY];
    private double pressure;
    private double overlaps;
    private long work;

    Press(double[] radii) {
        this.radii = radii;
        n = radii.length;
        size = 2 * n + 1;
        gradient = new double[size];
        direction = new double[size];
        trial = new double[size];
        trialGradient = new double[size];
        steps = new double[MEMORY][size];
        changes = new double[MEMORY][size];
        near = new Neighbours(radii);
    }

    /** Pairs looked at so far. */
    long work() {
        return work + near.work();
    }

    /**
     * Lets the circles rest under a pressure.
     *
     * @param state       x and y of each circle and the radius of the circle around them; is changed
     * @param newPressure greater than 0
     * @param most        greatest number of steps
     * @param atRest      length of the gradient at which they rest, as a share of the pressure
     * @return the radius that a rigid packing of this pattern would have, to first order in the pressure
     */
    double rest(double[] state, double newPressure, int most, double atRest) {
        pressure = newPressure;
        double energy = energy(state, gradient);
        int kept = 0;
        int newest = -1;
        for (int step = 0; step < most && square(gradient) > atRest * atRest * pressure * pressure; step++) {
            aim(kept, newest);
            double slope = dot(direction, gradient);
            if (!(slope < 0)) {
                kept = 0;
                aim(0, -1);
                slope = dot(direction, gradient);
            }
            double length = 1;
            double reached = Double.NaN;
            boolean lower = false;
            for (int halving = 0; halving < HALVINGS && !lower; halving++) {
                for (int i = 0; i < size; i++) {
                    trial[i] = state[i] + length * direction[i];
                }
                reached = energy(trial, trialGradient);
                lower = reached <= energy + DESCENT * length * slope;
                if (!lower) {
                    double curve = reached - energy - length * slope;
                    double vertex = curve > 0 ? -slope * length * length / (2 * curve) : length / 2;
                    length = Math.max(length / 10, Math.min(length / 2, vertex));
                }
            }
            if (!lower) {
                break;
            }
            int slot = (newest + 1) % MEMORY;
            for (int i = 0; i < size; i++) {
                steps[slot][i] = trial[i] - state[i];
                changes[slot][i] = trialGradient[i] - gradient[i];
                state[i] = trial[i];
                gradient[i] = trialGradient[i];
            }
            double product = dot(steps[slot], changes[slot]);
            energy = reached;
            if (product > 0) {
                products[slot] = product;
                newest = slot;
                kept = Math.min(MEMORY, kept + 1);
            }
        }
        energy(state, gradient);
        return state[2 * n] + 2 * overlaps / pressure;
    }

    /** The direction in which the quadratic model that the last steps suggest falls to its bottom. */
    private void aim(int kept, int newest) {
        for (int i = 0; i < size; i++) {
            direction[i] = -gradient[i];
        }
        for (int k = 0; k < kept; k++) {
            int slot = (newest - k + MEMORY) % MEMORY;
            shares[slot] = dot(steps[slot], direction) / products[slot];
            add(direction, -shares[slot], changes[slot]);
        }
        double scale = kept == 0 ? FIRST_STEP : products[newest] / square(changes[newest]);
        for (int i = 0; i < size; i++) {
            direction[i] *= scale;
        }
        for (int k = kept - 1; k >= 0; k--) {
            int slot = (newest - k + MEMORY) % MEMORY;
            add(direction, shares[slot] - dot(changes[slot], direction) / products[slot], steps[slot]);
        }
    }

    private double energy(double[] state, double[] slope) {
        near.follow(state);
        Arrays.fill(slope, 0);
        double around = state[2 * n];
        double sum = 0;
        double outward = pressure;
        for (int i = 0; i < n; i++) {
            double x = state[2 * i];
            double y = state[2 * i + 1];
            double r = radii[i];
            double slopeX = 0;
            double slopeY = 0;
            for (int at = near.start(i); at < near.start(i + 1); at++) {
                int j = near.partner(at);
                double dx = x - state[2 * j];
                double dy = y - state[2 * j + 1];
                double touch = r + radii[j];
                double square = dx * dx + dy * dy;
                if (square < touch * touch && square > 0) {
                    double distance = Math.sqrt(square);
                    double depth = touch - distance;
                    sum += depth * depth;
                    double pull = -2 * depth / distance;
                    slopeX += pull * dx;
                    slopeY += pull * dy;
                    slope[2 * j] -= pull * dx;
                    slope[2 * j + 1] -= pull * dy;
                }
            }
            double square = x * x + y * y;
            double room = around - r;
            if (room < 0 || square > room * room) {
                double distance = Math.sqrt(square);
                double depth = distance - room;
                sum += depth * depth;
                outward -= 2 * depth;
                if (distance > 0) {
                    slopeX += 2 * depth * x / distance;
                    slopeY += 2 * depth * y / distance;
                }
            }
            slope[2 * i] += slopeX;
            slope[2 * i + 1] += slopeY;
        }
        slope[2 * n] = outward;
        overlaps = sum;
        work += near.count() + n;
        return sum + pressure * around;
    }

    /** Sum of products, in four sums side by side, always in the same order. */
    private static double dot(double[] a, double[] b) {
        double first = 0;
        double second = 0;
        double third = 0;
        double fourth = 0;
        int i = 0;
        for (; i + 3 < a.length; i += 4) {
            first += a[i] * b[i];
            second += a[i + 1] * b[i + 1];
            third += a[i + 2] * b[i + 2];
            fourth += a[i + 3] * b[i + 3];
        }
        for (; i < a.length; i++) {
            first += a[i] * b[i];
        }
        return (first + second) + (third + fourth);
    }

    private static double square(double[] a) {
        return dot(a, a);
    }

    private static void add(double[] to, double factor, double[] what) {
        for (int i = 0; i < to.length; i++) {
            to[i] += factor * what[i];
        }
    }
}
