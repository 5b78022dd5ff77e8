// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.condition.Expression.Always;
import org.loomwright.condition.Expression.And;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Not;
import org.loomwright.condition.Expression.Or;
import org.loomwright.condition.Expression.Range;

/** Prints expressions in the syntax of the language. */
final class ExpressionText {
    private static final int OR = 0;
    private static final int AND = 1;
    private static final int NOT = 2;

    private ExpressionText() {
    }

    static String of(Expression expression) {
        return text(expression, OR);
    }

    /** Prints a node that stands where operators binding looser than {@code place} need parentheses. */
    private static String text(Expression expression, int place) {
        return switch (expression) {
            case Always always -> "always";
            case Choice choice -> choice.name();
            case Compare compare -> compare.group() + " " + compare.relation().symbol() + " " + compare.member();
            case Range range -> range.group() + " " + range.from() + " .. " + range.to();
            case Not not -> "not " + text(not.operand(), NOT);
            case And and -> list(and.operands(), AND, place, " and ", "always");
            case Or or -> list(or.operands(), OR, place, " or ", "not always");
        };
    }

    private static String list(List<Expression> operands, int binding, int place, String word, String none) {
        if (operands.isEmpty()) {
            return none;
        }
        if (operands.size() == 1) {
            return text(operands.getFirst(), place);
        }
        String list = operands.stream().map(operand -> text(operand, binding + 1)).collect(Collectors.joining(word));
        return binding < place ? "(" + list + ")" : list;
    }
}
