// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.loomwright.app.EditSession;
import org.loomwright.app.OpenProject;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/**
 * Prints how fast a large invented project is read, joined and checked, cold and warm, and the same for a DOM parser on
 * an XML document of equal size, so that runs on different machines can be compared.
 */
public final class LoadAndCheck {

    private static final double MEGA = 1e6;
    private static final int WARM_RUNS = 40;
    private static final int EDITS = 41;
    private static final int DOMS = 8;

    private LoadAndCheck() {
    }

    /**
     * Takes the number of drawings and of wires in each, by default 50 and 300, about 1.2 MB; with a third argument,
     * {@code once}, everything is done once, to see whether it fits into the memory that there is.
     */
    public static void main(String[] args) throws Exception {
        int drawings = args.length > 0 ? Integer.parseInt(args[0]) : 50;
        int wires = args.length > 1 ? Integer.parseInt(args[1]) : 300;
        List<Input> inputs = new LargeProject(drawings, wires).inputs();
        double megabytes = inputs.stream().mapToLong(Input::size).sum() / MEGA;
        int threads = Runtime.getRuntime().availableProcessors();
        say("%d drawings x %d wires, %d files, %.2f MB, %d threads, Java %s", drawings, wires, inputs.size(), megabytes,
                threads, System.getProperty("java.version"));
        SourceReader reader = timed("set up the language", 0, LoomReader::create);
        Loader loader = new Loader(reader, threads);
        Callable<List<Source>> load = () -> loader.load(inputs, Cancel.NEVER, Progress.NONE).sources();
        List<Source> sources = timed("load, cold", megabytes, load);
        Project project = timed("link, cold", megabytes, () -> Project.link(sources));
        say("problems of the text: %d", project.problems().size());
        Callable<Report> check = () -> StandardRules.engine().check(project, Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE);
        Report report = timed("check, cold", megabytes, check);
        say("findings: %d, calls of rules: %d", report.findings().size(), report.work().checks());
        say("heap: at most %d MB of %d MB", ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() >> 20, Runtime.getRuntime().maxMemory() >> 20);
        if (args.length > 2) {
            return;
        }
        byte[] xml = xml(inputs.stream().mapToLong(Input::size).sum());
        timed("DOM of equal size, cold", xml.length / MEGA, () -> dom(xml));
        Loader alone = new Loader(reader, 1);
        double[] best = bests(List.of(load, () -> alone.load(inputs, Cancel.NEVER, Progress.NONE),
                () -> Project.link(sources), check, () -> StandardRules.engine(threads)
                        .check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE), () -> dom(xml),
                () -> doms(xml, 1), () -> doms(xml, threads)));
        double loaded = best[0];
        double one = best[1];
        double linked = best[2];
        double checked = best[3];
        double together = best[4];
        double parsed = best[5];
        print("load, warm", loaded, megabytes);
        print("load with one thread, warm", one, megabytes);
        print("link, warm", linked, megabytes);
        print("load and link, warm", loaded + linked, megabytes);
        print("check, warm", checked, megabytes);
        print("check with all threads, warm", together, megabytes);
        print("DOM of equal size, warm", parsed, megabytes);
        say("load and link take %.1f times as long as the DOM parser", (loaded + linked) / parsed);
        say("the check takes %.1f times as long as load and link, with all threads %.1f times", checked
                / (loaded + linked), together / (loaded + linked));
        say("%d threads are %.2f times as fast as one: load %.2f, check %.2f", threads,
                (one + linked + checked) / (loaded + linked + together), one / loaded, checked / together);
        say("%d DOM parsers, which share nothing, are %.2f times as fast as one", threads, threads * best[6] / best[7]);
        edits(inputs, reader);
        opensAndAgrees(inputs, reader, project);
    }

    /** One character of one drawing is changed back and forth, with everything loaded. */
    private static void edits(List<Input> inputs, SourceReader reader) throws Exception {
        EditSession session = new EditSession(reader, 1,
                StandardRules.engine(Runtime.getRuntime().availableProcessors()), Settings.TIMELESS);
        session.open(inputs, Cancel.NEVER, Progress.NONE);
        Input drawing = inputs.get(1 + (inputs.size() - 3) / 2);
        String text;
        try (InputStream in = drawing.content().open()) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        double[] seconds = new double[EDITS];
        for (int i = 0; i < EDITS; i++) {
            byte[] bytes = text.replaceFirst("to L1:1", i % 2 == 0 ? "to L1:9" : "to L1:1")
                    .getBytes(StandardCharsets.UTF_8);
            long start = System.nanoTime();
            session.edit(drawing.name(), bytes, Cancel.NEVER);
            seconds[i] = (System.nanoTime() - start) / 1e9;
        }
        Arrays.sort(seconds);
        say("an edit to its findings: median %.3f s, least %.3f s, greatest %.3f s", seconds[EDITS / 2], seconds[0],
                seconds[EDITS - 1]);
    }

    private static void opensAndAgrees(List<Input> inputs, SourceReader reader, Project project) throws Exception {
        ProjectPlace place = new ProjectPlace("large", Path.of(""), "", inputs);
        Project again = new OpenProject(reader, 1).open(place, Cancel.NEVER, Progress.NONE).project();
        if (!again.sources().equals(project.sources())) {
            throw new IllegalStateException("one thread and several read different things");
        }
    }

    private static <T> T timed(String what, double megabytes, Callable<T> work) throws Exception {
        long start = System.nanoTime();
        T result = work.call();
        print(what, (System.nanoTime() - start) / 1e9, megabytes);
        return result;
    }

    /** The least time of each in s. They take turns, so that none has a warmer machine than another. */
    private static double[] bests(List<Callable<?>> works) throws Exception {
        double[] best = new double[works.size()];
        Arrays.fill(best, Double.MAX_VALUE);
        for (int run = 0; run < WARM_RUNS; run++) {
            for (int i = 0; i < best.length; i++) {
                long start = System.nanoTime();
                works.get(i).call();
                best[i] = Math.min(best[i], (System.nanoTime() - start) / 1e9);
            }
        }
        return best;
    }

    private static void print(String what, double seconds, double megabytes) {
        say(megabytes > 0 ? "%-28s %8.3f s  %7.2f MB/s" : "%-28s %8.3f s", what, seconds, megabytes / seconds);
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    /** Wires as elements with attributes, until the document is large enough. */
    private static byte[] xml(long size) {
        StringBuilder text = new StringBuilder("<drawing>\n");
        for (int i = 0; text.length() < size; i++) {
            text.append("  <wire name=\"").append(i).append("\" size=\"18 ga\" from=\"J").append(i % 40).append(':')
                    .append(i % 12).append("\" to=\"S").append(i % 160).append("\"/>\n");
        }
        return text.append("</drawing>\n").toString().getBytes(StandardCharsets.UTF_8);
    }

    /** As many parsers at once, each with documents of its own: how much several threads can gain here at all. */
    private static Object doms(byte[] xml, int threads) throws Exception {
        List<FutureTask<Object>> tasks = IntStream.range(0, threads).mapToObj(i -> new FutureTask<>(() -> {
            Object last = null;
            for (int k = 0; k < DOMS; k++) {
                last = dom(xml);
            }
            return last;
        })).toList();
        tasks.forEach(task -> new Thread(task).start());
        for (FutureTask<Object> task : tasks) {
            task.get();
        }
        return tasks;
    }

    private static Object dom(byte[] xml) throws Exception {
        try (ByteArrayInputStream in = new ByteArrayInputStream(xml)) {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(in);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
