// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.loomwright.app.load.Input;
import org.loomwright.harness.Source;
import org.loomwright.lang.SourceReader;

/**
 * Reads the sources of one project. A drawing or harness whose bytes an earlier check has read already is not parsed
 * again: unpacking what was kept of it takes a fraction of that. Safe for use by several threads.
 */
public final class KeptSources implements SourceReader {

    /** How many times longer parsing takes than unpacking; shares out the work, no more. */
    private static final int TIMES_FASTER = 8;

    private final ReportCache cache;
    private final String project;
    private final Supplier<SourceReader> reader;
    private final Map<String, byte[]> before;
    private final Map<String, byte[]> now = new ConcurrentHashMap<>();
    private final Map<String, String> prints = new ConcurrentHashMap<>();
    private volatile boolean changed;

    /**
     * @param project tells the project from others, whatever is in it
     * @param reader  reads sources of which nothing is kept
     */
    public KeptSources(ReportCache cache, String project, Supplier<SourceReader> reader) {
        this.cache = cache;
        this.project = project;
        this.reader = reader;
        before = cache.sources(project);
    }

    /**
     * The input of some bytes, which counts for as much as there is to do; the file is read with these alone.
     *
     * @param print the print of the file
     */
    public Input input(String file, byte[] bytes, String print) {
        prints.put(file, print);
        return before.containsKey(print)
                ? new Input(file, bytes.length / TIMES_FASTER, Input.of(file, bytes).content())
                : Input.of(file, bytes);
    }

    @Override
    public Source read(String file, byte[] bytes) {
        String known = prints.get(file);
        String print = known == null ? ReportKey.of(file, bytes) : known;
        byte[] packed = before.get(print);
        Optional<Source> kept = packed == null ? Optional.empty() : PackedSources.unpack(file, bytes, packed);
        if (kept.isPresent()) {
            now.put(print, packed);
            return kept.get();
        }
        Source source = reader.get().read(file, bytes);
        PackedSources.pack(source).ifPresent(made -> {
            now.put(print, made);
            changed = true;
        });
        return source;
    }

    /** Keeps what was read, for the next check of the project. */
    public void keep() {
        if (changed) {
            cache.keepSources(project, now);
        }
    }
}
