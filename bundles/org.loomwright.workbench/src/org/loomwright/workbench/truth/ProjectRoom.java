// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.truth;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.loomwright.app.EditSession;
import org.loomwright.app.load.Input;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.preference.Preferences;

/**
 * One project while its files are edited. Changes are collected and checked by a job; a change that comes meanwhile
 * stops the check that runs, which starts again with both. Only what a change affects is read and checked anew. May be
 * told of changes on any thread; never waits on a thread that draws.
 */
public final class ProjectRoom {

    private final IProject project;
    private final EditSession session;
    private final Consumer<Truth> told;
    private final Map<String, Optional<byte[]>> pending = new LinkedHashMap<>();
    private final AtomicReference<AtomicBoolean> running = new AtomicReference<>(new AtomicBoolean());
    private final Object work = new Object();
    private final Job job;
    /** Solves the circuits that somebody asked about; a change stops it. */
    private final Job solving;
    private final Supplier<Moment> first;
    private boolean loaded;
    private volatile Moment moment;
    private volatile Truth truth;

    ProjectRoom(IProject project, SourceReader reader, Supplier<Moment> first, int threads, Consumer<Truth> told) {
        this.first = first;
        this.project = project;
        this.told = told;
        session = new EditSession(reader, threads, new BookRuleEngine(StandardRules.book(), threads),
                Settings.on(LocalDate.now()));
        job = Job.create("Checking " + project.getName(), this::run);
        job.setPriority(Job.SHORT);
        solving = Job.create("Solving the circuits of " + project.getName(), this::solve);
        solving.setPriority(Job.LONG);
    }

    /** Returns the project. */
    public IProject project() {
        return project;
    }

    /** Returns what is known; empty before the first check. */
    public Optional<Truth> truth() {
        return Optional.ofNullable(truth);
    }

    /** Returns what was last read, for the services of editors; empty before anything was. */
    public Optional<Moment> last() {
        return Optional.ofNullable(moment);
    }

    /**
     * Reads what was typed, without asking any rule, and returns what is read then. Not on a thread that draws.
     *
     * @throws Cancelled if the thread is interrupted
     */
    public Moment moment() {
        OffUi.require("reading " + project.getName());
        synchronized (work) {
            read(new NullProgressMonitor());
            return moment;
        }
    }

    /** Sees to it that circuits are solved, if the answer to a question could not tell what flows in them. */
    public void answered(Moment asked) {
        if (asked.isSolvingWanted() || asked.settled() && asked.isSolvingWelcome()) {
            solving.schedule();
        }
    }

    /** Sees to it that the project is read, soon. */
    public void wake() {
        job.schedule();
    }

    /** A file has another text now, saved or not. */
    public void edit(String file, String text) {
        note(file, Optional.of(text.getBytes(StandardCharsets.UTF_8)));
        job.schedule(Preferences.pause());
    }

    /**
     * Takes changes and checks them at once, on the caller's thread.
     *
     * @param changes the new bytes of files by name; empty for a file that is gone
     * @throws Cancelled if the monitor was cancelled; the changes are kept for the next check
     */
    public Truth take(Map<String, Optional<byte[]>> changes, IProgressMonitor monitor) {
        changes.forEach(this::note);
        return drain(monitor);
    }

    /** What was typed into a file is thrown away; what was saved counts again. */
    void reread(IFile file) {
        Job.createSystem("Reading " + file.getName(), monitor -> {
            note(ProjectSources.name(file), ProjectSources.bytes(file));
            job.schedule();
        }).schedule();
    }

    void close() {
        running.get().set(true);
        job.cancel();
        solving.cancel();
    }

    private void note(String file, Optional<byte[]> bytes) {
        synchronized (pending) {
            pending.put(file, bytes);
        }
        running.get().set(true);
    }

    private IStatus run(IProgressMonitor monitor) {
        try {
            drain(monitor);
            return Status.OK_STATUS;
        } catch (Cancelled e) {
            if (!monitor.isCanceled()) {
                job.schedule(Preferences.pause());
            }
            return Status.CANCEL_STATUS;
        }
    }

    private IStatus solve(IProgressMonitor monitor) {
        Moment now = moment;
        AtomicBoolean stop = running.get();
        try {
            OffUi.require("solving the circuits of " + project.getName());
            now.solve(() -> stop.get() || monitor.isCanceled());
            truth().ifPresent(told);
            return Status.OK_STATUS;
        } catch (Cancelled e) {
            return Status.CANCEL_STATUS;
        } catch (RuntimeException e) {
            ILog.get().error("the circuits of " + project.getName() + " could not be solved", e);
            return Status.OK_STATUS;
        }
    }

    private Truth drain(IProgressMonitor monitor) {
        OffUi.require("checking " + project.getName());
        synchronized (work) {
            AtomicBoolean stop = new AtomicBoolean();
            running.set(stop);
            Cancel cancel = () -> stop.get() || monitor.isCanceled();
            Truth now;
            try {
                Report report = check(cancel, monitor);
                now = new Truth(project.getName(), session.project(), report, Optional.empty());
            } catch (Cancelled e) {
                throw e;
            } catch (RuntimeException | LinkageError | StackOverflowError | OutOfMemoryError e) {
                ILog.get().error("the check of " + project.getName() + " failed", e);
                now = truth().orElseGet(() -> new Truth(project.getName(), session.project(), session.report(),
                        Optional.empty())).failed("the check failed: " + e);
            }
            truth = now;
            told.accept(now);
            if (moment != null) {
                answered(moment);
            }
            return now;
        }
    }

    private Report check(Cancel cancel, IProgressMonitor monitor) {
        read(monitor);
        Report report = session.check(cancel, OffUi.progress(monitor));
        moment = moment.next(session.project(), report.findings(), true);
        return report;
    }

    /** The fast half: reads and joins what is new. A finding of the rules stays where its file did not change. */
    private void read(IProgressMonitor monitor) {
        Map<String, Optional<byte[]>> changes = new LinkedHashMap<>();
        if (!loaded) {
            ProjectSources.of(project).forEach((file, bytes) -> changes.put(file, Optional.of(bytes)));
        }
        synchronized (pending) {
            changes.putAll(pending);
            pending.clear();
        }
        if (loaded && changes.isEmpty()) {
            return;
        }
        loaded = true;
        List<Input> inputs = new ArrayList<>();
        List<String> gone = new ArrayList<>();
        changes.forEach((file, bytes) -> bytes.ifPresentOrElse(all -> inputs.add(Input.of(file, all)),
                () -> gone.add(file)));
        List<Finding> findings = new ArrayList<>(session.read(inputs, gone, Cancel.NEVER, OffUi.progress(monitor)));
        Moment before = moment == null ? first.get() : moment;
        Set<String> known = findings.stream().map(Finding::fingerprint).collect(Collectors.toSet());
        before.findings().stream().filter(each -> !changes.containsKey(each.place().span().file())
                && !known.contains(each.fingerprint())).forEach(findings::add);
        moment = before.next(session.project(), findings, false);
    }
}
