// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.loomwright.harness.Element;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.lang.lines.LineProblems;
import org.loomwright.lang.snapshot.Units;
import org.loomwright.lang.text.Problems;

/**
 * What was read of one text, with what it takes to read it again after a change of a part of it. Immutable.
 *
 * @param file     name of the text
 * @param text     the text
 * @param elements its elements in order
 * @param problems what is wrong in single places, in any order; numbers without a unit are not among them
 * @param balanced whether as many braces open as close
 * @param units    the units it uses, and numbers without one, about which the whole text decides
 */
record Reading(String file, String text, List<Element> elements, List<Problem> problems, boolean balanced,
        Units units) {

    /** What tells that a text was read otherwise than it stands, which may reach further than its place. */
    private static final Set<String> FAR = Set.of(LineProblems.MISSING, LineProblems.EXTRA, "brace-line",
            "comment-open", "merge-conflict", "nested-too-deep");

    Reading {
        elements = List.copyOf(elements);
    }

    /** Whether what is wrong in one place has no effect on how others are read. */
    boolean isLocal() {
        return balanced && problems.size() <= Problems.MOST
                && problems.stream().noneMatch(each -> FAR.contains(each.code()));
    }

    Source source() {
        Problems all = new Problems(new LineIndex(file, text));
        all.addAll(problems);
        units.report(all);
        return new Source(file, text, elements, all.sorted());
    }

    /**
     * This reading with one stretch of its text replaced.
     *
     * @param now   the new text
     * @param from  where the stretch starts in both texts
     * @param to    where it ends in the old text
     * @param whole the elements of the new text
     * @param inner what was read of the stretch, with places in the new text
     * @param moved where things behind the stretch are in the new text
     */
    Reading replaced(String now, int from, int to, List<Element> whole, Reading inner, Moved moved) {
        List<Problem> all = new ArrayList<>(inner.problems);
        for (Problem problem : problems) {
            if (problem.span().offset() < from || problem.span().offset() >= to) {
                all.add(moved.of(problem));
            }
        }
        return new Reading(file, now, whole, all, balanced,
                units.replaced(from, to, inner.units, moved::span));
    }

    /** All of it, moved alike. */
    Reading moved(Moved moved) {
        return new Reading(file, text, moved.of(elements), moved.of(problems), balanced, units.moved(moved::span));
    }
}
