// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.session.Question;
import org.loomwright.quantity.Cancelled;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.ProjectRoom;
import org.loomwright.workbench.truth.ProjectSources;

/** From a document of an editor to the project that it belongs to. */
public final class Asking {

    private Asking() {
    }

    /** A source that is open in an editor, and its project. */
    public record Open(IFile file, String name, ProjectRoom room) {
    }

    /** Finds the source behind a viewer. */
    public static Optional<Open> of(ITextViewer viewer) {
        return viewer == null || viewer.getDocument() == null ? Optional.empty() : of(viewer.getDocument());
    }

    /** Finds the source behind a document; empty for what is no source of a project of ours. */
    public static Optional<Open> of(IDocument document) {
        ITextFileBuffer buffer = FileBuffers.getTextFileBufferManager().getTextFileBuffer(document);
        if (buffer == null || buffer.getLocation() == null || buffer.getLocation().segmentCount() < 2) {
            return Optional.empty();
        }
        IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(buffer.getLocation());
        if (!ProjectSources.isSource(file)) {
            return Optional.empty();
        }
        return Shared.rooms().room(file.getProject()).map(room -> new Open(file, ProjectSources.name(file), room));
    }

    /**
     * Asks a question about the text as it is now; waits for what was typed to be read. Not on a thread that draws.
     *
     * @return the answer; the other value when there is none, or when somebody types on
     */
    public static <T> T ask(Open open, Question<T> question, T otherwise) {
        try {
            Moment moment = open.room().moment();
            T answer = moment.has(open.name()) ? question.answer(moment, open.name(), () -> Thread.interrupted())
                    : otherwise;
            open.room().answered(moment);
            return answer;
        } catch (Cancelled e) {
            return otherwise;
        }
    }

    /**
     * What was last read, if it is the text that the document holds now. Takes no time, so that it may be called on a
     * thread that draws.
     */
    public static Optional<Moment> last(Open open, IDocument document) {
        return open.room().last().filter(moment -> moment.has(open.name())
                && moment.text(open.name()).length() == document.getLength()
                && moment.text(open.name()).equals(document.get()));
    }
}
