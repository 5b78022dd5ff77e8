// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/** Lays a trunk with stations and lengths into vehicles: the tucks that are possible are followed along it. */
final class Laying {

    private final SlackRun run;
    private final long[] bounds = new long[4];
    /** Stretches of tucks, rising: the first half holds them, the other those that are being made of them. */
    private long[] from;
    private long[] to;
    private int room = 16;
    private int count;
    private long layings;

    Laying(SlackRun run) {
        this.run = run;
        this.from = new long[2 * room];
        this.to = new long[2 * room];
    }

    long layings() {
        return layings;
    }

    /** Returns the breakout at which no tuck is left; -1 when the vehicle can be laid. */
    int failsAt(int vehicle, long[] x, long limit) {
        layings++;
        from[0] = 0;
        to[0] = 0;
        count = 1;
        int next = 0;
        int[] asks = run.ofVehicle[vehicle];
        for (int k = 0; k < run.stops.size(); k++) {
            if (run.slack[k] > 0) {
                longer(run.slack[k]);
            }
            for (; next < asks.length && run.legs.get(run.legOf[asks[next]]).stop() == k; next++) {
                bounds(asks[next], x, limit, bounds);
                cut();
                if (count == 0) {
                    return k;
                }
            }
        }
        return -1;
    }

    /** Lets all stretches grow; those that then touch become one. */
    private void longer(long slack) {
        int kept = 0;
        for (int i = 0; i < count; i++) {
            if (kept > 0 && to[kept - 1] >= from[i]) {
                to[kept - 1] = to[i] + slack;
            } else {
                from[kept] = from[i];
                to[kept++] = to[i] + slack;
            }
        }
        count = kept;
    }

    /** Takes out of all stretches what the bounds do not leave. */
    private void cut() {
        if (count == room) {
            // each cut adds one stretch at the most
            room *= 2;
            from = Arrays.copyOf(from, 2 * room);
            to = Arrays.copyOf(to, 2 * room);
        }
        // written behind those that are read, and then moved
        int kept = 0;
        for (int i = 0; i < count; i++) {
            long low = Math.max(from[i], bounds[0]);
            long high = Math.min(to[i], bounds[1]);
            if (bounds[2] >= bounds[3]) {
                kept = add(kept, low, high);
            } else {
                kept = add(kept, low, Math.min(high, bounds[2]));
                kept = add(kept, Math.max(low, bounds[3]), high);
            }
        }
        System.arraycopy(from, room, from, 0, kept);
        System.arraycopy(to, room, to, 0, kept);
        count = kept;
    }

    private int add(int kept, long low, long high) {
        if (low > high) {
            return kept;
        }
        from[room + kept] = low;
        to[room + kept] = high;
        return kept + 1;
    }

    /** Least tuck, greatest tuck, the greatest tuck behind the station and the least before it. */
    void bounds(int ask, long[] x, long limit, long[] bounds) {
        SlackRun.Leg leg = run.legs.get(run.legOf[ask]);
        long length = run.value(leg.unknown(), x[leg.unknown()]);
        // with so much tuck our breakout lies where the vehicle's own is
        long own = run.value(leg.stop(), x[leg.stop()]) - run.station[ask];
        long free = Math.min(length - run.minus(leg, x[leg.unknown()]) - run.reach[ask], leg.branch().backLimit());
        long used = length + run.plus(leg, x[leg.unknown()]) - run.spare[ask] - SlackRun.limit(leg, limit);
        bounds[0] = run.ceil(own - free);
        bounds[1] = run.floor(own + free);
        bounds[2] = run.floor(own - used);
        bounds[3] = run.ceil(own + used);
    }

    /** Returns whether all vehicles can be laid. */
    boolean fits(long[] x, long limit) {
        for (int v = 0; v < run.ofVehicle.length; v++) {
            if (failsAt(v, x, limit) >= 0) {
                return false;
            }
        }
        return true;
    }

    /** The least largest excess of a harness that fits under a limit, in steps of a unit. */
    long excess(long[] x, long limit, long unit) {
        long high = limit;
        for (int v = 0; v < run.ofVehicle.length; v++) {
            // only vehicles that need more than those before them are searched
            long least = v == 0 ? -unit : high;
            if (v > 0 && failsAt(v, x, high) < 0) {
                continue;
            }
            high = least(v, x, least, limit, unit);
        }
        return high;
    }

    private long least(int vehicle, long[] x, long below, long limit, long unit) {
        long low = Math.floorDiv(below, unit);
        long high = Math.ceilDiv(limit, unit);
        while (high - low > 1) {
            long middle = low + (high - low) / 2;
            if (failsAt(vehicle, x, middle * unit) < 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Math.min(limit, high * unit);
    }
}
