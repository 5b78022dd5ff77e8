// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;

/**
 * What the breakouts say one by one, and to each other through the tucks of the vehicles: from which stations each can
 * serve all vehicles, how long its branches are then, on which side of it a vehicle's own breakout must be, and how
 * much of the trunk before it a vehicle takes up. What one breakout leaves of a tuck, those before and behind it have
 * to make do with. Nothing that a whole harness can be is left out.
 */
final class SlackRoot {

    private static final int MOST_ROUNDS = 6;

    private final SlackRun run;
    private final long limit;
    private final long[] low;
    private final long[] high;
    private final byte[] sides;
    /** By vehicle and breakout, the least and the greatest tuck before it. */
    private final long[][] tuckLow;
    private final long[][] tuckHigh;
    /** A tuck that is narrowed by less tells the other breakouts nothing worth the work. */
    private final long enough;
    private long looks;

    /** All of a run. */
    SlackRoot(SlackRun run, long limit) {
        this(run, limit, run.low, run.high, new byte[run.asks.size()]);
    }

    /** A part of it. */
    SlackRoot(SlackRun run, long limit, long[] low, long[] high, byte[] sides) {
        this(run, limit, low, high, sides, new Tucks(new long[run.ofVehicle.length][run.stops.size()],
                IntStream.range(0, run.ofVehicle.length).mapToObj(v -> run.slackSum).toArray(long[][]::new)));
    }

    /** The same, where something is known of the tucks. */
    SlackRoot(SlackRun run, long limit, long[] low, long[] high, byte[] sides, Tucks tucks) {
        this.run = run;
        this.enough = 2 * run.grid;
        this.limit = limit;
        this.low = low.clone();
        this.high = high.clone();
        this.sides = sides.clone();
        this.tuckLow = Arrays.stream(tucks.low()).map(long[]::clone).toArray(long[][]::new);
        this.tuckHigh = Arrays.stream(tucks.high()).map(long[]::clone).toArray(long[][]::new);
    }

    long[] low() {
        return low;
    }

    long[] high() {
        return high;
    }

    byte[] sides() {
        return sides;
    }

    Tucks tucks() {
        return new Tucks(tuckLow, tuckHigh);
    }

    /** How often a branch was looked at from a station. */
    long looks() {
        return looks;
    }

    /** One branch, seen from the stations of its breakout: what does not depend on the station is worked out once. */
    private final class Seen {

        private final int leg;
        private final int k;
        private final SlackRun.Leg branch;
        private final int from;
        private final int to;
        private final int[] undecided;
        private long reach = Long.MIN_VALUE;
        private long reachBefore = Long.MIN_VALUE;
        private long reachBehind = Long.MIN_VALUE;
        private long nearest = Long.MIN_VALUE;
        private long farthest = Long.MAX_VALUE;
        private long spread = Long.MIN_VALUE;
        private long spare = Long.MAX_VALUE;
        private long behind = Long.MAX_VALUE;
        private long before = Long.MAX_VALUE;
        /** Of the station that was looked at last: the least and the greatest length, the excess of the least. */
        private long length;
        private long most;
        private long plus;
        private long excess;

        Seen(int leg, int k) {
            this.leg = leg;
            this.k = k;
            this.branch = run.legs.get(leg);
            this.from = run.firstAsk[leg];
            this.to = run.firstAsk[leg + 1];
            int[] open = new int[to - from];
            int count = 0;
            long back = branch.branch().backLimit();
            for (int a = from; a < to; a++) {
                long least = tuckLow[run.vehicle[a]][k] + run.station[a];
                long greatest = tuckHigh[run.vehicle[a]][k] + run.station[a];
                reach = Math.max(reach, run.reach[a]);
                reachBefore = Math.max(reachBefore, run.reach[a] + least);
                reachBehind = Math.max(reachBehind, run.reach[a] - greatest);
                nearest = Math.max(nearest, least - back);
                farthest = Math.min(farthest, greatest + back);
                spread = Math.max(spread, run.reach[a] - run.spare[a]);
                spare = Math.min(spare, run.spare[a]);
                if (sides[a] > 0) {
                    behind = Math.min(behind, run.spare[a] - least);
                } else if (sides[a] < 0) {
                    before = Math.min(before, run.spare[a] + greatest);
                } else {
                    open[count++] = a;
                }
            }
            this.undecided = Arrays.copyOf(open, count);
        }

        /** What is certain to be used up of the branch in any vehicle, at the most. */
        private long room(long at) {
            // what all vehicles can use up at the most is limited by how far the branch may run back
            long least = branch.branch().backLimit() + spare;
            if (behind != Long.MAX_VALUE) {
                least = Math.min(least, behind + at);
            }
            if (before != Long.MAX_VALUE) {
                least = Math.min(least, before - at);
            }
            for (int a : undecided) {
                int v = run.vehicle[a];
                least = Math.min(least, run.spare[a] + Math.max(at - tuckLow[v][k] - run.station[a],
                        run.station[a] - at + tuckHigh[v][k]));
            }
            return least;
        }

