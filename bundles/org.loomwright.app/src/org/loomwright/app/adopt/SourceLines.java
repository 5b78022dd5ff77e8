// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.adopt;

import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/** The text of one file as lines that are moved as a whole. Lines count from 1. */
final class SourceLines {

    private final String text;
    private final LineIndex index;
    private final int last;

    SourceLines(String file, String text) {
        this.text = text;
        index = new LineIndex(file, text);
        last = index.line(text.length());
    }

    String file() {
        return index.file();
    }

    int length() {
        return text.length();
    }

    /** The line end that the file uses. */
    String lineEnd() {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }

    int line(Span span) {
        return index.line(Math.min(span.offset(), text.length()));
    }

    private int lastLine(Span span) {
        return index.line(Math.min(text.length(), Math.max(span.offset(), span.end() - 1)));
    }

    /** Where a line starts; the end of the text for one behind the last. */
    int start(int line) {
        return line > last ? text.length() : index.start(line);
    }

    String text(Span span) {
        return text.substring(Math.min(span.offset(), text.length()), Math.min(span.end(), text.length()));
    }

    /** A line without its end. */
    String lineText(int line) {
        return text.substring(start(line), start(line + 1)).stripTrailing();
    }

    /** The first line of a span. */
    String lineText(Span span) {
        return lineText(line(span));
    }

    /** The lines of a span with the comment lines right above, each ended. */
    String block(Span span, String end) {
        StringBuilder block = new StringBuilder();
        for (int line = first(span); line <= lastLine(span); line++) {
            block.append(lineText(line)).append(end);
        }
        return block.toString();
    }

    /** Where the line after a span starts. */
    int after(Span span) {
        return start(lastLine(span) + 1);
    }

    TextEdit insertion(int offset, String lines) {
        boolean open = offset > 0 && offset == text.length() && text.charAt(offset - 1) != '\n';
        return new TextEdit(index.span(offset, 0), open ? lineEnd() + lines : lines);
    }

    /** Takes the lines of a span away, with the comment lines right above. */
    TextEdit removal(Span span) {
        int from = start(first(span));
        return new TextEdit(index.span(from, after(span) - from), "");
    }

    TextEdit removal(int line) {
        return new TextEdit(index.span(start(line), start(line + 1) - start(line)), "");
    }

    TextEdit replaceLine(Span span, String with) {
        int line = line(span);
        return new TextEdit(index.span(start(line), lineText(line).length()), with);
    }

    private int first(Span span) {
        int first = line(span);
        while (first > 1 && lineText(first - 1).strip().startsWith("//")) {
            first--;
        }
        return first;
    }
}
