// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

/** The search for one operating point. */
final class NewtonSearch {

    /** A search goes on until currents at a node sum to less than this, in A. */
    static final double ENOUGH = 1e-11;
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
    private final double[] over;
    private Trial now;
    private Trial spare;
    private int evaluations;

    NewtonSearch(NodalEquations equations) {
        this.equations = equations;
        start = equations.start();
        end = equations.end();
        count = equations.count();
        slopes = new double[count];
        backs = new double[count];
        over = new double[count];
        now = new Trial(equations.potentials());
        spare = new Trial(equations.potentials());
    }

    Outcome run() {
        linear();
        int steps = 0;
        boolean going = end > 0 && equations.isSound();
        while (going && steps < MOST_STEPS) {
            if (!equations.step(slopes, backs, spare.at)) {
                break;
            }
            steps++;
            going = advance(steps == 1) && !(greatest(now.sums) < ENOUGH);
            if (going) {
                lines();
            }
        }
        if (steps == 0) {
            equations.evaluate(now.at, now.volts, now.amps, now.slopes);
        }
        return equations.outcome(now.at, now.amps, now.slopes, steps);
    }

    /** Returns how often an element was evaluated, for tests that guard growth. */
    int evaluations() {
        return evaluations;
    }

    /** Takes every element as the line through its rated point and, for a load, the origin. */
    private void linear() {
        for (int i = 0; i < count; i++) {
            Element element = equations.element(i);
            double volts = element.start();
            boolean through = volts == 0 || element instanceof Element.Battery || element instanceof Element.Regulated
                    || element instanceof Element.OneWay;
            double amps = element.current(volts);
            slopes[i] = through ? element.slope(volts) : amps / volts;
            backs[i] = through ? slopes[i] * volts - amps : 0;
        }
    }

    private void lines() {
        for (int i = 0; i < count; i++) {
            slopes[i] = now.slopes[i];
            backs[i] = now.slopes[i] * now.volts[i] - now.amps[i];
        }
    }

    /**
     * Goes along the step to the spare trial. The sums of currents are the gradient of a function of the potentials,
     * the co-content, which is convex while no current falls with its voltage: a step that does not shrink the sums is
     * cut to where that function is least along it, which leads past kinks. Otherwise it is halved until the sums
     * shrink. False if they do not.
     */
    private boolean advance(boolean first) {
        double before = first ? Double.POSITIVE_INFINITY : norm(now.sums);
        Trial whole = spare;
        evaluate(whole, 1);
        if (norm(whole.sums) < before) {
            spare = now;
            now = whole;
            return true;
        }
        double[] step = whole.at.clone();
        for (int i = 0; i < step.length; i++) {
            step[i] -= now.at[i];
        }
        double down = dot(now.sums, step);
        Trial least = down < 0 && dot(whole.sums, step) > 0 ? least(step, down) : null;
        if (least != null && (norm(least.sums) < before || greatest(now.sums) > NewtonSolver.GOOD)) {
            now = least;
            return true;
        }
        double share = 1;
        for (int halving = 0; halving < MOST_HALVINGS; halving++) {
            share /= 2;
            Trial trial = along(step, share);
            if (norm(trial.sums) < before) {
                now = trial;
                return true;
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
            best = along(step, share);
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

    private Trial along(double[] step, double share) {
        Trial trial = new Trial(now.at.clone());
        for (int i = start; i < end; i++) {
            trial.at[i] += share * step[i];
        }
        evaluate(trial, share);
        return trial;
    }

    /**
     * Evaluates part of the way along a step. At its end all currents would sum to zero if elements were the lines
     * that it was found with; so what they differ by is what is left over, and nothing gets lost to rounding as in a
     * sum of large currents.
     */
    private void evaluate(Trial trial, double share) {
        double[] sums = trial.sums;
        double rest = 1 - share;
        for (int i = 0; i < sums.length; i++) {
            sums[i] = rest * now.sums[i];
        }
        equations.evaluate(trial.at, trial.volts, trial.amps, trial.slopes);
        evaluations += count;
        for (int i = 0; i < count; i++) {
            over[i] = trial.amps[i] - (slopes[i] * trial.volts[i] - backs[i]);
        }
        equations.spread(over, sums);
    }

    private double dot(double[] values, double[] step) {
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
    }
}
