// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;

/** An element of the draft as text: a head, and below it what holds for some of its vehicles. */
final class Block {

    private final Cover cover;
    private final Condition own;
    private final StringBuilder head;
    private final List<String> lines = new ArrayList<>();

    /** @param own the vehicles that have the element */
    Block(Cover cover, Condition own, String head) {
        this.cover = cover;
        this.own = own;
        this.head = new StringBuilder(head);
    }

    /** Adds what belongs to the head. */
    Block head(String words) {
        head.append(words);
        return this;
    }

    /** Adds a line below the head. */
    void line(String text) {
        lines.add(text);
    }

    /** A fact with its values: what all vehicles have in the head; with several, the first holds for all others. */
    Block fact(String keyword, Cover.Values values) {
        if (values.isEmpty()) {
            return this;
        }
        Condition any = own.vehicles().anyOf(values.all().values());
        boolean first = own.implies(any);
        for (Map.Entry<String, Condition> each : values.all().entrySet()) {
            if (first) {
                head.append(' ').append(keyword).append(' ').append(each.getKey());
            } else {
                line(keyword + " " + each.getKey() + cover.when(each.getValue(), own));
            }
            first = false;
        }
        return this;
    }

    /** Ends the head with the condition of the element, and writes all. */
    void write(String indent, Condition within, StringBuilder out) {
        out.append(indent).append(head).append(cover.when(own, within));
        if (lines.isEmpty()) {
            out.append('\n');
            return;
        }
        out.append(" {\n");
        lines.forEach(line -> out.append(indent).append("    ").append(line).append('\n'));
        out.append(indent).append("}\n");
    }

    static String quoted(String title) {
        return title.isEmpty() ? "" : " \"" + title.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
