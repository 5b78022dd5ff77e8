// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.loomwright.quantity.Cancel;

/**
 * The least sum of weighted stations and lengths of a trunk with slack, under a limit of the excess: branch and bound.
 *
 * <p>Each node is a linear program over the {@link Projection}, whose inequalities are added as they are broken. That
 * enough of a branch is used up on the trunk is not convex: where a vehicle cannot be laid for it, one node puts the
 * breakout behind the vehicle's own and one before it. Stations and lengths that come out broken are split, and so are
 * lengths on either side of a step of their tolerance. Ends because there are finitely many sides and values.
 */
final class SlackSearch {

    private static final double LITTLE = 1e-6;
    private static final int ROUNDS = 500;
    private static final int CUTS = 30;
    private static final double FADING = 0.95;
    private static final double[] NOT_KNOWN = {};

    private final SlackRun run;
    private final long limit;
    private final long[] weights;
    private final List<Row> sums;
    private final Cancel cancel;
    private final Cancel enough;
    private final Laying laying;
    private final LinearProgram program;
    private final long step;
    private List<Row> known = new ArrayList<>();
    private Projection projection;
    private AskBounds bounds;
    private long[] shorter;
    private long[] best;
    private final double[] activity;
    private final byte[] everywhere;
    private final BitSet tried = new BitSet();
    private long[] rootLow;
    private long[] rootHigh;
    private Tucks rootTucks;
    private long least = Long.MAX_VALUE;
    private long programs;
    private long nodes;

    /** A part of what is to be searched; {@code sides} says by ask: 1 behind, -1 before its station, 0 either. */
    private record Node(long[] low, long[] high, byte[] sides, Tucks tucks, List<Row> rows, double bound, int touched,
            int cause) {
    }

    /**
     * What was found.
     *
     * @param best     the best figures; empty when there are none or none were found
     * @param bound    no figures have a lesser sum
     * @param complete true when all was searched: then there are no better figures
     */
    record Result(Optional<long[]> best, long bound, boolean complete) {
    }

    /**
     * @param weights by unknown, for each grid step
     * @param sums    what must hold besides
     * @param enough  whether to stop with the best that was found
     */
    SlackSearch(SlackRun run, long limit, long[] weights, List<Row> sums, LinearProgram.Solver solver,
            Cancel cancel, Cancel enough) {
        this.run = run;
        this.limit = limit;
        this.weights = weights;
        this.sums = sums;
        this.cancel = cancel;
        this.enough = enough;
        this.laying = new Laying(run);
        this.activity = new double[run.asks.size() + run.unknowns()];
        this.everywhere = new byte[run.asks.size()];
        this.step = Math.max(1, Arrays.stream(weights).reduce(0, SlackSearch::divisor));
        this.program = solver.minimise(Arrays.stream(weights).mapToDouble(each -> (double) each / step).toArray());
    }

    static long divisor(long one, long other) {
        long a = Math.abs(one);
        long b = Math.abs(other);
        while (b != 0) {
            long rest = a % b;
            a = b;
            b = rest;
        }
        return a;
    }

    long programs() {
        return programs;
    }

    long nodes() {
        return nodes;
    }

    long layings() {
        return laying.layings();
    }

    /** Takes figures that are known to hold, so that only better ones are looked for. */
    void start(long[] x) {
        if (sum(x) < least && laying.fits(x, limit) && sums.stream().allMatch(row -> row.holds(x))) {
            best = x.clone();
            least = sum(x);
        }
    }

