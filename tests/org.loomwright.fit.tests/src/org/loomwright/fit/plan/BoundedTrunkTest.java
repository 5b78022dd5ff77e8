// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/** What plans of a trunk with slack say they may fall short of. */
class BoundedTrunkTest {

    private static final int SEEDS = 500;
    private static final long SLACK = 10;
    private static final int UNEVEN = 400;
    /** The grid is 10: steps that it is a multiple of, and steps that it is not. */
    private static final List<Long> LATTICES = List.of(5L, 3L, 4L, 7L);

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
            long lattice = LATTICES.get(seed % LATTICES.size());
            PlanProblem tree = new PlanProblem(List.of(new PlanTrunk("main", List.of(slack), lattice)),
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
            tucks(tree, lattice, 0, new long[tree.vehicles()], left);
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

    private static void tucks(PlanProblem problem, long lattice, int vehicle, long[] tucks, List<long[]> all) {
        if (vehicle == problem.vehicles()) {
            all.addAll(BruteForce.every(problem, tucks));
            return;
        }
        for (long tuck = 0; tuck <= SLACK; tuck += lattice) {
            tucks[vehicle] = tuck;
            tucks(problem, lattice, vehicle + 1, tucks, all);
        }
    }

    /** The steps in which slack is taken up, so coarse here that it tells, do not meet those of stations. */
    @Test
    void wherePositionsAreNotOnTheStepsOfTheSlackNothingIsClaimedThatIsNotSo() {
        int found = 0;
        int proved = 0;
        int less = 0;
        int impossible = 0;
        for (int seed = 0; seed < UNEVEN; seed++) {
            PlanProblem even = Instances.tinyWithSlack(seed);
            PlanTrunk trunk = even.trunks().getFirst();
            long lattice = LATTICES.get(1 + seed % (LATTICES.size() - 1));
            PlanProblem problem = new PlanProblem(List.of(new PlanTrunk("main", trunk.stops(), lattice)), even
                    .vehicles(), even.grid(), even.order());
            if (even.grid() % lattice == 0 || trunk.stops().stream().allMatch(stop -> stop.slack() < lattice)) {
                continue;
            }
            Optional<long[]> best = SlackBruteForce.best(problem);
            HarnessPlan plan = new HarnessPlanner().plan(problem, Cancel.NEVER);
            if (plan.found().isEmpty()) {
                assertTrue(!plan.settled() || best.isEmpty(), "seed " + seed + " is not impossible");
                impossible += plan.settled() ? 1 : 0;
                continue;
            }
            HarnessPlan.Solution ours = plan.found().get();
            long[] value = {ours.excess(), ours.copper(), ours.length()};
            long[] bounds = {ours.bounds().excess(), ours.bounds().copper(), ours.bounds().length()};
            for (Objective each : problem.order()) {
                int i = each.ordinal();
                assertTrue(bounds[i] <= best.orElseThrow()[i] && best.get()[i] <= value[i], "seed " + seed + ", " + each
                        + ": " + bounds[i] + " at least, " + best.get()[i] + " listed, " + value[i] + " found");
                if (best.get()[i] < value[i]) {
                    less++;
                    break;
                }
            }
            found++;
            proved += plan.settled() ? 1 : 0;
        }
        assertTrue(found > 20 && proved > found / 8 && less > 0 && impossible > 5, found + " found, " + proved
                + " proved, " + less + " fall short, " + impossible + " impossible");
    }
}
