// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.truth;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.IResourceChangeListener;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.loomwright.harness.link.Project;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.project.StockParts;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancelled;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.project.LoomNature;

/** All projects that are open, each with what is known of it. One for the workbench. Safe for several threads. */
public final class Rooms {

    private static final int MOST_THREADS = 8;

    private final Map<IProject, ProjectRoom> rooms = new ConcurrentHashMap<>();
    private final List<Listener> listeners = new CopyOnWriteArrayList<>();
    private final FutureTask<LoomReader> reader = new FutureTask<>(LoomReader::create);
    private final Buffers buffers;
    private final IResourceChangeListener closing = this::closed;

    /** Hears when something new is known of a project; called on a thread that works, never on one that draws. */
    @FunctionalInterface
    public interface Listener {

        /** Something new is known. */
        void told(IProject project, Truth truth);
    }

    /** Asks whether a text that was typed and not saved before the workbench was killed is to be taken over. */
    @FunctionalInterface
    public interface Offer {

        /**
         * Asks, later, and does what is answered; called on a thread that works.
         *
         * @param buffer the file as it is open now
         * @param text   what was typed
         * @param drop   forgets what was typed
         */
        void make(ITextFileBuffer buffer, IFile file, String text, Runnable drop);
    }

    /** @param kept where what is not saved is kept, for when the workbench is killed; need not exist */
    public Rooms(Path kept, Offer offer) {
        buffers = new Buffers(this, new Unsaved(kept, offer));
        buffers.listen();
        ResourcesPlugin.getWorkspace().addResourceChangeListener(closing,
                IResourceChangeEvent.PRE_CLOSE | IResourceChangeEvent.PRE_DELETE);
    }

    /** Returns the room of a project; empty for one that is closed, or is none of ours. */
    public Optional<ProjectRoom> room(IProject project) {
        try {
            if (project == null || !project.isAccessible() || !project.hasNature(LoomNature.ID)) {
                return Optional.empty();
            }
        } catch (CoreException e) {
            return Optional.empty();
        }
        return Optional.of(rooms.computeIfAbsent(project, each -> new ProjectRoom(each,
                reader(), this::nothing, Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()),
                truth -> tell(each, truth))));
    }

    /** Returns what is known of a project, and sees to it that something is known soon. */
    public Optional<Truth> truth(IProject project) {
        Optional<ProjectRoom> room = room(project);
        Optional<Truth> truth = room.flatMap(ProjectRoom::truth);
        if (truth.isEmpty()) {
            room.ifPresent(ProjectRoom::wake);
        }
        return truth;
    }

    /** Adds a listener; a second time makes no difference. */
    public void add(Listener listener) {
        if (!listeners.contains(listener)) {
            listeners.add(listener);
        }
    }

    public void remove(Listener listener) {
        listeners.remove(listener);
    }

    /** Stops all work. */
    public void close() {
        buffers.stop();
        ResourcesPlugin.getWorkspace().removeResourceChangeListener(closing);
        rooms.values().forEach(ProjectRoom::close);
    }

    /** Reads sources, never on a thread that draws; the language is set up when first needed. */
    public SourceReader reader() {
        return OffUi.reader((file, bytes) -> language().read(file, bytes));
    }

    /** A project of which nothing is known yet. */
    private Moment nothing() {
        return Moment.first(Project.link(List.of()), List.of(), false, language().words(), new StockParts(reader()));
    }

    private LoomReader language() {
        reader.run();
        try {
            return reader.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Cancelled();
        } catch (ExecutionException e) {
            throw new IllegalStateException("the language cannot be loaded", e.getCause());
        }
    }

    private void tell(IProject project, Truth truth) {
        for (Listener listener : listeners) {
            try {
                listener.told(project, truth);
            } catch (RuntimeException e) {
                ILog.get().error("a listener failed", e);
            }
        }
    }

    private void closed(IResourceChangeEvent event) {
        IResource resource = event.getResource();
        if (resource instanceof IProject project) {
            ProjectRoom room = rooms.remove(project);
            if (room != null) {
                room.close();
            }
        }
    }
}
