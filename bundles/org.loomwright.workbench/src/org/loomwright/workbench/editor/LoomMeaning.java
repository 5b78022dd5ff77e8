// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextPresentationListener;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.ITextViewerExtension2;
import org.eclipse.jface.text.ITextViewerExtension4;
import org.eclipse.jface.text.IViewportListener;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Display;
import org.loomwright.ide.Services;
import org.loomwright.ide.outline.Colouring.Tint;
import org.loomwright.ide.outline.Colouring.Tinted;
import org.loomwright.ide.project.Moment;
import org.loomwright.workbench.text.Inks;

/**
 * Colours of the text by what its words mean, on top of those by its words alone: a word of the language that is used
 * as a name is no keyword. Only the lines that are seen are coloured anew. What was read before the last keys stays
 * where the text did not change.
 */
public final class LoomMeaning extends Following {

    private final ITextPresentationListener colouring = this::colour;
    private final IViewportListener scrolled = top -> seen();
    private volatile Read read = new Read("", List.of());

    /** A text, and what its words are. */
    private record Read(String text, List<Tinted> words) {
    }

    @Override
    public void install(ITextViewer text) {
        super.install(text);
        if (text instanceof ITextViewerExtension4 painted) {
            painted.addTextPresentationListener(colouring);
            text.addViewportListener(scrolled);
        }
    }

    @Override
    public void uninstall() {
        if (viewer() instanceof ITextViewerExtension4 painted) {
            painted.removeTextPresentationListener(colouring);
            viewer().removeViewportListener(scrolled);
        }
        super.uninstall();
    }

    @Override
    void look(Moment moment, String file) {
        List<Tinted> words = Services.colours(moment, file);
        if (!words.equals(read.words()) || !moment.text(file).equals(read.text())) {
            read = new Read(moment.text(file), words);
            Display.getDefault().asyncExec(this::seen);
        }
    }

    /** Has the lines that are seen coloured anew. */
    private void seen() {
        IDocument document = viewer().getDocument();
        if (document == null || viewer().getTextWidget() == null || viewer().getTextWidget().isDisposed()) {
            return;
        }
        int start = viewer().getTopIndexStartOffset();
        int end = next(document, viewer().getBottomIndexEndOffset());
        if (start >= 0 && end > start && viewer() instanceof ITextViewerExtension2 painted) {
            painted.invalidateTextPresentation(start, end - start);
        }
    }

    /** The end of the line after an offset's, which may be seen in part. */
    private static int next(IDocument document, int offset) {
        try {
            int line = Math.min(document.getLineOfOffset(Math.max(0, offset)) + 1, document.getNumberOfLines() - 1);
            return document.getLineOffset(line) + document.getLineLength(line);
        } catch (BadLocationException e) {
            return document.getLength();
        }
    }

    private void colour(TextPresentation presentation) {
        Read known = read;
        IDocument document = viewer().getDocument();
        IRegion extent = presentation.getExtent();
        if (known.words().isEmpty() || document == null || extent == null) {
            return;
        }
        String now = document.get();
        int same = same(known.text(), now);
        int rest = rest(known.text(), now, same);
        int moved = now.length() - known.text().length();
        int from = extent.getOffset();
        int to = from + extent.getLength();
        for (int i = first(known.words(), Math.min(from, from - moved)); i < known.words().size(); i++) {
            Tinted word = known.words().get(i);
            boolean before = word.offset() + word.length() <= same;
            boolean after = word.offset() >= known.text().length() - rest;
            int offset = after ? word.offset() + moved : word.offset();
            if (word.offset() > Math.max(to, to - moved)) {
                return;
            }
            if ((before || after) && offset >= from && offset + word.length() <= to) {
                presentation.replaceStyleRange(style(offset, word));
            }
        }
    }

    /** How many characters two texts have in common at their beginning. */
    private static int same(String one, String other) {
        int most = Math.min(one.length(), other.length());
        int same = 0;
        while (same < most && one.charAt(same) == other.charAt(same)) {
            same++;
        }
        return same;
    }

    /** How many they have in common at their end, without those at the beginning. */
    private static int rest(String one, String other, int same) {
        int most = Math.min(one.length(), other.length()) - same;
        int rest = 0;
        while (rest < most && one.charAt(one.length() - 1 - rest) == other.charAt(other.length() - 1 - rest)) {
            rest++;
        }
        return rest;
    }

    /** The first word that ends behind an offset. */
    private static int first(List<Tinted> words, int offset) {
        int low = 0;
        int high = words.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (words.get(middle).offset() + words.get(middle).length() <= offset) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static StyleRange style(int offset, Tinted word) {
        Color ink = switch (word.tint()) {
            case KEYWORD -> Inks.KEYWORD.colour();
            case COMMENT -> Inks.COMMENT.colour();
            case TEXT -> Inks.TEXT.colour();
            case NAME -> Inks.NAME.colour();
            case NUMBER, UNIT -> Inks.FIGURE.colour();
            case REFERENCE, CHOICE, PIN, WIRE_COLOUR, WORD, MARK, UNREAD -> null;
        };
        int weight = word.tint() == Tint.KEYWORD ? SWT.BOLD
                : word.tint() == Tint.COMMENT || word.tint() == Tint.CHOICE ? SWT.ITALIC : SWT.NORMAL;
        return new StyleRange(offset, word.length(), ink, null, weight);
    }
}
