// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The breakouts of one run with their positions, and their branches seen from there. */
final class RunTable {

    /** A breakout, the positions that it may take, and what leaves it. */
    record Stop(PlanStop stop, long[] at, List<Legs> legs) {
    }

    final List<Stop> stops = new ArrayList<>();

    /**
     * @param shifts by vehicle, how much of the run was used up before its start
     * @param making the cutting grid
     * @param grid   the stations that are looked at, rising
     */
    RunTable(List<PlanStop> stops, long[] shifts, Making making, long[] grid) {
        for (PlanStop stop : stops) {
            long[] at = stop.first() == stop.last() ? new long[] {stop.first()} : positions(stop, shifts, grid);
            this.stops.add(new Stop(stop, at, stop.branches().stream()
                    .map(branch -> Legs.of(branch, at, shifts, making, grid)).toList()));
        }
    }

    /** The stations on the grid from which no vehicle's branch would have to run back too far. */
    private static long[] positions(PlanStop stop, long[] shifts, long[] grid) {
        long first = stop.first();
        long last = stop.last();
        for (PlanBranch branch : stop.branches()) {
            for (Ask ask : branch.asks()) {
                long station = ask.station() + shifts[ask.vehicle()];
                first = Math.max(first, station - branch.backLimit());
                last = Math.min(last, station + branch.backLimit());
            }
        }
        long from = first;
        long to = last;
        return Arrays.stream(grid).filter(each -> from <= each && each <= to).toArray();
    }
}
