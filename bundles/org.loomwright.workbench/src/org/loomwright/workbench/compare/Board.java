// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

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

    private SourceViewer left;
    private SourceViewer right;
    private Runnable changed = () -> { };

    private Board() {
    }

    static Board of(CompareConfiguration configuration) {
        if (configuration.getProperty(KEY) instanceof Board board) {
            return board;
        }
        Board board = new Board();
        configuration.setProperty(KEY, board);
        return board;
    }

    void sides(SourceViewer atLeft, SourceViewer atRight) {
        left = atLeft;
        right = atRight;
    }

    /** Sets who hears of a text that was changed from the tree. */
    void whenChanged(Runnable listener) {
        changed = listener;
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
        changed.run();
    }

    private SourceViewer viewer(boolean atLeft) {
        SourceViewer viewer = atLeft ? left : right;
        return viewer == null || viewer.getDocument() == null || viewer.getControl().isDisposed() ? null : viewer;
    }
}
