// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Nodal analysis with damped Newton steps: at each node that is not held the currents sum to zero. The search begins
 * with all elements taken as linear around their rated voltage, and halves a step that makes the sums worse. Where
 * there are several operating points, as with a load of constant power behind a long wire, it finds one near the rated
 * voltages.
 *
 * <p>Stateless; safe for use by several threads. A step costs about as much as there are elements, for networks that
 * are nearly trees. It leaves to others what the nodes are and whether a result is good enough.
 */
public final class NewtonSolver implements NetworkSolver {

    /** Currents at a node sum to less than this, in A. */
    public static final double GOOD = 1e-9;

    private static final double ENOUGH = 1e-11;
    private static final int MOST_STEPS = 200;
    private static final int MOST_HALVINGS = 40;
    private static final double FLAT = 0.05;

    @Override
    public Outcome solve(Netlist netlist) {
        List<Integer> floating = floating(netlist);
        return floating.isEmpty() ? new Search(netlist).run() : new Outcome.Floating(floating);
    }

    private static List<Integer> floating(Netlist netlist) {
        int[] root = new int[netlist.nodes()];
        for (int i = 0; i < root.length; i++) {
            root[i] = i;
        }
        for (Netlist.Branch branch : netlist.branches()) {
            if (!(branch.element() instanceof Element.Draw)) {
                root[find(root, branch.from())] = find(root, branch.to());
            }
        }
        boolean[] tied = new boolean[root.length];
        for (int i = 0; i < root.length; i++) {
            tied[find(root, i)] |= netlist.isHeld(i);
        }
        List<Integer> floating = new ArrayList<>();
        for (int i = 0; i < root.length; i++) {
            if (!tied[find(root, i)]) {
                floating.add(i);
            }
        }
        return floating;
    }

    private static int find(int[] root, int node) {
        int at = node;
        while (root[at] != at) {
            root[at] = root[root[at]];
            at = root[at];
        }
        return at;
    }

    /** One search. */
    private static final class Search {
        private final int[] from;
        private final int[] to;
        private final Element[] elements;
        private final int[] row;
        private final NodalMatrix matrix;
        private final double[] slopes;
        private double[] potentials;
        private double[] sums;
        private double[] currents;

        Search(Netlist netlist) {
            int branches = netlist.branches().size();
            from = new int[branches];
            to = new int[branches];
            elements = new Element[branches];
            for (int i = 0; i < branches; i++) {
                Netlist.Branch branch = netlist.branches().get(i);
                from[i] = branch.from();
                to[i] = branch.to();
                elements[i] = branch.element();
            }
            row = new int[netlist.nodes()];
            matrix = new NodalMatrix(netlist, row);
            slopes = new double[branches];
            potentials = new double[netlist.nodes()];
            for (int i = 0; i < potentials.length; i++) {
                potentials[i] = row[i] < 0 ? netlist.held().get(i) : 0;
            }
            sums = new double[matrix.free()];
            currents = new double[branches];
        }

        Outcome run() {
            double[] step = new double[matrix.free()];
            linear();
            int steps = 0;
            double worst = Double.POSITIVE_INFINITY;
            boolean first = true;
            while (matrix.free() > 0 && steps < MOST_STEPS) {
                if (!matrix.step(slopes, sums, step)) {
                    return unsolved();
                }
                steps++;
                double before = first ? Double.POSITIVE_INFINITY : norm(sums);
                boolean better = advance(step, before);
                first = false;
                worst = greatest(sums);
                if (!better || worst < ENOUGH) {
                    break;
                }
                slopes();
            }
            if (matrix.free() == 0) {
                evaluate(potentials, sums, currents);
                worst = 0;
            }
            return worst < GOOD ? new Outcome.Solution(potentials, currents, worst, steps) : unsolved();
        }

        private Outcome unsolved() {
            int node = 0;
            double most = 0;
            for (int i = 0; i < row.length; i++) {
                if (row[i] >= 0 && !(Math.abs(sums[row[i]]) <= most)) {
                    most = Math.abs(sums[row[i]]);
                    node = i;
                }
            }
            return new Outcome.Unsolved(most, node);
        }

