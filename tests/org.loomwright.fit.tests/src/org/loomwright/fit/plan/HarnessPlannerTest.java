// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/** Plans of trunks with slack. */
class HarnessPlannerTest {

    private static final int TINY = 600;

    private static String words(Optional<long[]> figures) {
        return figures.map(Arrays::toString).orElse("none");
    }

    /** With all figures even, the least excess lies on whole numbers: halves of what they are multiples of. */
    @Test
    void bruteForceAgreesWhereTucksAreFinerThanFigures() {
        int odd = 0;
        for (int seed = 0; seed < TINY / 2; seed++) {
            PlanProblem problem = Instances.scaled(Instances.tinyWithSlack(seed), 2, 1);
            Optional<long[]> expected = SlackBruteForce.best(problem);
            Optional<long[]> found = new HarnessPlanner().plan(problem, Cancel.NEVER).found()
                    .map(each -> new long[] {each.excess(), each.copper(), each.length()});
            assertEquals(words(expected), words(found), "seed " + seed);
            odd += expected.isPresent() && expected.get()[0] % 2 != 0 ? 1 : 0;
        }
        assertTrue(odd > 0, "none of them lies between two even figures");
    }

    /**
     * Branches on branches of a trunk with slack are planned as if it were stiff, and what is said to be the least is
     * the least without them.
     */
    @Test
    void aTreeWithSlackSaysWhatItMayFallShortOf() {
        int trees = 0;
        int open = 0;
        for (int seed = 0; seed < TINY; seed++) {
            PlanProblem stiff = Instances.tiny(seed);
            PlanProblem problem = slack(stiff);
            boolean tree = stiff.trunks().getFirst().stops().stream().flatMap(stop -> stop.branches().stream())
                    .anyMatch(branch -> !branch.stops().isEmpty());
            HarnessPlan plan = new HarnessPlanner().plan(problem, Cancel.NEVER);
            Optional<HarnessPlan.Solution> asStiff = new RigidPlanner().plan(problem, Cancel.NEVER).found();
            // of three breakouts the listing would take too long
            boolean listed = problem.trunks().getFirst().stops().size() < 3;
            if (!tree || !listed || asStiff.isEmpty() || stiff.order().getFirst() != Objective.EXCESS) {
                continue;
            }
            trees++;
            HarnessPlan.Solution found = plan.found().orElseThrow();
            assertEquals(asStiff.get().excess(), found.excess(), "seed " + seed);
            assertTrue(found.bounds().excess() <= found.excess(), "seed " + seed);
            PlanProblem bare = new PlanProblem(List.of(Parts.bare(problem.trunks().getFirst())), problem.vehicles(),
                    problem.grid(), problem.order());
            SlackBruteForce.best(bare).ifPresent(least -> assertEquals(Math.min(found.excess(), least[0]),
                    found.bounds().excess(), "the bound is that of the trunk without branches on branches"));
            assertEquals(found.isBest(), plan.settled());
            open += plan.settled() ? 0 : 1;
        }
        assertTrue(trees > 20 && open > 0, trees + " trees, of which " + open + " may fall short");
    }

    private static PlanProblem slack(PlanProblem stiff) {
        List<PlanStop> stops = stiff.trunks().getFirst().stops().stream().map(stop -> new PlanStop(stop.name(),
                stop.first(), stop.last(), Math.max(stop.leastGap(), 8), Math.max(stop.mostGap(), 8), 8,
                stop.weight(), stop.branches())).toList();
        return new PlanProblem(List.of(new PlanTrunk("main", stops)), stiff.vehicles(), stiff.grid(), stiff.order());
    }

    /** Every harness of each small problem is laid with every tuck; both answers must agree at every level. */
    @Test
    void bruteForceAgreesOnSmallProblemsWithSlack() {
        int fits = 0;
        int gains = 0;
        for (int seed = 0; seed < TINY; seed++) {
            PlanProblem problem = Instances.tinyWithSlack(seed);
            Optional<long[]> expected = SlackBruteForce.best(problem);
            HarnessPlan plan = new HarnessPlanner().plan(problem, Cancel.NEVER);
            Optional<long[]> found = plan.found()
                    .map(each -> new long[] {each.excess(), each.copper(), each.length()});
            assertEquals(words(expected), words(found), "seed " + seed);
            assertTrue(plan.settled(), "seed " + seed);
            fits += expected.isPresent() ? 1 : 0;
            Optional<long[]> stiff = new RigidPlanner().plan(problem, Cancel.NEVER).found()
                    .map(each -> new long[] {each.excess(), each.copper(), each.length()});
            gains += words(stiff).equals(words(found)) ? 0 : 1;
        }
        assertTrue(fits > TINY / 4 && fits < TINY, fits + " of " + TINY + " fit");
        assertTrue(gains > TINY / 10, "slack changes " + gains + " of " + TINY);
    }
}
