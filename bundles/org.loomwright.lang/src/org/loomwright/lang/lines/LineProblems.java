// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.ArrayList;
import java.util.List;
import org.antlr.runtime.CommonToken;
import org.loomwright.harness.TextEdit;
import org.loomwright.lang.text.Problems;

/** The words for what is wrong with lines and braces. */
public final class LineProblems {
    /** A brace is missing. */
    public static final String MISSING = "brace-missing";
    /** A brace is too much. */
    public static final String EXTRA = "brace-extra";
    private static final int MOST_WORDS = 60;

    private final Problems problems;
    private final List<CommonToken> crowding = new ArrayList<>();
    private int crowdedLine;

    public LineProblems(Problems problems) {
        this.problems = problems;
    }

    private static int end(CommonToken token) {
        return token.getStopIndex() + 1;
    }

    private static int length(CommonToken token) {
        return end(token) - token.getStartIndex();
    }

    private int line(CommonToken token) {
        return problems.lines().line(token.getStartIndex());
    }

    void misspelt(CommonToken word, String meant, Block block) {
        problems.add("line-unreadable", word.getStartIndex(), length(word),
                "\"" + word.getText() + "\" cannot start a line in " + block.title() + "; did you mean \"" + meant
                        + "\"?",
                "", problems.replace(word.getStartIndex(), length(word), meant));
    }

    void unreadable(CommonToken first, CommonToken last, Block block, Blocks blocks) {
        int type = first.getType();
        String text = first.getText();
        String shown = text.length() > MOST_WORDS ? text.substring(0, MOST_WORDS - 3) + "..." : text;
        String message = (shown.startsWith("\"") ? "text in quotes" : "\"" + shown + "\"") + " cannot start a line in "
                + block.title();
        List<String> homes = blocks.inOrder().filter(home -> home.starter(type) != null).map(Block::title).toList();
        if (!homes.isEmpty()) {
            message += "; it belongs in " + String.join(" or ", homes.subList(0, Math.min(3, homes.size())));
        }
        problems.add("line-unreadable", first.getStartIndex(), length(first), message,
                "a line in " + block.title() + " starts with " + either(block.words()));
    }

    /** Joins words for people: {@code a, b or c}. */
    static String either(List<String> words) {
        int last = words.size() - 1;
        return last < 1 ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }

    void openLost(CommonToken last, CommonToken header) {
        problems.add(MISSING, end(last), 0, "{ is missing at the end of this line",
                "the lines below belong to \"" + header.getText() + "\"", problems.insert(end(last), " {"));
    }

    void closeLost(CommonToken shown, int headerLine) {
        problems.add(MISSING, shown.getStartIndex(), length(shown),
                "} is missing before this line: the block of line " + headerLine + " is still open", "",
                problems.insert(problems.lines().start(line(shown)), indentation(headerLine) + "}\n"));
    }

    private String indentation(int line) {
        String text = problems.lines().text();
        int start = problems.lines().start(line);
        int end = start;
        while (end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '\t')) {
            end++;
        }
        return text.substring(start, end);
    }

    /** Points at the place where the braces go: the line behind the last one that holds something. */
    void neverClosed(CommonToken last, int count, int headerLine) {
        String text = problems.lines().text();
        int lineEnd = text.indexOf('\n', end(last));
        boolean onLine = lineEnd < 0;
        problems.add(MISSING, onLine ? end(last) : lineEnd + 1, 0, (count == 1 ? "} is" : count + " } are")
                + " missing at the end of the file: the block of line " + headerLine + " is still open", "",
                onLine ? problems.insert(end(last), "\n}".repeat(count))
                        : problems.insert(lineEnd + 1, "}\n".repeat(count)));
    }

    void strayClose(CommonToken brace) {
        problems.add(EXTRA, brace.getStartIndex(), 1, "there is no open block that this } could close", "remove it",
                problems.replace(brace.getStartIndex(), 1, ""));
    }

    void strayOpen(CommonToken brace) {
        problems.add(EXTRA, brace.getStartIndex(), 1,
                "this { follows no line that opens a block; what it holds is not read",
                "write it at the end of the line whose block it opens");
    }

    void opensNothing(CommonToken brace, String word) {
        problems.add(EXTRA, brace.getStartIndex(), 1,
                "a line with \"" + word + "\" opens no block here; what it holds is not read", "remove the braces");
    }

    /** A token that starts a line, in the middle of another one. */
    public void joined(CommonToken token) {
        problems.add("line-joined", token.getStartIndex(), length(token),
                "put what starts with \"" + token.getText() + "\" on a line of its own", "",
                problems.insert(token.getStartIndex(), "\n"));
    }

    void braceOnItsOwn(CommonToken brace, CommonToken last) {
        TextEdit join = problems.replace(end(last), end(brace) - end(last), " {");
        boolean comment = !problems.lines().text().substring(end(last), brace.getStartIndex()).isBlank();
        problems.add("brace-line", brace.getStartIndex(), 1, "put { at the end of the line whose block it opens", "",
                comment ? new TextEdit[0] : new TextEdit[] {join});
    }

    /** A token ought to start a line, since a brace stands before it or it is one. */
    void braceOnLine(CommonToken token) {
        if (line(token) != crowdedLine) {
            finish();
            crowdedLine = line(token);
        }
        crowding.add(token);
    }

    /** Reports the line on which braces stand with other things; one problem that mends all of it. */
    void finish() {
        if (!crowding.isEmpty()) {
            CommonToken first = crowding.getFirst();
            boolean close = first.getText().equals("}");
            problems.add("brace-line", first.getStartIndex(), length(first),
                    close ? "put } on a line of its own" : "put what follows a brace on a line of its own", "",
                    crowding.stream().map(token -> problems.insert(token.getStartIndex(), "\n"))
                            .toArray(TextEdit[]::new));
            crowding.clear();
        }
    }
}
