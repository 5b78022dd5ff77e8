// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.BitSet;

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
    private final Tucks tucks;
    private final int vehicles;
    /** A tuck that is narrowed by less tells the other breakouts nothing worth the work. */
    private final long enough;

    /** All of a run. */
    SlackRoot(SlackRun run, long limit) {
        this(run, limit, run.low, run.high, new byte[run.asks.size()], Tucks.of(run));
    }

    /**
     * A part of it.
     *
     * @param tucks what is known of the tucks
     */
    SlackRoot(SlackRun run, long limit, long[] low, long[] high, byte[] sides, Tucks tucks) {
        this.run = run;
        this.vehicles = run.ofVehicle.length;
        this.enough = 2 * run.grid;
        this.limit = limit;
        this.low = low.clone();
        this.high = high.clone();
        this.sides = sides.clone();
        this.tucks = tucks.copy();
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
        return tucks;
    }

    /** Whatever the rest of the harness is, the largest excess is at least this; {@link Long#MAX_VALUE} for none. */
    long leastExcess() {
        long most = 0;
        for (int k = 0; k < run.stops.size(); k++) {
            long least = Long.MAX_VALUE;
            BranchView[] views = views(run.legsOf[k]);
            for (int t = 0; t <= high[k] - low[k] && least > most; t++) {
                long here = 0;
                for (BranchView each : views) {
                    here = Math.max(here, each.look(t) ? each.excess() : Long.MAX_VALUE);
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
        BranchView[] views = new BranchView[legs.length];
        for (int i = 0; i < legs.length; i++) {
            views[i] = new BranchView(run, legs[i], limit, low, high, sides, tucks);
        }
        return views;
    }

    private boolean narrow(int k, BitSet touched) {
        int[] legs = run.legsOf[k];
        if (legs.length == 0) {
            return low[k] <= high[k];
        }
        BranchView[] views = views(legs);
        int first = -1;
        int last = -1;
        for (int t = 0; t <= high[k] - low[k]; t++) {
            // a station counts only when all branches are possible there
            if (areAll(views, t)) {
                first = first < 0 ? t : first;
                last = t;
                for (BranchView each : views) {
                    each.keep(t);
                }
            }
        }
        high[k] = low[k] + last;
        low[k] += first;
        return first >= 0 && take(views, k, touched);
    }

    private boolean areAll(BranchView[] views, int t) {
        for (BranchView each : views) {
            if (!each.look(t) || !each.isPossible()) {
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
            for (int ask = run.firstAsk[each.leg()]; ask < run.firstAsk[each.leg() + 1]; ask++) {
                long from = each.tuckFrom(ask);
                long to = each.tuckTo(ask);
                sides[ask] = each.side(ask);
                if (!tuck(run.vehicle[ask], k, from, to, touched)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Narrows a tuck, and with it those before and behind; breakouts of the vehicle that this tells something. */
    private boolean tuck(int v, int k, long from, long to, BitSet touched) {
        int at = k * vehicles + v;
        if (from <= tucks.low()[at] && to >= tucks.high()[at]) {
            return true;
        }
        if (!tighten(at, from, to)) {
            return false;
        }
        boolean told = true;
        for (int i = k + 1; told && i < run.stops.size(); i++) {
            int before = at + (i - 1 - k) * vehicles;
            told = follows(v, i, tucks.low()[before], tucks.high()[before] + run.slack[i], touched);
            if (told && isEmpty(before + vehicles)) {
                return false;
            }
        }
        told = true;
        for (int i = k - 1; told && i >= 0; i--) {
            int behind = at + (i + 1 - k) * vehicles;
            told = follows(v, i, tucks.low()[behind] - run.slack[i + 1], tucks.high()[behind], touched);
            if (told && isEmpty(behind - vehicles)) {
                return false;
            }
        }
        return true;
    }

    private boolean tighten(int at, long from, long to) {
        tucks.low()[at] = Math.max(tucks.low()[at], from);
        tucks.high()[at] = Math.min(tucks.high()[at], to);
        return !isEmpty(at);
    }

    private boolean isEmpty(int at) {
        return tucks.low()[at] > tucks.high()[at];
    }

    /** False when nothing followed. */
    private boolean follows(int v, int k, long from, long to, BitSet touched) {
        int at = k * vehicles + v;
        long low = tucks.low()[at];
        long high = tucks.high()[at];
        if (from <= low && to >= high) {
            return false;
        }
        boolean much = from - low >= enough || high - to >= enough;
        tighten(at, from, to);
        if (much && run.isAsked(v, k)) {
            touched.set(k);
        }
        return true;
    }
}
