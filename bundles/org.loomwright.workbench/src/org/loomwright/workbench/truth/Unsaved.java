// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.truth;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.jobs.Job;
import org.loomwright.app.BadCall;
import org.loomwright.app.write.WholeFiles;

/**
 * What is typed and not saved, kept on disk so that it is there when the workbench was killed. A text is kept a moment
 * after somebody typed, and dropped when the file is saved or what was typed is thrown away. When a file is opened of
 * which a text is kept, that text is offered. May be told on any thread; touches the disk in a job of its own.
 */
final class Unsaved {

    private static final long PAUSE = 1_000;

    private final Path folder;
    private final Rooms.Offer offer;
    /** What is to be kept; empty for what is to be dropped. */
    private final Map<IPath, Optional<String>> pending = new HashMap<>();
    private final Job job = Job.createSystem("Keeping what is not saved", monitor -> {
        write();
    });

    /** @param folder where the texts are kept; need not exist */
    Unsaved(Path folder, Rooms.Offer offer) {
        this.folder = folder;
        this.offer = offer;
    }

    /** A file has a text that is not saved. */
    void typed(IFile file, String text) {
        note(file, Optional.of(text));
    }

    /** A file has no text any more that is not saved. */
    void settled(IFile file) {
        note(file, Optional.empty());
    }

    /** A file is opened: offers what is kept of it. */
    void opened(IFile file, ITextFileBuffer buffer) {
        Job.createSystem("Looking for what was not saved", monitor -> {
            Path kept = place(file.getFullPath());
            try {
                String text = Files.readString(kept);
                if (text.equals(buffer.getDocument().get())) {
                    Files.deleteIfExists(kept);
                } else if (!buffer.isDirty()) {
                    offer.make(buffer, file, text, () -> settled(file));
                }
            } catch (NoSuchFileException none) {
                // nothing is kept of it
            } catch (IOException e) {
                ILog.get().error("what was not saved of " + file.getFullPath() + " cannot be read", e);
            }
        }).schedule();
    }

    /** Writes at once what is still to be written. */
    void close() {
        job.cancel();
        write();
    }

    private void note(IFile file, Optional<String> text) {
        synchronized (pending) {
            pending.put(file.getFullPath(), text);
        }
        job.schedule(PAUSE);
    }

    private synchronized void write() {
        Map<IPath, Optional<String>> now;
        synchronized (pending) {
            now = new HashMap<>(pending);
            pending.clear();
        }
        now.forEach((path, text) -> {
            try {
                if (text.isPresent()) {
                    Files.createDirectories(folder);
                    new WholeFiles().add(place(path), text.get().getBytes(StandardCharsets.UTF_8)).write();
                } else {
                    Files.deleteIfExists(place(path));
                }
            } catch (IOException | BadCall e) {
                ILog.get().warn("what is not saved of " + path + " cannot be kept", e);
            }
        });
    }

    private Path place(IPath path) {
        return folder.resolve(UUID.nameUUIDFromBytes(path.toString().getBytes(StandardCharsets.UTF_8)) + ".txt");
    }
}
