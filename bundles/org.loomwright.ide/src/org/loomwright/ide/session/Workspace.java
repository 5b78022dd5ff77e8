// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.loomwright.app.EditSession;
import org.loomwright.harness.link.Project;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.project.StockParts;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.words.WordReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;

/**
 * The projects that editors have open. Changes are told to it as they happen and go through one queue in that order;
 * what is wrong with texts and names is known at once, what the rules say after a pause, and a change ends whatever is
 * still reading or checking. Safe for use by several threads; no method waits for work to be done.
 *
 * <p>Paths are absolute. The project of a file is found when the file is first told of; see {@link #in} for the folders
 * that bound it.
 */
public final class Workspace implements AutoCloseable {

    private final LoomReader reader;
    private final WordReader words;
    private final StockParts stock;
    private final BookRuleEngine engine;
    private final Settings settings;
    private final Pace pace;
    private final Listener listener;
    private final Map<Path, ProjectSession> projects = new ConcurrentHashMap<>();
    private final Map<Path, ProjectSession> ofFile = new ConcurrentHashMap<>();
    private final Map<ProjectSession, ScheduledFuture<?>> waiting = new ConcurrentHashMap<>();
    private final ExecutorService writing = Executors.newSingleThreadExecutor(threads("loom-write"));
    private final ExecutorService checking = Executors.newSingleThreadExecutor(threads("loom-check"));
    private final ExecutorService reading = Executors.newFixedThreadPool(2, threads("loom-read"));
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(threads("loom-clock"));
    /** The folders whose projects are known; used by the writing thread. */
    private final Set<Path> sought = new HashSet<>();
    private volatile List<Path> folders = List.of();

    /**
     * @param reader   reads sources
     * @param engine   checks
     * @param settings what a check depends on besides the texts
     * @param pace     how patient it is
     * @param listener hears what is found
     */
    public Workspace(LoomReader reader, BookRuleEngine engine, Settings settings, Pace pace, Listener listener) {
        this.reader = reader;
        this.words = reader.words();
        this.stock = new StockParts(reader);
        this.engine = engine;
        this.settings = settings;
        this.pace = pace;
        this.listener = listener;
        long look = pace.look().toMillis();
        if (look > 0) {
            clock.scheduleWithFixedDelay(this::look, look, look, TimeUnit.MILLISECONDS);
        }
    }

    private static ThreadFactory threads(String name) {
        return task -> {
            Thread thread = new Thread(null, task, name, 1 << 26);
            thread.setDaemon(true);
            return thread;
        };
    }

    /** The folders that an editor has open: no project reaches beyond them. */
    public void in(List<Path> open) {
        folders = open.stream().map(Workspace::plain).toList();
    }

    /** Opens a project by its folder, before any of its files is. */
    public void project(Path folder) {
        write(() -> session(plain(folder)));
    }

    /**
     * An editor was opened on a file, with this text. Where that is what was read from disk, nothing is read or checked
     * again. What an editor asks for next is prepared.
     */
    public void opened(Path file, int version, String text) {
        Path plain = plain(file);
        write(() -> {
            ProjectSession session = of(plain);
            String name = session.name(plain);
            if (session.isRead(name, text)) {
                session.openedAsRead(name, version, text);
                ScheduledFuture<?> pausing = waiting.get(session);
                if (pausing == null || !pausing.isDone()) {
                    deepLater(session, Duration.ZERO); // nobody is typing, or it was only read so far
                }
            } else {
                session.disturb();
                session.buffer(name, version, text);
                deepLater(session, pace.pause());
            }
            Moment moment = session.moment();
            reading.execute(() -> moment.words(name));
        });
    }

    /** The text in an editor is now this. */
    public void changed(Path file, int version, String text) {
        Path plain = plain(file);
        Optional.ofNullable(ofFile.get(plain)).ifPresent(ProjectSession::disturb);
        write(() -> {
            ProjectSession session = of(plain);
            session.buffer(session.name(plain), version, text);
            deepLater(session, pace.pause());
        });
    }

    /** The editor of a file was closed; what was not saved is gone. */
    public void closed(Path file) {
        Path plain = plain(file);
        write(() -> {
            ProjectSession session = ofFile.get(plain);
            if (session != null) {
                session.disturb();
                session.unbuffer(session.name(plain));
                deepLater(session, pace.pause());
            }
        });
    }

