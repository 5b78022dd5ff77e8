// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.Name;
import org.loomwright.harness.Span;
import org.loomwright.model.loom.Comparison;
import org.loomwright.model.loom.Condition;
import org.loomwright.model.loom.Conjunction;
import org.loomwright.model.loom.Disjunction;
import org.loomwright.model.loom.Interval;
import org.loomwright.model.loom.Negation;
import org.loomwright.model.loom.Pick;

/** Conditions as written, each node with its place in the file. */
final class Conditions {
    /** One for all that is stated without condition. */
    static final Expression ALWAYS = new Expression.Always();

    private final FileText file;

    Conditions(FileText file) {
        this.file = file;
    }

    /** Returns the expression; {@link Expression.Always} for none and for one of which nothing could be read. */
    Expression of(Condition condition) {
        Expression expression = condition == null ? null : expression(condition);
        return expression == null ? ALWAYS : expression;
    }

    /** Returns null where the text has nothing to say. */
    private Expression expression(Condition condition) {
        Written written = file.of(condition);
        Span span = written.span();
        int offset = span.offset();
        int length = span.length();
        return switch (condition) {
            case Pick pick -> {
                Name name = written.name("choice");
                yield name.text().isEmpty() ? null : new Expression.Choice(name.text(), offset, length);
            }
            case Comparison comparison -> new Expression.Compare(FileText.orEmpty(comparison.getGroup()),
                    relation(comparison), FileText.orEmpty(comparison.getMember()), offset, length);
            case Interval interval -> new Expression.Range(FileText.orEmpty(interval.getGroup()),
                    FileText.orEmpty(interval.getFrom()), FileText.orEmpty(interval.getTo()), offset, length);
            case Negation negation -> {
                Expression operand = negation.getOperand() == null ? null : expression(negation.getOperand());
                yield operand == null ? null : new Expression.Not(operand, offset, length);
            }
            case Conjunction all -> {
                List<Expression> operands = operands(all.getOperands());
                yield operands.size() < 2 ? first(operands) : new Expression.And(operands, offset, length);
            }
            case Disjunction any -> {
                List<Expression> operands = operands(any.getOperands());
                yield operands.size() < 2 ? first(operands) : new Expression.Or(operands, offset, length);
            }
            default -> null;
        };
    }

    private static Expression first(List<Expression> operands) {
        return operands.isEmpty() ? null : operands.getFirst();
    }

    private List<Expression> operands(List<Condition> conditions) {
        List<Expression> operands = new ArrayList<>(conditions.size());
        for (Condition condition : conditions) {
            Expression operand = expression(condition);
            if (operand != null) {
                operands.add(operand);
            }
        }
        return operands;
    }

    private static Relation relation(Comparison comparison) {
        return switch (comparison.getRelation()) {
            case LT -> Relation.LT;
            case LE -> Relation.LE;
            case EQ -> Relation.EQ;
            case NE -> Relation.NE;
            case GE -> Relation.GE;
            case GT -> Relation.GT;
        };
    }
}