    private long sum(long[] x) {
        long sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum = Math.addExact(sum, Math.multiplyExact(weights[i], x[i]));
        }
        return sum;
    }

    /**
     * Searches.
     *
     * @param first whether any figures will do
     */
    Result find(boolean first) {
        Deque<Node> open = new ArrayDeque<>();
        SlackRoot root = new SlackRoot(run, limit);
        if (!run.isEmpty() && root.narrow()) {
            rootLow = root.low();
            rootHigh = root.high();
            System.arraycopy(root.sides(), 0, everywhere, 0, everywhere.length);
            rootTucks = root.tucks();
            open.push(new Node(root.low(), root.high(), root.sides(), rootTucks, spacing(),
                    Double.NEGATIVE_INFINITY, -1, -1));
        }
        while (!open.isEmpty()) {
            if (first && best != null) {
                return new Result(Optional.of(best), Long.MIN_VALUE, false);
            }
            if (enough.cancelled()) {
                double bound = open.stream().mapToDouble(Node::bound).min().orElse(least);
                return new Result(Optional.ofNullable(best), bound <= Long.MIN_VALUE ? Long.MIN_VALUE
                        : Math.min(least, (long) Math.ceil(bound)), false);
            }
            cancel.check();
            nodes++;
            int before = open.size();
            Node next = open.pop();
            look(next, open);
            if (!first && open.size() < before && !open.isEmpty()) {
                Node nearest = open.stream().min(Comparator.comparingDouble(Node::bound)).orElseThrow();
                open.remove(nearest);
                open.push(nearest);
            }
        }
        return new Result(Optional.ofNullable(best), least, true);
    }

    private List<Row> spacing() {
        List<Row> rows = new ArrayList<>(sums);
        for (int k = 0; k < run.stops.size(); k++) {
            PlanStop stop = run.stops.get(k);
            long between = run.base[k] - (k == 0 ? 0 : run.base[k - 1]);
            int[] unknowns = k == 0 ? new int[] {0} : new int[] {k - 1, k};
            rows.add(new Row(unknowns, k == 0 ? new long[] {-1} : new long[] {1, -1},
                    Math.floorDiv(between - stop.leastGap(), run.grid), false));
            if (stop.mostGap() - between <= run.grid * (run.high[k] + 1)) {
                rows.add(new Row(unknowns, k == 0 ? new long[] {1} : new long[] {-1, 1},
                        Math.floorDiv(stop.mostGap() - between, run.grid), false));
            }
        }
        return rows;
    }

    private void look(Node wide, Deque<Node> open) {
        Relaxed relaxed = isNoBetter(wide.bound) ? null : relaxed(wide);
        if (relaxed == null) {
            learn(wide);
        } else if (relaxed.x == null) {
            halve(relaxed.node, open);
        } else {
            split(relaxed.node, relaxed.rows, relaxed.x, bound(relaxed.x), open);
        }
    }

    /**
     * A side that leads nowhere is a good one to choose early: choices that have nothing to do with it come after it.
     * If it leads nowhere at all, the other side holds everywhere.
     */
    private void learn(Node node) {
        if (node.cause < 0) {
            return;
        }
        for (int i = 0; i < activity.length; i++) {
            activity[i] *= FADING;
        }
        activity[node.cause]++;
        if (node.cause >= node.sides.length) {
            return;
        }
        int side = node.sides[node.cause];
        int key = 2 * node.cause + (side > 0 ? 1 : 0);
        if (!tried.get(key) && everywhere[node.cause] == 0) {
            tried.set(key);
            byte[] sides = everywhere.clone();
            sides[node.cause] = (byte) side;
            if (relaxed(new Node(rootLow, rootHigh, sides, rootTucks, spacing(), Double.NEGATIVE_INFINITY, node.touched,
                    -1))
                    == null) {
                everywhere[node.cause] = (byte) -side;
            }
        }
    }

    /** Where a program was not solved, whatever is in the node is looked at in smaller parts, at last one by one. */
    private void halve(Node node, Deque<Node> open) {
        int widest = 0;
        for (int x = 0; x < node.low.length; x++) {
            if (node.high[x] - node.low[x] > node.high[widest] - node.low[widest]) {
                widest = x;
            }
        }
        if (node.high[widest] > node.low[widest]) {
            cut(node, node.rows, widest, node.low[widest] + (node.high[widest] - node.low[widest]) / 2, false,
                    node.bound, open);
        } else if (spacing().stream().allMatch(row -> row.holds(node.low))) {
            start(node.low);
        }
    }

    /** A node with the figures of its linear program; without figures where these are not known. */
    private record Relaxed(Node node, List<Row> rows, double[] x) {
    }

    /** Takes what holds everywhere into a node; null when nothing is left. */
    private Node narrowed(Node wide) {
        byte[] sides = wide.sides.clone();
        BitSet touched = new BitSet();
        if (wide.touched >= 0) {
            touched.set(wide.touched);
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
        SlackRoot root = new SlackRoot(run, limit, wide.low, wide.high, sides, wide.tucks);
        return root.narrow(touched)
                ? new Node(root.low(), root.high(), root.sides(), root.tucks(), wide.rows, wide.bound, -1, -1) : null;
    }

    /** Null when there is nothing better in a node. */
    private Relaxed relaxed(Node wide) {
        Node node = narrowed(wide);
        if (node == null) {
            return null;
        }
        bounds = AskBounds.of(run, node.low, node.high, limit, bounds);
        SlackSides sides = new SlackSides(run, node.sides, limit, bounds);
        if (!Arrays.equals(shorter, bounds.shorter)) {
            shorter = bounds.shorter;
            projection = new Projection(run, shorter);
            known = new ArrayList<>();
        }
        List<Row> rows = new ArrayList<>(node.rows);
        int cuts = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<Row> all = new ArrayList<>(known);
            all.addAll(rows);
            if (all.stream().anyMatch(row -> row.unknowns().length == 0 && row.most() < 0)) {
                return null;
            }
            programs++;
            double[] x = switch (program.solve(node.low, node.high, all)) {
                case LinearProgram.Answer.Least least -> least.figures();
                case LinearProgram.Answer.Nothing nothing -> null;
                case LinearProgram.Answer.NotKnown notKnown -> NOT_KNOWN;
            };
            if (x == NOT_KNOWN) {
                break;
            }
            if (x == null || isNoBetter(bound(x))) {
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
                    return new Relaxed(node, rows, x);
                }
            }
        }
        return new Relaxed(node, rows, null);
    }

    private static boolean isBroken(double[] x) {
        return Arrays.stream(x).anyMatch(each -> Math.abs(each - Math.rint(each)) > LITTLE);
    }

    private List<Row> follow(Node node, List<Row> all, double[] x) {
        List<Row> rows = new ArrayList<>(all);
        for (int i = 0; i < x.length; i++) {
            rows.add(Row.of(i, 1, node.high[i], node.high[i] != rootHigh[i]));
            rows.add(Row.of(i, -1, -node.low[i], node.low[i] != rootLow[i]));
        }
        return new HalfCuts(rows, x).broken(0.02);
    }

    /** Forgets inequalities with much room, so that programs stay small. */
    private void keepTight(double[] x, List<Row> rows) {
        if (known.size() > 3 * x.length) {
            known.removeIf(row -> row.slack(x) > 1);
        }
        rows.removeIf(row -> row.local() && row.slack(x) > 3);
    }

    private double bound(double[] x) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weights[i] * x[i];
        }
        return sum;
    }

    private boolean isNoBetter(double bound) {
        return best != null && Math.ceil(bound / step - 1e-4) * step >= least;
    }

    private void split(Node node, List<Row> rows, double[] x, double bound, Deque<Node> open) {
        int broken = -1;
        double most = LITTLE;
        for (int i = 0; i < x.length; i++) {
            double off = Math.abs(x[i] - Math.rint(x[i]));
            double rank = off > LITTLE ? off + activity[run.asks.size() + i] : 0;
            if (rank > most) {
                most = rank;
                broken = i;
            }
        }
        long[] whole = new long[x.length];
        for (int i = 0; i < x.length; i++) {
            whole[i] = Math.round(x[i]);
        }
        SlackSides sides = new SlackSides(run, node.sides, limit, bounds);
        int suspect = sides.suspect(whole, laying, activity);
        if (suspect < 0 && broken >= 0) {
            cut(node, rows, broken, (long) Math.floor(x[broken]), x[broken] - Math.floor(x[broken]) > 0.5, bound, open);
        } else if (suspect == SlackSides.NONE) {
            take(node, rows, whole, bound, open);
        } else if (suspect >= 0) {
            boolean behind = sides.isRatherBehind(suspect, whole, laying);
            Node one = sided(node, rows, suspect, behind, bound);
            Node other = sided(node, rows, suspect, !behind, bound);
            open.push(other);
            open.push(one);
        } else {
            splitTolerance(node, rows, whole, bound, open);
        }
    }

    private void take(Node node, List<Row> rows, long[] whole, double bound, Deque<Node> open) {
        if (sums.stream().allMatch(row -> row.holds(whole))) {
            long sum = sum(whole);
            if (sum < least) {
                least = sum;
                best = whole;
            }
        } else {
            splitAny(node, rows, whole, bound, open);
        }
    }

    /** A length whose tolerance is not that with which the program reckoned is split where its tolerance begins. */
    private void splitTolerance(Node node, List<Row> rows, long[] whole, double bound, Deque<Node> open) {
        for (SlackRun.Leg leg : run.legs) {
            int x = leg.unknown();
            long edge = whole[x];
            while (edge > node.low[x] && run.made(leg, edge - 1).equals(run.made(leg, whole[x]))) {
                edge--;
            }
            if (edge > node.low[x]) {
                cut(node, rows, x, edge - 1, true, bound, open);
                return;
            }
            edge = whole[x];
            while (edge < node.high[x] && run.made(leg, edge + 1).equals(run.made(leg, whole[x]))) {
                edge++;
            }
            if (edge < node.high[x] && !run.made(leg, edge + 1).minus().equals(run.made(leg, edge).minus())) {
                cut(node, rows, x, edge, false, bound, open);
                return;
            }
        }
        splitAny(node, rows, whole, bound, open);
    }

    /** Only when rounding hides what is broken: takes one value out of a range. */
    private void splitAny(Node node, List<Row> rows, long[] whole, double bound, Deque<Node> open) {
        for (int x = 0; x < whole.length; x++) {
            if (node.low[x] < node.high[x]) {
                long at = whole[x] == node.high[x] ? whole[x] - 1 : whole[x];
                cut(node, rows, x, at, false, bound, open);
                return;
            }
        }
    }

    private void cut(Node node, List<Row> rows, int x, long at, boolean upperFirst, double bound,
            Deque<Node> open) {
        int stop = x < run.stops.size() ? x : run.legs.get(x - run.stops.size()).stop();
        long[] high = node.high.clone();
        long[] low = node.low.clone();
        high[x] = at;
        low[x] = at + 1;
        Node below = new Node(node.low, high, node.sides, node.tucks, rows, bound, stop, node.sides.length + x);
        Node above = new Node(low, node.high, node.sides, node.tucks, rows, bound, stop, node.sides.length + x);
        open.push(upperFirst ? below : above);
        open.push(upperFirst ? above : below);
    }

    private Node sided(Node node, List<Row> rows, int ask, boolean behind, double bound) {
        byte[] sides = node.sides.clone();
        sides[ask] = (byte) (behind ? 1 : -1);
        return new Node(node.low, node.high, sides, node.tucks, rows, bound, run.leg(run.asks.get(ask)).stop(),
                ask);
    }
}