        /** Takes every element as the line through its rated point and, for a load, the origin. */
        private void linear() {
            for (int i = 0; i < elements.length; i++) {
                double volts = elements[i].start();
                boolean source = elements[i] instanceof Element.Cell || elements[i] instanceof Element.Battery
                        || elements[i] instanceof Element.Regulated || elements[i] instanceof Element.OneWay;
                double amps = elements[i].current(volts);
                slopes[i] = volts == 0 || source ? elements[i].slope(volts) : amps / volts;
                double offset = source || volts == 0 ? amps - slopes[i] * volts : 0;
                double current = offset + slopes[i] * (potentials[from[i]] - potentials[to[i]]);
                currents[i] = current;
                add(sums, from[i], current);
                add(sums, to[i], -current);
            }
        }

        private void slopes() {
            for (int i = 0; i < elements.length; i++) {
                slopes[i] = elements[i].slope(potentials[from[i]] - potentials[to[i]]);
            }
        }

        /**
         * Goes along a step. The sums of currents are the gradient of a function of the potentials, the co-content,
         * which is convex while no current falls with its voltage: a step that does not shrink the sums is cut to where
         * that function is least along it, which leads past kinks. Otherwise it is halved until the sums shrink. False
         * if they do not.
         */
        private boolean advance(double[] step, double before) {
            Trial whole = new Trial(step, 1);
            if (norm(whole.sums) < before) {
                return take(whole);
            }
            double down = dot(sums, step);
            Trial least = down < 0 && dot(whole.sums, step) > 0 ? least(step, down) : null;
            if (least != null && (norm(least.sums) < before || greatest(sums) > GOOD)) {
                return take(least);
            }
            double share = 1;
            for (int halving = 0; halving < MOST_HALVINGS; halving++) {
                share /= 2;
                Trial trial = new Trial(step, share);
                if (norm(trial.sums) < before) {
                    return take(trial);
                }
            }
            return false;
        }

        /** The point along a step at which the sums of currents stand across it, by bisection. */
        private Trial least(double[] step, double down) {
            double low = 0;
            double high = 1;
            Trial best = null;
            for (int i = 0; i < MOST_HALVINGS; i++) {
                double share = (low + high) / 2;
                best = new Trial(step, share);
                double slope = dot(best.sums, step);
                if (Math.abs(slope) <= FLAT * -down) {
                    break;
                }
                if (slope < 0) {
                    low = share;
                } else {
                    high = share;
                }
            }
            return best;
        }

        private boolean take(Trial trial) {
            potentials = trial.at;
            sums = trial.sums;
            currents = trial.amps;
            return true;
        }

        private double dot(double[] values, double[] step) {
            double sum = 0;
            for (int i = 0; i < values.length; i++) {
                sum += values[i] * step[i];
            }
            return sum;
        }

        /** The network part of the way along a step. */
        private final class Trial {
            private final double[] at = potentials.clone();
            private final double[] sums = new double[Search.this.sums.length];
            private final double[] amps = new double[currents.length];

            Trial(double[] step, double share) {
                for (int i = 0; i < at.length; i++) {
                    at[i] += row[i] < 0 ? 0 : share * step[row[i]];
                }
                evaluate(at, sums, amps);
            }
        }

        private void evaluate(double[] at, double[] into, double[] amps) {
            Arrays.fill(into, 0);
            for (int i = 0; i < elements.length; i++) {
                double current = elements[i].current(at[from[i]] - at[to[i]]);
                amps[i] = current;
                add(into, from[i], current);
                add(into, to[i], -current);
            }
        }

        private void add(double[] into, int node, double current) {
            if (row[node] >= 0) {
                into[row[node]] += current;
            }
        }

        private static double norm(double[] values) {
            double sum = 0;
            for (double value : values) {
                sum += value * value;
            }
            return sum;
        }

        private static double greatest(double[] values) {
            double most = 0;
            for (double value : values) {
                most = Math.max(most, Math.abs(value));
            }
            return most;
        }
    }
}
