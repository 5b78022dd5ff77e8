// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/**
 * The planner for stiff trunks, exact at every level.
 *
 * <p>For given stations the least length of each branch that reaches is the best at every level, so only stations are
 * searched: by a dynamic programme along each run. The least largest excess is found by bisection, in whole nanometres,
 * over the limits under which what counts more is not made worse. Trunks separate but for the excess, which is the
 * largest over all of them and is allowed to each.
 *
 * <p>O(log(excess) * breakouts * positions); positions are the multiples of the grid up to the farthest station plus
 * the farthest run along the trunk. Stateless; safe for use by several threads.
 */
public final class RigidPlanner implements Planner {

    /** Stands for no limit; sums with it do not overflow. */
    private static final long UNLIMITED = Long.MAX_VALUE / 4;

    @Override
    public HarnessPlan plan(PlanProblem problem, Cancel cancel) {
        return new Search(problem, cancel).plan();
    }

    /** Returns whether a harness fits all vehicles at all; one pass over each trunk. */
    public boolean fits(PlanProblem problem, Cancel cancel) {
        Search search = new Search(problem, cancel);
        return search.trunks.stream().allMatch(trunk -> search.best(trunk, UNLIMITED, List.of()) != null);
    }

    /** One search. */
    private static final class Search {

        private final PlanProblem problem;
        private final Cancel cancel;
        private final Making making;
        private final List<RunTable> trunks = new ArrayList<>();
        private long passes;
        private long positions;

        Search(PlanProblem problem, Cancel cancel) {
            this.problem = problem;
            this.cancel = cancel;
            this.making = new Making(problem.grid());
            long[] grid = LongStream.rangeClosed(0, Stations.farthest(problem) / problem.grid())
                    .map(step -> step * problem.grid()).toArray();
            problem.trunks().forEach(trunk -> trunks.add(new RunTable(trunk.stops(), new long[problem.vehicles()],
                    making, grid)));
        }

        HarnessPlan plan() {
            List<Objective> order = new ArrayList<>(problem.order());
            for (Objective each : Objective.values()) {
                if (!order.contains(each)) {
                    order.add(each);
                }
            }
            List<Objective> before = order.subList(0, order.indexOf(Objective.EXCESS));
            List<Objective> sums = order.stream().filter(each -> each != Objective.EXCESS).toList();
            long limit = Long.MIN_VALUE;
            for (RunTable trunk : trunks) {
                Optional<Long> own = leastExcess(trunk, before);
                if (own.isEmpty()) {
                    return new HarnessPlan(Optional.empty(), work());
                }
                limit = Math.max(limit, own.get());
            }
            return new HarnessPlan(Optional.of(solution(limit, sums)), work());
        }

        private HarnessPlan.Work work() {
            return new HarnessPlan.Work(passes, positions);
        }

        /** The least limit of the excess under which the sums before it are not made worse. */
        private Optional<Long> leastExcess(RunTable trunk, List<Objective> before) {
            RunProgramme.Way best = best(trunk, UNLIMITED, before);
            if (best == null) {
                return Optional.empty();
            }
            long high = excess(trunk, UNLIMITED, before, best);
            long low = -1;
            while (high - low > 1) {
                long limit = low + (high - low) / 2;
                RunProgramme.Way way = best(trunk, limit, before);
                if (way == null || way.cost().compareTo(best.cost()) > 0) {
                    low = limit;
                } else {
                    high = Math.min(limit, excess(trunk, limit, before, way));
                }
            }
            return Optional.of(high);
        }

        private RunProgramme programme(long limit, List<Objective> sums) {
            return new RunProgramme(limit, sums, making, cancel);
        }

        private RunProgramme.Way best(RunTable trunk, long limit, List<Objective> sums) {
            RunProgramme programme = programme(limit, sums);
            RunProgramme.Way way = programme.best(trunk);
            passes += programme.passes();
            positions += programme.positions();
            return way;
        }

        private long excess(RunTable trunk, long limit, List<Objective> sums, RunProgramme.Way way) {
            return programme(limit, sums).write(trunk, way, new HashMap<>(), new HashMap<>());
        }

        private HarnessPlan.Solution solution(long limit, List<Objective> sums) {
            Map<String, Long> stations = new HashMap<>();
            Map<String, Long> lengths = new HashMap<>();
            long excess = Long.MIN_VALUE;
            for (RunTable trunk : trunks) {
                RunProgramme.Way way = best(trunk, limit, sums);
                excess = Math.max(excess, programme(limit, sums).write(trunk, way, stations, lengths));
            }
            return new HarnessPlan.Solution(stations, lengths, excess, Stations.copper(problem, stations, lengths),
                    Stations.length(problem, lengths));
        }
    }
}
