// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/**
 * One branch as it looks from the stations of its breakout, one after the other: which lengths are possible there, with
 * which tucks each vehicle is served, and on which side of its own breakout ours lies. What does not depend on the
 * station is worked out once, and what was seen from all stations is kept.
 */
final class BranchView {

    private final SlackRun run;
    private final SlackRun.Leg branch;
    private final int leg;
    private final long limit;
    private final long back;
    private final long least;
    private final long greatest;
    /** By ask of this branch. */
    private final long[] station;
    private final long[] reach;
    private final long[] spare;
    private final int[] bySpare;
    private final long[] tuckLow;
    private final long[] tuckHigh;
    private final byte[] sides;
    /** What asks whose side is not decided can use up: this and the station, or this less the station. */
    private final long[] openBehind;
    private final long[] openBefore;
    /** Asks whose side is not decided, those first that were not yet seen to be possible on both sides. */
    private final int[] open;
    private int unsettled;
    private final boolean[] behind;
    private final boolean[] before;
    private final long[] from;
    private final long[] to;
    private final long[] tuckFrom;
    private final long[] tuckTo;
    private long shortest = Long.MAX_VALUE;
    private long longest = Long.MIN_VALUE;
    private long mostReach = Long.MIN_VALUE;
    private long reachBefore = Long.MIN_VALUE;
    private long reachBehind = Long.MIN_VALUE;
    private long nearest = Long.MIN_VALUE;
    private long farthest = Long.MAX_VALUE;
    private long spread = Long.MIN_VALUE;
    private long leastSpare = Long.MAX_VALUE;
    private long roomBehind = Long.MAX_VALUE;
    private long roomBefore = Long.MAX_VALUE;
    /** Of the station that was looked at last: the least and the greatest length, the excess of the least. */
    private long length;
    private long most;
    private long plus;
    private long excess;

    /**
     * @param limit    of the excess
     * @param least    the least length of the branch in grid steps
     * @param greatest the greatest length
     * @param sides    by ask of the run: 1 behind, -1 before its station, 0 either
     */
    BranchView(SlackRun run, int leg, long limit, long least, long greatest, byte[] sides, Tucks tucks) {
        this.run = run;
        this.leg = leg;
        this.branch = run.legs.get(leg);
        this.limit = SlackRun.limit(branch, limit);
        this.back = branch.branch().backLimit();
        this.least = least;
        this.greatest = greatest;
        int first = run.firstAsk[leg];
        int last = run.firstAsk[leg + 1];
        this.station = Arrays.copyOfRange(run.station, first, last);
        this.reach = Arrays.copyOfRange(run.reach, first, last);
        this.spare = Arrays.copyOfRange(run.spare, first, last);
        this.sides = Arrays.copyOfRange(sides, first, last);
        this.bySpare = run.bySpare[leg];
        int count = last - first;
        int stop = branch.stop() * run.ofVehicle.length;
        this.tuckLow = new long[count];
        this.tuckHigh = new long[count];
        this.from = new long[count];
        this.to = new long[count];
        this.tuckFrom = new long[count];
        this.tuckTo = new long[count];
        Arrays.fill(tuckFrom, Long.MAX_VALUE);
        Arrays.fill(tuckTo, Long.MIN_VALUE);
        this.behind = new boolean[count];
        this.before = new boolean[count];
        int[] undecided = new int[count];
        for (int a = 0; a < count; a++) {
            int v = run.vehicle[first + a];
            tuckLow[a] = tucks.low()[stop + v];
            tuckHigh[a] = tucks.high()[stop + v];
            if (ask(a)) {
                undecided[unsettled++] = a;
            }
        }
        this.open = Arrays.copyOf(undecided, unsettled);
        this.openBehind = new long[unsettled];
        this.openBefore = new long[unsettled];
        for (int u = 0; u < unsettled; u++) {
            int a = open[u];
            openBehind[u] = spare[a] - tuckLow[a] - station[a];
            openBefore[u] = spare[a] + tuckHigh[a] + station[a];
        }
    }

    /** Takes in what one vehicle asks; true when its side is not decided. */
    private boolean ask(int a) {
        long first = tuckLow[a] + station[a];
        long last = tuckHigh[a] + station[a];
        mostReach = Math.max(mostReach, reach[a]);
        reachBefore = Math.max(reachBefore, reach[a] + first);
        reachBehind = Math.max(reachBehind, reach[a] - last);
        nearest = Math.max(nearest, first - back);
        farthest = Math.min(farthest, last + back);
        spread = Math.max(spread, reach[a] - spare[a]);
        leastSpare = Math.min(leastSpare, spare[a]);
        if (sides[a] > 0) {
            roomBehind = Math.min(roomBehind, spare[a] - first);
        } else if (sides[a] < 0) {
            roomBefore = Math.min(roomBefore, spare[a] + last);
        }
        return sides[a] == 0;
    }

