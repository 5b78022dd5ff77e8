// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

/** The search for one operating point. */
final class NewtonSearch {

    private static final double ENOUGH = 1e-11;
    private static final int MOST_STEPS = 200;
    private static final int MOST_HALVINGS = 40;
    private static final double FLAT = 0.05;

    private final NodalEquations equations;
    private final int start;
    private final int end;
    private final int count;
    /** Lines that stand for elements: a slope in A/V times the voltage, less a current in A. */
    private final double[] slopes;
    private final double[] backs;
    private Trial now;
    private double[] step;

    NewtonSearch(NodalEquations equations) {
        this.equations = equations;
        start = equations.start();
        end = equations.end();
        count = equations.count();
        slopes = new double[count];
        backs = new double[count];
        now = new Trial(equations.potentials());
    }

    Outcome run() {
        linear();
        int steps = 0;
        boolean going = end > 0;
        while (going && steps < MOST_STEPS) {
            double[] there = now.at.clone();
            if (!equations.isSound() || !equations.step(slopes, backs, there)) {
                break;
            }
            steps++;
            going = advance(there, steps == 1) && !(greatest(now.sums) < ENOUGH);
            if (going) {
                lines();
            }
        }
        if (steps == 0) {
            now.evaluate();
        }
        return equations.outcome(now.at, now.amps, steps);
    }

    /** Takes every element as the line through its rated point and, for a load, the origin. */
    private void linear() {
        for (int i = 0; i < count; i++) {
            Element element = equations.element(i);
            double volts = element.start();
            boolean source = element instanceof Element.Battery || element instanceof Element.Regulated
                    || element instanceof Element.OneWay;
            double amps = element.current(volts);
            slopes[i] = volts == 0 || source ? element.slope(volts) : amps / volts;
            backs[i] = volts == 0 || source ? slopes[i] * volts - amps : 0;
        }
    }

    private void lines() {
        for (int i = 0; i < count; i++) {
            slopes[i] = now.slopes[i];
            backs[i] = now.slopes[i] * now.volts[i] - now.amps[i];
        }
    }

    /**
     * Goes along a step. The sums of currents are the gradient of a function of the potentials, the co-content,
     * which is convex while no current falls with its voltage: a step that does not shrink the sums is cut to where
     * that function is least along it, which leads past kinks. Otherwise it is halved until the sums shrink. False
     * if they do not.
     */
    private boolean advance(double[] there, boolean first) {
        double before = first ? Double.POSITIVE_INFINITY : norm(now.sums);
        Trial whole = new Trial(there);
        whole.evaluate(now.sums, 1);
        if (norm(whole.sums) < before) {
            now = whole;
            return true;
        }
        step = there.clone();
        for (int i = 0; i < step.length; i++) {
            step[i] -= now.at[i];
        }
        double down = dot(now.sums);
        Trial least = down < 0 && dot(whole.sums) > 0 ? least(down) : null;
        if (least != null && (norm(least.sums) < before || greatest(now.sums) > NewtonSolver.GOOD)) {
            now = least;
            return true;
        }
        double share = 1;
        for (int halving = 0; halving < MOST_HALVINGS; halving++) {
            share /= 2;
            Trial trial = along(share);
            if (norm(trial.sums) < before) {
                now = trial;
                return true;
            }
        }
        return false;
    }

    /** The point along a step at which the sums of currents stand across it, by bisection. */
    private Trial least(double down) {
        double low = 0;
        double high = 1;
        Trial best = null;
        for (int i = 0; i < MOST_HALVINGS; i++) {
            double share = (low + high) / 2;
            best = along(share);
            double slope = dot(best.sums);
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

    private Trial along(double share) {
        double[] at = now.at.clone();
        for (int i = start; i < end; i++) {
            at[i] += share * step[i];
        }
        Trial trial = new Trial(at);
        trial.evaluate(now.sums, share);
        return trial;
    }

    private double dot(double[] values) {
        double sum = 0;
        for (int i = start; i < end; i++) {
            sum += values[i] * step[i];
        }
        return sum;
    }

    private double norm(double[] values) {
        double sum = 0;
        for (int i = start; i < end; i++) {
            sum += values[i] * values[i];
        }
        return sum;
    }

    private double greatest(double[] values) {
        double most = 0;
        for (int i = start; i < end; i++) {
            most = Math.max(most, Math.abs(values[i]));
        }
        return most;
    }

    /** The network at some potentials. */
    private final class Trial {
        private final double[] at;
        private final double[] volts = new double[count];
        private final double[] amps = new double[count];
        private final double[] slopes = new double[count];
        /** Currents in A that leave each node; what is held and what only conductors meet at does not count. */
        private final double[] sums;

        Trial(double[] at) {
            this.at = at;
            sums = new double[at.length];
        }

        private void evaluate() {
            for (int i = 0; i < count; i++) {
                volts[i] = equations.across(i, at);
                equations.element(i).evaluate(volts[i], amps, slopes, i);
            }
        }

        /**
         * Evaluates part of the way along a step. At its end all currents would sum to zero if elements were the lines
         * that it was found with; so what they differ by is what is left over, and nothing gets lost to rounding as in
         * a sum of large currents.
         */
        private void evaluate(double[] before, double share) {
            if (share < 1) {
                for (int i = start; i < end; i++) {
                    sums[i] = (1 - share) * before[i];
                }
            }
            evaluate();
            for (int i = 0; i < count; i++) {
                double line = NewtonSearch.this.slopes[i] * volts[i] - backs[i];
                equations.spread(i, amps[i] - line, sums);
            }
        }
    }
}
