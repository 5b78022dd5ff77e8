// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.loomwright.harness.LineIndex;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.WordLines;

/** What can be folded in one file: blocks, and comments of several lines. Linear in its lines; stateless. */
public final class Folds {

    private Folds() {
    }

    /**
     * Lines that can be folded away.
     *
     * @param first   the line that stays visible, from 1
     * @param last    the last line that is hidden, from 1
     * @param comment whether it is a comment
     */
    public record Fold(int first, int last, boolean comment) {
    }

    /** The folds of a file by first line. */
    public static List<Fold> of(Moment moment, String file) {
        WordLines lines = moment.words(file);
        LineIndex index = moment.lines(file);
        List<Fold> folds = new ArrayList<>();
        for (Line line : lines.lines()) {
            if (line.isHead()) {
                add(index.line(line.end()), index.line(line.close()) - 1, false, folds);
            }
        }
        int first = -1;
        int last = -1;
        for (WordLines.Stretch comment : lines.comments()) {
            int from = index.line(comment.offset());
            boolean alone = lines.text().substring(index.start(from), comment.offset()).isBlank();
            if (alone && from == last + 1) {
                last = index.line(comment.end());
            } else {
                add(first, last, true, folds);
                first = alone ? from : -1;
                last = alone ? index.line(comment.end()) : -1;
            }
        }
        add(first, last, true, folds);
        folds.sort(Comparator.comparingInt(Fold::first));
        return List.copyOf(folds);
    }

    private static void add(int first, int last, boolean comment, List<Fold> folds) {
        if (first > 0 && last > first) {
            folds.add(new Fold(first, last, comment));
        }
    }
}
