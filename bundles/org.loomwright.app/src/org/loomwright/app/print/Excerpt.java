// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import org.loomwright.harness.Span;

/**
 * One line of a source with a span marked below it.
 *
 * @param line  the line's number, from 1
 * @param text  the line as a terminal shows it, shortened around the span when it is long
 * @param marks spaces, then carets below the span
 */
record Excerpt(int line, String text, String marks) {

    private static final int MOST_COLUMNS = 160;
    private static final int LEAD = 40;
    private static final String CUT = "...";

    /**
     * Shows the first line of a span. Takes time linear in the length of that line.
     *
     * @param source the whole text that the span counts characters of
     */
    static Excerpt of(String source, Span span) {
        int offset = Math.min(span.offset(), source.length());
        int start = source.lastIndexOf('\n', offset - 1) + 1;
        int end = source.indexOf('\n', offset);
        String line = source.substring(start, end < 0 ? source.length() : end);
        if (line.endsWith("\r")) {
            line = line.substring(0, line.length() - 1);
        }
        int from = Math.min(offset - start, line.length());
        int to = Math.min(Math.max(from, span.end() - start), line.length());
        return shortened(span.line(), line, from, to);
    }

    private static Excerpt shortened(int number, String line, int from, int to) {
        int first = 0;
        int last = line.length();
        if (last > MOST_COLUMNS) {
            first = whole(line, Math.max(0, from - LEAD));
            last = whole(line, Math.min(last, first + MOST_COLUMNS));
        }
        String before = first > 0 ? CUT : "";
        String shown = before + Cells.printable(line.substring(first, last)) + (last < line.length() ? CUT : "");
        int lead = before.length() + Cells.width(line, first, from, 0);
        int marked = Cells.width(line, from, Math.min(to, last), lead - before.length());
        return new Excerpt(number, shown, " ".repeat(lead) + "^".repeat(Math.max(1, marked)));
    }

    /** Never cuts a character in two. */
    private static int whole(String line, int at) {
        return at > 0 && at < line.length() && Character.isLowSurrogate(line.charAt(at)) ? at - 1 : at;
    }
}
