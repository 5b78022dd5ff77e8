// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;

class JumpersTest {

    private static final int SEEDS = 1_200;

    /** Every choice of branches and vehicles that get a jumper is tried, the smaller ones first. */
    @Test
    void noFewerJumpersDo() {
        int some = 0;
        int none = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            PlanProblem problem = Instances.tinyStiff(seed);
            if (new RigidPlanner().plan(problem, Cancel.NEVER).found().isPresent()) {
                continue;
            }
            Optional<Jumpers.Answer> answer = Jumpers.of(problem, new HarnessPlanner(), Cancel.NEVER);
            assertEquals(exhausted(problem), answer.map(each -> each.jumpers().size()).orElse(-1), "seed " + seed);
            some += answer.isPresent() ? 1 : 0;
            none += answer.isPresent() ? 0 : 1;
        }
        assertTrue(some > 20 && none > 5, some + " with jumpers, " + none + " without hope");
    }

    private static int exhausted(PlanProblem problem) {
        int asks = problem.trunks().getFirst().stops().stream().flatMap(stop -> stop.branches().stream())
                .mapToInt(branch -> branch.asks().size()).sum();
        return IntStream.range(0, 1 << asks).filter(set -> fits(problem, set)).map(Integer::bitCount).min().orElse(-1);
    }

    private static boolean fits(PlanProblem problem, int set) {
        int[] next = {0};
        boolean[] bare = {false};
        List<PlanStop> stops = problem.trunks().getFirst().stops().stream().map(stop -> stop.with(stop.branches()
                .stream().map(branch -> {
                    int from = next[0];
                    next[0] += branch.asks().size();
                    int own = set >> from & (1 << branch.asks().size()) - 1;
                    bare[0] |= !branch.asks().isEmpty() && Integer.bitCount(own) == branch.asks().size();
                    return branch.with(IntStream.range(0, branch.asks().size()).mapToObj(i -> (own >> i & 1) == 1
                            ? Jumpers.eased(branch.asks().get(i), branch) : branch.asks().get(i)).toList(), List.of());
                }).toList())).toList();
        return !bare[0] && new HarnessPlanner().fits(new PlanProblem(List.of(new PlanTrunk("main", stops)),
                problem.vehicles(), problem.grid(), problem.order()), Cancel.NEVER).orElseThrow();
    }
}
