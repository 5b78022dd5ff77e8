// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.util.List;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/** Places in a text: offsets here, lines and characters from 0 there, both in UTF-16 units. */
final class Places {

    private Places() {
    }

    /** The offset of a position; one beyond the end of its line or of the text is the end. */
    static int offset(LineIndex lines, Position position) {
        String text = lines.text();
        int last = lines.line(text.length());
        if (position.getLine() >= last) {
            return text.length();
        }
        int start = lines.start(Math.max(0, position.getLine()) + 1);
        int end = text.indexOf('\n', start);
        end = end < 0 ? text.length() : end;
        end = end > start && text.charAt(end - 1) == '\r' ? end - 1 : end;
        return Math.clamp((long) start + position.getCharacter(), start, end);
    }

    static Position position(LineIndex lines, int offset) {
        int at = Math.clamp(offset, 0, lines.text().length());
        return new Position(lines.line(at) - 1, lines.column(at) - 1);
    }

    static Range range(LineIndex lines, int from, int to) {
        return new Range(position(lines, from), position(lines, to));
    }

    static Range range(LineIndex lines, Span span) {
        return range(lines, span.offset(), span.end());
    }

    static List<org.eclipse.lsp4j.TextEdit> edits(LineIndex lines, List<TextEdit> edits) {
        return edits.stream().map(edit -> new org.eclipse.lsp4j.TextEdit(range(lines, edit.span()), edit.text()))
                .toList();
    }
}
