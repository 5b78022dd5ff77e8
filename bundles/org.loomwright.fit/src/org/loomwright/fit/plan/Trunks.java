// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.harness.Ours.Objective;

/** A harness from its trunks: the excess is the largest over all of them, and each may use it up; sums add up. */
final class Trunks {

    private final PlanProblem problem;
    private final List<TrunkSearch> searches;

    Trunks(PlanProblem problem, List<TrunkSearch> searches) {
        this.problem = problem;
        this.searches = searches;
    }

    static Optional<Boolean> fits(List<TrunkSearch> searches) {
        boolean open = false;
        for (TrunkSearch search : searches) {
            Optional<Boolean> fits = search.fits();
            if (fits.isPresent() && !fits.get()) {
                return fits;
            }
            open |= fits.isEmpty();
        }
        return open ? Optional.empty() : Optional.of(true);
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
        long bound = Long.MIN_VALUE;
        for (TrunkSearch search : searches) {
            Optional<TrunkSearch.Excess> own = search.leastExcess(before);
            if (own.isEmpty()) {
                return new HarnessPlan(Optional.empty(), fits(searches).equals(Optional.of(false)), work());
            }
            limit = Math.max(limit, own.get().value());
            bound = Math.max(bound, own.get().bound());
        }
        HarnessPlan.Solution solution = solution(limit, bound, sums);
        return new HarnessPlan(Optional.of(solution), solution.isBest(), work());
    }

    private HarnessPlan.Work work() {
        return searches.stream().map(TrunkSearch::work).reduce(HarnessPlan.Work.NONE, HarnessPlan.Work::plus);
    }

    private HarnessPlan.Solution solution(long limit, long bound, List<Objective> sums) {
        Map<String, Long> stations = new HashMap<>();
        Map<String, Long> lengths = new HashMap<>();
        Map<Objective, Long> gaps = new HashMap<>();
        long excess = Long.MIN_VALUE;
        for (TrunkSearch search : searches) {
            TrunkSearch.Part part = search.best(limit, sums);
            stations.putAll(part.stations());
            lengths.putAll(part.lengths());
            excess = Math.max(excess, part.excess());
            part.gaps().forEach((sum, gap) -> gaps.merge(sum, gap, (one, other) -> one + other < 0 ? Long.MAX_VALUE
                    : one + other));
        }
        long copper = Stations.copper(problem, stations, lengths);
        long length = Stations.length(problem, lengths);
        return new HarnessPlan.Solution(stations, lengths, excess, copper, length, new HarnessPlan.Bounds(
                Math.min(bound, excess), less(copper, gaps.get(Objective.COPPER)),
                less(length, gaps.get(Objective.LENGTH))));
    }

    private static long less(long value, Long gap) {
        return gap == null ? value : gap == Long.MAX_VALUE ? Long.MIN_VALUE : value - gap;
    }
}
