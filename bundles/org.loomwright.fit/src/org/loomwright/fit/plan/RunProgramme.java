// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/**
 * The dynamic programme along one run: the cheapest stations of its breakouts under a limit of the excess. A sliding
 * minimum serves the spacing; a branch with breakouts of its own is a run that starts where it leaves.
 *
 * <p>O(breakouts * positions) for a trunk without branches on branches; times the same for each branch that has some.
 */
final class RunProgramme {

    private final long limit;
    private final List<Objective> sums;
    private final Making making;
    private final Cancel cancel;
    private long passes;
    private long positions;

    /** A way through a run: what it costs, and the position of each breakout by index. */
    record Way(Cost cost, int[] at) {
    }

    RunProgramme(long limit, List<Objective> sums, Making making, Cancel cancel) {
        this.limit = limit;
        this.sums = sums;
        this.making = making;
        this.cancel = cancel;
    }

    long passes() {
        return passes;
    }

    long positions() {
        return positions;
    }

    /** The cheapest way through a trunk; null when there is none. */
    Way best(RunTable trunk) {
        return best(trunk, null, 0);
    }

    /**
     * The cheapest way through the breakouts of a branch, with the branch itself.
     *
     * @param parent the branch on which they are; null for a trunk
     * @param p      the position of the parent's breakout
     */
    private Way best(RunTable run, Legs parent, int p) {
        cancel.check();
        passes++;
        int count = run.stops.size();
        if (count == 0) {
            return new Way(Cost.NONE, new int[0]);
        }
        int[][] from = new int[count][];
        Cost[] before = null;
        for (int k = 0; k < count; k++) {
            RunTable.Stop stop = run.stops.get(k);
            long next = k + 1 < count ? run.stops.get(k + 1).stop().weight() : 0;
            from[k] = new int[stop.at().length];
            Cost[] here = new Cost[stop.at().length];
            IntFunction<Integer> window = k == 0 ? q -> within(stop, stop.at()[q]) ? 0 : -1
                    : window(run.stops.get(k - 1), stop, before);
            for (int q = 0; q < here.length; q++) {
                positions++;
                from[k][q] = window.apply(q);
                if (from[k][q] >= 0) {
                    Cost own = cost(stop, q, next);
                    Cost tail = own == null || k + 1 < count || parent == null ? own
                            : with(own, parent, p, stop.at()[q]);
                    here[q] = tail == null || k == 0 ? tail : tail.plus(before[from[k][q]]);
                }
            }
            before = here;
        }
        int last = -1;
        for (int q = 0; q < before.length; q++) {
            last = before[q] != null && (last < 0 || before[q].compareTo(before[last]) < 0) ? q : last;
        }
        if (last < 0) {
            return null;
        }
        int[] at = new int[count];
        Cost cost = before[last];
        for (int k = count - 1; k >= 0; k--) {
            at[k] = last;
            last = from[k][last];
        }
        return new Way(cost, at);
    }

    private static boolean within(RunTable.Stop stop, long gap) {
        return stop.stop().leastGap() <= gap && gap <= stop.stop().mostGap();
    }

    /** For rising positions of a breakout, the cheapest position of the one before within the spacing; -1 for none. */
    private static IntFunction<Integer> window(RunTable.Stop previous, RunTable.Stop stop, Cost[] costs) {
        Deque<Integer> best = new ArrayDeque<>();
        int[] next = {0};
        return q -> {
            long at = stop.at()[q];
            for (; next[0] < costs.length && previous.at()[next[0]] <= at - stop.stop().leastGap(); next[0]++) {
                Cost cost = costs[next[0]];
                if (cost != null) {
                    while (!best.isEmpty() && cost.compareTo(costs[best.peekLast()]) < 0) {
                        best.pollLast();
                    }
                    best.addLast(next[0]);
                }
            }
            while (!best.isEmpty() && at - previous.at()[best.peekFirst()] > stop.stop().mostGap()) {
                best.pollFirst();
            }
            return best.isEmpty() ? -1 : best.peekFirst();
        };
    }

    /** Whether a breakout and its branches can be at a position. */
    boolean isPossible(RunTable.Stop stop, int q) {
        return cost(stop, q, 0) != null;
    }

    /** What a breakout and its branches cost at a position; null when they cannot be there. */
    private Cost cost(RunTable.Stop stop, int q, long nextWeight) {
        long weight = stop.stop().weight() - nextWeight;
        Cost sum = Cost.of(sums, Math.multiplyExact(weight, stop.at()[q]), 0);
        for (Legs legs : stop.legs()) {
            RunTable children = legs.children(q);
            Cost cost;
            if (children == null) {
                cost = with(Cost.NONE, legs, q, 0);
            } else {
                Way way = legs.least[q] == Legs.NOWHERE ? null : best(children, legs, q);
                cost = way == null ? null : way.cost();
            }
            if (cost == null) {
                return null;
            }
            sum = sum.plus(cost);
        }
        return sum;
    }

    /** Adds a branch that is at least so long; null when it cannot be made. */
    private Cost with(Cost cost, Legs legs, int p, long atLeast) {
        long length = legs.length(p, legs.branch.pinned().isPresent() ? atLeast : making.up(atLeast), limit);
        PlanBranch branch = legs.branch;
        return length == Legs.NOWHERE ? null : branch.asks().isEmpty() && branch.pinned().isEmpty() ? cost
                : cost.plus(Cost.of(sums, Math.multiplyExact(branch.weight(), length),
                        Math.multiplyExact(branch.count(), length)));
    }

    /** Writes the stations and lengths of a way down; returns the largest excess, the least number when none counts. */
    long write(RunTable run, Way way, Map<String, Long> stations, Map<String, Long> lengths) {
        return write(run, way, null, 0, stations, lengths);
    }

    private long write(RunTable run, Way way, Legs parent, int p, Map<String, Long> stations,
            Map<String, Long> lengths) {
        long excess = Long.MIN_VALUE;
        for (int k = 0; k < run.stops.size(); k++) {
            RunTable.Stop stop = run.stops.get(k);
            int q = way.at()[k];
            stations.put(stop.stop().name(), stop.at()[q]);
            for (Legs legs : stop.legs()) {
                RunTable children = legs.children(q);
                excess = Math.max(excess, children == null ? write(legs, q, 0, lengths)
                        : write(children, best(children, legs, q), legs, q, stations, lengths));
            }
        }
        if (parent != null) {
            long last = run.stops.getLast().at()[way.at()[way.at().length - 1]];
            excess = Math.max(excess, write(parent, p, last, lengths));
        }
        return excess;
    }

    private long write(Legs legs, int p, long atLeast, Map<String, Long> lengths) {
        if (legs.branch.asks().isEmpty() && legs.branch.pinned().isEmpty()) {
            return Long.MIN_VALUE;
        }
        long length = legs.length(p, legs.branch.pinned().isPresent() ? atLeast : making.up(atLeast), limit);
        lengths.put(legs.branch.name(), length);
        return legs.branch.asks().isEmpty() ? Long.MIN_VALUE : legs.excess(p, length);
    }
}
