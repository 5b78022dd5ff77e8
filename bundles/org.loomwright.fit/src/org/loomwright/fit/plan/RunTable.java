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
            long[] at = stop.first() == stop.last() ? new long[] {stop.first()}
                    : Arrays.stream(grid).filter(each -> stop.first() <= each && each <= stop.last()).toArray();
            this.stops.add(new Stop(stop, at, stop.branches().stream()
                    .map(branch -> Legs.of(branch, at, shifts, making, grid)).toList()));
        }
    }
}
