// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.loomwright.harness.clause.Clause;
import org.loomwright.harness.clause.ClauseLine;
import org.loomwright.lang.text.Problems;

/**
 * Conflicts that a merge left in a text, between the lines by which version control marks them. The text is read with
 * the first of the two sides; each conflict is one problem that names the element, the fact and both values. Reads each
 * line once, and only in a text that has a mark.
 */
public final class Conflicts {

    private static final int SIZE = 7;
    private static final String ADVICE = "keep one of the two and remove the marks; until then the first one is read";

    private final String text;
    private final Problems problems;
    private final StringBuilder masked;
    private final Deque<String> blocks = new ArrayDeque<>();

    /** The conflict that is being read: where it begins, what the sides are called and say, and where one is. */
    private int start = -1;
    private int startEnd;
    private char side;
    private String ours = "";
    private final List<ClauseLine> first = new ArrayList<>();
    private final List<ClauseLine> second = new ArrayList<>();

    private Conflicts(Problems problems) {
        this.text = problems.lines().text();
        this.problems = problems;
        this.masked = new StringBuilder(text);
    }

    /** Whether a text has a mark of a conflict. */
    public static boolean in(String text) {
        return text.startsWith("<<<<<<<") || text.contains("\n<<<<<<<") || text.contains("\n>>>>>>>");
    }

    /** The text with blanks in place of marks and of all sides but the first; as long as the text. */
    static String masked(Problems problems) {
        return in(problems.lines().text()) ? new Conflicts(problems).read() : problems.lines().text();
    }

    private String read() {
        int at = 0;
        while (at < text.length()) {
            int end = text.indexOf('\n', at);
            end = end < 0 ? text.length() : end;
            line(at, end > at && text.charAt(end - 1) == '\r' ? end - 1 : end);
            at = end + 1;
        }
        if (start >= 0) {
            open();
        }
        return masked.toString();
    }

    private void line(int from, int to) {
        char sign = mark(from, to);
        if (sign == 0) {
            content(from, to);
            return;
        }
        blank(from, to);
        if (sign == '<') {
            if (start >= 0) {
                open();
            }
            start = from;
            startEnd = to;
            side = '<';
            ours = label(from, to);
            first.clear();
            second.clear();
        } else if (start < 0) {
            if (sign == '>') {
                problems.add("merge-conflict", from, to - from, "a conflict ends here that begins nowhere",
                        "remove it");
            }
        } else if (sign == '>') {
            report(label(from, to));
            start = -1;
        } else {
            side = sign;
        }
    }

    /** The sign of a line of marks, 0 for any other line. A line of equals signs alone is one within a conflict. */
    private char mark(int from, int to) {
        char sign = to - from >= SIZE ? text.charAt(from) : 0;
        if ("<>=|".indexOf(sign) < 0 || sign == 0) {
            return 0;
        }
        int at = from;
        while (at < to && text.charAt(at) == sign) {
            at++;
        }
        boolean whole = at - from >= SIZE && (at == to || text.charAt(at) == ' ');
        return whole && (start >= 0 || sign == '<' || sign == '>') ? sign : 0;
    }

    private String label(int from, int to) {
        String words = text.substring(from, to);
        return words.substring(words.lastIndexOf(words.charAt(0)) + 1).strip();
    }

    private void blank(int from, int to) {
        for (int at = from; at < to; at++) {
            masked.setCharAt(at, ' ');
        }
    }

    private void content(int from, int to) {
        ClauseLine line = ClauseLine.of(text.substring(from, to));
        if (start >= 0 && side != '<') {
            blank(from, to);
            if (side == '=' && !line.clauses().isEmpty()) {
                second.add(line);
            }
            return;
        }
        if (start >= 0 && !line.clauses().isEmpty()) {
            first.add(line);
        }
        if (line.opens()) {
            blocks.push(line.subject());
        } else if (line.kind().equals("}")) {
            blocks.poll();
        }
    }

    private void open() {
        problems.add("merge-conflict", start, startEnd - start, "a conflict begins here and has no end",
                "it ends with a line of " + SIZE + " or more >");
    }

    private void report(String theirs) {
        String left = ours.isEmpty() ? "the first side" : ours;
        String right = theirs.isEmpty() ? "the second side" : theirs;
        problems.add("merge-conflict", start, startEnd - start, words(left, right), ADVICE);
    }

    private String words(String left, String right) {
        if (first.isEmpty() || second.isEmpty()) {
            List<ClauseLine> only = first.isEmpty() ? second : first;
            String what = only.isEmpty() ? within() : named(only.getFirst());
            return (what.isEmpty() ? "lines" : what) + (only.isEmpty() ? ": nothing on either side, between "
                    + left + " and " + right : ": removed in " + (first.isEmpty() ? left : right) + " and changed in "
                    + (first.isEmpty() ? right : left));
        }
        if (first.size() == 1 && second.size() == 1
                && (first.getFirst().subject().equals(second.getFirst().subject())
                || first.getFirst().kind().equals(second.getFirst().kind()))) {
            return facts(first.getFirst(), second.getFirst(), left, right);
        }
        String where = within();
        return (where.isEmpty() ? "" : where + ": ") + first.size() + (first.size() == 1 ? " line" : " lines") + " in "
                + left + ", " + second.size() + " in " + right;
    }

    private String facts(ClauseLine one, ClauseLine other, String left, String right) {
        List<String> keys = new ArrayList<>(one.clauses().stream().map(Clause::key).toList());
        other.clauses().stream().map(Clause::key).filter(key -> !keys.contains(key)).forEach(keys::add);
        String what = keys.stream().filter(key -> !value(one, key).equals(value(other, key)))
                .map(key -> word(one, other, key) + " is " + value(one, key) + " in " + left + " and "
                        + value(other, key) + " in " + right).collect(Collectors.joining("; "));
        String name = one.isFact() && !blocks.isEmpty() ? within() : named(one);
        return name + ": " + (what.isEmpty() ? "written otherwise in " + left + " and " + right : what);
    }

    private static String word(ClauseLine one, ClauseLine other, String key) {
        return one.clause(key).or(() -> other.clause(key)).map(Clause::word).orElse(key);
    }

    private static String value(ClauseLine line, String key) {
        return Optional.of(line.clause(key).map(Clause::value).orElse("")).filter(text -> !text.isEmpty())
                .orElse("nothing");
    }

    /** The element of a line, within its blocks; a line that opens a block has been counted among them. */
    private String named(ClauseLine line) {
        Deque<String> around = new ArrayDeque<>(blocks);
        if (line.opens() && first.contains(line)) {
            around.poll();
        }
        around.push(line.subject());
        return String.join(" of ", around);
    }

    private String within() {
        return String.join(" of ", blocks);
    }
}
