// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.List;

/** Lays a trunk with stations and lengths into vehicles: the tucks that are possible are followed along it. */
final class Laying {

    private final SlackRun run;
    private long layings;

    Laying(SlackRun run) {
        this.run = run;
    }

    long layings() {
        return layings;
    }

    /** A stretch of tucks. */
    private record Span(long from, long to) {
    }

    /** Returns the breakout at which no tuck is left; -1 when the vehicle can be laid. */
    int failsAt(int vehicle, long[] x, long limit) {
        layings++;
        List<Span> possible = List.of(new Span(0, 0));
        int next = 0;
        int[] asks = run.ofVehicle[vehicle];
        for (int k = 0; k < run.stops.size(); k++) {
            possible = longer(possible, run.slack[k]);
            for (; next < asks.length && run.leg(run.asks.get(asks[next])).stop() == k; next++) {
                possible = cut(possible, run.asks.get(asks[next]), x, limit);
                if (possible.isEmpty()) {
                    return k;
                }
            }
        }
        return -1;
    }

    private static List<Span> longer(List<Span> spans, long slack) {
        List<Span> all = new ArrayList<>(spans.size());
        for (Span each : spans) {
            Span last = all.isEmpty() ? null : all.getLast();
            if (last != null && last.to >= each.from) {
                all.set(all.size() - 1, new Span(last.from, each.to + slack));
            } else {
                all.add(new Span(each.from, each.to + slack));
            }
        }
        return all;
    }

    private List<Span> cut(List<Span> spans, SlackRun.Asked asked, long[] x, long limit) {
        long[] bounds = bounds(asked, x, limit);
        List<Span> all = new ArrayList<>(spans.size() + 1);
        for (Span each : spans) {
            long from = Math.max(each.from, bounds[0]);
            long to = Math.min(each.to, bounds[1]);
            long gapFrom = bounds[2];
            long gapTo = bounds[3];
            if (gapFrom >= gapTo) {
                add(all, from, to);
            } else {
                add(all, from, Math.min(to, gapFrom));
                add(all, Math.max(from, gapTo), to);
            }
        }
        return all;
    }

    private static void add(List<Span> spans, long from, long to) {
        if (from <= to) {
            spans.add(new Span(from, to));
        }
    }

    /** Least tuck, greatest tuck, the greatest tuck behind the station and the least before it. */
    long[] bounds(SlackRun.Asked asked, long[] x, long limit) {
        SlackRun.Leg leg = run.leg(asked);
        long shorter = run.made(leg, x[leg.unknown()]).minus().nanometres();
        long longer = run.made(leg, x[leg.unknown()]).plus().nanometres();
        return new long[] {
            Math.max(TuckBound.reachLow(run, asked, shorter).at(run, x), TuckBound.backLow(run, asked).at(run, x)),
            Math.min(TuckBound.reachUp(run, asked, shorter).at(run, x), TuckBound.backUp(run, asked).at(run, x)),
            TuckBound.behind(run, asked, longer, limit).at(run, x),
            TuckBound.before(run, asked, longer, limit).at(run, x)};
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
