// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;

/** Collects the facts of one element. */
final class ItemBuilder {

    private static final Expression ALWAYS = new Expression.Always();
    private static final Value THERE = Value.word("there");

    private final ItemId id;
    private final Span span;
    private final TreeMap<Slot, List<Stated>> facts = new TreeMap<>();
    private final List<Value> neighbours = new ArrayList<>();

    ItemBuilder(Sort sort, String owner, String name, Span span) {
        this.id = new ItemId(sort, owner, name);
        this.span = span;
    }

    /** The condition of the element itself. */
    ItemBuilder exists(Expression when) {
        return put(Slot.of(Property.EXISTS), THERE, when, span);
    }

    /** A word; nothing for an empty one. */
    ItemBuilder word(Property property, String text) {
        return text.isEmpty() ? this : put(property, Value.word(text), span);
    }

    ItemBuilder put(Property property, Value value, Span at) {
        return put(Slot.of(property), value, ALWAYS, at);
    }

    ItemBuilder put(Slot slot, Value value, Expression when, Span at) {
        facts.merge(slot, List.of(new Stated(value, when, at)), ItemBuilder::joined);
        return this;
    }

    private static List<Stated> joined(List<Stated> before, List<Stated> more) {
        List<Stated> all = before instanceof ArrayList<Stated> growing ? growing : new ArrayList<>(before);
        all.addAll(more);
        return all;
    }

    /** The name of an element of another sort; nothing for an absent one. */
    ItemBuilder ref(Property property, Optional<Ref> ref, Sort sort, String owner) {
        ref.filter(each -> !each.text().isEmpty())
                .ifPresent(each -> put(property, Value.mention(sort, owner, each.text()), each.span()));
        return this;
    }

    <T> ItemBuilder all(Property property, List<Fact<T>> stated, Function<T, Value> value) {
        stated.forEach(each -> put(Slot.of(property), value.apply(each.value()), each.when(), each.span()));
        return this;
    }

    /** Names of catalogue parts. */
    ItemBuilder parts(Property property, List<Fact<Ref>> stated) {
        return all(property, stated, ref -> Value.mention(Sort.PART, "", ref.text()));
    }

    /** What others say about it. */
    void neighbour(Value value) {
        neighbours.add(value);
    }

    /** The element. To be called once. */
    Item build() {
        facts.replaceAll((slot, stated) -> stated.size() == 1 ? stated
                : stated.stream().sorted().toList());
        return new Item(id, facts, neighbours, span);
    }
}
