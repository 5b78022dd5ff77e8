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
    private final long[] shorter;
    private final long[] longer;

    /** The ranges of lengths say which tolerances they may have: of these the mildest hold. */
    SlackSides(SlackRun run, long[] low, long[] high, byte[] sides, long limit) {
        this.run = run;
        this.sides = sides;
        this.limit = limit;
        this.shorter = new long[run.legs.size()];
        this.longer = new long[run.legs.size()];
        for (int i = 0; i < shorter.length; i++) {
            SlackRun.Leg leg = run.legs.get(i);
            long least = Long.MAX_VALUE;
            long most = Long.MAX_VALUE;
            for (long x = low[leg.unknown()]; x <= high[leg.unknown()]; x++) {
                least = Math.min(least, run.made(leg, x).minus().nanometres());
                most = Math.min(most, run.made(leg, x).plus().nanometres());
            }
            shorter[i] = least;
            longer[i] = most;
        }
    }

    /** By branch, how much shorter than its length it is made at most, whatever its length. */
    long[] shorter() {
        return shorter;
    }

    /** The inequalities from the chosen sides that some figures break. */
    List<Row> broken(double[] x, double little) {
        List<Row> rows = new ArrayList<>();
        for (int[] asks : run.ofVehicle) {
            vehicle(asks, x, little * run.grid, rows);
        }
        return rows;
    }

    private void vehicle(int[] asks, double[] x, double little, List<Row> rows) {
        boolean any = false;
        for (int i : asks) {
            any |= sides[i] != 0;
        }
        if (!any) {
            return;
        }
        List<TuckBound> lower = new ArrayList<>(List.of(TuckBound.DATUM));
        List<TuckBound> upper = new ArrayList<>(List.of(TuckBound.DATUM));
        List<TuckBound> behind = new ArrayList<>();
        List<TuckBound> before = new ArrayList<>();
        for (int i : asks) {
            SlackRun.Asked asked = run.asks.get(i);
            lower.add(TuckBound.reachLow(run, asked, shorter[asked.leg()]));
            lower.add(TuckBound.backLow(run, asked));
            upper.add(TuckBound.reachUp(run, asked, shorter[asked.leg()]));
            upper.add(TuckBound.backUp(run, asked));
            if (sides[i] > 0) {
                behind.add(TuckBound.behind(run, asked, longer[asked.leg()], limit));
            } else if (sides[i] < 0) {
                before.add(TuckBound.before(run, asked, longer[asked.leg()], limit));
            }
        }
        upper.addAll(behind);
        add(before, upper, x, little, rows);
        add(lower, behind, x, little, rows);
    }

    private void add(List<TuckBound> lower, List<TuckBound> upper, double[] x, double little, List<Row> rows) {
        double[] least = lower.stream().mapToDouble(each -> each.at(run, x)).toArray();
        double[] greatest = upper.stream().mapToDouble(each -> each.at(run, x)).toArray();
        for (int i = 0; i < least.length; i++) {
            for (int j = 0; j < greatest.length; j++) {
                if (least[i] - greatest[j] > -run.grid) {
                    add(lower.get(i), upper.get(j), least[i] - greatest[j], x, little, rows);
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
