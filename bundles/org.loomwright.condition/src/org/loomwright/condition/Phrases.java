// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Not;
import org.loomwright.condition.internal.Literals;

/** Words for sets of members of an axis, as {@link Wording} defines them. */
final class Phrases implements Literals {
    private final List<Axis> axes;
    private final YearPhrases years;

    Phrases(Choices choices) {
        this.axes = choices.axes();
        this.years = new YearPhrases(new YearParts(choices));
    }

    @Override
    public Literal cheapest(int axis, BitSet must, BitSet may) {
        int size = axes.get(axis).members().size();
        if (may.cardinality() == size) {
            return new Literal(may, 0);
        }
        return switch (axes.get(axis).kind()) {
            case YEAR -> {
                YearPhrases.Phrase phrase = years.cheapest(must, may);
                yield new Literal(phrase.members(), phrase.words());
            }
            case OPTION, UPGRADE -> new Literal(must, must.get(1) ? 1 : 2);
            case GROUP -> {
                int named = must.cardinality();
                int excluded = 1 + size - may.cardinality();
                yield named <= excluded ? new Literal(must, named) : new Literal(may, excluded);
            }
        };
    }

    /** Returns the words for exactly these members of an axis; they are neither none nor all. */
    Expression expression(int axis, BitSet members) {
        return switch (axes.get(axis).kind()) {
            case YEAR -> years.cheapest(members, members).expression();
            case OPTION, UPGRADE -> yesOrNo(axes.get(axis).name(), members.get(1));
            case GROUP -> group(axes.get(axis).members(), members);
        };
    }

    private static Expression yesOrNo(String name, boolean yes) {
        return yes ? new Choice(name) : new Not(new Choice(name));
    }

    private static Expression group(List<String> names, BitSet members) {
        int excluded = names.size() - members.cardinality();
        if (members.cardinality() <= 1 + excluded) {
            return anyOf(names, members);
        }
        BitSet others = (BitSet) members.clone();
        others.flip(0, names.size());
        return new Not(anyOf(names, others));
    }

    private static Expression anyOf(List<String> names, BitSet members) {
        List<Expression> choices = new ArrayList<>();
        members.stream().forEach(member -> choices.add(new Choice(names.get(member))));
        return Expression.anyOf(choices);
    }
}
