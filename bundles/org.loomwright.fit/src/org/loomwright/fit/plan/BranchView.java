// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/**
 * One branch as it looks from the stations of its breakout, one after the other: which lengths are possible there, with
 * which tucks each vehicle is served, and on which side of its own breakout ours lies. What was seen from all stations
 * is kept.
 *
 * <p>From one grid step to the next, what the branch needs and what it may have change by a grid step at the most: so a
 * vehicle's least tuck is that at the first station, or at the first from which ours may lie behind the vehicle's own,
 * and its greatest tuck that at the last station, or at the last from which it may lie before it. That takes
 * O(stations + vehicles) for a branch, and no more than that where a vehicle's side is open. Where lengths may have
 * several tolerances the mildest hold throughout.
 */
final class BranchView {

    private final SlackRun run;
    private final SlackRun.Leg branch;
    private final int leg;
    private final int firstAsk;
    private final int count;
    private final long limit;
    private final long back;
    private final long least;
    private final long greatest;
    private final long minus;
    private final long plus;
    private final byte[] sides;
    private final Tucks tucks;
    /** Where the tucks before its breakout begin. */
    private final int row;
    private final long first;
    /** By station, the least room of the vehicles whose side is open: with ours behind their own, or before it. */
    private final long[] behind;
    private final long[] before;
    private long mostReach = Long.MIN_VALUE;
    private long reachBefore = Long.MIN_VALUE;
    private long reachBehind = Long.MIN_VALUE;
    private long nearest = Long.MIN_VALUE;
    private long farthest = Long.MAX_VALUE;
    private long spread = Long.MIN_VALUE;
    private long leastSpare = Long.MAX_VALUE;
    private long roomBehind = Long.MAX_VALUE;
    private long roomBefore = Long.MAX_VALUE;
    /** Of the station that was looked at last: the least length, the same with the mildest tolerance, the greatest. */
    private long length;
    private long mildest;
    private long most;
    private long excess;
    /** Of each station that was kept: how long the branch can be made, and what of it has to be used up. */
    private final long[] at;
    private final long[] made;
    private final long[] needed;
    private int kept;
    private long leastNeeded = Long.MAX_VALUE;
    private long shortest = Long.MAX_VALUE;
    private long longest = Long.MIN_VALUE;

    /**
     * @param limit    of the excess
     * @param low      by unknown, its least value
     * @param high     its greatest value
     * @param sides    by ask of the run: 1 behind, -1 before its station, 0 either
     */
    BranchView(SlackRun run, int leg, long limit, long[] low, long[] high, byte[] sides, Tucks tucks) {
        this.run = run;
        this.leg = leg;
        this.branch = run.legs.get(leg);
        this.firstAsk = run.firstAsk[leg];
        this.count = run.firstAsk[leg + 1] - firstAsk;
        this.limit = SlackRun.limit(branch, limit);
        this.back = branch.branch().backLimit();
        this.least = low[branch.unknown()];
        this.greatest = high[branch.unknown()];
        this.minus = run.leastMinus(branch, least);
        this.plus = run.leastPlus(branch, least);
        this.sides = sides;
        this.tucks = tucks;
        this.row = branch.stop() * run.ofVehicle.length;
        this.first = run.value(branch.stop(), low[branch.stop()]);
        int stations = (int) (high[branch.stop()] - low[branch.stop()] + 1);
        this.at = new long[stations];
        this.made = new long[stations];
        this.needed = new long[stations];
        this.behind = new long[stations + 1];
        this.before = new long[stations + 1];
        Arrays.fill(behind, Long.MAX_VALUE);
        Arrays.fill(before, Long.MAX_VALUE);
        for (int i = firstAsk; i < firstAsk + count; i++) {
            ask(i, tuckLow(i) + run.station[i], tuckHigh(i) + run.station[i], stations);
        }
        for (int t = 1; t < stations; t++) {
            behind[t] = Math.min(behind[t], behind[t - 1]);
            before[stations - t] = Math.min(before[stations - t], before[stations - t + 1]);
        }
    }

    private long tuckLow(int ask) {
        return tucks.low()[row + run.vehicle[ask]];
    }

    private long tuckHigh(int ask) {
        return tucks.high()[row + run.vehicle[ask]];
    }

