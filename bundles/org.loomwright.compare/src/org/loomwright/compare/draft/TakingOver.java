// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;

/**
 * What every part of taking over works with.
 *
 * @param ours      the written harness
 * @param draft     a draft from its drawings
 * @param drawings  these drawings
 * @param cover     the vehicles that are covered
 * @param names     what is taken of the harness's names
 * @param additions the changes of its text
 * @param choices   what was taken over, and what was left to the engineer
 */
record TakingOver(WiringView ours, WiringView draft, List<WiringView> drawings, Cover cover, NameBook names,
        Additions additions, List<Choice> choices) {

    Condition none() {
        return cover.whole.vehicles().none();
    }

    void choose(Choice.Kind kind, String element, String words) {
        choices.add(new Choice(kind, element, words));
    }

    /** The drawings that are there in some vehicles: {@code front67, front70}. */
    String drawings(Condition when) {
        return drawings.stream().filter(each -> !each.when().excludes(when)).map(WiringView::name)
                .collect(Collectors.joining(", "));
    }

    /** Writes a smaller condition in place of that of a statement, or takes the statement out. */
    void narrow(Span statement, Expression written, Condition now) {
        if (now.isNever()) {
            additions.remove(statement);
            return;
        }
        String text = additions.written(statement);
        int at = written instanceof Expression.Always ? text.length() : text.lastIndexOf(" when ");
        if (at >= 0) {
            additions.replace(statement, text.substring(0, at) + " when " + cover.words(now));
        }
    }
}
