// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.text;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/** Collects what is wrong with one text. Not thread-safe; one reading of one text has one. */
public final class Problems {
    /** More than these help nobody; a file that has more is another sort of file. */
    public static final int MOST = 1_000;

    private static final Comparator<Problem> ORDER = Comparator.comparing(Problem::span).thenComparing(Problem::code)
            .thenComparing(Problem::message);

    private final LineIndex lines;
    private final List<Problem> found = new ArrayList<>();
    private final BitSet damaged = new BitSet();
    private boolean balanced = true;

    public Problems(LineIndex lines) {
        this.lines = lines;
    }

    public LineIndex lines() {
        return lines;
    }

    /** Adds a problem; its edits mend it when all are made together. */
    public void add(String code, int offset, int length, String message, String advice, TextEdit... edits) {
        add(code, lines.span(offset, length), message, advice, edits);
    }

    /** Adds a problem; its edits mend it when all are made together. */
    public void add(String code, Span span, String message, String advice, TextEdit... edits) {
        found.add(new Problem(code, span, message, advice, List.of(edits)));
    }

    /** Adds a problem; its edits mend it if the guess is right. */
    public void guess(String code, Span span, String message, String advice, TextEdit... edits) {
        found.add(new Problem(code, span, message, advice, List.of(edits), false));
    }

    /** Says that a line cannot be read as it stands, so that what seems to be missing in it is no news. */
    public void damage(int line) {
        damaged.set(line);
    }

    /** Returns whether a line has been found to be damaged. */
    public boolean isDamaged(int line) {
        return damaged.get(line);
    }

    /** Says that as many braces open as close, or do not. */
    public void balanced(boolean balance) {
        balanced = balance;
    }

    /** Returns whether as many braces open as close. */
    public boolean isBalanced() {
        return balanced;
    }

    /** Returns whether so much has been found that nobody will read how it could be mended. */
    public boolean isFull() {
        return found.size() > 10 * MOST;
    }

    public TextEdit replace(int offset, int length, String text) {
        return new TextEdit(lines.span(offset, length), text);
    }

    public TextEdit insert(int offset, String text) {
        return new TextEdit(lines.span(offset, 0), text);
    }

    /** Adds problems that were found before. */
    public void addAll(List<Problem> problems) {
        found.addAll(problems);
    }

    /** Returns all problems in the order in which they were found. */
    public List<Problem> found() {
        return List.copyOf(found);
    }

    /** Returns the problems by place, the first {@value #MOST} and a word on the rest. */
    public List<Problem> sorted() {
        List<Problem> sorted = new ArrayList<>(found);
        sorted.sort(ORDER);
        if (sorted.size() <= MOST) {
            return List.copyOf(sorted);
        }
        Span next = sorted.get(MOST).span();
        List<Problem> shown = new ArrayList<>(sorted.subList(0, MOST));
        shown.add(new Problem("too-many", next, "the file has " + (sorted.size() - MOST)
                + " more problems from here on", "mend the first ones and look again", List.of()));
        return List.copyOf(shown);
    }
}
