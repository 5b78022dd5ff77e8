// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.List;

/** What a choice of sides asks: for some vehicles and branches, behind or before its station our breakout lies. */
final class SlackSides {

    /** All vehicles can be laid. */
    static final int NONE = -1;
    /** A vehicle cannot be laid although all sides are chosen. */
    static final int NO_SIDE = -2;

    private final SlackRun run;
    private final byte[] sides;
    private final long limit;
    private final AskBounds bounds;

    SlackSides(SlackRun run, byte[] sides, long limit, AskBounds bounds) {
        this.run = run;
        this.sides = sides;
        this.limit = limit;
        this.bounds = bounds;
    }

    /** The inequalities from the chosen sides that some figures break. */
    List<Row> broken(double[] x, double little) {
        List<Row> rows = new ArrayList<>();
        for (int[] asks : run.ofVehicle) {
            vehicle(asks, x, little * run.grid, rows);
        }
        return rows;
    }

    /** Bounds with the tucks that figures make of them. */
    private final class Placed {

        private final TuckBound[] bounds;
        private final double[] at;
        private int count;

        private Placed(int most) {
            this.bounds = new TuckBound[most];
            this.at = new double[most];
        }

        private void add(TuckBound bound, double[] x) {
            bounds[count] = bound;
            at[count++] = bound.at(run, x);
        }
    }

    private void vehicle(int[] asks, double[] x, double little, List<Row> rows) {
        int chosen = 0;
        for (int i : asks) {
            chosen += sides[i] != 0 ? 1 : 0;
        }
        if (chosen == 0) {
            return;
        }
        Placed lower = new Placed(2 * asks.length + 1);
        Placed upper = new Placed(2 * asks.length + 1 + chosen);
        Placed behind = new Placed(chosen);
        Placed before = new Placed(chosen);
        lower.add(TuckBound.DATUM, x);
        upper.add(TuckBound.DATUM, x);
        for (int i : asks) {
            lower.add(bounds.reachLow[i], x);
            lower.add(bounds.backLow[i], x);
            upper.add(bounds.reachUp[i], x);
            upper.add(bounds.backUp[i], x);
            if (sides[i] > 0) {
                behind.add(bounds.behind[i], x);
                upper.add(bounds.behind[i], x);
            } else if (sides[i] < 0) {
                before.add(bounds.before[i], x);
            }
        }
        add(before, upper, x, little, rows);
        add(lower, behind, x, little, rows);
    }

    private void add(Placed lower, Placed upper, double[] x, double little, List<Row> rows) {
        for (int i = 0; i < lower.count; i++) {
            for (int j = 0; j < upper.count; j++) {
                double over = lower.at[i] - upper.at[j];
                if (over > -run.grid) {
                    add(lower.bounds[i], upper.bounds[j], over, x, little, rows);
                }
            }
        }
    }

    private void add(TuckBound lower, TuckBound upper, double over, double[] x, double little, List<Row> rows) {
        long apart = TuckBound.apart(run, lower, upper);
        if (over - apart > -run.grid) {
            Row row = Row.of(run, lower, upper, upper.constant() - lower.constant() + apart, true);
            if (row.slack(x) < -little / run.grid) {
                rows.add(row);
            }
        }
    }

    /**
     * The ask whose side should be chosen next; {@link #NONE} when all can be laid, {@link #NO_SIDE} when none is.
     *
     * @param activity by ask, how much its side has decided so far
     */
    int suspect(long[] x, Laying laying, double[] activity) {
        int worst = NONE;
        long least = Long.MAX_VALUE;
        for (int v = 0; v < run.ofVehicle.length; v++) {
            int fails = laying.failsAt(v, x, limit);
            if (fails < 0) {
                continue;
            }
            if (worst == NONE) {
                worst = NO_SIDE;
            }
            for (int i : run.ofVehicle[v]) {
                SlackRun.Asked asked = run.asks.get(i);
                if (sides[i] == 0 && run.leg(asked).stop() <= fails) {
                    long[] bounds = laying.bounds(asked, x, limit);
                    long behind = Math.min(bounds[1], bounds[2]) - bounds[0];
                    long before = bounds[1] - Math.max(bounds[0], bounds[3]);
                    long left = Math.max(behind, before);
                    if (bounds[2] < Math.min(bounds[1], bounds[3]) && bounds[3] > bounds[0] && (worst < 0
                            || activity[i] > activity[worst] || activity[i] == activity[worst] && left <= least)) {
                        least = left;
                        worst = i;
                    }
                }
            }
        }
        return worst;
    }

    /** Whether more is possible with our breakout behind the vehicle's own than before it. */
    boolean isRatherBehind(int ask, long[] x, Laying laying) {
        long[] bounds = laying.bounds(run.asks.get(ask), x, limit);
        return Math.min(bounds[1], bounds[2]) - bounds[0] >= bounds[1] - Math.max(bounds[0], bounds[3]);
    }
}
