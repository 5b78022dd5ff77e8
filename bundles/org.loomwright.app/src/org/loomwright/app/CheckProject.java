// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.FutureTask;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.cache.Kept;
import org.loomwright.app.cache.KeptSources;
import org.loomwright.app.cache.ReportCache;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.lang.SourceReader;
import org.loomwright.lang.text.TextDecoder;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.stock.Stock;

/**
 * Checks a project, or finds in a cache what came of checking it before. The outcome is the same either way: the
 * vehicles of findings are there in words only, and whether there is a cache cannot be told from what is printed.
 * Safe for use by several threads.
 */
public final class CheckProject {

    private final Supplier<SourceReader> reader;
    private final IntFunction<RuleEngine> engine;
    private final Optional<ReportCache> cache;

    /**
     * @param reader reads sources; not asked for when the cache knows the answer
     * @param engine runs the rules with some threads; not asked for then either
     * @param cache  where reports are kept, if anywhere
     */
    public CheckProject(Supplier<SourceReader> reader, IntFunction<RuleEngine> engine, Optional<ReportCache> cache) {
        this.reader = reader;
        this.engine = engine;
        this.cache = cache;
    }

    /**
     * Checks a project.
     *
     * @param threads the most threads to use, at least 1
     * @throws BadCall if not one file could be read
     */
    public Checked check(ProjectPlace place, Settings settings, int threads, Cancel cancel, Progress progress)
            throws BadCall {
        Optional<Map<String, byte[]>> files = cache.isPresent() ? files(place, cancel) : Optional.empty();
        if (files.isEmpty()) {
            return anew(place, reader, settings, Optional.empty(), threads, cancel, progress);
        }
        Map<String, String> prints = ReportCache.prints(files.get());
        String key = cache.get().key(prints, settings);
        Optional<Checked> known = known(place, files.get(), key);
        if (known.isPresent()) {
            return known.get();
        }
        settingUp();
        KeptSources sources = new KeptSources(cache.get(), place.root().toAbsolutePath() + "\n" + place.name(), reader);
        List<Input> inputs = new ArrayList<>();
        files.get().forEach((name, bytes) -> inputs.add(sources.input(name, bytes, prints.get(name))));
        Checked checked = anew(new ProjectPlace(place.name(), place.root(), place.prefix(), inputs), () -> sources,
                settings, cache, threads, cancel, progress);
        cache.get().keep(key, new Kept(checked.contents(), checked.all()));
        sources.keep();
        return checked;
    }

    /** What came of checking a project before; empty when nothing is kept of that. */
    public Optional<Checked> known(ProjectPlace place, Settings settings, Cancel cancel) {
        return cache.flatMap(kept -> files(place, cancel).flatMap(files ->
                known(place, files, kept.key(ReportCache.prints(files), settings))));
    }

    private Optional<Checked> known(ProjectPlace place, Map<String, byte[]> files, String key) {
        return cache.flatMap(kept -> kept.find(key)).map(kept ->
                new Checked(place, kept.contents(), texts(files), kept.report(), Set.of()));
    }

    /** Sets up the reader of sources beside whatever comes next: that takes a while, and something has to be read. */
    private void settingUp() {
        Thread thread = new Thread(new FutureTask<>(reader::get), "setting up");
        thread.setDaemon(true);
        thread.start();
    }

    private Checked anew(ProjectPlace place, Supplier<SourceReader> sources, Settings settings,
            Optional<ReportCache> memory, int threads, Cancel cancel, Progress progress) throws BadCall {
        RuleEngine rules = engine.apply(threads);
        Stock.shipped(); // both before the reader, which may be in the making
        Opened opened = new OpenProject(sources.get(), threads).open(place, cancel, progress);
        Report report = memory.isPresent() ? remembering(memory.get(), rules, opened, settings, cancel, progress)
                : rules.check(opened.project(), settings, cancel, progress);
        List<Finding> findings = report.findings().stream().map(Finding::inWords).toList();
        return Checked.of(opened, new Report(findings, report.work()));
    }

    /** Checks what is not known to be silent from a check of a project that differs in some drawings. */
    private static Report remembering(ReportCache memory, RuleEngine rules, Opened opened, Settings settings,
            Cancel cancel, Progress progress) {
        RuleEngine.Answered answered = rules.check(opened.project(), settings, memory::silences, cancel, progress);
        if (!answered.silences().isEmpty()) {
            memory.keepSilences(answered.scope(), answered.silences());
        }
        return answered.report();
    }

    /** The bytes of all files by name; empty when one cannot be read or is too large, and then nothing is kept. */
    private static Optional<Map<String, byte[]>> files(ProjectPlace place, Cancel cancel) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (Input input : place.inputs()) {
            cancel.check();
            if (input.size() > Loader.LARGEST) {
                return Optional.empty();
            }
            try (InputStream stream = input.content().open()) {
                byte[] bytes = stream.readNBytes(Loader.LARGEST + 1);
                if (bytes.length > Loader.LARGEST || files.put(input.name(), bytes) != null) {
                    return Optional.empty();
                }
            } catch (IOException e) {
                return Optional.empty();
            }
        }
        return Optional.of(files);
    }

    private static Texts texts(Map<String, byte[]> files) {
        Map<String, String> texts = new ConcurrentHashMap<>();
        return file -> texts.computeIfAbsent(file, name -> files.containsKey(name)
                ? TextDecoder.decode(files.get(name)).text() : Stock.textOf(name).orElse(""));
    }
}
