// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Measures of a problem and of a plan for it. */
final class Stations {

    private Stations() {
    }

    /** The farthest station that a breakout can usefully have, each rounded up to the grid, in nanometres. */
    static long farthest(PlanProblem problem) {
        return problem.trunks().stream().mapToLong(trunk -> farthest(trunk.stops(), problem.grid())).max().orElse(0);
    }

    /** The same for the breakouts of one run. */
    static long farthest(List<PlanStop> stops, long grid) {
        long end = 0;
        long onBranches = 0;
        for (PlanStop stop : stops) {
            end = Math.max(end + stop.leastGap(), stop.first()) + grid;
            for (PlanBranch branch : stop.branches()) {
                long station = branch.asks().stream().mapToLong(Ask::station).max().orElse(0);
                end = Math.max(end, Math.addExact(station, branch.backLimit()));
                onBranches = Math.max(onBranches, farthest(branch.stops(), grid));
            }
        }
        return Math.max(end, onBranches);
    }

    static Stream<PlanBranch> branches(List<PlanStop> stops) {
        return stops.stream().flatMap(stop -> stop.branches().stream())
                .flatMap(branch -> Stream.concat(Stream.of(branch), branches(branch.stops())));
    }

    static long copper(PlanProblem problem, Map<String, Long> stations, Map<String, Long> lengths) {
        return problem.trunks().stream().mapToLong(trunk -> copper(trunk.stops(), stations, lengths)).sum();
    }

    static long copper(List<PlanStop> stops, Map<String, Long> stations, Map<String, Long> lengths) {
        long sum = 0;
        long before = 0;
        for (PlanStop stop : stops) {
            long at = stations.get(stop.name());
            sum += stop.weight() * (at - before);
            before = at;
            for (PlanBranch branch : stop.branches()) {
                sum += branch.weight() * lengths.getOrDefault(branch.name(), 0L)
                        + copper(branch.stops(), stations, lengths);
            }
        }
        return sum;
    }

    static long length(PlanProblem problem, Map<String, Long> lengths) {
        return problem.trunks().stream().mapToLong(trunk -> length(trunk.stops(), lengths)).sum();
    }

    static long length(List<PlanStop> stops, Map<String, Long> lengths) {
        return branches(stops).mapToLong(branch -> branch.count() * lengths.getOrDefault(branch.name(), 0L)).sum();
    }
}