    /** Files may have changed on disk, appeared or gone. */
    public void refresh() {
        write(() -> projects.values().forEach(session -> {
            if (session.refresh(progress(session))) {
                deepLater(session, pace.pause());
            }
        }));
    }

    /** Looks at the disk beside the queue, which has to do with it only when something changed. */
    private void look() {
        try {
            for (ProjectSession session : projects.values()) {
                Disk.Difference now = session.look();
                if (!now.isNone()) {
                    write(() -> {
                        if (session.apply(now, progress(session))) {
                            deepLater(session, pace.pause());
                        }
                    });
                }
            }
        } catch (RuntimeException failed) {
            trouble("the disk could not be looked at", failed);
        }
    }

    /**
     * Asks a question about a file, after all changes that were told before. The future fails with
     * {@link Cancelled} when the project changes before there is an answer, and when the caller cancels it.
     */
    public <T> CompletableFuture<T> ask(Path file, Question<T> question) {
        Path plain = plain(file);
        return ask(() -> of(plain), session -> session.name(plain), question);
    }

    /** Opens the projects of the folders that no file was opened of so far: read for questions, not checked. */
    private void seek() {
        for (Path folder : folders) {
            if (sought.add(folder)) {
                for (Path root : ProjectRoots.below(folder)) {
                    if (projects.keySet().stream().noneMatch(open -> root.startsWith(open) || open.startsWith(root))) {
                        read(root);
                    }
                }
            }
        }
    }

    /**
     * Asks every project of the folders after all changes that were told before, in order of their folders; instead of
     * the name of a file the question gets the path of the project's folder.
     */
    public <T> CompletableFuture<List<T>> askAll(Question<T> question) {
        CompletableFuture<List<T>> all = new CompletableFuture<>();
        write(() -> {
            seek();
            List<CompletableFuture<T>> answers = projects.values().stream()
                    .sorted(Comparator.comparing(ProjectSession::root))
                    .map(session -> ask(() -> session, each -> each.root().toString(), question)).toList();
            all.whenComplete((done, failed) -> answers.forEach(each -> each.cancel(true)));
            CompletableFuture.allOf(answers.toArray(CompletableFuture[]::new)).whenComplete((done, failed) -> {
                if (failed == null) {
                    all.complete(answers.stream().map(CompletableFuture::join).toList());
                } else {
                    all.completeExceptionally(failed);
                }
            });
        }, all);
        return all;
    }

    private <T> CompletableFuture<T> ask(Supplier<ProjectSession> of,
            Function<ProjectSession, String> name, Question<T> question) {
        CompletableFuture<T> answer = new CompletableFuture<>();
        write(() -> {
            ProjectSession session = of.get();
            Moment moment = session.moment();
            Cancel disturbed = session.untilDisturbed();
            Cancel cancel = () -> disturbed.cancelled() || answer.isDone();
            reading.execute(() -> {
                try {
                    cancel.check();
                    answer.complete(question.answer(moment, name.apply(session), cancel));
                    if (moment.isSolvingWanted()) {
                        checking.execute(() -> solve(session, moment, disturbed));
                    } else if (moment.isSolvingWelcome()) {
                        write(() -> solveWhenSettled(session));
                    }
                } catch (Throwable failed) {
                    answer.completeExceptionally(failed);
                }
            });
        }, answer);
        return answer;
    }

    /** What nobody is in a hurry for: after all rules, and not at all while somebody types. */
    private void solveWhenSettled(ProjectSession session) {
        Moment now = session.moment();
        if (now.settled() && now.isSolvingWelcome()) {
            Cancel cancel = session.untilDisturbed();
            checking.execute(() -> solve(session, now, cancel));
        }
    }

    /** Solves circuits that somebody asked about, on the checking thread; gives way to the next change. */
    private void solve(ProjectSession session, Moment moment, Cancel cancel) {
        try {
            if (moment.isSolvingWanted() || moment.isSolvingWelcome()) {
                moment.solve(cancel);
                write(() -> listener.solved(session.root()));
            }
        } catch (Cancelled changed) {
            // whoever asks again starts it again
        } catch (RuntimeException failed) {
            trouble("the circuits could not be solved", failed);
        }
    }