        /** Looks from a station; false when no length is allowed. */
        boolean look(long at) {
            looks++;
            if (at < nearest || at > farthest) {
                return false;
            }
            long need = Math.max(reach, Math.max(reachBefore - at, reachBehind + at));
            int x = branch.unknown();
            long c = Math.max(low[x], Math.ceilDiv(need - run.base[x], run.grid));
            while (c <= high[x] && run.value(x, c) - run.made(branch, c).minus().nanometres() < need) {
                c++;
            }
            if (c > high[x]) {
                return false;
            }
            length = c;
            plus = run.leastPlus(branch, c);
            long room = room(at);
            excess = Math.max(0, Math.max(run.leastMinus(branch, c) + plus + spread, run.value(x, c) + plus - room));
            most = Math.min(high[x], Math.floorDiv(room + SlackRun.limit(branch, limit) - plus - run.base[x],
                    run.grid));
            return true;
        }

        boolean isWithin() {
            return excess <= SlackRun.limit(branch, limit) && most >= length;
        }

        /** How much of a branch has to be used up by the run along the trunk. */
        private long used(int a) {
            return run.value(branch.unknown(), length) + plus - run.spare[a] - SlackRun.limit(branch, limit);
        }
    }

    private int[] legs(int k) {
        return IntStream.range(0, run.legs.size())
                .filter(i -> run.legs.get(i).stop() == k && run.firstAsk[i + 1] > run.firstAsk[i]).toArray();
    }

    /** Whatever the rest of the harness is, the largest excess is at least this; {@link Long#MAX_VALUE} for none. */
    long leastExcess() {
        long most = 0;
        for (int k = 0; k < run.stops.size(); k++) {
            long least = Long.MAX_VALUE;
            int[] legs = legs(k);
            int stop = k;
            Seen[] seen = Arrays.stream(legs).mapToObj(leg -> new Seen(leg, stop)).toArray(Seen[]::new);
            for (long t = low[k]; t <= high[k] && least > most; t++) {
                long here = 0;
                for (Seen each : seen) {
                    here = Math.max(here, each.look(run.value(k, t)) ? each.excess : Long.MAX_VALUE);
                }
                least = Math.min(least, here);
            }
            most = Math.max(most, least);
        }
        return most;
    }

    /** Takes out what no harness under the limit can have; false when nothing is left. */
    boolean narrow() {
        BitSet all = new BitSet();
        all.set(0, run.stops.size());
        return narrow(all);
    }

    /** The same, beginning with some breakouts and going on to those that these tell something. */
    boolean narrow(BitSet touched) {
        int rounds = MOST_ROUNDS * run.stops.size();
        for (int k = touched.nextSetBit(0); k >= 0; k = next(touched, k)) {
            touched.clear(k);
            if (!narrow(k, touched)) {
                return false;
            }
            rounds--;
            if (rounds < 0) {
                return true;
            }
        }
        return true;
    }

    private static int next(BitSet touched, int k) {
        int next = touched.nextSetBit(k + 1);
        return next >= 0 ? next : touched.nextSetBit(0);
    }

    /** What is left of one breakout, while its stations are looked at. */
    private final class Left {

        private final int k;
        private final Seen[] seen;
        private final long[] shortest;
        private final long[] longest;
        private final long[][] tuckFrom;
        private final long[][] tuckTo;
        private final long[][] from;
        private final long[][] to;
        private final boolean[][] behind;
        private final boolean[][] before;
        private long first = Long.MAX_VALUE;
        private long last = Long.MIN_VALUE;

        private Left(int k, int[] legs) {
            this.k = k;
            this.seen = Arrays.stream(legs).mapToObj(leg -> new Seen(leg, k)).toArray(Seen[]::new);
            this.shortest = new long[legs.length];
            this.longest = new long[legs.length];
            this.tuckFrom = new long[legs.length][];
            this.tuckTo = new long[legs.length][];
            this.behind = new boolean[legs.length][];
            this.before = new boolean[legs.length][];
            this.from = new long[legs.length][];
            this.to = new long[legs.length][];
            for (int i = 0; i < legs.length; i++) {
                shortest[i] = Long.MAX_VALUE;
                longest[i] = Long.MIN_VALUE;
                int count = seen[i].to - seen[i].from;
                tuckFrom[i] = new long[count];
                tuckTo[i] = new long[count];
                behind[i] = new boolean[seen[i].undecided.length];
                before[i] = new boolean[behind[i].length];
                from[i] = new long[count];
                to[i] = new long[count];
                Arrays.fill(tuckFrom[i], Long.MAX_VALUE);
                Arrays.fill(tuckTo[i], Long.MIN_VALUE);
            }
        }

