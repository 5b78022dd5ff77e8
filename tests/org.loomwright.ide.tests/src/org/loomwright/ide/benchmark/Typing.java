// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.benchmark;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.loomwright.ide.Bench;
import org.loomwright.ide.LargeText;
import org.loomwright.ide.Services;
import org.loomwright.ide.session.Listener;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/**
 * From a keystroke to fast findings, to completion and to all findings, in a file of some thousand lines. By the wall
 * clock, and for the first also by processor time, which counts on a machine that is busy with other work.
 */
public final class Typing {

    private static final double MILLION = 1e6;

    private Typing() {
    }

    /** @param args the number of lines, and how often a key is pressed */
    public static void main(String[] args) throws Exception {
        int lines = args.length > 0 ? Integer.parseInt(args[0]) : 5_000;
        int keys = args.length > 1 ? Integer.parseInt(args[1]) : 60;
        Path folder = Files.createTempDirectory("typing");
        Path file = folder.resolve("large.loom");
        String text = LargeText.of(lines);
        Files.writeString(file, text);
        LinkedBlockingQueue<Integer> told = new LinkedBlockingQueue<>();
        Listener listener = (path, version, moment, findings) -> version.ifPresent(told::add);
        try (Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(2), Settings.TIMELESS,
                new Pace(Duration.ofHours(1), Duration.ZERO), listener)) {
            long start = System.nanoTime();
            workspace.opened(file, 1, text);
            await(told, 1);
            print("opened, fast findings", List.of(since(start)));
            start = System.nanoTime();
            workspace.settled().get(10, TimeUnit.MINUTES);
            print("opened, all findings", List.of(since(start)));
            int at = text.indexOf("wire a", text.length() / 2);
            String typed = "wire q 18 ga from A:1 to ";
            List<Double> fast = new ArrayList<>();
            List<Double> completion = new ArrayList<>();
            List<Double> deep = new ArrayList<>();
            List<Double> processor = new ArrayList<>();
            for (int key = 1; key <= keys; key++) {
                int length = 1 + key % typed.length();
                String now = text.substring(0, at) + typed.substring(0, length) + "\n        " + text.substring(at);
                int version = key + 1;
                told.clear();
                double before = writing();
                start = System.nanoTime();
                workspace.changed(file, version, now);
                await(told, version);
                fast.add(since(start));
                processor.add(writing() - before);
                int offset = at + length;
                start = System.nanoTime();
                workspace.ask(file, (moment, name, cancel) -> Services.complete(moment, name, offset, cancel)).get();
                completion.add(since(start));
                if (key % 10 == 0) {
                    start = System.nanoTime();
                    workspace.settled().get(10, TimeUnit.MINUTES);
                    deep.add(since(start));
                }
            }
            print("a key to fast findings", fast);
            print("  processor time of it", processor);
            print("completion after it", completion);
            print("all findings", deep);
        } finally {
            Files.delete(file);
            Files.delete(folder);
        }
    }

    private static void await(LinkedBlockingQueue<Integer> told, int version) throws InterruptedException {
        Integer heard;
        do {
            heard = told.poll(10, TimeUnit.MINUTES);
        } while (heard != null && heard < version);
    }

    /** Processor time of the threads that follow changes, in milliseconds. */
    private static double writing() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(each -> each != null && each.getThreadName().equals("loom-write"))
                .mapToLong(each -> threads.getThreadCpuTime(each.getThreadId())).sum() / MILLION;
    }

    private static double since(long start) {
        return (System.nanoTime() - start) / MILLION;
    }

    private static void print(String what, List<Double> times) {
        List<Double> sorted = times.stream().sorted().toList();
        System.out.printf(Locale.ROOT, "%-26s median %6.0f ms, worst %6.0f ms, of %d%n", what,
                sorted.get(sorted.size() / 2), sorted.getLast(), sorted.size());
    }
}
