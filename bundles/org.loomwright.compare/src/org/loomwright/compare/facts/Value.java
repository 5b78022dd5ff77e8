// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.quantity.Quantity;

/**
 * A value, or what tells facts of one property apart: words and names in order.
 *
 * @param tokens its pieces
 */
public record Value(List<Token> tokens) {

    /** No value: there is only one fact of the property. */
    public static final Value NONE = new Value(List.of());

    public Value {
        tokens = List.copyOf(tokens);
    }

    /** A piece of a value. */
    public sealed interface Token {

        /** Equal for what means the same, however it is written. */
        String key();

        /** As its author wrote it. */
        String shown();
    }

    /** A piece that means nothing but itself. */
    public record Word(String key, String shown) implements Token {
    }

    /**
     * The name of an element.
     *
     * @param id    the element
     * @param whole true to print its owner too
     */
    public record Mention(ItemId id, boolean whole) implements Token {

        @Override
        public String key() {
            return id.sort() + "(" + id.owner() + "/" + id.name() + ")";
        }

        @Override
        public String shown() {
            return whole && !id.owner().isEmpty() ? id.name() + " of " + id.owner() : id.name();
        }
    }

    /** A word. */
    public static Value word(String text) {
        return new Value(List.of(new Word(text, text)));
    }

    /** A quantity: the key is what it measures, to the nearest double of its SI value. */
    public static Value quantity(Quantity quantity) {
        return new Value(List.of(new Word(quantity.unit().dimension() + ":" + quantity.si(), quantity.written())));
    }

    /** The name of an element. */
    public static Value mention(Sort sort, String owner, String name) {
        return new Value(List.of(new Mention(new ItemId(sort, owner, name), false)));
    }

    /** This followed by another. */
    public Value and(Value other) {
        Token[] all = new Token[tokens.size() + other.tokens.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = i < tokens.size() ? tokens.get(i) : other.tokens.get(i - tokens.size());
        }
        return new Value(List.of(all));
    }

    /** This followed by a word. */
    public Value and(String text) {
        return and(word(text));
    }

    /** Equal for the same pieces, compared without an iterator: large revisions are, piece by piece. */
    @Override
    public boolean equals(Object other) {
        if (!(other instanceof Value(List<Token> theirs)) || tokens.size() != theirs.size()) {
            return false;
        }
        for (int i = 0; i < tokens.size(); i++) {
            if (!tokens.get(i).equals(theirs.get(i))) {
                return false;
            }
        }
        return true;
    }

    @Override
    public int hashCode() {
        return tokens.hashCode();
    }

    /** Equal for values that mean the same. */
    public String key() {
        if (tokens.size() == 1) {
            return tokens.getFirst().key();
        }
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < tokens.size(); i++) {
            key.append(i == 0 ? "" : "\u0001").append(tokens.get(i).key());
        }
        return key.toString();
    }

    /** As its author wrote it. */
    public String shown() {
        if (tokens.size() == 1) {
            return tokens.getFirst().shown();
        }
        StringBuilder shown = new StringBuilder();
        tokens.forEach(token -> shown.append(token.shown()));
        return shown.toString();
    }

    /** The elements that it names. */
    public List<ItemId> mentions() {
        List<ItemId> mentions = new ArrayList<>(1);
        for (Token token : tokens) {
            if (token instanceof Mention(ItemId id, boolean whole)) {
                mentions.add(id);
            }
        }
        return mentions.isEmpty() ? List.of() : Collections.unmodifiableList(mentions);
    }

    /** Whether other names make another value of it. */
    boolean changes(UnaryOperator<ItemId> names) {
        for (int i = 0; i < tokens.size(); i++) {
            if (tokens.get(i) instanceof Mention(ItemId id, boolean whole) && !names.apply(id).equals(id)) {
                return true;
            }
        }
        return false;
    }

    /** The same with other elements named. */
    public Value renamed(UnaryOperator<ItemId> names) {
        if (!changes(names)) {
            return this;
        }
        return new Value(tokens.stream().map(token -> token instanceof Mention(ItemId id, boolean whole)
                ? new Mention(names.apply(id), whole) : token).toList());
    }
}
