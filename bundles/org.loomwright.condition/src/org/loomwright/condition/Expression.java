// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.List;
import java.util.Objects;

/**
 * A condition as it is written: {@code year <= 1966 and saloon and not fan}. Immutable, without meaning of its own;
 * {@link Vehicles#resolve} gives it one. Each node knows where it stands in its source; two nodes with the same text at
 * different places are not equal, {@link #words} compares them without the place.
 *
 * <p>{@code not} binds tighter than {@code and}, {@code and} tighter than {@code or}.
 */
public sealed interface Expression {
    /** The offset and length of a node that was made by code. */
    int NOWHERE = -1;

    /** Returns the offset of the first character of its source text, or {@link #NOWHERE}. */
    int offset();

    /** Returns the length of its source text, or {@link #NOWHERE}. */
    int length();

    /** Returns the text in the syntax of the language, with parentheses only where they are needed. */
    default String words() {
        return ExpressionText.of(this);
    }

    /** No condition at all: every vehicle. Printed {@code always}; the language has no word for it. */
    record Always(int offset, int length) implements Expression {
        public Always() {
            this(NOWHERE, NOWHERE);
        }
    }

    /**
     * One choice by its name: a member of a group, an option, an upgrade, or a break within a year, which means from
     * the break up to the next break of the same year or its end.
     */
    record Choice(String name, int offset, int length) implements Expression {
        public Choice {
            Objects.requireNonNull(name);
        }

        public Choice(String name) {
            this(name, NOWHERE, NOWHERE);
        }
    }

    /** A comparison of a group with one of its members: {@code year <= 1966}, {@code body != estate}. */
    record Compare(String group, Relation relation, String member, int offset, int length) implements Expression {
        public Compare {
            Objects.requireNonNull(group);
            Objects.requireNonNull(relation);
            Objects.requireNonNull(member);
        }

        public Compare(String group, Relation relation, String member) {
            this(group, relation, member, NOWHERE, NOWHERE);
        }
    }

    /** A run of an ordered group, both ends included: {@code year 1964 .. 1966}. */
    record Range(String group, String from, String to, int offset, int length) implements Expression {
        public Range {
            Objects.requireNonNull(group);
            Objects.requireNonNull(from);
            Objects.requireNonNull(to);
        }

        public Range(String group, String from, String to) {
            this(group, from, to, NOWHERE, NOWHERE);
        }
    }

    /** The opposite of its operand. */
    record Not(Expression operand, int offset, int length) implements Expression {
        public Not {
            Objects.requireNonNull(operand);
        }

        public Not(Expression operand) {
            this(operand, NOWHERE, NOWHERE);
        }
    }

    /** All operands hold; without operands, always. */
    record And(List<Expression> operands, int offset, int length) implements Expression {
        public And {
            operands = List.copyOf(operands);
        }

        public And(List<Expression> operands) {
            this(operands, NOWHERE, NOWHERE);
        }
    }

    /** At least one operand holds; without operands, never. */
    record Or(List<Expression> operands, int offset, int length) implements Expression {
        public Or {
            operands = List.copyOf(operands);
        }

        public Or(List<Expression> operands) {
            this(operands, NOWHERE, NOWHERE);
        }
    }

    /** Returns the one expression, or the conjunction of several; {@link Always} for none. */
    static Expression allOf(List<Expression> operands) {
        return switch (operands.size()) {
            case 0 -> new Always();
            case 1 -> operands.getFirst();
            default -> new And(operands);
        };
    }

    /** Returns the one expression, or the disjunction of several; {@code not always} for none. */
    static Expression anyOf(List<Expression> operands) {
        return switch (operands.size()) {
            case 0 -> new Not(new Always());
            case 1 -> operands.getFirst();
            default -> new Or(operands);
        };
    }
}
