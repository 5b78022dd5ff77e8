// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Optional;

/** How a group is compared with one of its members. Only {@link #EQ} and {@link #NE} make sense without an order. */
public enum Relation {
    LT("<"),
    LE("<="),
    EQ("="),
    NE("!="),
    GE(">="),
    GT(">");

    private final String symbol;

    Relation(String symbol) {
        this.symbol = symbol;
    }

    /** Returns how the relation is written. */
    public String symbol() {
        return symbol;
    }

    /** Returns whether the relation needs the members of the group to be in an order. */
    public boolean needsOrder() {
        return this != EQ && this != NE;
    }

    /** Returns the relation that is written with exactly this text. */
    public static Optional<Relation> ofSymbol(String text) {
        for (Relation relation : values()) {
            if (relation.symbol.equals(text)) {
                return Optional.of(relation);
            }
        }
        return Optional.empty();
    }
}
