// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;

/** Words of what is taken over. */
final class TakenWords {

    private TakenWords() {
    }

    /** Writes a smaller condition in place of that of a statement, or takes the statement out. */
    static void narrow(Span statement, Expression written, Condition now, Cover cover, Additions additions) {
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

    /** The drawings that are there in some vehicles: {@code front67, front70}. */
    static String drawings(List<WiringView> drawings, Condition when) {
        return drawings.stream().filter(each -> !each.when().excludes(when)).map(WiringView::name)
                .collect(Collectors.joining(", "));
    }
}
