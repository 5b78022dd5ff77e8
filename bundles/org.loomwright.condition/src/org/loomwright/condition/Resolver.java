// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntBinaryOperator;
import org.loomwright.condition.Expression.Always;
import org.loomwright.condition.Expression.And;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Not;
import org.loomwright.condition.Expression.Or;
import org.loomwright.condition.Expression.Range;
import org.loomwright.condition.internal.Diagram;

/** Turns one expression into a function of the diagram, and collects what is wrong with it and the axes it names. */
final class Resolver {
    /** The result for an expression that has to be read as if it had not been written. */
    static final int IGNORED = -1;

    private static final int DEEPEST = 200;
    private static final int MOST_NODES = 20_000;

    private final Names names;
    private final Diagram diagram;
    private final List<Problem> problems = new ArrayList<>();
    private final BitSet axes = new BitSet();
    private int nodes;

    Resolver(Names names, Diagram diagram) {
        this.names = names;
        this.diagram = diagram;
    }

    List<Problem> problems() {
        return problems;
    }

    /** Returns the axes that the expression names. */
    BitSet axes() {
        return axes;
    }

    /** Returns the function, not yet restricted to possible vehicles, or {@link #IGNORED}. */
    int resolve(Expression expression) {
        return resolve(expression, 0);
    }

    private int resolve(Expression expression, int depth) {
        if (++nodes > MOST_NODES || depth > DEEPEST) {
            if (problems.stream().noneMatch(problem -> problem.kind() == Problem.Kind.TOO_LARGE)) {
                problems.add(new Problem(
                        Problem.Kind.TOO_LARGE, "this condition is too long or nested too deeply", "",
                        expression.offset(), expression.length(), Optional.empty()));
            }
            return IGNORED;
        }
        return switch (expression) {
            case Always always -> diagram.all();
            case Choice choice -> where(choice, names.choice(choice));
            case Compare compare -> where(compare, names.compare(compare));
            case Range range -> where(range, names.range(range));
            case Not not -> {
                int operand = resolve(not.operand(), depth + 1);
                yield operand == IGNORED ? IGNORED : diagram.minus(diagram.all(), operand);
            }
            case And and -> list(and.operands(), depth, diagram.all(), diagram::and);
            case Or or -> list(or.operands(), depth, Diagram.NONE, diagram::or);
        };
    }

    private int where(Expression expression, Names.Meaning meaning) {
        return switch (meaning) {
            case Names.Members members -> {
                axes.set(members.axis());
                yield diagram.where(members.axis(), members.members());
            }
            case Names.Mistake mistake -> {
                problems.add(mistake.at(expression));
                yield IGNORED;
            }
        };
    }

    private int list(List<Expression> operands, int depth, int empty, IntBinaryOperator join) {
        int result = empty;
        boolean ignored = !operands.isEmpty();
        for (Expression operand : operands) {
            int node = resolve(operand, depth + 1);
            if (node != IGNORED) {
                result = join.applyAsInt(result, node);
                ignored = false;
            }
        }
        return ignored ? IGNORED : result;
    }
}