    /** Done when everything told so far is checked by all rules, whatever the pause. */
    public CompletableFuture<Void> settled() {
        CompletableFuture<Void> done = new CompletableFuture<>();
        write(() -> {
            List<CompletableFuture<Void>> all = new ArrayList<>();
            for (ProjectSession session : projects.values()) {
                if (!session.moment().settled()) {
                    cancelWaiting(session);
                    all.add(deep(session));
                }
            }
            CompletableFuture.allOf(all.toArray(CompletableFuture[]::new)).whenComplete((nothing, failed) -> {
                if (failed == null) {
                    done.complete(null);
                } else {
                    done.completeExceptionally(failed);
                }
            });
        }, done);
        return done;
    }

    /** The file in the project that a path is in: where names of its findings and spans start from. */
    public Optional<Path> rootOf(Path file) {
        return Optional.ofNullable(ofFile.get(plain(file))).map(ProjectSession::root);
    }

    private void write(Runnable change) {
        write(change, new CompletableFuture<>());
    }

    private void write(Runnable change, CompletableFuture<?> waits) {
        try {
            writing.execute(() -> {
                try {
                    change.run();
                } catch (Throwable failed) {
                    trouble("a change could not be followed", failed);
                    waits.completeExceptionally(failed);
                }
            });
        } catch (RejectedExecutionException closed) {
            waits.completeExceptionally(new Cancelled());
        }
    }

    private ProjectSession of(Path file) {
        ProjectSession known = ofFile.get(file);
        if (known == null) {
            Optional<Path> bound = folders.stream().filter(file::startsWith)
                    .max(Comparator.comparingInt(Path::getNameCount));
            Optional<Path> open = projects.keySet().stream().filter(file::startsWith)
                    .max(Comparator.comparingInt(Path::getNameCount));
            known = session(open.orElseGet(() -> ProjectRoots.of(file, bound)));
            ofFile.put(file, known);
        }
        return known;
    }

    private ProjectSession session(Path root) {
        ProjectSession known = projects.get(root);
        if (known == null) {
            known = read(root);
            deepLater(known, pace.pause());
        }
        return known;
    }

    private ProjectSession read(Path root) {
        EditSession edit = new EditSession(reader.forEdits(), Runtime.getRuntime().availableProcessors(), engine,
                settings);
        ProjectSession read = new ProjectSession(root, edit,
                Moment.first(Project.link(List.of()), List.of(), false, words, stock), listener);
        projects.put(root, read);
        read.refresh(progress(read));
        return read;
    }

    private Progress progress(ProjectSession session) {
        return (what, done, total) -> listener.progress(session.root(), what, done, total);
    }

    private void cancelWaiting(ProjectSession session) {
        ScheduledFuture<?> before = waiting.remove(session);
        if (before != null) {
            before.cancel(false);
        }
    }

    private void deepLater(ProjectSession session, Duration pause) {
        cancelWaiting(session);
        if (!session.moment().settled()) {
            waiting.put(session, clock.schedule(() -> write(() -> deep(session)), pause.toMillis(),
                    TimeUnit.MILLISECONDS));
        }
    }

    /** Asks all rules, on the checking thread; called by the writing thread. */
    private CompletableFuture<Void> deep(ProjectSession session) {
        Cancel cancel = session.untilDisturbed();
        CompletableFuture<Void> done = new CompletableFuture<>();
        checking.execute(() -> {
            try {
                ProjectSession.Deep deep = session.deep(cancel, progress(session));
                write(() -> {
                    session.settle(deep, cancel);
                    done.complete(null);
                    solveWhenSettled(session);
                }, done);
            } catch (Throwable failed) {
                if (!(failed instanceof Cancelled)) {
                    trouble("the check of " + session.root().getFileName() + " failed", failed);
                }
                done.completeExceptionally(failed);
            } finally {
                listener.progress(session.root(), "", 0, 0);
            }
        });
        return done;
    }

    private void trouble(String what, Throwable failed) {
        String why = failed.getClass().getSimpleName() + (failed.getMessage() == null ? ""
                : ": " + failed.getMessage().lines().findFirst().orElse(""));
        listener.trouble(what + " (" + why + "); a fault of Loomwright, which goes on without it");
    }

    private static Path plain(Path path) {
        return path.toAbsolutePath().normalize();
    }

    /** Forgets everything. What is running is cancelled; nothing is told any more. */
    @Override
    public void close() {
        clock.shutdownNow();
        projects.values().forEach(ProjectSession::disturb);
        writing.shutdown();
        checking.shutdownNow();
        reading.shutdown();
    }
}
