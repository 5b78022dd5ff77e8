// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/**
 * How much processor time packing searches take, beside the sorting of a million random numbers in the same run. Not a
 * test: run {@code main}.
 */
public final class PackingBenchmark {

    private static final int REPEATS = 7;

    private PackingBenchmark() {
    }

    /** Prints the median times and their ratios. */
    public static void main(String[] arguments) {
        double[] numbers = new Random(1).doubles(1_000_000).toArray();
        double sort = median(() -> Arrays.sort(numbers.clone()));
        System.out.printf(Locale.ROOT, "sorting 1,000,000 numbers: %.1f ms%n", sort);
        PackingSearch search = new SeededSearch();
        PackingSearch laid = new LaidPacking();
        for (int n : new int[] {5, 10, 20, 40, 60, 120}) {
            double[] wires = Circles.wires(new Random(n), n);
            print("mixed " + n, search, wires, sort);
            print("equal " + n, search, Circles.equal(n, 2.4), sort);
            print("laid  " + n, laid, wires, sort);
        }
    }

    private static void print(String what, PackingSearch search, double[] wires, double sort) {
        PackingSearch.Found found = search.search(wires);
        double ms = median(() -> search.search(wires));
        System.out.printf(Locale.ROOT, "%-10s %8.2f ms = %6.3f sorts; %,11d pairs; D = %.4f roots of sum of squares%n",
                what, ms, ms / sort, found.work(), found.packing().diameter() / Circles.root(wires));
    }

    private static double median(Runnable work) {
        double[] times = new double[REPEATS];
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        work.run();
        for (int i = 0; i < REPEATS; i++) {
            long start = clock.getCurrentThreadCpuTime();
            work.run();
            times[i] = (clock.getCurrentThreadCpuTime() - start) / 1e6;
        }
        Arrays.sort(times);
        return times[REPEATS / 2];
    }
}
