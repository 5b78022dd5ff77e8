// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/** A trunk of which no slack is taken up, by dynamic programming; exact. */
final class StiffTrunk implements TrunkSearch {

    /** Stands for no limit; sums with it do not overflow. */
    private static final long UNLIMITED = Long.MAX_VALUE / 4;

    private final Making making;
    private final Cancel cancel;
    private final RunTable trunk;
    private final PlanWatch watch;
    private long passes;
    private long positions;

    StiffTrunk(PlanTrunk trunk, PlanProblem problem, Cancel cancel, PlanWatch watch) {
        this.watch = watch;
        this.making = new Making(problem.grid());
        this.cancel = cancel;
        long[] grid = LongStream.rangeClosed(0, Stations.farthest(trunk.stops(), problem.grid()) / problem.grid())
                .map(step -> step * problem.grid()).toArray();
        this.trunk = new RunTable(trunk.stops(), new long[problem.vehicles()], making, grid);
    }

    @Override
    public Optional<Boolean> fits() {
        return Optional.of(way(UNLIMITED, List.of()) != null);
    }

    @Override
    public Optional<Excess> leastExcess(List<Objective> before) {
        RunProgramme.Way best = way(UNLIMITED, before);
        if (best == null) {
            return Optional.empty();
        }
        long high = excess(UNLIMITED, before, best);
        long low = -1;
        while (high - low > 1) {
            watch.excess(high, low + 1, passes);
            long limit = low + (high - low) / 2;
            RunProgramme.Way way = way(limit, before);
            if (way == null || way.cost().compareTo(best.cost()) > 0) {
                low = limit;
            } else {
                high = Math.min(limit, excess(limit, before, way));
            }
        }
        watch.excess(high, high, passes);
        return Optional.of(new Excess(high, high));
    }

    @Override
    public Part best(long limit, List<Objective> sums) {
        Map<String, Long> stations = new HashMap<>();
        Map<String, Long> lengths = new HashMap<>();
        long excess = programme(limit, sums).write(trunk, way(limit, sums), stations, lengths);
        return new Part(stations, lengths, excess, Map.of());
    }

    @Override
    public HarnessPlan.Work work() {
        return new HarnessPlan.Work(passes, positions, 0, 0);
    }

    private RunProgramme programme(long limit, List<Objective> sums) {
        return new RunProgramme(limit, sums, making, cancel);
    }

    private RunProgramme.Way way(long limit, List<Objective> sums) {
        RunProgramme programme = programme(limit, sums);
        RunProgramme.Way way = programme.best(trunk);
        passes += programme.passes();
        positions += programme.positions();
        return way;
    }

    private long excess(long limit, List<Objective> sums, RunProgramme.Way way) {
        return programme(limit, sums).write(trunk, way, new HashMap<>(), new HashMap<>());
    }
}
