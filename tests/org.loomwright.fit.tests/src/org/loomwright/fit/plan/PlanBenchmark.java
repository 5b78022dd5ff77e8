// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalLong;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.loomwright.quantity.Cancel;

/**
 * Prints how long the seeded platforms take to plan: {@code [COUNT [SECONDS [FOLDER]]]}, so many of them, with slack
 * for so long at most; into the folder go their direct models, for a general solver to be timed with.
 */
public final class PlanBenchmark {

    private PlanBenchmark() {
    }

    public static void main(String[] args) throws IOException {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : SeededPlatforms.COUNT;
        long seconds = args.length > 1 ? Long.parseLong(args[1]) : 60;
        time("stiff", count, RigidPlanner::new, SeededPlatforms::stiff);
        time("slack", count, () -> {
            long end = System.nanoTime() + seconds * 1_000_000_000;
            return new HarnessPlanner(() -> System.nanoTime() > end);
        }, SeededPlatforms::withSlack);
        for (int seed = 0; args.length > 2 && seed < count; seed++) {
            Files.writeString(Path.of(args[2], "stiff" + seed + ".lp"), new DirectModel(SeededPlatforms.stiff(seed))
                    .text(OptionalLong.empty()));
            Files.writeString(Path.of(args[2], "slack" + seed + ".lp"), new DirectModel(SeededPlatforms
                    .withSlack(seed)).text(OptionalLong.empty()));
        }
    }

    private static void time(String name, int count, Supplier<Planner> planners, IntFunction<PlanProblem> problems) {
        planners.get().plan(problems.apply(0), Cancel.NEVER);
        planners.get().plan(problems.apply(1), Cancel.NEVER);
        double[] seconds = new double[count];
        double[] processor = new double[count];
        for (int seed = 0; seed < count; seed++) {
            PlanProblem problem = problems.apply(seed);
            long start = System.nanoTime();
            long busy = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            HarnessPlan plan = planners.get().plan(problem, Cancel.NEVER);
            seconds[seed] = (System.nanoTime() - start) / 1e9;
            processor[seed] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - busy) / 1e9;
            String found = plan.found().map(each -> each.excess() / 1e6 + " mm, " + each.copper() / 1e12 + " g"
                    + (each.isBest() ? "" : ", at least " + each.bounds().excess() / 1e6 + " mm, "
                            + Math.max(0, each.bounds().copper()) / 1e12 + " g"))
                    .orElse("none");
            System.out.printf("%s %d: %.3f s, processor %.3f s, %s%s %s%n", name, seed, seconds[seed],
                    processor[seed], found, plan.settled() ? ""
                    : " (not proved)", plan.work());
        }
        Arrays.sort(seconds);
        Arrays.sort(processor);
        System.out.printf("%s: median %.3f s, worst %.3f s, of the processor %.3f s and %.3f s%n", name,
                seconds[count / 2], seconds[count - 1], processor[count / 2], processor[count - 1]);
    }
}
