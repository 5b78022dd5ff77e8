// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.LinkedProject;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Memory;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;

/**
 * One project while somebody types. It holds the current text of every file, and after each change gives the report
 * that checking all files from the start would give. Only what changed is read, joined and asked about again: a change
 * within a drawing costs that drawing, the networks that it is part of and the harnesses that cover it; a change of the
 * platform or of a catalogue costs everything.
 *
 * <p>Safe for use by several threads, one at a time; never to be called on a thread that draws a window. A call that is
 * cancelled leaves the texts changed and the last report as it was; {@link #check} makes up for it.
 */
public final class EditSession {

    private final Loader loader;
    private final BookRuleEngine engine;
    private final Settings settings;
    private final SortedMap<String, Source> sources = new TreeMap<>();
    private LinkedProject linked;
    private Memory memory = Memory.none();
    private Report report = new Report(List.of(), new Report.Work(0, 0, 0));
    private long asked;
    private boolean joined = true;
    private long afresh;
    private long lastAfresh;

    /**
     * Begins without any file.
     *
     * @param reader   reads one source
     * @param threads  the most threads to read files with, at least 1
     * @param engine   checks
     * @param settings what a check depends on besides the texts
     */
    public EditSession(SourceReader reader, int threads, BookRuleEngine engine, Settings settings) {
        this.loader = new Loader(reader, threads);
        this.linked = LinkedProject.of(List.of(), new StockShelf(reader));
        this.engine = engine;
        this.settings = settings;
    }

    /** Sets the text of several files, and checks. A file that cannot be read is a finding. */
    public synchronized Report open(List<Input> files, Cancel cancel, Progress progress) {
        take(files, cancel, progress);
        return check(cancel, progress);
    }

    /**
     * Sets the text of several files and takes others away, and joins them, without asking any rule. This is the fast
     * half of a check; {@link #check} is the other.
     *
     * @return what is wrong with the texts and their names; {@link #report} is still what was last found
     */
    public synchronized List<Finding> read(List<Input> files, Collection<String> gone, Cancel cancel,
            Progress progress) {
        joined &= gone.stream().noneMatch(sources::containsKey);
        sources.keySet().removeAll(gone);
        take(files, cancel, progress);
        join();
        return BookRuleEngine.problems(linked.project());
    }

    private void take(List<Input> files, Cancel cancel, Progress progress) {
        List<Source> read = loader.load(files, cancel, progress).sources();
        joined &= read.isEmpty();
        read.forEach(source -> sources.put(source.file(), source));
    }

    private void join() {
        if (!joined) {
            linked = linked.again(new ArrayList<>(sources.values()));
            joined = true;
            afresh += linked.afresh();
        }
    }

    /**
     * Sets the text of one file, new or known, and checks.
     *
     * @param file  its name, relative to the project's folder, with {@code /} between folders
     * @param bytes its text as it would be saved; must not change afterwards
     */
    public synchronized Report edit(String file, byte[] bytes, Cancel cancel) {
        return open(List.of(Input.of(file, bytes)), cancel, Progress.NONE);
    }

    /** Takes a file away, and checks; one that is not there makes no difference. */
    public synchronized Report remove(String file, Cancel cancel) {
        joined &= sources.remove(file) == null;
        return check(cancel, Progress.NONE);
    }

    /** Checks the current texts, as far as they are not checked yet. */
    public synchronized Report check(Cancel cancel, Progress progress) {
        join();
        lastAfresh = afresh;
        afresh = 0;
        BookRuleEngine.Checked checked = engine.check(linked.project(), settings, memory, cancel, progress);
        memory = checked.memory();
        report = checked.report();
        asked = checked.asked();
        return report;
    }

    /** Returns the files, joined, as they were when last read or checked. */
    public synchronized Project project() {
        return linked.project();
    }

    /** Returns what was last found. */
    public synchronized Report report() {
        return report;
    }

    /** Returns how much the last check did, for tests that guard growth. */
    public synchronized Work work() {
        return new Work(lastAfresh, asked);
    }

    /**
     * Counters of work; no clock is read.
     *
     * @param joined platforms, drawings and harnesses that were joined afresh since the check before
     * @param asked  calls of rules; the rest was remembered
     */
    public record Work(long joined, long asked) {
    }
}
