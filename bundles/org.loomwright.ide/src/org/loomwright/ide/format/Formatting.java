// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.format;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.Formatter;

/**
 * The canonical form of a file as text edits, so that a cursor stays where it is and what is right is not touched.
 * Formatting moves only white space between words; so both texts have the same words in the same order, and the edits
 * are the gaps that differ. Linear in the text; stateless.
 */
public final class Formatting {

    private Formatting() {
    }

    /** The edits that bring a file into its canonical form; none when it is there. */
    public static List<TextEdit> whole(Moment moment, String file) {
        return range(moment, file, 0, moment.text(file).length());
    }

    /**
     * Those edits of the whole that lie in some lines.
     *
     * @param from offset in the first line
     * @param to   offset in the last line, or of its end
     */
    public static List<TextEdit> range(Moment moment, String file, int from, int to) {
        String text = moment.text(file);
        LineIndex lines = moment.lines(file);
        int start = lines.start(lines.line(Math.clamp(from, 0, text.length())));
        int last = text.indexOf('\n', Math.max(start, Math.min(to, text.length()) - 1));
        int end = last < 0 || to >= text.length() ? text.length() : last + 1;
        List<TextEdit> edits = new ArrayList<>();
        for (TextEdit edit : edits(text, Formatter.format(text), lines)) {
            if (edit.span().offset() >= start && edit.span().end() <= end) {
                edits.add(edit);
            }
        }
        return edits;
    }

    /** Walks both texts: what is no white space is the same in both. */
    private static List<TextEdit> edits(String text, String formatted, LineIndex lines) {
        List<TextEdit> edits = new ArrayList<>();
        int a = 0;
        int b = 0;
        while (a < text.length() || b < formatted.length()) {
            int gapA = gap(text, a);
            int gapB = gap(formatted, b);
            gap(text.substring(a, gapA), formatted.substring(b, gapB), a, lines, edits);
            a = gapA;
            b = gapB;
            while (a < text.length() && b < formatted.length() && !isSpace(text.charAt(a))) {
                if (text.charAt(a) != formatted.charAt(b)) {
                    return List.of(new TextEdit(lines.span(0, text.length()), formatted));
                }
                a++;
                b++;
            }
            if (a >= text.length() != b >= formatted.length() && (rest(text, a) || rest(formatted, b))) {
                return List.of(new TextEdit(lines.span(0, text.length()), formatted));
            }
        }
        return edits;
    }

    private static boolean rest(String text, int at) {
        return gap(text, at) < text.length();
    }

    private static void gap(String old, String now, int offset, LineIndex lines, List<TextEdit> edits) {
        if (old.equals(now)) {
            return;
        }
        int head = 0;
        int shorter = Math.min(old.length(), now.length());
        while (head < shorter && old.charAt(head) == now.charAt(head)) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head && old.charAt(old.length() - 1 - tail) == now.charAt(now.length() - 1 - tail)) {
            tail++;
        }
        edits.add(new TextEdit(lines.span(offset + head, old.length() - head - tail),
                now.substring(head, now.length() - tail)));
    }

    private static int gap(String text, int at) {
        int end = at;
        while (end < text.length() && isSpace(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static boolean isSpace(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\u00a0' || c == '\f';
    }
}
