// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/** What allowing more excess saves. */
class SavingsTest {

    private static final int SEEDS = 300;
    private static final long LIMIT = 45;

    /** Of all harnesses under a limit, listed one by one, none has less copper than is said. */
    @Test
    void whatMoreExcessSavesIsTheMostThereIs() {
        int plans = 0;
        int saved = 0;
        int beyond = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            PlanProblem problem = limited(Instances.tinyStiff(seed), LIMIT);
            HarnessPlan plan = new HarnessPlanner().plan(problem, Cancel.NEVER);
            if (plan.found().isEmpty()) {
                continue;
            }
            plans++;
            List<long[]> every = BruteForce.every(limited(problem, Instances.FREE), new long[problem.vehicles()]);
            HarnessPlan.Solution found = plan.found().get();
            long from = problem.order().getFirst() == Objective.COPPER ? LIMIT : found.excess();
            long more = problem.grid();
            for (Savings.Allowed each : Savings.of(problem, found, List.of(), new HarnessPlanner(), Cancel.NEVER)
                    .allowing()) {
                assertEquals(more, each.more(), "seed " + seed);
                assertEquals(from + more, each.limit(), "seed " + seed);
                assertEquals(each.limit() > LIMIT, each.beyond(), "seed " + seed);
                long least = every.stream().filter(harness -> harness[0] <= each.limit())
                        .mapToLong(harness -> harness[1]).min().orElseThrow();
                assertEquals(least, each.plan().orElseThrow().copper(), "seed " + seed + ", " + more + " more");
                saved += least < found.copper() ? 1 : 0;
                beyond += each.beyond() ? 1 : 0;
                more *= 2;
            }
        }
        assertTrue(plans > SEEDS / 4 && saved > plans / 2 && beyond > plans / 2,
                plans + " plans, " + saved + " savings, " + beyond + " beyond their limits");
    }

    /** A branch whose own limit is tighter than what is dressed back elsewhere keeps it. */
    @Test
    void aTighterLimitStays() {
        PlanBranch tight = Instances.tinyStiff(1).trunks().getFirst().stops().getFirst().branches().getFirst();
        PlanProblem problem = limited(Instances.tinyStiff(1), LIMIT);
        assertEquals(LIMIT, Parts.excessAtMost(problem, LIMIT + 1, LIMIT + 20).trunks().getFirst().stops().getFirst()
                .branches().getFirst().excessLimit(), tight.name());
        assertEquals(LIMIT + 20, Parts.excessAtMost(problem, LIMIT, LIMIT + 20).trunks().getFirst().stops().getFirst()
                .branches().getFirst().excessLimit(), tight.name());
    }

    private static PlanProblem limited(PlanProblem problem, long limit) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> stop.with(stop.branches().stream().map(branch -> new PlanBranch(branch.name(),
                        branch.made(), branch.pinned(), limit, branch.backLimit(), branch.longest(), branch.weight(),
                        branch.count(), branch.asks(), List.of())).toList())).toList())).toList(), problem.vehicles(),
                problem.grid(), problem.order());
    }
}
