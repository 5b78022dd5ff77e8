// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Span;

/**
 * The facts of one property of one element, from its head and from its block. A fact without a condition beside facts
 * with one means <em>otherwise</em>: it holds where none of those does.
 *
 * @param <T> what is stated
 */
final class FactList<T> {
    private final List<Fact<T>> facts = new ArrayList<>(2);

    void add(T value, Expression when, Span span) {
        facts.add(new Fact<>(value, when, span));
    }

    void add(T value, Span span) {
        add(value, Conditions.ALWAYS, span);
    }

    boolean isEmpty() {
        return facts.isEmpty();
    }

    /** Returns the facts in source order. */
    List<Fact<T>> facts() {
        return otherwise(facts);
    }

    /** Gives the facts without a condition the condition that no other one holds. */
    static <T> List<Fact<T>> otherwise(List<Fact<T>> facts) {
        List<Expression> conditions = facts.stream().map(Fact::when)
                .filter(when -> !(when instanceof Expression.Always)).toList();
        if (conditions.isEmpty() || conditions.size() == facts.size()) {
            return List.copyOf(facts);
        }
        Expression none = new Expression.Not(Expression.anyOf(conditions));
        return facts.stream().map(fact -> fact.when() instanceof Expression.Always
                ? new Fact<>(fact.value(), none, fact.span()) : fact).toList();
    }
}
