// SPDX-License-Identifier: EPL-2.0
package org.loomwright.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One file of the stock: a catalogue in its canonical form, so that lines tell where its parts stand without being
 * parsed. A part begins on a line that is indented by four spaces and ends on the next such line with a brace.
 *
 * @param name    its name without a folder: {@code cables.loom}
 * @param text    all of it
 * @param entries its parts, in order
 */
public record StockFile(String name, String text, List<Entry> entries) {

    private static final String INDENT = "    ";
    private static final String END = INDENT + "}";
    /** Kind, name, perhaps a title, perhaps the part that it is like, and what ends the line. */
    private static final Pattern HEAD = Pattern.compile(
            " {4}[A-Za-z]+ ([A-Za-z_][A-Za-z0-9_]*)(?: \"(?:[^\"\\\\]|\\\\.)*\")?(?: like ([A-Za-z0-9_]+))?( \\{)?");

    /**
     * Where a part stands.
     *
     * @param name  its name
     * @param like  the name of the part that it is like; empty for none
     * @param start offset of its first character; comments that stand right above it are before that
     * @param end   offset behind its last character
     */
    public record Entry(String name, String like, int start, int end) {
    }

    /** Finds the parts of a text in one pass over its lines. */
    static StockFile of(String name, String text) {
        List<Entry> entries = new ArrayList<>();
        int end;
        for (int at = 0; at < text.length(); at = end + 1) {
            end = lineEnd(text, at);
            if (!opens(text, at, end)) {
                continue;
            }
            Matcher head = HEAD.matcher(text).region(at, end);
            if (head.matches()) {
                int start = at + INDENT.length();
                if (head.group(3) != null) {
                    int close = text.indexOf("\n" + END + "\n", end - 1);
                    end = close < 0 ? text.length() : close + 1 + END.length();
                }
                entries.add(new Entry(head.group(1), head.group(2) == null ? "" : head.group(2), start, end));
            }
        }
        return new StockFile(name, text, List.copyOf(entries));
    }

    /** True for a line that is indented once and begins with a word. */
    private static boolean opens(String text, int at, int end) {
        return text.startsWith(INDENT, at) && at + INDENT.length() < end
                && Character.isLetter(text.charAt(at + INDENT.length()));
    }

    private static int lineEnd(String text, int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end;
    }

    /**
     * The text with blanks for all parts but some, and for all comments between parts: much less to parse, and every
     * place in it is the same as in the whole text.
     */
    public String only(Set<String> names) {
        char[] kept = new char[text.length()];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = text.charAt(i) == '\n' ? '\n' : ' ';
        }
        int head = text.indexOf("catalogue ");
        copy(head, lineEnd(text, head), kept);
        int last = text.lastIndexOf('}');
        copy(last, last + 1, kept);
        entries.stream().filter(entry -> names.contains(entry.name()))
                .forEach(entry -> copy(entry.start(), entry.end(), kept));
        return new String(kept);
    }

    private void copy(int from, int to, char[] kept) {
        text.getChars(from, to, kept, from);
    }

    /** The lines of a part as they stand in the file, with the comment right above it, each with its line end. */
    public String source(Entry entry) {
        int from = entry.start() - INDENT.length();
        while (from > 0) {
            int above = text.lastIndexOf('\n', from - 2) + 1;
            if (!text.startsWith(INDENT + "//", above)) {
                break;
            }
            from = above;
        }
        return text.substring(from, entry.end()) + "\n";
    }
}