    int leg() {
        return leg;
    }

    /** The least excess at the station that was looked at last. */
    long excess() {
        return excess;
    }

    long shortest() {
        return shortest;
    }

    long longest() {
        return longest;
    }

    /** The least tuck with which an ask, counted among those of the branch, is served from some station. */
    long tuckFrom(int ask) {
        return tuckFrom[ask];
    }

    long tuckTo(int ask) {
        return tuckTo[ask];
    }

    /** What is certain to be used up of the branch in any vehicle, at the most. */
    private long room(long at) {
        // what all vehicles can use up at the most is limited by how far the branch may run back
        long room = back + leastSpare;
        if (roomBehind != Long.MAX_VALUE) {
            room = Math.min(room, roomBehind + at);
        }
        if (roomBefore != Long.MAX_VALUE) {
            room = Math.min(room, roomBefore - at);
        }
        for (int u = 0; u < openBehind.length; u++) {
            room = Math.min(room, Math.max(openBehind[u] + at, openBefore[u] - at));
        }
        return room;
    }

    /** Looks from a station; false when no length reaches. */
    boolean look(long at) {
        if (at < nearest || at > farthest) {
            return false;
        }
        long need = Math.max(mostReach, Math.max(reachBefore - at, reachBehind + at));
        int x = branch.unknown();
        long c = Math.max(least, Math.ceilDiv(need - run.base[x], run.grid));
        while (c <= greatest && run.value(x, c) - run.minus(branch, c) < need) {
            c++;
        }
        if (c > greatest) {
            return false;
        }
        length = c;
        plus = run.leastPlus(branch, c);
        long room = room(at);
        excess = Math.max(0, Math.max(run.leastMinus(branch, c) + plus + spread, run.value(x, c) + plus - room));
        most = Math.min(greatest, Math.floorDiv(room + limit - plus - run.base[x], run.grid));
        return true;
    }

    /** Whether some length is within the limit, and each vehicle has a tuck, at the station looked at last. */
    boolean isPossible(long at) {
        return excess <= limit && most >= length && (run.slackSum[branch.stop()] == 0 || tucks(at));
    }

    /** The tucks with which each vehicle is served; false when one has none. */
    private boolean tucks(long at) {
        long made = run.value(branch.unknown(), most) - run.leastMinus(branch, length);
        long empty = 0;
        for (int a = 0; a < from.length; a++) {
            long own = at - station[a];
            long free = Math.min(back, made - reach[a]);
            long low = Math.max(tuckLow[a], own - free);
            long high = Math.min(tuckHigh[a], own + free);
            from[a] = low;
            to[a] = high;
            empty |= high - low;
        }
        return empty >= 0 && usedUp(at, run.value(branch.unknown(), length) + plus - limit);
    }

    /** Takes out the tucks with which the run along the trunk does not use up enough of the branch. */
    private boolean usedUp(long at, long needed) {
        for (int a : bySpare) {
            long used = needed - spare[a];
            if (used <= 0) {
                return true;
            }
            long own = at - station[a];
            boolean canBehind = sides[a] >= 0 && own - used >= from[a];
            boolean canBefore = sides[a] <= 0 && own + used <= to[a];
            if (!canBehind && !canBefore) {
                return false;
            }
            if (!canBehind) {
                from[a] = Math.max(from[a], own + used);
            } else if (!canBefore) {
                to[a] = Math.min(to[a], own - used);
            }
        }
        return true;
    }

    /** Keeps what is possible at the station that was looked at last. */
    void keep(long at) {
        shortest = Math.min(shortest, length);
        longest = Math.max(longest, most);
        for (int a = 0; a < from.length; a++) {
            tuckFrom[a] = Math.min(tuckFrom[a], from[a]);
            tuckTo[a] = Math.max(tuckTo[a], to[a]);
        }
        long needed = run.value(branch.unknown(), length) + plus - limit;
        for (int u = unsettled - 1; u >= 0; u--) {
            int a = open[u];
            long used = needed - spare[a];
            behind[a] |= used <= 0 || at - tuckLow[a] - station[a] >= used;
            before[a] |= used <= 0 || station[a] - at + tuckHigh[a] >= used;
            if (behind[a] && before[a]) {
                unsettled--;
                open[u] = open[unsettled];
                open[unsettled] = a;
            }
        }
    }

    /** Writes down the sides that are decided by what was kept. */
    void decide(byte[] all) {
        for (int u = 0; u < unsettled; u++) {
            if (behind[open[u]] != before[open[u]]) {
                all[run.firstAsk[leg] + open[u]] = (byte) (behind[open[u]] ? 1 : -1);
            }
        }
    }
}
