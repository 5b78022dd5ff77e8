// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.Comparator;
import java.util.function.UnaryOperator;
import org.loomwright.compare.ItemId;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;

/**
 * One fact: a value, the condition under which it holds, and where it is stated.
 *
 * @param value the value
 * @param when  the condition as written
 * @param span  where; no part of what is compared
 */
public record Stated(Value value, Expression when, Span span) implements Comparable<Stated> {

    private static final Comparator<Stated> ORDER = Comparator.comparing((Stated each) -> each.value.key())
            .thenComparing(each -> each.value.shown()).thenComparing(each -> each.when.words());

    /** The same with other elements named. */
    public Stated renamed(UnaryOperator<ItemId> names) {
        return new Stated(value.renamed(names), when, span);
    }

    /** True for a fact that holds for all vehicles of its element. */
    public boolean isAlways() {
        return when instanceof Expression.Always;
    }

    /** Value and condition as written: {@code 12 ga when electricFan}. */
    public String words() {
        return isAlways() ? value.shown() : value.shown() + " when " + when.words();
    }

    /** Orders by value, then by condition, both as text. */
    @Override
    public int compareTo(Stated other) {
        return ORDER.compare(this, other);
    }
}
