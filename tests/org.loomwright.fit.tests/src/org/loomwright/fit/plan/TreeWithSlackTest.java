// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/** What plans of a trunk with slack and branches on branches say they may fall short of. */
class TreeWithSlackTest {

    private static final int SEEDS = 500;
    private static final long SLACK = 10;
    private static final long LATTICE = 5;

    /** Every harness of a small tree is listed with every tuck: none is below what is said, and ours is one of them. */
    @Test
    void noHarnessIsBelowTheBounds() {
        int trees = 0;
        int proved = 0;
        int near = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            PlanProblem problem = Instances.tiny(seed);
            PlanStop stop = problem.trunks().getFirst().stops().getFirst();
            if (problem.trunks().getFirst().stops().size() > 1
                    || stop.branches().stream().allMatch(branch -> branch.stops().isEmpty())) {
                continue;
            }
            PlanStop slack = new PlanStop(stop.name(), stop.first(), stop.last(), Math.max(stop.leastGap(), SLACK),
                    Math.max(stop.mostGap(), SLACK), SLACK, stop.weight(), stop.branches());
            PlanProblem tree = new PlanProblem(List.of(new PlanTrunk("main", List.of(slack), LATTICE)),
                    problem.vehicles(), problem.grid(), problem.order());
            HarnessPlan plan = new HarnessPlanner().plan(tree, Cancel.NEVER);
            if (plan.found().isEmpty()) {
                continue;
            }
            trees++;
            HarnessPlan.Solution found = plan.found().get();
            long[] ours = {found.excess(), found.copper(), found.length()};
            long[] bounds = {found.bounds().excess(), found.bounds().copper(), found.bounds().length()};
            List<long[]> left = new ArrayList<>();
            tucks(tree, 0, new long[tree.vehicles()], left);
            for (Objective each : tree.order()) {
                int i = each.ordinal();
                long least = left.stream().mapToLong(harness -> harness[i]).min().orElseThrow();
                assertTrue(0 < bounds[i] && bounds[i] <= least && least <= ours[i], "seed " + seed + ", " + each + ": "
                        + bounds[i] + " at least, " + least + " listed, " + ours[i] + " found");
                near += 2 * bounds[i] > least ? 1 : 0;
                left.removeIf(harness -> harness[i] > ours[i]);
            }
            proved += plan.settled() ? 1 : 0;
        }
        assertTrue(trees > 10 && proved < trees, trees + " trees, " + proved + " proved");
        assertTrue(near > 2 * trees, near + " of " + 3 * trees + " bounds are more than half of the least");
    }

    private static void tucks(PlanProblem problem, int vehicle, long[] tucks, List<long[]> all) {
        if (vehicle == problem.vehicles()) {
            all.addAll(BruteForce.every(problem, tucks));
            return;
        }
        for (long tuck = 0; tuck <= SLACK; tuck += LATTICE) {
            tucks[vehicle] = tuck;
            tucks(problem, vehicle + 1, tucks, all);
        }
    }
}
