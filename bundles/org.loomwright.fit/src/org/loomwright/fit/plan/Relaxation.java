// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * The linear program of a part of what is searched: reach and doubling back of all vehicles from the
 * {@link Projection}, the sides that are chosen, and what follows for whole numbers, added as they are broken.
 */
final class Relaxation {

    /** What a figure may be off a whole number, in grid steps. */
    static final double LITTLE = 1e-6;

    private static final int ROUNDS = 500;
    private static final int CUTS = 30;
    /** Only what cuts off so much is worth its place in the program. */
    private static final double DEEP = 0.3;
    private static final double[] NOT_KNOWN = {};

    private final SlackRun run;
    private final long[] weights;
    private final LinearProgram program;
    private final long step;
    /** Sides that hold everywhere, by ask; 0 where that is not known. */
    private final byte[] everywhere;
    private List<Row> known = new ArrayList<>();
    private Projection projection;
    private AskBounds bounds;
    private long[] shorter;
    private SlackNode root;
    private long programs;

    /**
     * A part with the figures of its linear program.
     *
     * @param rows the inequalities that hold in the part
     * @param x    the figures; null where they are not known
     */
    record Solved(SlackNode node, List<Row> rows, double[] x) {
    }

    /**
     * @param weights of the sum, by unknown and grid step
     */
    Relaxation(SlackRun run, long[] weights, LinearProgram.Solver solver) {
        this.run = run;
        this.weights = weights;
        this.everywhere = new byte[run.asks.size()];
        this.step = Math.max(1, Arrays.stream(weights).reduce(0, SlackSearch::divisor));
        this.program = solver.minimise(Arrays.stream(weights).mapToDouble(each -> (double) each / step).toArray());
    }

    long programs() {
        return programs;
    }

    AskBounds bounds() {
        return bounds;
    }

    /** Takes what all is part of. */
    void begin(SlackNode all) {
        root = all;
        System.arraycopy(all.sides(), 0, everywhere, 0, everywhere.length);
    }

    /** Whether it is already known which side of an ask holds everywhere. */
    boolean isDecided(int ask) {
        return everywhere[ask] != 0;
    }

    /** Tries a side alone, without any other choice; where it leads nowhere, the other holds everywhere. */
    void tryAlone(int ask, boolean behind, List<Row> rows, long least, long limit) {
        byte[] sides = everywhere.clone();
        sides[ask] = (byte) (behind ? 1 : -1);
        SlackNode alone = new SlackNode(root.low(), root.high(), sides, root.tucks(), rows, Double.NEGATIVE_INFINITY,
                run.leg(run.asks.get(ask)).stop(), -1, limit);
        if (solve(alone, least, limit) == null) {
            everywhere[ask] = (byte) (behind ? -1 : 1);
        }
    }

    /** Takes what holds everywhere into a part; null when nothing is left. */
    private SlackNode narrowed(SlackNode wide, long limit) {
        byte[] sides = wide.sides().clone();
        BitSet touched = new BitSet();
        if (wide.limit() != limit) {
            touched.set(0, run.stops.size());
        } else if (wide.touched() >= 0) {
            touched.set(wide.touched());
        }
        for (int i = 0; i < sides.length; i++) {
            if (everywhere[i] != 0 && sides[i] != everywhere[i]) {
                if (sides[i] != 0) {
                    return null;
                }
                sides[i] = everywhere[i];
                touched.set(run.leg(run.asks.get(i)).stop());
            }
        }
        SlackRoot left = new SlackRoot(run, limit, wide.low(), wide.high(), sides, wide.tucks());
        return left.narrow(touched) ? new SlackNode(left.low(), left.high(), left.sides(), left.tucks(), wide.rows(),
                wide.bound(), -1, -1, limit) : null;
    }

    /**
     * Solves a part.
     *
     * @param least only figures with a lesser sum count
     * @return null when there are none
     */
    Solved solve(SlackNode wide, long least, long limit) {
        SlackNode node = narrowed(wide, limit);
        if (node == null) {
            return null;
        }
        bounds = AskBounds.of(run, node.low(), node.high(), limit, bounds);
        SlackSides sides = new SlackSides(run, node.sides(), limit, bounds);
        if (!Arrays.equals(shorter, bounds.shorter)) {
            shorter = bounds.shorter;
            projection = new Projection(run, shorter);
            known = new ArrayList<>();
        }
        List<Row> rows = new ArrayList<>(node.rows());
        int cuts = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<Row> all = new ArrayList<>(known);
            all.addAll(rows);
            if (all.stream().anyMatch(row -> row.unknowns().length == 0 && row.most() < 0)) {
                return null;
            }
            programs++;
            double[] x = switch (program.solve(node.low(), node.high(), all)) {
                case LinearProgram.Answer.Least found -> found.figures();
                case LinearProgram.Answer.Nothing nothing -> null;
                case LinearProgram.Answer.NotKnown notKnown -> NOT_KNOWN;
            };
            if (x == NOT_KNOWN) {
                break;
            }
            if (x == null || isNoBetter(bound(x), least)) {
                return null;
            }
            List<Row> broken = projection.broken(x, LITTLE);
            List<Row> brokenSides = sides.broken(x, LITTLE);
            known.addAll(broken);
            rows.addAll(brokenSides);
            if (broken.isEmpty() && brokenSides.isEmpty()) {
                List<Row> follow = isBroken(x) && cuts < CUTS ? follow(node, all, x) : List.of();
                follow.forEach(row -> (row.local() ? rows : known).add(row));
                cuts++;
                if (follow.isEmpty()) {
                    keepTight(x, rows);
                    return new Solved(node, rows, x);
                }
            }
        }
        return new Solved(node, rows, null);
    }

    private static boolean isBroken(double[] x) {
        return Arrays.stream(x).anyMatch(each -> Math.abs(each - Math.rint(each)) > LITTLE);
    }

    private List<Row> follow(SlackNode node, List<Row> all, double[] x) {
        List<Row> rows = new ArrayList<>(all);
        for (int i = 0; i < x.length; i++) {
            rows.add(Row.of(i, 1, node.high()[i], node.high()[i] != root.high()[i]));
            rows.add(Row.of(i, -1, -node.low()[i], node.low()[i] != root.low()[i]));
        }
        return new HalfCuts(rows, x).broken(DEEP);
    }

    /** Forgets inequalities with much room, so that programs stay small. */
    private void keepTight(double[] x, List<Row> rows) {
        if (known.size() > 3 * x.length) {
            known.removeIf(row -> row.slack(x) > 1);
        }
        rows.removeIf(row -> row.local() && row.slack(x) > 3);
    }

    /** The sum of some figures. */
    double bound(double[] x) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weights[i] * x[i];
        }
        return sum;
    }

    /** Whether no sum of whole figures from a bound on is less than another. */
    boolean isNoBetter(double bound, long least) {
        return least != Long.MAX_VALUE && Math.ceil(bound / step - 1e-4) * step >= least;
    }
}
