// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Measure;
import org.loomwright.quantity.Length;

/** Makes cells of what a drawing states. */
final class Stated {

    private Stated() {
    }

    /**
     * The values of a fact with their conditions. What holds otherwise comes first and needs no condition.
     *
     * @param outer the condition of the element itself, empty for none
     * @param value makes a value without a condition
     */
    static <T> Cell cell(List<Fact<T>> facts, String outer, Function<T, Value> value) {
        List<Expression> conditions = facts.stream().map(Fact::when).toList();
        List<Value> values = new ArrayList<>();
        for (Fact<T> fact : facts) {
            Value bare = value.apply(fact.value());
            boolean otherwise = isOtherwise(fact.when(), conditions);
            values.add(otherwise ? 0 : values.size(), bare.under(both(outer, otherwise ? "" : words(fact.when()))));
        }
        return new Cell(values);
    }

    /** One value under the condition of its element. */
    static Cell one(String written, Expression when) {
        return new Cell(List.of(Value.of(written, words(when))));
    }

    /** A condition as written; empty for none. */
    static String words(Expression when) {
        return when instanceof Expression.Always ? "" : when.words();
    }

    /** True for the condition that the language gives a fact without one beside facts with one. */
    private static boolean isOtherwise(Expression when, List<Expression> all) {
        return when instanceof Expression.Not not
                && not.operand().equals(Expression.anyOf(all.stream().filter(each -> !each.equals(when)).toList()));
    }

    /** Both conditions hold. */
    static String both(String outer, String inner) {
        if (outer.isEmpty() || inner.isEmpty()) {
            return outer + inner;
        }
        return bracketed(outer) + " and " + bracketed(inner);
    }

    private static String bracketed(String condition) {
        return condition.contains(" or ") ? "(" + condition + ")" : condition;
    }

    /**
     * A length. Equal are those of equal value and of one kind: a length along the path is never that of a finished
     * branch, whatever the figures. Tolerances are not compared.
     *
     * @param before what stands before it: {@code +} for a dimension from another breakout
     * @param value  the length in a form that can be compared; empty when it is unknown
     */
    static Value length(String before, Measure measure, Optional<Length> value) {
        String number = measure.value().map(quantity -> before + quantity.written()).orElse("unknown");
        String source = switch (measure.provenance()) {
            case SHEET, UNKNOWN -> "";
            case SAMPLE, SCALED -> " " + measure.provenance().words();
        };
        String kind = measure.path() ? " path" : "";
        return new Value(number + kind + source, "", value.map(length -> length.nanometres() + kind).orElse("unknown"),
                value, measure.path());
    }
}
