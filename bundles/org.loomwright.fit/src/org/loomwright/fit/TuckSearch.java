// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.Arrays;
import java.util.List;
import org.loomwright.quantity.Cancel;

/**
 * Lays one trunk into one vehicle: finds how much slack to take up before each breakout.
 *
 * <p>The tuck at a breakout is all slack taken up before it; from one breakout to the next it grows by at most the
 * slack between them. Tucks lie on a lattice of half units of 0.05 mm (0.025 mm); costs are exact at every lattice
 * point. With stations, lengths and slacks in whole units the best tuck of all is on the lattice: every branch changes
 * by one for one with its breakout's position, so an optimum sits where sums of whole units, or halves of them, meet.
 * In order:
 * <ol>
 * <li>all branches reach, none doubles back or is too long: least largest excess, then least sum of excess;
 * <li>all reach and none doubles back: least largest excess over its limit, then least sum;
 * <li>all reach: least doubling back over its limit, then least sum;
 * <li>otherwise the least margin is made as great as it can be, then least sum.
 * </ol>
 * Of several equally good layings the one with the least tucks, compared from the last breakout to the first.
 *
 * <p>Two passes of a dynamic programme with a sliding-window minimum for each step: O(breakouts * total slack). If
 * there were more than {@value TuckLattice#MOST_POINTS} lattice points, the lattice is made coarser by powers of two
 * until there are not; what is found can still be laid like that, but need not be the best. One object for each laying.
 */
final class TuckSearch {

    private static final long NEVER = Long.MAX_VALUE;
    private static final long NEUTRAL = Long.MAX_VALUE / 4;

    private final List<FitColumn.Stop> stops;
    private final List<List<Demand>> demands;
    private final Cancel cancel;
    private final long step;
    private final int[] windows;
    private final long[][] margin;
    private final long[][] excess;
    private final long[][] over;
    private final long[][] back;
    private final long[][] sum;
    private long evaluations;
    private long points;

    /**
     * Prepares a laying.
     *
     * @param stops   the breakouts by rising station
     * @param demands what hangs on each of them
     */
    TuckSearch(List<FitColumn.Stop> stops, List<List<Demand>> demands, Cancel cancel) {
        this(stops, demands, cancel, TuckLattice.HALF_UNIT);
    }

    TuckSearch(List<FitColumn.Stop> stops, List<List<Demand>> demands, Cancel cancel, long finest) {
        this.stops = stops;
        this.demands = demands;
        this.cancel = cancel;
        this.step = TuckLattice.step(stops.stream().map(FitColumn.Stop::slack).toList(), finest);
        int n = stops.size();
        windows = new int[n];
        margin = new long[n][];
        excess = new long[n][];
        over = new long[n][];
        back = new long[n][];
        sum = new long[n][];
        int reach = 0;
        for (int k = 0; k < n; k++) {
            windows[k] = (int) (stops.get(k).slack().nanometres() / step);
            reach += windows[k];
            evaluate(k, reach + 1);
        }
    }

    private void evaluate(int k, int size) {
        cancel.check();
        margin[k] = filled(size, NEUTRAL);
        excess[k] = filled(size, -NEUTRAL);
        over[k] = filled(size, -NEUTRAL);
        back[k] = filled(size, -NEUTRAL);
        sum[k] = new long[size];
        for (int at = 0; at < size; at++) {
            long position = stops.get(k).station().nanometres() - at * step;
            for (Demand demand : demands.get(k)) {
                margin[k][at] = Math.min(margin[k][at], demand.margin(position));
                excess[k][at] = Math.max(excess[k][at], demand.excess(position));
                over[k][at] = Math.max(over[k][at], demand.over(position));
                back[k][at] = Math.max(back[k][at], demand.back(position));
                sum[k][at] += demand.excess(position);
                evaluations++;
            }
        }
    }

    private static long[] filled(int size, long value) {
        long[] all = new long[size];
        Arrays.fill(all, value);
        return all;
    }

    /** What a tuck costs at a breakout; {@link #NEVER} when it may not be. */
    private interface Cost {
        long at(int k, int tuck);
    }

    /** The tuck at each breakout in nanometres. */
    long[] tucks() {
        Cost reaching = (k, at) -> margin[k][at] >= 0 ? 0 : NEVER;
        Cost straight = (k, at) -> back[k][at] <= 0 ? reaching.at(k, at) : NEVER;
        Cost fitting = (k, at) -> over[k][at] <= 0 ? straight.at(k, at) : NEVER;
        Cost[][] stages = {
            {fitting, (k, at) -> excess[k][at]},
            {straight, (k, at) -> over[k][at]},
            {reaching, (k, at) -> back[k][at]},
            {(k, at) -> 0, (k, at) -> -margin[k][at]},
        };
        for (Cost[] stage : stages) {
            Cost cost = (k, at) -> stage[0].at(k, at) == NEVER ? NEVER : stage[1].at(k, at);
            long least = leastLargest(cost);
            if (least != NEVER) {
                return leastSum((k, at) -> cost.at(k, at) <= least ? sum[k][at] : NEVER);
            }
        }
        throw new IllegalStateException("the last stage allows every tuck");
    }

    private long leastLargest(Cost cost) {
        long[] before = {-NEUTRAL};
        for (int k = 0; k < stops.size(); k++) {
            cancel.check();
            int[] from = window(before, windows[k], sum[k].length);
            long[] now = new long[sum[k].length];
            for (int at = 0; at < now.length; at++) {
                now[at] = Math.max(before[from[at]], cost.at(k, at));
            }
            before = now;
        }
        return Arrays.stream(before).min().orElseThrow();
    }

    private long[] leastSum(Cost cost) {
        int n = stops.size();
        int[][] from = new int[n][];
        long[] before = {0};
        for (int k = 0; k < n; k++) {
            cancel.check();
            from[k] = window(before, windows[k], sum[k].length);
            long[] now = new long[sum[k].length];
            for (int at = 0; at < now.length; at++) {
                long here = cost.at(k, at);
                now[at] = here == NEVER || before[from[k][at]] == NEVER ? NEVER : before[from[k][at]] + here;
            }
            before = now;
        }
        int best = 0;
        for (int at = 1; at < before.length; at++) {
            best = before[at] < before[best] ? at : best;
        }
        long[] tucks = new long[n];
        for (int k = n - 1; k >= 0; k--) {
            tucks[k] = best * step;
            best = from[k][best];
        }
        return tucks;
    }

    /** For each tuck the cheapest one that may come before it, of several the least. */
    private int[] window(long[] before, int width, int size) {
        int[] from = new int[size];
        int[] queue = new int[before.length];
        int head = 0;
        int tail = 0;
        for (int at = 0; at < size; at++) {
            points++;
            if (at < before.length) {
                while (tail > head && before[queue[tail - 1]] > before[at]) {
                    tail--;
                }
                queue[tail++] = at;
            }
            while (queue[head] < at - width) {
                head++;
            }
            from[at] = queue[head];
        }
        return from;
    }

    /** How often a branch was looked at. */
    long evaluations() {
        return evaluations;
    }

    /** Steps of the dynamic programme. */
    long points() {
        return points;
    }

    /** The lattice that was used, in nanometres. */
    long step() {
        return step;
    }
}
