// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;
import java.util.function.IntFunction;
import org.loomwright.quantity.Cancel;

/** Prints how long the seeded platforms take to plan. */
public final class PlanBenchmark {

    private PlanBenchmark() {
    }

    public static void main(String[] args) {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : SeededPlatforms.COUNT;
        time("stiff", count, new RigidPlanner(), SeededPlatforms::stiff);
        time("slack", count, new HarnessPlanner(), SeededPlatforms::withSlack);
    }

    private static void time(String name, int count, Planner planner, IntFunction<PlanProblem> problems) {
        planner.plan(problems.apply(0), Cancel.NEVER);
        planner.plan(problems.apply(1), Cancel.NEVER);
        double[] seconds = new double[count];
        for (int seed = 0; seed < count; seed++) {
            PlanProblem problem = problems.apply(seed);
            long start = System.nanoTime();
            HarnessPlan plan = planner.plan(problem, Cancel.NEVER);
            seconds[seed] = (System.nanoTime() - start) / 1e9;
            String found = plan.found().map(each -> each.excess() / 1e6 + " mm, " + each.copper() / 1e12 + " g")
                    .orElse("none");
            System.out.printf("%s %d: %.3f s, %s%s %s%n", name, seed, seconds[seed], found, plan.settled() ? ""
                    : " (not proved)", plan.work());
        }
        Arrays.sort(seconds);
        System.out.printf("%s: median %.3f s, worst %.3f s%n", name, seconds[count / 2], seconds[count - 1]);
    }
}
