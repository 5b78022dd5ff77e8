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
import java.util.function.IntPredicate;
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

    /** How many sides are tried, of each node, before one is chosen by what others brought. */
    private static final int TRIES = 16;
    /** After so many parts it is told how far the search is. */
    private static final int TOLD = 32;

    private final SlackRun run;
    private final long[] weights;
    private final double scale;
    private final List<Row> sums;
    private final Cancel cancel;
    private final Cancel enough;
    private final Laying laying;
    private final Relaxation relaxation;
    private final Branching branching;
    private final Watch watch;
    private final BitSet alone = new BitSet();
    private final Deque<SlackNode> open = new ArrayDeque<>();
    private long limit;
    private long[] best;
    private long least = Long.MAX_VALUE;
    /** Where the best figures were found. */
    private SlackNode found;
    private boolean begun;
    private long nodes;

    /** Is told how far a search is. */
    @FunctionalInterface
    interface Watch {

        /**
         * @param best  the least sum that was found; {@link Long#MAX_VALUE} for none
         * @param bound no figures have a lesser sum; {@link Long#MIN_VALUE} when nothing is known
         * @param parts how many parts were searched
         */
        void told(long best, long bound, long parts);
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
     * @param weights   by unknown, for each grid step
     * @param sums      what must hold besides
     * @param branching what earlier searches of the same run have taught
     * @param enough    whether to stop with the best that was found
     * @param watch     told now and then how far it is
     */
    SlackSearch(SlackRun run, long limit, long[] weights, List<Row> sums, LinearProgram.Solver solver,
            Branching branching, Cancel cancel, Cancel enough, Watch watch) {
        this.watch = watch;
        this.run = run;
        this.limit = limit;
        this.weights = weights;
        this.scale = Math.max(1, Arrays.stream(weights).asDoubleStream().map(Math::abs).sum());
        this.sums = sums;
        this.branching = branching;
        this.cancel = cancel;
        this.enough = enough;
        this.laying = new Laying(run);
        this.relaxation = new Relaxation(run, weights, solver);
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
        return relaxation.programs();
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

    /** Goes on under a lower limit: what was searched without success need not be searched again. */
    void lower(long to) {
        limit = to;
        best = null;
        least = Long.MAX_VALUE;
        if (found != null) {
            open.push(found);
            found = null;
        }
    }

    private long sum(long[] x) {
        long sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum = Math.addExact(sum, Math.multiplyExact(weights[i], x[i]));
        }
        return sum;
    }

    private void begin() {
        begun = true;
        SlackRoot root = new SlackRoot(run, limit);
        if (!run.isEmpty() && root.narrow()) {
            SlackNode all = new SlackNode(root.low(), root.high(), root.sides(), root.tucks(), spacing(),
                    Double.NEGATIVE_INFINITY, -1, -1, limit);
            relaxation.begin(all);
            open.push(all);
        }
    }

    /**
     * Searches.
     *
     * @param first whether any figures will do
     */
    Result find(boolean first) {
        if (!begun) {
            begin();
        }
        while (!open.isEmpty()) {
            if (first && best != null) {
                return new Result(Optional.of(best), Long.MIN_VALUE, false);
            }
            if (enough.cancelled()) {
                return new Result(Optional.ofNullable(best), bound(), false);
            }
            cancel.check();
            if (nodes % TOLD == 0) {
                watch.told(least, bound(), nodes);
            }
            nodes++;
            int before = open.size();
            look(open.pop());
            if (!first && open.size() < before && !open.isEmpty()) {
                SlackNode nearest = open.stream().min(Comparator.comparingDouble(SlackNode::bound)).orElseThrow();
                open.remove(nearest);
                open.push(nearest);
            }
        }
        return new Result(Optional.ofNullable(best), least, true);
    }

    private long bound() {
        double bound = open.stream().mapToDouble(SlackNode::bound).min().orElse(least);
        return bound <= Long.MIN_VALUE ? Long.MIN_VALUE : Math.min(least, (long) Math.ceil(bound));
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

    private void look(SlackNode wide) {
        Relaxation.Solved solved = relaxation.isNoBetter(wide.bound(), least) ? null
                : relaxation.solve(wide, least, limit);
        if (solved == null) {
            learn(wide);
        } else if (solved.x() == null) {
            halve(solved.node());
        } else {
            double bound = relaxation.bound(solved.x());
            if (isSide(wide.cause())) {
                branching.raised(wide.cause(), wide.sides()[wide.cause()] > 0, (bound - wide.bound()) / scale);
            }
            split(solved, bound);
        }
    }

    private boolean isSide(int cause) {
        return cause >= 0 && cause < run.asks.size();
    }

    /**
     * A side that leads nowhere is a good one to choose early: choices that have nothing to do with it come after it.
     * If it leads nowhere at all, the other side holds everywhere.
     */
    private void learn(SlackNode node) {
        if (node.cause() < 0) {
            return;
        }
        branching.closed(node.cause());
        if (isSide(node.cause())) {
            boolean behind = node.sides()[node.cause()] > 0;
            branching.raised(node.cause(), behind, Double.POSITIVE_INFINITY);
            int key = 2 * node.cause() + (behind ? 1 : 0);
            if (!alone.get(key) && !relaxation.isDecided(node.cause())) {
                alone.set(key);
                relaxation.tryAlone(node.cause(), behind, spacing(), least, limit);
            }
        }
    }

    /** Where a program was not solved, whatever is in the node is looked at in smaller parts, at last one by one. */
    private void halve(SlackNode node) {
        int widest = 0;
        for (int x = 0; x < node.low().length; x++) {
            if (node.high()[x] - node.low()[x] > node.high()[widest] - node.low()[widest]) {
                widest = x;
            }
        }
        if (node.high()[widest] > node.low()[widest]) {
            cut(node, node.rows(), widest, node.low()[widest] + (node.high()[widest] - node.low()[widest]) / 2, false,
                    node.bound());
        } else if (spacing().stream().allMatch(row -> row.holds(node.low()))) {
            start(node.low());
        }
    }

    private void split(Relaxation.Solved solved, double bound) {
        double[] x = solved.x();
        int broken = -1;
        double most = Relaxation.LITTLE;
        for (int i = 0; i < x.length; i++) {
            double off = Math.abs(x[i] - Math.rint(x[i]));
            double rank = off > Relaxation.LITTLE ? off + branching.activity(run.asks.size() + i) : 0;
            if (rank > most) {
                most = rank;
                broken = i;
            }
        }
        long[] whole = new long[x.length];
        for (int i = 0; i < x.length; i++) {
            whole[i] = Math.round(x[i]);
        }
        SlackNode node = solved.node();
        SlackSides sides = new SlackSides(run, node.sides(), limit, relaxation.bounds());
        SlackSides.Suspects suspects = sides.suspects(whole, laying, branching);
        if (!suspects.asks().isEmpty()) {
            choose(solved, suspects.asks(), bound, ask -> sides.isRatherBehind(ask, whole, laying));
        } else if (broken >= 0) {
            cut(node, solved.rows(), broken, (long) Math.floor(x[broken]), x[broken] - Math.floor(x[broken]) > 0.5,
                    bound);
        } else if (suspects.fits()) {
            take(node, solved.rows(), whole, bound);
        } else {
            splitTolerance(node, solved.rows(), whole, bound);
        }
    }

    /**
     * Splits a node by the side of one of some asks: by that of which the most is expected, where nothing is known yet
     * by trying. A side that is tried and leads nowhere leaves the other.
     */
    private void choose(Relaxation.Solved solved, List<Integer> asks, double bound, IntPredicate isRatherBehind) {
        int tries = 0;
        int chosen = -1;
        for (int ask : asks) {
            for (boolean behind : List.of(false, true)) {
                if (!branching.isKnown(ask, behind) && tries < TRIES) {
                    tries++;
                    Relaxation.Solved tried = relaxation.solve(sided(solved, ask, behind, bound), least, limit);
                    if (tried == null) {
                        branching.raised(ask, behind, Double.POSITIVE_INFINITY);
                        open.push(sided(solved, ask, !behind, bound));
                        return;
                    }
                    branching.raised(ask, behind, tried.x() == null ? 0
                            : (relaxation.bound(tried.x()) - bound) / scale);
                }
            }
            if (chosen < 0 || branching.promise(ask) > branching.promise(chosen)) {
                chosen = ask;
            }
        }
        boolean behind = isRatherBehind.test(chosen);
        open.push(sided(solved, chosen, !behind, bound));
        open.push(sided(solved, chosen, behind, bound));
    }

    private SlackNode sided(Relaxation.Solved solved, int ask, boolean behind, double bound) {
        return solved.node().sided(ask, run.leg(run.asks.get(ask)).stop(), behind, solved.rows(), bound);
    }

    private void take(SlackNode node, List<Row> rows, long[] whole, double bound) {
        if (sums.stream().allMatch(row -> row.holds(whole))) {
            long sum = sum(whole);
            if (sum < least) {
                least = sum;
                best = whole;
                found = node;
            }
        } else {
            splitAny(node, rows, whole, bound);
        }
    }

    /** A length whose tolerance is not that with which the program reckoned is split where its tolerance begins. */
    private void splitTolerance(SlackNode node, List<Row> rows, long[] whole, double bound) {
        for (SlackRun.Leg leg : run.legs) {
            int x = leg.unknown();
            long edge = whole[x];
            while (edge > node.low()[x] && isMadeAlike(leg, edge - 1, whole[x])) {
                edge--;
            }
            if (edge > node.low()[x]) {
                cut(node, rows, x, edge - 1, true, bound);
                return;
            }
            edge = whole[x];
            while (edge < node.high()[x] && isMadeAlike(leg, edge + 1, whole[x])) {
                edge++;
            }
            if (edge < node.high()[x] && run.minus(leg, edge + 1) != run.minus(leg, edge)) {
                cut(node, rows, x, edge, false, bound);
                return;
            }
        }
        splitAny(node, rows, whole, bound);
    }

    private boolean isMadeAlike(SlackRun.Leg leg, long one, long other) {
        return run.minus(leg, one) == run.minus(leg, other) && run.plus(leg, one) == run.plus(leg, other);
    }

    /** Only when rounding hides what is broken: takes one value out of a range. */
    private void splitAny(SlackNode node, List<Row> rows, long[] whole, double bound) {
        for (int x = 0; x < whole.length; x++) {
            if (node.low()[x] < node.high()[x]) {
                long at = whole[x] == node.high()[x] ? whole[x] - 1 : whole[x];
                cut(node, rows, x, at, false, bound);
                return;
            }
        }
    }

    private void cut(SlackNode node, List<Row> rows, int x, long at, boolean upperFirst, double bound) {
        int stop = x < run.stops.size() ? x : run.legs.get(x - run.stops.size()).stop();
        SlackNode below = node.atMost(x, at, stop, rows, bound);
        SlackNode above = node.atLeast(x, at + 1, stop, rows, bound);
        open.push(upperFirst ? below : above);
        open.push(upperFirst ? above : below);
    }
}
