// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * What each breakout alone says, with its own branches and all slack before it: from which stations they can serve all
 * vehicles, how long they are then at least, and on which side of it a vehicle's own breakout must be. Nothing that a
 * whole harness can be is left out.
 */
final class SlackRoot {

    private final SlackRun run;
    private final long limit;
    private final long[] low;
    private final long[] high;
    private final byte[] sides;
    private final List<List<SlackRun.Asked>> asks;
    private final int[] from;

    /** All of a run. */
    SlackRoot(SlackRun run, long limit) {
        this(run, limit, run.low, run.high, new byte[run.asks.size()]);
    }

    /** A part of it. */
    SlackRoot(SlackRun run, long limit, long[] low, long[] high, byte[] sides) {
        this.run = run;
        this.limit = limit;
        this.low = low.clone();
        this.high = high.clone();
        this.sides = sides.clone();
        this.asks = new ArrayList<>();
        this.from = new int[run.legs.size()];
        for (int i = 0; i < from.length; i++) {
            from[i] = i == 0 ? 0 : from[i - 1] + asks.get(i - 1).size();
            int leg = i;
            asks.add(run.legs.get(i).branch().asks().stream().map(ask -> new SlackRun.Asked(leg, ask)).toList());
        }
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

    /** A branch seen from one station. */
    private record View(long length, long plus, long excess) {
    }

    /** The least length and the least excess of a branch from a station; null when no length is allowed. */
    private View view(int leg, long at, int k) {
        SlackRun.Leg branch = run.legs.get(leg);
        long need = Long.MIN_VALUE;
        for (SlackRun.Asked each : asks.get(leg)) {
            long station = each.ask().station();
            long nearest = Math.max(0, Math.max(station - at, at - run.slackSum[k] - station));
            if (nearest > branch.branch().backLimit()) {
                return null;
            }
            need = Math.max(need, each.ask().reach() + nearest);
        }
        int x = branch.unknown();
        long c = Math.max(low[x], Math.ceilDiv(need - run.base[x], run.grid));
        while (c <= high[x] && run.value(x, c) - run.made(branch, c).minus().nanometres() < need) {
            c++;
        }
        if (c > high[x]) {
            return null;
        }
        long minus = run.leastMinus(branch, c);
        long plus = run.leastPlus(branch, c);
        long excess = 0;
        for (int i = 0; i < asks.get(leg).size(); i++) {
            Ask ask = asks.get(leg).get(i).ask();
            excess = Math.max(excess, Math.max(minus + plus + ask.reach() - ask.spare(),
                    run.value(x, c) + plus - ask.spare() - farthest(leg, i, at, k)));
        }
        return new View(c, plus, excess);
    }

    /** The farthest that a vehicle's breakout can be from ours, on the sides that are left to it. */
    private long farthest(int leg, int i, long at, int k) {
        long station = asks.get(leg).get(i).ask().station();
        int side = sides[from[leg] + i];
        long behind = side < 0 ? Long.MIN_VALUE : at - station;
        long before = side > 0 ? Long.MIN_VALUE : station - (at - run.slackSum[k]);
        return Math.min(run.legs.get(leg).branch().backLimit(), Math.max(behind, before));
    }

    private int[] legs(int k) {
        return IntStream.range(0, run.legs.size())
                .filter(i -> run.legs.get(i).stop() == k && !asks.get(i).isEmpty()).toArray();
    }

    /** Whatever the rest of the harness is, the largest excess is at least this; {@link Long#MAX_VALUE} for none. */
    long leastExcess() {
        long most = 0;
        for (int k = 0; k < run.stops.size(); k++) {
            long least = Long.MAX_VALUE;
            int[] legs = legs(k);
            for (long t = low[k]; t <= high[k] && least > most; t++) {
                long here = 0;
                for (int leg : legs) {
                    View view = view(leg, run.value(k, t), k);
                    here = Math.max(here, view == null ? Long.MAX_VALUE : view.excess);
                }
                least = Math.min(least, here);
            }
            most = Math.max(most, least);
        }
        return most;
    }

    /** Takes out what no harness under the limit can have; false when nothing is left. */
    boolean narrow() {
        return IntStream.range(0, run.stops.size()).allMatch(this::narrow);
    }

    /** The same for one breakout and its branches. */
    boolean narrow(int k) {
        int[] legs = legs(k);
        if (legs.length == 0) {
            return low[k] <= high[k];
        }
        long first = Long.MAX_VALUE;
        long last = Long.MIN_VALUE;
        Map<Integer, long[]> lengths = new HashMap<>();
        BitSet behind = new BitSet();
        BitSet before = new BitSet();
        for (long t = low[k]; t <= high[k]; t++) {
            View[] views = new View[legs.length];
            boolean possible = true;
            for (int i = 0; i < legs.length && possible; i++) {
                views[i] = view(legs[i], run.value(k, t), k);
                possible = views[i] != null && views[i].excess <= SlackRun.limit(run.legs.get(legs[i]), limit);
            }
            if (possible) {
                first = Math.min(first, t);
                last = t;
                for (int i = 0; i < legs.length; i++) {
                    long longest = longest(legs[i], views[i], run.value(k, t), k);
                    long shortest = views[i].length;
                    lengths.merge(legs[i], new long[] {shortest, longest}, (one, other) -> new long[] {
                        Math.min(one[0], other[0]), Math.max(one[1], other[1])});
                    sides(legs[i], views[i], run.value(k, t), k, behind, before);
                }
            }
        }
        low[k] = first;
        high[k] = last;
        return first <= last && take(lengths, behind, before);
    }

    private boolean take(Map<Integer, long[]> lengths, BitSet behind, BitSet before) {
        boolean left = true;
        for (Map.Entry<Integer, long[]> each : lengths.entrySet()) {
            int x = run.legs.get(each.getKey()).unknown();
            low[x] = Math.max(low[x], each.getValue()[0]);
            high[x] = Math.min(high[x], each.getValue()[1]);
            left &= low[x] <= high[x];
            for (int a = from[each.getKey()]; a < from[each.getKey()] + asks.get(each.getKey()).size(); a++) {
                if (sides[a] == 0 && behind.get(a) != before.get(a)) {
                    sides[a] = (byte) (behind.get(a) ? 1 : -1);
                }
            }
        }
        return left;
    }

    private long longest(int leg, View view, long at, int k) {
        long most = Long.MAX_VALUE;
        for (int i = 0; i < asks.get(leg).size(); i++) {
            most = Math.min(most, asks.get(leg).get(i).ask().spare() + farthest(leg, i, at, k));
        }
        SlackRun.Leg branch = run.legs.get(leg);
        return Math.floorDiv(most + SlackRun.limit(branch, limit) - view.plus - run.base[branch.unknown()], run.grid);
    }

    private void sides(int leg, View view, long at, int k, BitSet behind, BitSet before) {
        SlackRun.Leg branch = run.legs.get(leg);
        for (int i = 0; i < asks.get(leg).size(); i++) {
            Ask ask = asks.get(leg).get(i).ask();
            long used = run.value(branch.unknown(), view.length) + view.plus - ask.spare()
                    - SlackRun.limit(branch, limit);
            if (used <= 0 || at - ask.station() >= used) {
                behind.set(from[leg] + i);
            }
            if (used <= 0 || ask.station() - (at - run.slackSum[k]) >= used) {
                before.set(from[leg] + i);
            }
        }
    }
}
