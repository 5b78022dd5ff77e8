// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.ProjectFiles;

/** Kills a process that writes {@link Generations}, at random moments, and looks at what is there then. */
final class KillsWhileWriting {

    /** Kills fall within this time of the end of the first generation; one takes ten milliseconds or so. */
    private static final int LONGEST_MILLISECONDS = 60;

    private final Generations files;
    private final Random random;

    /**
     * What came of it.
     *
     * @param kills     how often the process was killed
     * @param halfway   after how many kills drafts were left behind, so that a write was really under way
     * @param written   how many generations were completed
     * @param faults    what was wrong afterwards
     */
    record Outcome(int kills, int halfway, long written, List<String> faults) {
    }

    KillsWhileWriting(Path folder, long seed) {
        files = new Generations(folder);
        random = new Random(seed);
    }

    Outcome kill(int times) throws IOException, InterruptedException, BadCall {
        files.begin();
        List<String> faults = new ArrayList<>();
        long complete = 0;
        int halfway = 0;
        for (int kill = 0; kill < times; kill++) {
            Process process = start(complete + 1);
            try (BufferedReader out = new BufferedReader(
                    new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                String line = out.readLine();
                if (!"writing".equals(line)) {
                    throw new IllegalStateException("the writer did not start: " + line);
                }
                TimeUnit.MICROSECONDS.sleep(random.nextInt(LONGEST_MILLISECONDS * 1000));
            } finally {
                process.destroyForcibly().waitFor();
            }
            int number = kill;
            files.faults(complete).forEach(fault -> faults.add("kill " + number + ": " + fault));
            complete = Math.max(complete, files.complete());
            halfway += files.leftovers().isEmpty() ? 0 : 1;
            looseEnds(number, faults);
        }
        files.write(complete + 2);
        files.leftovers().forEach(left -> faults.add(left.getFileName() + " was not removed by the next write"));
        return new Outcome(times, halfway, complete, faults);
    }

    /** Drafts of one write may lie about, never those of several, and none is taken for a source. */
    private void looseEnds(int number, List<String> faults) throws IOException {
        if (files.leftovers().size() > 4) {
            faults.add("kill " + number + ": drafts pile up: " + files.leftovers());
        }
        List<String> sources = ProjectFiles.below(files.folder()).stream().map(input -> input.name()).toList();
        if (!sources.equals(List.of("front.loom", "rear.loom"))) {
            faults.add("kill " + number + ": sources are " + sources);
        }
    }

    private Process start(long generation) throws IOException {
        return new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto", "-Xmx64m", "-cp", classPath(),
                Generations.class.getName(), files.folder().toString(), Long.toString(generation))
                .redirectErrorStream(true).start();
    }

    /** A test launcher may have a loader of its own for the tests. */
    static String classPath() {
        if (Generations.class.getClassLoader() instanceof URLClassLoader loader) {
            return Arrays.stream(loader.getURLs()).map(url -> Path.of(URI.create(url.toString())).toString())
                    .collect(Collectors.joining(File.pathSeparator));
        }
        return System.getProperty("java.class.path");
    }

    /** The long run: number of kills, and the seed. Returns 1 when something was wrong. */
    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("generations");
        long start = System.nanoTime();
        Outcome outcome = new KillsWhileWriting(folder, Long.parseLong(args[1])).kill(Integer.parseInt(args[0]));
        outcome.faults().forEach(System.out::println);
        System.out.println(outcome.kills() + " kills, " + outcome.halfway() + " with drafts left behind, "
                + outcome.written() + " generations completed, " + outcome.faults().size() + " faults, "
                + (System.nanoTime() - start) / 1_000_000_000L + " s");
        System.exit(outcome.faults().isEmpty() ? 0 : 1);
    }
}
