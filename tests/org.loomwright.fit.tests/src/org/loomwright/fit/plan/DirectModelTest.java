// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalLong;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.loomwright.quantity.Cancel;

/**
 * CBC and GLPK solve the direct mixed-integer model, which has nothing in common with the planner, each within 5 s of
 * the processor: 6 to 10 vehicles and 4 to 6 places, the least excess and under it the least copper.
 */
class DirectModelTest {

    private static final int INSTANCES = 50;
    /** GLPK does not prove the least excess of this one with slack in 50 s either; another stands in for it. */
    private static final int NOT_BY_GLPK = 26;
    private static final int JUMPER_INSTANCES = 30;
    private static final double MM = 1e6;

    @TempDir
    private Path folder;

    @Tag("outside")
    @ParameterizedTest
    @EnumSource
    void aGeneralSolverFindsTheSameExcessAndTheSameCopper(GeneralSolver solver)
            throws IOException, InterruptedException {
        assumeTrue(solver.isThere(), solver + " is not installed");
        for (int seed = 0; seed < INSTANCES; seed++) {
            agrees(solver, Instances.ordinary(seed, 6 + seed % 5, 4 + seed % 3), new RigidPlanner(), seed);
        }
    }

    @Tag("outside")
    @ParameterizedTest
    @EnumSource
    void aGeneralSolverFindsTheSameWithSlack(GeneralSolver solver) throws IOException, InterruptedException {
        assumeTrue(solver.isThere(), solver + " is not installed");
        for (int seed = 0; seed < INSTANCES + 1; seed++) {
            if (seed == NOT_BY_GLPK && solver == GeneralSolver.GLPK) {
                continue;
            }
            agrees(solver, Instances.ordinaryWithSlack(seed, 6 + seed % 5, 4 + seed % 3), new HarnessPlanner(), seed);
        }
    }

    /** Where the excess may be less than a harness without jumpers has. */
    @Tag("outside")
    @Test
    void aGeneralSolverFindsAsFewJumpersWithSlack() throws IOException, InterruptedException {
        assumeTrue(GeneralSolver.CBC.isThere(), "CBC is not installed");
        int several = 0;
        for (int seed = 0; seed < JUMPER_INSTANCES; seed++) {
            PlanProblem problem = Instances.ordinaryWithSlack(seed, 5 + seed % 3, 3 + seed % 2);
            long least = new HarnessPlanner().plan(problem, Cancel.NEVER).found().orElseThrow().excess();
            long limit = least * (19 - seed % 2) / 20;
            PlanProblem tight = Parts.excessAtMost(problem, 0, limit);
            Jumpers.Answer answer = Jumpers.of(tight, new HarnessPlanner(), Cancel.NEVER).orElseThrow();
            assertEquals(GeneralSolver.CBC.optimum(new DirectModel(tight).jumpers(limit), folder),
                    answer.jumpers().size(), 1e-6, "seed " + seed);
            assertTrue(answer.isFewest(), "seed " + seed);
            several += answer.jumpers().size() > 1 ? 1 : 0;
        }
        assertTrue(several > JUMPER_INSTANCES / 4, several + " need more than one jumper");
    }

    private void agrees(GeneralSolver solver, PlanProblem problem, Planner planner, int seed)
            throws IOException, InterruptedException {
        HarnessPlan.Solution found = planner.plan(problem, Cancel.NEVER).found().orElseThrow();
        DirectModel model = new DirectModel(problem);
        double excess = solver.optimum(model.text(OptionalLong.empty()), folder);
        assertEquals(excess, found.excess() / MM, 1e-4, solver + ", excess, seed " + seed);
        double copper = solver.optimum(model.text(OptionalLong.of(found.excess())), folder);
        assertEquals(copper, found.copper() / MM, 1e-6 * copper, solver + ", copper, seed " + seed);
    }
}
