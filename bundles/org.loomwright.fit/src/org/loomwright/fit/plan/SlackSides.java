// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What a choice of sides asks: for some vehicles and branches, behind or before its station our breakout lies. */
final class SlackSides {

    private static final int DATUM = -1;
    private static final int SIGNS = 3;

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
        double[] free = new double[SIGNS * run.legs.size()];
        for (int leg = 0; leg < run.legs.size(); leg++) {
            double station = x[run.legs.get(leg).stop()];
            double length = x[run.legs.get(leg).unknown()];
            free[SIGNS * leg] = run.grid * (station - length);
            free[SIGNS * leg + 1] = run.grid * station;
            free[SIGNS * leg + 2] = run.grid * (station + length);
        }
        for (int[] asks : run.ofVehicle) {
            vehicle(asks, free, x, little * run.grid, rows);
        }
        return rows;
    }

    /** Bounds with the tucks that figures make of them. */
    private final class Placed {

        private final int[] bounds;
        private final double[] at;
        private int count;
        private double least = Double.POSITIVE_INFINITY;
        private double most = Double.NEGATIVE_INFINITY;

        private Placed(int most) {
            this.bounds = new int[most];
            this.at = new double[most];
        }

        private void add(int bound, double tuck) {
            bounds[count] = bound;
            at[count++] = tuck;
            least = Math.min(least, tuck);
            most = Math.max(most, tuck);
        }
    }

    private void vehicle(int[] asks, double[] free, double[] x, double little, List<Row> rows) {
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
        lower.add(DATUM, 0);
        upper.add(DATUM, 0);
        long[] constants = bounds.constants;
        for (int i : asks) {
            int own = AskBounds.KINDS * i;
            double shorter = free[SIGNS * run.legOf[i]];
            double none = free[SIGNS * run.legOf[i] + 1];
            double longer = free[SIGNS * run.legOf[i] + 2];
            lower.add(own + AskBounds.REACH_LOW, constants[own + AskBounds.REACH_LOW] + shorter);
            lower.add(own + AskBounds.BACK_LOW, constants[own + AskBounds.BACK_LOW] + none);
            upper.add(own + AskBounds.REACH_UP, constants[own + AskBounds.REACH_UP] + longer);
            upper.add(own + AskBounds.BACK_UP, constants[own + AskBounds.BACK_UP] + none);
            if (sides[i] > 0) {
                double tuck = constants[own + AskBounds.BEHIND] + shorter;
                behind.add(own + AskBounds.BEHIND, tuck);
                upper.add(own + AskBounds.BEHIND, tuck);
            } else if (sides[i] < 0) {
                before.add(own + AskBounds.BEFORE, constants[own + AskBounds.BEFORE] + longer);
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
                    add(bound(lower.bounds[i]), bound(upper.bounds[j]), over, x, little, rows);
                }
            }
        }
    }

    private TuckBound bound(int number) {
        return number == DATUM ? TuckBound.DATUM : bounds.bounds[number];
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
                if (sides[i] == 0 && run.legs.get(run.legOf[i]).stop() <= fails) {
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
