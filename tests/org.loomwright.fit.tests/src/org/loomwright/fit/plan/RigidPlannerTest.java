// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;

class RigidPlannerTest {

    private static final int TINY = 1_500;
    private static final int BOTH_WAYS = 300;

    private final Planner planner = new RigidPlanner();

    private static String words(Optional<long[]> figures) {
        return figures.map(Arrays::toString).orElse("none");
    }

    /** Every harness of each small problem is listed; both answers must agree at every level. */
    @Test
    void bruteForceAgreesOnSmallProblems() {
        int fits = 0;
        for (int seed = 0; seed < TINY; seed++) {
            PlanProblem problem = Instances.tiny(seed);
            Optional<long[]> expected = BruteForce.best(problem);
            Optional<long[]> found = planner.plan(problem, Cancel.NEVER).found()
                    .map(each -> new long[] {each.excess(), each.copper(), each.length()});
            assertEquals(words(expected), words(found), "seed " + seed);
            fits += expected.isPresent() ? 1 : 0;
        }
        assertTrue(fits > TINY / 4 && fits < TINY, fits + " of " + TINY + " fit");
    }

    /** The excess is the largest of both trunks, and what one of them must have, the other may use up. */
    @Test
    void bruteForceAgreesOnTrunksBothWays() {
        int fits = 0;
        for (int seed = 0; seed < BOTH_WAYS; seed++) {
            PlanProblem problem = Instances.tinyBothWays(seed);
            Optional<long[]> expected = BruteForce.best(problem);
            for (Planner each : List.of(planner, new HarnessPlanner())) {
                assertEquals(words(expected), words(each.plan(problem, Cancel.NEVER).found()
                        .map(found -> new long[] {found.excess(), found.copper(), found.length()})), "seed " + seed);
            }
            fits += expected.isPresent() ? 1 : 0;
        }
        assertTrue(fits > BOTH_WAYS / 5 && fits < BOTH_WAYS, fits + " of " + BOTH_WAYS + " fit");
    }
}
