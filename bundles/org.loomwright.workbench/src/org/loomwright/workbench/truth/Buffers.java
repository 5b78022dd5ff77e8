// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.truth;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.IFileBuffer;
import org.eclipse.core.filebuffers.IFileBufferListener;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocumentListener;

/** Tells the rooms what is typed, whichever editor it is typed in, and has it kept until it is saved. */
final class Buffers implements IFileBufferListener {

    private final Rooms rooms;
    private final Unsaved unsaved;
    private final Map<IFileBuffer, IDocumentListener> typing = new ConcurrentHashMap<>();

    Buffers(Rooms rooms, Unsaved unsaved) {
        this.rooms = rooms;
        this.unsaved = unsaved;
    }

    void listen() {
        FileBuffers.getTextFileBufferManager().addFileBufferListener(this);
    }

    void stop() {
        FileBuffers.getTextFileBufferManager().removeFileBufferListener(this);
        unsaved.close();
    }

    @Override
    public void bufferCreated(IFileBuffer buffer) {
        IFile file = file(buffer);
        if (file == null || !(buffer instanceof ITextFileBuffer text)) {
            return;
        }
        IDocumentListener listener = new IDocumentListener() {

            @Override
            public void documentAboutToBeChanged(DocumentEvent event) {
                // what counts is the text afterwards
            }

            @Override
            public void documentChanged(DocumentEvent event) {
                String now = event.getDocument().get();
                rooms.room(file.getProject()).ifPresent(room -> room.edit(ProjectSources.name(file), now));
                unsaved.typed(file, now);
            }
        };
        typing.put(buffer, listener);
        text.getDocument().addDocumentListener(listener);
        unsaved.opened(file, text);
    }

    @Override
    public void bufferDisposed(IFileBuffer buffer) {
        IDocumentListener listener = typing.remove(buffer);
        if (listener == null || !(buffer instanceof ITextFileBuffer text)) {
            return;
        }
        text.getDocument().removeDocumentListener(listener);
        IFile file = file(buffer);
        if (buffer.isDirty() && file != null) {
            unsaved.settled(file);
            if (file.exists()) {
                // what was typed is thrown away: what was saved counts again
                rooms.room(file.getProject()).ifPresent(room -> room.reread(file));
            }
        }
    }

    private static IFile file(IFileBuffer buffer) {
        IPath path = buffer.getLocation();
        if (path == null || path.segmentCount() < 2) {
            return null;
        }
        IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(path);
        return ProjectSources.isSource(file) ? file : null;
    }

    @Override
    public void bufferContentAboutToBeReplaced(IFileBuffer buffer) {
        // the document tells
    }

    @Override
    public void bufferContentReplaced(IFileBuffer buffer) {
        // the document tells
    }

    @Override
    public void stateChanging(IFileBuffer buffer) {
        // not about the text
    }

    @Override
    public void dirtyStateChanged(IFileBuffer buffer, boolean dirty) {
        // the builder hears of what is saved
        IFile file = file(buffer);
        if (!dirty && file != null) {
            unsaved.settled(file);
        }
    }

    @Override
    public void stateValidationChanged(IFileBuffer buffer, boolean validated) {
        // not about the text
    }

    @Override
    public void underlyingFileMoved(IFileBuffer buffer, IPath path) {
        // the builder hears of it
    }

    @Override
    public void underlyingFileDeleted(IFileBuffer buffer) {
        // the builder hears of it
    }

    @Override
    public void stateChangeFailed(IFileBuffer buffer) {
        // the editor tells
    }
}
