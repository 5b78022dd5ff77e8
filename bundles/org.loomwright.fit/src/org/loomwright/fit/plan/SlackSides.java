// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What a choice of sides asks: for some vehicles and branches, behind or before its station our breakout lies. */
final class SlackSides {

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
        private double least = Double.POSITIVE_INFINITY;
        private double most = Double.NEGATIVE_INFINITY;

        private Placed(int most) {
            this.bounds = new TuckBound[most];
            this.at = new double[most];
        }

        private void add(TuckBound bound, double[] x) {
            double tuck = bound.at(run, x);
            bounds[count] = bound;
            at[count++] = tuck;
            least = Math.min(least, tuck);
            most = Math.max(most, tuck);
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
        if (lower.most - upper.least <= -run.grid) {
            return;
        }
        for (int i = 0; i < lower.count; i++) {
            for (int j = 0; j < upper.count && lower.at[i] - upper.least > -run.grid; j++) {
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
     * What keeps some vehicles from being laid.
     *
     * @param fits true when all vehicles can be laid
     * @param asks those whose side is not decided and of which a part of the tucks that the branch reaches with is
     *             taken away; the most decisive first, and of equal ones those that leave the least
     */
    record Suspects(boolean fits, List<Integer> asks) {
    }

    /** An ask, and the greater part that it leaves of a tuck. */
    private record Suspect(int ask, long left) {
    }

    /** Lays all vehicles with some figures. */
    Suspects suspects(long[] x, Laying laying, Branching branching) {
        boolean fits = true;
        List<Suspect> suspects = new ArrayList<>();
        long[] tuck = new long[4];
        for (int v = 0; v < run.ofVehicle.length; v++) {
            int fails = laying.failsAt(v, x, limit);
            fits &= fails < 0;
            for (int i : run.ofVehicle[v]) {
                if (sides[i] == 0 && run.leg(run.asks.get(i)).stop() <= fails) {
                    laying.bounds(i, x, limit, tuck);
                    long behind = Math.min(tuck[1], tuck[2]) - tuck[0];
                    long before = tuck[1] - Math.max(tuck[0], tuck[3]);
                    if (tuck[2] < Math.min(tuck[1], tuck[3]) && tuck[3] > tuck[0]) {
                        suspects.add(new Suspect(i, Math.max(behind, before)));
                    }
                }
            }
        }
        return new Suspects(fits, suspects.stream().sorted(Comparator
                .comparingDouble((Suspect each) -> -branching.activity(each.ask)).thenComparingLong(Suspect::left)
                .thenComparingInt(Suspect::ask)).map(Suspect::ask).toList());
    }

    /** Whether more is possible with our breakout behind the vehicle's own than before it. */
    boolean isRatherBehind(int ask, long[] x, Laying laying) {
        long[] tuck = new long[4];
        laying.bounds(ask, x, limit, tuck);
        return Math.min(tuck[1], tuck[2]) - tuck[0] >= tuck[1] - Math.max(tuck[0], tuck[3]);
    }
}