        /** Looks at one station; notes it only when all branches are possible there. */
        private void look(long t) {
            long at = run.value(k, t);
            for (int i = 0; i < seen.length; i++) {
                if (!seen[i].look(at) || !seen[i].isWithin() || !tucks(seen[i], at, from[i], to[i])) {
                    return;
                }
            }
            first = Math.min(first, t);
            last = t;
            for (int i = 0; i < seen.length; i++) {
                shortest[i] = Math.min(shortest[i], seen[i].length);
                longest[i] = Math.max(longest[i], seen[i].most);
                for (int a = 0; a < from[i].length; a++) {
                    tuckFrom[i][a] = Math.min(tuckFrom[i][a], from[i][a]);
                    tuckTo[i][a] = Math.max(tuckTo[i][a], to[i][a]);
                }
                for (int u = 0; u < behind[i].length; u++) {
                    int a = seen[i].undecided[u];
                    long used = seen[i].used(a);
                    int v = run.vehicle[a];
                    behind[i][u] |= used <= 0 || at - tuckLow[v][k] - run.station[a] >= used;
                    before[i][u] |= used <= 0 || run.station[a] - (at - tuckHigh[v][k]) >= used;
                }
            }
        }

        /** The tucks with which a branch serves each vehicle from a station; false when there are none. */
        private boolean tucks(Seen leg, long at, long[] from, long[] to) {
            if (run.slackSum[k] == 0) {
                return true;
            }
            int x = leg.branch.unknown();
            long made = run.value(x, leg.most) - run.leastMinus(leg.branch, leg.length);
            long back = leg.branch.branch().backLimit();
            for (int a = leg.from; a < leg.to; a++) {
                int v = run.vehicle[a];
                long own = at - run.station[a];
                long free = Math.min(back, made - run.reach[a]);
                long least = Math.max(tuckLow[v][k], own - free);
                long greatest = Math.min(tuckHigh[v][k], own + free);
                long used = leg.used(a);
                if (used > 0) {
                    boolean isBehind = sides[a] >= 0 && own - used >= least;
                    boolean isBefore = sides[a] <= 0 && own + used <= greatest;
                    if (!isBehind) {
                        least = Math.max(least, own + used);
                    }
                    if (!isBefore) {
                        greatest = Math.min(greatest, own - used);
                    }
                    if (!isBehind && !isBefore) {
                        return false;
                    }
                }
                if (least > greatest) {
                    return false;
                }
                from[a - leg.from] = least;
                to[a - leg.from] = greatest;
            }
            return true;
        }
    }

    private boolean narrow(int k, BitSet touched) {
        int[] legs = legs(k);
        if (legs.length == 0) {
            return low[k] <= high[k];
        }
        Left left = new Left(k, legs);
        for (long t = low[k]; t <= high[k]; t++) {
            left.look(t);
        }
        low[k] = left.first;
        high[k] = left.last;
        return left.first <= left.last && take(left, k, touched);
    }

    private boolean take(Left left, int k, BitSet touched) {
        for (int i = 0; i < left.seen.length; i++) {
            int leg = left.seen[i].leg;
            int x = run.legs.get(leg).unknown();
            low[x] = Math.max(low[x], left.shortest[i]);
            high[x] = Math.min(high[x], left.longest[i]);
            if (low[x] > high[x]) {
                return false;
            }
            for (int u = 0; u < left.behind[i].length; u++) {
                if (left.behind[i][u] != left.before[i][u]) {
                    sides[left.seen[i].undecided[u]] = (byte) (left.behind[i][u] ? 1 : -1);
                }
            }
            for (int a = run.firstAsk[leg]; a < run.firstAsk[leg + 1] && run.slackSum[k] > 0; a++) {
                int from = a - run.firstAsk[leg];
                if (!tuck(run.vehicle[a], k, left.tuckFrom[i][from], left.tuckTo[i][from], touched)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Narrows a tuck, and with it those before and behind; breakouts of the vehicle that this tells something. */
    private boolean tuck(int v, int k, long from, long to, BitSet touched) {
        boolean changed = from > tuckLow[v][k] || to < tuckHigh[v][k];
        if (!changed) {
            return true;
        }
        tuckLow[v][k] = Math.max(tuckLow[v][k], from);
        tuckHigh[v][k] = Math.min(tuckHigh[v][k], to);
        for (int i = k; tuckLow[v][i] <= tuckHigh[v][i] && i + 1 < run.stops.size(); i++) {
            if (!follows(v, i + 1, tuckLow[v][i], tuckHigh[v][i] + run.slack[i + 1], touched)) {
                break;
            }
        }
        for (int i = k; tuckLow[v][i] <= tuckHigh[v][i] && i > 0; i--) {
            if (!follows(v, i - 1, tuckLow[v][i] - run.slack[i], tuckHigh[v][i], touched)) {
                break;
            }
        }
        for (int i = 0; i < run.stops.size(); i++) {
            if (tuckLow[v][i] > tuckHigh[v][i]) {
                return false;
            }
        }
        return true;
    }

    /** False when nothing followed. */
    private boolean follows(int v, int k, long from, long to, BitSet touched) {
        if (from <= tuckLow[v][k] && to >= tuckHigh[v][k]) {
            return false;
        }
        boolean much = from - tuckLow[v][k] >= enough || tuckHigh[v][k] - to >= enough;
        tuckLow[v][k] = Math.max(tuckLow[v][k], from);
        tuckHigh[v][k] = Math.min(tuckHigh[v][k], to);
        if (much && run.isAsked(v, k)) {
            touched.set(k);
        }
        return true;
    }
}
