// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.source.SourceViewer;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/**
 * What the tree of changes and the text below it know of each other within one comparison. Lives with the settings of
 * the comparison; on the thread that draws only.
 */
final class Board {

    private static final String KEY = "org.loomwright.workbench.board";

    private final CompareConfiguration configuration;
    private final List<Runnable> changed = new ArrayList<>();
    private SourceViewer first;
    private SourceViewer second;

    private Board(CompareConfiguration configuration) {
        this.configuration = configuration;
    }

    static Board of(CompareConfiguration configuration) {
        if (configuration.getProperty(KEY) instanceof Board board) {
            return board;
        }
        Board board = new Board(configuration);
        configuration.setProperty(KEY, board);
        return board;
    }

    /** Sets the viewers as they stand on the screen, from left to right. */
    void viewers(SourceViewer atLeft, SourceViewer atRight) {
        first = atLeft;
        second = atRight;
    }

    /** Adds somebody who hears of a text that was changed from the tree. */
    void whenChanged(Runnable listener) {
        changed.add(listener);
    }

    /** Returns whether the left side of the comparison stands at the right of the screen, as a person may choose. */
    boolean isMirrored() {
        return configuration.isMirrored();
    }

    /** Shows a place on one side. */
    void reveal(boolean atLeft, Span span) {
        SourceViewer viewer = viewer(atLeft);
        if (viewer == null) {
            return;
        }
        int length = viewer.getDocument().getLength();
        int offset = Math.min(span.offset(), length);
        viewer.revealRange(offset, Math.min(span.length(), length - offset));
        viewer.setSelectedRange(offset, Math.min(span.length(), length - offset));
    }

    /** Returns whether a side can be changed now. */
    boolean isEditable(boolean atLeft) {
        SourceViewer viewer = viewer(atLeft);
        return viewer != null && viewer.isEditable();
    }

    /** Returns the text of a side as it is shown; null while it is not. */
    String text(boolean atLeft) {
        SourceViewer viewer = viewer(atLeft);
        return viewer == null ? null : viewer.getDocument().get();
    }

    /** Changes the text of a side. The edits must not overlap. */
    void apply(boolean atLeft, List<TextEdit> edits) {
        IDocument document = viewer(atLeft).getDocument();
        String text = TextEdit.apply(document.get(), edits);
        String before = document.get();
        int start = 0;
        while (start < Math.min(text.length(), before.length()) && text.charAt(start) == before.charAt(start)) {
            start++;
        }
        int end = 0;
        while (end < Math.min(text.length(), before.length()) - start
                && text.charAt(text.length() - 1 - end) == before.charAt(before.length() - 1 - end)) {
            end++;
        }
        try {
            document.replace(start, before.length() - end - start, text.substring(start, text.length() - end));
        } catch (BadLocationException e) {
            throw new IllegalStateException(e);
        }
        List.copyOf(changed).forEach(Runnable::run);
    }

    private SourceViewer viewer(boolean atLeft) {
        SourceViewer viewer = atLeft != isMirrored() ? first : second;
        return viewer == null || viewer.getDocument() == null || viewer.getControl().isDisposed() ? null : viewer;
    }
}
