// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;

/**
 * Prints how fast sources are read: 50 drawings of 1,000 wires. Arguments: the number of threads, and of rounds. Not a
 * test; times depend on the machine.
 */
public final class ReadBenchmark {
    private ReadBenchmark() {
    }

    /** A drawing with that many wires, as an engineer would transcribe it. */
    public static String drawing(int number, int wires) {
        StringBuilder text = new StringBuilder("drawing front" + number
                + " \"Front lighting\" of orrin when year <= 1966 and saloon {\n    sheet \"FD-" + number
                + "\" issue \"C\"\n    datum bulkhead\n    trunk main {\n");
        for (int i = 0; i < wires / 10; i++) {
            text.append("        breakout k").append(i).append(" at ").append(i * 3).append(".5 in on sample of 3\n");
        }
        text.append("    }\n");
        for (int i = 0; i < wires / 10; i++) {
            text.append("    branch b").append(i).append(" from k").append(i).append(" to place").append(i)
                    .append(" 7 1/2 in\n    connector J").append(i).append(" \"Lamp ").append(i).append("\" on b")
                    .append(i)
                    .append(" is lampSocket3 when not fan\n");
        }
        for (int i = 0; i < wires / 10; i++) {
            text.append("    circuit ").append(i).append(" \"Low beam\" LG/BK {\n        splice S").append(i)
                    .append(" at k").append(i).append('\n');
            for (int w = 0; w < 10; w++) {
                text.append("        wire ").append((char) ('a' + w)).append(" 18 ga from J").append(i).append(':')
                        .append(w + 1);
                text.append(w % 3 == 0 ? " to S" + i + " length 300 mm \u00b1 5 mm\n" : w % 3 == 1
                        ? " to J" + (i + 1) + ":" + w + " when year 1964 .. 1966 and not (fan or heater)\n"
                        : " to S" + i + " {  // doubled\n            size 16 ga when halogen\n        }\n");
            }
            text.append("    }\n");
        }
        return text.append("}\n").toString();
    }

    public static void main(String[] arguments) throws Exception {
        int threads = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2;
        int rounds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 6;
        List<byte[]> files = IntStream.range(0, 50)
                .mapToObj(i -> drawing(i, 1_000).getBytes(StandardCharsets.UTF_8)).toList();
        double megabytes = files.stream().mapToInt(file -> file.length).sum() / 1e6;
        LoomReader reader = LoomReader.create();
        try (ExecutorService pool = Executors.newFixedThreadPool(threads)) {
            for (int round = 1; round <= rounds; round++) {
                long start = System.nanoTime();
                List<Future<Long>> read = files.stream().map(file -> pool.submit(() -> processorTime(reader, file)))
                        .toList();
                double processor = 0;
                for (Future<Long> each : read) {
                    processor += each.get() / 1e9;
                }
                double seconds = (System.nanoTime() - start) / 1e9;
                System.out.printf(Locale.ROOT,
                        "round %d: %.1f MB in %.2f s, %.1f MB/s; %.2f s of processor time, %.1f MB a second of it%n",
                        round, megabytes, seconds, megabytes / seconds, processor,
                        megabytes / processor);
            }
        }
    }

    private static long processorTime(LoomReader reader, byte[] file) {
        long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        if (!reader.read("a.loom", file).problems().isEmpty()) {
            throw new IllegalStateException("the drawing has problems");
        }
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start;
    }
}
