// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.List;
import org.loomwright.harness.Span;

/**
 * What is told of a word.
 *
 * @param where the word
 * @param title the thing: {@code wire 12a, Dipped beam}
 * @param rows  facts about it, in order
 */
public record Hover(Span where, String title, List<Row> rows) {

    /**
     * One fact.
     *
     * @param label what it is: {@code cut length}; empty for a sentence
     * @param text  the fact
     */
    public record Row(String label, String text) {
    }

    public Hover {
        rows = List.copyOf(rows);
    }

    /** All of it as plain text. */
    public String text() {
        StringBuilder text = new StringBuilder(title);
        rows.forEach(row -> text.append('\n').append(row.label().isEmpty() ? "" : row.label() + ": ")
                .append(row.text()));
        return text.toString();
    }
}
