// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Reads sources with several threads. The result is the same however many there are: it is in the order of the inputs,
 * and a source depends on its own bytes only. What cannot be read becomes a source without content and with a problem,
 * so that nothing is left out in silence.
 *
 * <p>Safe for use by several threads. Takes time linear in the size of the inputs.
 */
public final class Loader {

    /**
     * The largest file that is read, in bytes; a larger one is refused before it is parsed. With 512 MB of memory one
     * of this size and 96,000 wires is read and checked, one of twice the size is not.
     */
    public static final int LARGEST = 4 << 20;

    /** Code of the problem of a file that is larger than {@link #LARGEST}. */
    public static final String TOO_BIG = "file-too-big";

    /** Code of the problem of a file that cannot be read. */
    public static final String UNREADABLE = "file-unreadable";

    /** Below this many bytes, starting threads takes longer than they save. */
    private static final long WORTH_SHARING = 64 << 10;

    private final SourceReader reader;
    private final int threads;

    /**
     * @param reader  reads one source
     * @param threads the most threads to use, at least 1
     */
    public Loader(SourceReader reader, int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("no thread to read with");
        }
        this.reader = reader;
        this.threads = threads;
    }

    /**
     * What was loaded.
     *
     * @param sources    one for each input, in the order of the inputs
     * @param unreadable how many of them could not be read at all
     */
    public record Loaded(List<Source> sources, int unreadable) {
    }

    /** Reads the inputs. Throws {@link org.loomwright.quantity.Cancelled} when asked to stop. */
    public Loaded load(List<Input> inputs, Cancel cancel, Progress progress) {
        Source[] sources = new Source[inputs.size()];
        Work work = new Work(inputs, largestFirst(inputs), sources, cancel, progress);
        int workers = Math.min(threads, inputs.size());
        if (workers > 1 && inputs.stream().mapToLong(Input::size).sum() > WORTH_SHARING) {
            share(work, workers);
        } else {
            work.run();
        }
        int unreadable = 0;
        for (Source source : sources) {
            if (!source.problems().isEmpty() && source.problems().getFirst().code().equals(UNREADABLE)) {
                unreadable++;
            }
        }
        return new Loaded(List.of(sources), unreadable);
    }

    private static int[] largestFirst(List<Input> inputs) {
        Integer[] order = new Integer[inputs.size()];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingLong(i -> -inputs.get(i).size()));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    private static void share(Work work, int workers) {
        try (ExecutorService pool = Executors.newFixedThreadPool(workers)) {
            List<Future<?>> running = new ArrayList<>();
            for (int i = 0; i < workers; i++) {
                running.add(pool.submit(work));
            }
            for (Future<?> each : running) {
                each.get();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading", e);
        } catch (ExecutionException e) {
            switch (e.getCause()) {
                case RuntimeException ours -> throw ours;
                case Error ours -> throw ours;
                default -> throw new IllegalStateException(e.getCause());
            }
        }
    }

    private Source read(Input input) {
        try (InputStream stream = input.content().open()) {
            byte[] bytes = input.size() > LARGEST ? new byte[0] : stream.readNBytes(LARGEST + 1);
            if (input.size() > LARGEST || bytes.length > LARGEST) {
                return refused(input, TOO_BIG, "the file has over " + LARGEST + " bytes and was not read",
                        "divide it: a drawing, a harness or a catalogue has a file of its own");
            }
            return reader.read(input.name(), bytes);
        } catch (IOException e) {
            return refused(input, UNREADABLE, "the file cannot be read: " + reason(e), "");
        }
    }

    private static Source refused(Input input, String code, String message, String advice) {
        Span top = new Span(input.name(), 0, 0, 1, 1);
        return new Source(input.name(), "", List.of(), List.of(new Problem(code, top, message, advice, List.of())));
    }

    /** The reason in words, without the path, which is named elsewhere. */
    static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        String words = e instanceof FileSystemException named ? named.getReason() : e.getMessage();
        return words == null || words.isBlank() ? "input or output error" : words.lines().findFirst().orElseThrow();
    }

    /** The queue: each worker takes the next input until none is left. */
    private final class Work implements Runnable {

        private final List<Input> inputs;
        private final int[] order;
        private final Source[] sources;
        private final Cancel cancel;
        private final Progress progress;
        private final AtomicInteger next = new AtomicInteger();
        private final AtomicInteger done = new AtomicInteger();

        Work(List<Input> inputs, int[] order, Source[] sources, Cancel cancel, Progress progress) {
            this.inputs = inputs;
            this.order = order;
            this.sources = sources;
            this.cancel = cancel;
            this.progress = progress;
        }

        @Override
        public void run() {
            for (int i = next.getAndIncrement(); i < order.length; i = next.getAndIncrement()) {
                cancel.check();
                sources[order[i]] = read(inputs.get(order[i]));
                progress.report("reading files", done.incrementAndGet(), order.length);
            }
        }
    }
}