    /** Takes in what one vehicle asks, whose own breakout lies between two stations, taken up as much as may be. */
    private void ask(int i, long near, long far, int stations) {
        long reach = run.reach[i];
        long spare = run.spare[i];
        mostReach = Math.max(mostReach, reach);
        reachBefore = Math.max(reachBefore, reach + near);
        reachBehind = Math.max(reachBehind, reach - far);
        nearest = Math.max(nearest, near - back);
        farthest = Math.min(farthest, far + back);
        spread = Math.max(spread, reach - spare);
        leastSpare = Math.min(leastSpare, spare);
        if (sides[i] > 0) {
            roomBehind = Math.min(roomBehind, spare - near);
        } else if (sides[i] < 0) {
            roomBefore = Math.min(roomBefore, spare + far);
        } else {
            // from the middle of both on there is more room behind it
            int from = (int) Math.clamp(Math.ceilDiv(Math.ceilDiv(near + far, 2) - first, run.grid), 0, stations);
            behind[from] = Math.min(behind[from], spare - near);
            before[from] = Math.min(before[from], spare + far);
        }
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

    /** Looks from a station, counted from the first; false when no length reaches. */
    boolean look(int t) {
        long station = first + t * run.grid;
        if (station < nearest || station > farthest) {
            return false;
        }
        long need = Math.max(mostReach, Math.max(reachBefore - station, reachBehind + station));
        int x = branch.unknown();
        mildest = Math.max(least, Math.ceilDiv(need + minus - run.base[x], run.grid));
        length = mildest;
        while (length <= greatest && run.value(x, length) - run.minus(branch, length) < need) {
            length++;
        }
        if (length > greatest) {
            return false;
        }
        // what is certain to be used up in any vehicle, at the most, is limited by how far the branch may run back
        long room = Math.min(back + leastSpare, Math.min(
                plus(Math.min(roomBehind, behind[t]), station), plus(Math.min(roomBefore, before[t + 1]), -station)));
        long longer = run.leastPlus(branch, length);
        excess = Math.max(0, Math.max(run.leastMinus(branch, length) + longer + spread,
                run.value(x, length) + longer - room));
        most = Math.min(greatest, Math.floorDiv(room + limit - plus - run.base[x], run.grid));
        return true;
    }

    private static long plus(long room, long more) {
        return room == Long.MAX_VALUE ? room : room + more;
    }

    /** Whether some length is within the limit at the station looked at last. Then each vehicle has a tuck there. */
    boolean isPossible() {
        return excess <= limit && most >= length;
    }

    /** Keeps what is possible at the station that was looked at last, behind those that are kept. */
    void keep(int t) {
        shortest = Math.min(shortest, length);
        longest = Math.max(longest, most);
        at[kept] = first + t * run.grid;
        made[kept] = run.value(branch.unknown(), most) - minus;
        needed[kept] = run.value(branch.unknown(), mildest) + plus - limit;
        leastNeeded = Math.min(leastNeeded, needed[kept]);
        kept++;
    }

    private boolean canBehind(int ask, int i) {
        return sides[ask] >= 0 && at[i] - run.station[ask] - tuckLow(ask) >= needed[i] - run.spare[ask];
    }

    private boolean canBefore(int ask, int i) {
        return sides[ask] <= 0 && run.station[ask] - at[i] + tuckHigh(ask) >= needed[i] - run.spare[ask];
    }

    /** The least tuck with which an ask of the branch is served from the stations that were kept. */
    long tuckFrom(int ask) {
        long from = tuckFrom(ask, 0);
        if (from > tuckLow(ask) && !isFree(ask, 0, canBehind(ask, 0))) {
            for (int i = 1; i < kept; i++) {
                if (isFree(ask, i, canBehind(ask, i))) {
                    return Math.min(from, tuckFrom(ask, i));
                }
            }
        }
        return from;
    }

    private boolean isFree(int ask, int i, boolean can) {
        return can || needed[i] <= run.spare[ask];
    }

    private long tuckFrom(int ask, int i) {
        long own = at[i] - run.station[ask];
        long low = Math.max(tuckLow(ask), own - Math.min(back, made[i] - run.reach[ask]));
        return isFree(ask, i, canBehind(ask, i)) ? low : Math.max(low, own + needed[i] - run.spare[ask]);
    }

    /** The greatest tuck. */
    long tuckTo(int ask) {
        long to = tuckTo(ask, kept - 1);
        if (to < tuckHigh(ask) && !isFree(ask, kept - 1, canBefore(ask, kept - 1))) {
            for (int i = kept - 2; i >= 0; i--) {
                if (isFree(ask, i, canBefore(ask, i))) {
                    return Math.max(to, tuckTo(ask, i));
                }
            }
        }
        return to;
    }

    private long tuckTo(int ask, int i) {
        long own = at[i] - run.station[ask];
        long high = Math.min(tuckHigh(ask), own + Math.min(back, made[i] - run.reach[ask]));
        return isFree(ask, i, canBefore(ask, i)) ? high : Math.min(high, own - needed[i] + run.spare[ask]);
    }

    /** The side of an ask that is decided by what was kept; 0 for none. */
    byte side(int ask) {
        if (sides[ask] != 0 || leastNeeded <= run.spare[ask]) {
            return sides[ask];
        }
        boolean can = canBehind(ask, kept - 1);
        return can == canBefore(ask, 0) ? 0 : (byte) (can ? 1 : -1);
    }
}
