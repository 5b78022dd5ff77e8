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

    private int[] legs(int k) {
        return IntStream.range(0, run.legs.size())
                .filter(i -> run.legs.get(i).stop() == k && run.firstAsk[i + 1] > run.firstAsk[i]).toArray();
    }

    /** Whatever the rest of the harness is, the largest excess is at least this; {@link Long#MAX_VALUE} for none. */
    long leastExcess() {
        long most = 0;
        for (int k = 0; k < run.stops.size(); k++) {
            long least = Long.MAX_VALUE;
            BranchView[] views = views(legs(k));
            for (long t = low[k]; t <= high[k] && least > most; t++) {
                long here = 0;
                for (BranchView each : views) {
                    here = Math.max(here, each.look(run.value(k, t)) ? each.excess() : Long.MAX_VALUE);
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

    private BranchView[] views(int[] legs) {
        return Arrays.stream(legs).mapToObj(leg -> {
            int x = run.legs.get(leg).unknown();
            return new BranchView(run, leg, limit, low[x], high[x], sides, tucks());
        }).toArray(BranchView[]::new);
    }

    private boolean narrow(int k, BitSet touched) {
        int[] legs = legs(k);
        if (legs.length == 0) {
            return low[k] <= high[k];
        }
        BranchView[] views = views(legs);
        long first = Long.MAX_VALUE;
        long last = Long.MIN_VALUE;
        for (long t = low[k]; t <= high[k]; t++) {
            long at = run.value(k, t);
            // a station counts only when all branches are possible there
            if (areAll(views, at)) {
                first = Math.min(first, t);
                last = t;
                for (BranchView each : views) {
                    each.keep(at);
                }
            }
        }
        low[k] = first;
        high[k] = last;
        return first <= last && take(views, k, touched);
    }

    private boolean areAll(BranchView[] views, long at) {
        for (BranchView each : views) {
            looks++;
            if (!each.look(at) || !each.isPossible(at)) {
                return false;
            }
        }
        return true;
    }

    private boolean take(BranchView[] views, int k, BitSet touched) {
        for (BranchView each : views) {
            int x = run.legs.get(each.leg()).unknown();
            low[x] = Math.max(low[x], each.shortest());
            high[x] = Math.min(high[x], each.longest());
            if (low[x] > high[x]) {
                return false;
            }
            each.decide(sides);
            int first = run.firstAsk[each.leg()];
            for (int a = first; a < run.firstAsk[each.leg() + 1] && run.slackSum[k] > 0; a++) {
                if (!tuck(run.vehicle[a], k, each.tuckFrom(a - first), each.tuckTo(a - first), touched)) {
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
