// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.match.Matcher;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Prints how fast a revision of a large invented project is compared, and the same for git's text diff of the
 * same files, so that runs on different machines can be compared. Reading the sources is not counted in either.
 */
public final class CompareBenchmark {

    private static final int WARM_RUNS = 12;

    private CompareBenchmark() {
    }

    /** Takes the number of drawings and of wires in each; by default 50 and 999. */
    public static void main(String[] args) throws Exception {
        int drawings = args.length > 0 ? Integer.parseInt(args[0]) : 50;
        int wires = args.length > 1 ? Integer.parseInt(args[1]) : 999;
        List<Input> old = new LargeProject(drawings, wires).inputs();
        List<Input> now = Revised.of(old);
        Loader loader = new Loader(LoomReader.create(), Runtime.getRuntime().availableProcessors());
        Project before = Project.link(loader.load(old, Cancel.NEVER, Progress.NONE).sources());
        Project after = Project.link(loader.load(now, Cancel.NEVER, Progress.NONE).sources());
        long start = System.nanoTime();
        Comparison comparison = new FactComparer().compare(before, after);
        say("%d drawings x %d wires: %d elements, %d pairs compared, %d changes", drawings, wires,
                comparison.now().items().size(), comparison.matching().compared(), comparison.changes().size());
        say("%-28s %8.3f s", "compare, cold", (System.nanoTime() - start) / 1e9);
        best("facts of one side, warm", () -> FactSheet.of(after));
        best("match, warm", () -> Matcher.match(comparison.old(), comparison.now()));
        double compared = best("compare, warm", () -> new FactComparer().compare(before, after));
        Path folder = Files.createTempDirectory("compare");
        try {
            write(old, folder.resolve("old"));
            write(now, folder.resolve("new"));
            double diff = best("git diff --no-index", () -> new ProcessBuilder("git", "diff", "--no-index", "old",
                    "new")
                    .directory(folder.toFile()).redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor());
            say("comparing takes %.1f times as long as the text diff", compared / diff);
        } finally {
            delete(folder);
        }
    }

    private static void write(List<Input> inputs, Path folder) throws IOException {
        for (Input input : inputs) {
            Path file = folder.resolve(input.name());
            Files.createDirectories(file.getParent());
            Files.writeString(file, Revised.text(input));
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    private static double best(String what, Callable<?> work) throws Exception {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < WARM_RUNS; i++) {
            long start = System.nanoTime();
            work.call();
            best = Math.min(best, (System.nanoTime() - start) / 1e9);
        }
        say("%-28s %8.3f s", what, best);
        return best;
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
