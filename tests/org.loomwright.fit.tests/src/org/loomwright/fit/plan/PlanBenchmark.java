// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.loomwright.quantity.Cancel;

/**
 * Prints how long planning takes, by the wall clock, warm and in one thread:
 *
 * <ul>
 * <li>{@code platforms [COUNT [SECONDS [CBC]]]}: so many seeded platforms, stiff and with slack, for so long at most.
 * With CBC, the first level of the direct model is given to CBC right after each, for CBC seconds of the processor or 25
 * times what was taken here, whichever is more; where CBC did not prove it in that time, it is said to be above that.
 * <li>{@code fewest [DRAWINGS [PLACES [COUNT]]]}: how many harnesses serve drawings that differ by up to 340 mm.
 * <li>{@code large [SECONDS]}: 500 drawings of 60 places, for so long at most.
 * </ul>
 */
public final class PlanBenchmark {

    private static final double NANO = 1e9;
    private static final double MM = 1e6;
    private static final int TIMES = 25;

    private PlanBenchmark() {
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        switch (args.length == 0 ? "platforms" : args[0]) {
            case "fewest" -> fewest(number(args, 1, 50), number(args, 2, 6), number(args, 3, 5));
            case "large" -> {
                plan("stiff", 0, SeededPlatforms.of(0, 500, 60, false), number(args, 1, 60));
                plan("slack", 0, SeededPlatforms.of(0, 500, 60, true), number(args, 1, 60));
            }
            default -> {
                int count = number(args, 1, SeededPlatforms.COUNT);
                platforms("stiff", count, number(args, 2, 60), number(args, 3, 0), SeededPlatforms::stiff);
                platforms("slack", count, number(args, 2, 60), number(args, 3, 0), SeededPlatforms::withSlack);
            }
        }
    }

    private static int number(String[] args, int index, int otherwise) {
        return args.length > index ? Integer.parseInt(args[index]) : otherwise;
    }

    private static void platforms(String name, int count, int most, int cbc, IntFunction<PlanProblem> problems)
            throws IOException, InterruptedException {
        for (int seed = 0; seed < count; seed++) {
            // once to warm up
            new HarnessPlanner(within(most)).plan(problems.apply(seed), Cancel.NEVER);
        }
        double[] seconds = new double[count];
        double[] ratios = new double[count];
        List<Integer> above = new ArrayList<>();
        for (int seed = 0; seed < count; seed++) {
            seconds[seed] = plan(name, seed, problems.apply(seed), most);
            if (cbc > 0) {
                long limit = Math.max(cbc, (long) Math.ceil(TIMES * seconds[seed]));
                double other = cbc(problems.apply(seed), limit);
                if (other < 0) {
                    above.add(seed);
                }
                ratios[seed] = (other < 0 ? limit : other) / seconds[seed];
                System.out.printf("    CBC, first level: %s, ratio %s%.0f%n", other < 0 ? "not proved in " + limit
                        + " s" : String.format("%.1f s", other), other < 0 ? "above " : "", ratios[seed]);
            }
        }
        Arrays.sort(seconds);
        System.out.printf("%s: median %.3f s, worst %.3f s%n", name, seconds[count / 2], seconds[count - 1]);
        if (cbc > 0) {
            Arrays.sort(ratios);
            System.out.printf("%s, CBC to here: median %.0f, least %.0f; not proved by CBC: %s%n", name,
                    ratios[count / 2], ratios[0], above);
        }
    }

    private static Cancel within(int seconds) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        return () -> System.nanoTime() > end;
    }

    private static double plan(String name, int seed, PlanProblem problem, int most) {
        long start = System.nanoTime();
        HarnessPlan plan = new HarnessPlanner(within(most)).plan(problem, Cancel.NEVER);
        double seconds = (System.nanoTime() - start) / NANO;
        String found = plan.found().map(each -> each.excess() / MM + " mm, " + each.copper() / MM / MM + " g, "
                + each.length() / MM + " mm" + (each.isBest() ? ", proved" : ", at least " + each.bounds().excess() / MM
                        + " mm, " + Math.max(0, each.bounds().copper()) / MM / MM + " g, "
                        + Math.max(0, each.bounds().length()) / MM + " mm"))
                .orElse("none");
        System.out.printf("%s %d: %.3f s, %s, %s%n", name, seed, seconds, found, plan.work());
        return seconds;
    }

    /** How long CBC takes for the least excess; negative when it did not prove it in time. */
    private static double cbc(PlanProblem problem, long limit) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("planbenchmark");
        Path model = folder.resolve("model.lp");
        Path answer = folder.resolve("answer.txt");
        Path log = folder.resolve("log.txt");
        try {
            Files.writeString(model, new DirectModel(problem).text(OptionalLong.empty()));
            long start = System.nanoTime();
            Process process = GeneralSolver.CBC.start(model, answer, limit, log);
            process.waitFor();
            double seconds = (System.nanoTime() - start) / NANO;
            return GeneralSolver.CBC.proved(answer).isPresent() ? seconds : -1;
        } finally {
            for (Path each : List.of(model, answer, log, folder)) {
                Files.deleteIfExists(each);
            }
        }
    }

    private static void fewest(int drawings, int places, int count) {
        for (int seed = 0; seed < count; seed++) {
            PlanProblem problem = Instances.apart(seed, drawings, places);
            List<BitSet> all = IntStream.range(0, drawings).mapToObj(each -> {
                BitSet one = new BitSet();
                one.set(each);
                return one;
            }).toList();
            long start = System.nanoTime();
            FewestHarnesses.Answer answer = FewestHarnesses.of(problem, all, new HarnessPlanner(), Cancel.NEVER);
            System.out.printf("fewest %d: %.3f s, %d harnesses, fits none %d, %s, %d sets tried%n", seed,
                    (System.nanoTime() - start) / NANO, answer.groups().size(), answer.alone().size(),
                    answer.isClique() ? "proved by drawings of which no two go together"
                            : answer.isFewest() ? "proved by exhaustion" : "not proved", answer.asked());
        }
    }
}
