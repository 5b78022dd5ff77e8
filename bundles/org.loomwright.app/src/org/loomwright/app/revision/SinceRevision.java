// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.loomwright.app.BadCall;
import org.loomwright.app.CheckProject;
import org.loomwright.app.Checked;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;

/**
 * What a change brought: the project as it was at a revision is checked as well, on the same day, and the findings that
 * it had are set aside. Findings are known by their fingerprints, which stay when lines move. A problem of the text is
 * never set aside, since anything may hide behind it.
 */
public final class SinceRevision {

    private final CheckProject check;
    private final RevisionReader reader;
    private final String revision;
    private final Map<String, FutureTask<Before>> begun = new LinkedHashMap<>();

    /**
     * @param check    checks a project
     * @param reader   reads the revision
     * @param revision what the caller calls it
     */
    public SinceRevision(CheckProject check, RevisionReader reader, String revision) {
        this.check = check;
        this.reader = reader;
        this.revision = revision;
    }

    /** Reads the revision with git. A caller that asks for none loads nothing of what reads it. */
    public static SinceRevision inGit(CheckProject check, String revision) {
        return new SinceRevision(check, new GitReader(), revision);
    }

    /**
     * What a revision had already, in all projects of a call together.
     *
     * @param revision what the caller calls it
     * @param fresh    findings that count and are new
     * @param known    findings that were there and are set aside
     * @param gone     findings that counted then and are there no more
     * @param absent   names of projects that the revision does not have: all in them is new
     */
    public record Since(String revision, int fresh, int known, int gone, List<String> absent) {

        public Since {
            absent = List.copyOf(absent);
        }
    }

    /**
     * A project as it was.
     *
     * @param place its sources; empty when the revision has none
     * @param known what came of checking them, when that is kept
     */
    private record Before(Optional<ProjectPlace> place, Optional<Checked> known) {
    }

    /**
     * Begins to read the revision, beside whatever the caller does next: the same projects are going to be asked for.
     * What goes wrong is told then.
     *
     * @param base the folder that the caller is in
     */
    public void begin(Path base, List<ProjectPlace> projects, Settings settings) {
        for (ProjectPlace each : projects) {
            begun.put(name(each), new FutureTask<>(() -> read(base, each, settings)));
        }
        List<FutureTask<Before>> all = List.copyOf(begun.values());
        Thread thread = new Thread(() -> all.forEach(FutureTask::run), "revision");
        thread.setDaemon(true);
        thread.start();
    }

    private static String name(ProjectPlace project) {
        return project.root() + "\n" + project.prefix() + "\n" + project.name();
    }

    private Before read(Path base, ProjectPlace now, Settings settings) throws BadCall {
        Optional<ProjectPlace> place = new Then(reader, base).of(now, revision);
        return new Before(place, place.flatMap(then -> check.known(then, settings, Cancel.NEVER)));
    }

    /** What was begun, or what is read now. */
    private Before before(Path base, ProjectPlace now, Settings settings) throws BadCall {
        FutureTask<Before> begun = this.begun.get(name(now));
        if (begun == null) {
            return read(base, now, settings);
        }
        try {
            return begun.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while a revision was read", e);
        } catch (ExecutionException e) {
            switch (e.getCause()) {
                case BadCall ours -> throw ours;
                case RuntimeException ours -> throw ours;
                case Error ours -> throw ours;
                default -> throw new IllegalStateException(e.getCause());
            }
        }
    }

    /**
     * Sets aside what was there before.
     *
     * @param base     the folder that the caller is in
     * @param projects projects that were checked; each is replaced by itself without what was there
     * @throws BadCall if there is no repository or no such revision
     */
    public Since apply(Path base, List<Checked> projects, Settings settings, Cancel cancel, Progress progress)
            throws BadCall {
        int fresh = 0;
        int known = 0;
        int gone = 0;
        List<String> absent = new ArrayList<>();
        for (int i = 0; i < projects.size(); i++) {
            Checked now = projects.get(i);
            Before was = before(base, now.place(), settings);
            Set<String> before = new HashSet<>();
            if (was.place().isEmpty()) {
                absent.add(now.place().name());
            } else {
                Checked then = was.known().isPresent() ? was.known().get() : check.check(was.place().get(), settings,
                        Runtime.getRuntime().availableProcessors(), cancel, progress);
                then.all().findings().stream().filter(Checked::canBeKnown).map(Finding::fingerprint)
                        .forEach(before::add);
            }
            Checked rest = now.settingAside(before);
            projects.set(i, rest);
            fresh += rest.report().counting().size();
            known += rest.known().size();
            now.all().findings().forEach(finding -> before.remove(finding.fingerprint()));
            gone += before.size();
        }
        return new Since(revision, fresh, known, gone, absent);
    }

    /**
     * Finds a project as it was.
     *
     * @param reader reads revisions
     * @param base   the folder that the caller is in
     */
    record Then(RevisionReader reader, Path base) {

        /** The same folder, or the same files, at the revision; files that it does not have are left out. */
        Optional<ProjectPlace> of(ProjectPlace now, String revision) throws BadCall {
            boolean files = now.root().equals(base) && now.prefix().isEmpty();
            if (!files) {
                return reader.find(now.root(), revision, ".", false);
            }
            List<Input> inputs = new ArrayList<>();
            for (Input each : now.inputs()) {
                Optional<ProjectPlace> file = reader.find(base, revision, each.name(), false);
                file.map(place -> place.inputs().getFirst())
                        .ifPresent(input -> inputs.add(new Input(each.name(), input.size(), input.content())));
            }
            return inputs.isEmpty() ? Optional.empty()
                    : Optional.of(new ProjectPlace(now.name(), now.root(), revision + ":", inputs));
        }
    }
}
