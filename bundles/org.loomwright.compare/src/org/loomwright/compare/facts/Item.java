// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.harness.Span;

/**
 * An element with all that is stated of it.
 *
 * @param id         which one
 * @param facts      its facts by slot, those of a slot in order
 * @param neighbours what others say about it, such as the wires that end in it; it is recognised by it
 * @param span       where it stands
 */
public record Item(ItemId id, SortedMap<Slot, List<Stated>> facts, List<Value> neighbours, Span span) {

    public Item {
        facts = Collections.unmodifiableSortedMap(facts);
        neighbours = List.copyOf(neighbours);
    }

    /** The facts of a slot; none when nothing is stated. */
    public List<Stated> in(Slot slot) {
        return facts.getOrDefault(slot, List.of());
    }

    /** The one value of a property; empty when there is none or it has a condition of its own. */
    public Optional<Value> value(Property property) {
        List<Stated> stated = in(Slot.of(property));
        return stated.size() == 1 ? Optional.of(stated.getFirst().value()) : Optional.empty();
    }

    /** Its title; empty when it has none. */
    public String title() {
        return value(Property.TITLE).map(Value::shown).orElse("");
    }

    /**
     * The element without which it is not there: the circuit of a wire or splice, the run of a breakout, the group of a
     * member.
     */
    public Optional<ItemId> parent() {
        if (id.sort() == Sort.WIRE) {
            int slash = id.owner().lastIndexOf('/');
            return Optional.of(new ItemId(Sort.CIRCUIT, id.owner().substring(0, slash),
                    id.owner().substring(slash + 1)));
        }
        return Stream.of(Property.CIRCUIT, Property.ON, Property.MEMBER).flatMap(each -> value(each).stream())
                .flatMap(value -> value.mentions().stream()).findFirst();
    }

    /** Whether another element states the same in the same words, wherever it stands. Linear in the facts. */
    public boolean statesAs(Item other) {
        if (facts.size() != other.facts.size() || !isSame(neighbours, other.neighbours)) {
            return false;
        }
        Iterator<Map.Entry<Slot, List<Stated>>> theirs = other.facts.entrySet().iterator();
        for (Map.Entry<Slot, List<Stated>> own : facts.entrySet()) {
            Map.Entry<Slot, List<Stated>> their = theirs.next();
            List<Stated> stated = own.getValue();
            if (!own.getKey().equals(their.getKey()) || stated.size() != their.getValue().size()) {
                return false;
            }
            for (int i = 0; i < stated.size(); i++) {
                if (!stated.get(i).value().equals(their.getValue().get(i).value())
                        || !stated.get(i).when().equals(their.getValue().get(i).when())) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean isSame(List<Value> these, List<Value> those) {
        for (int i = 0; i < these.size(); i++) {
            if (i >= those.size() || !these.get(i).equals(those.get(i))) {
                return false;
            }
        }
        return these.size() == those.size();
    }

    /** Whether other names change anything that is stated of it or that others say. Linear in the facts. */
    public boolean isTouchedBy(UnaryOperator<ItemId> names) {
        for (Map.Entry<Slot, List<Stated>> each : facts.entrySet()) {
            if (each.getKey().subject().changes(names)) {
                return true;
            }
            List<Stated> stated = each.getValue();
            for (int i = 0; i < stated.size(); i++) {
                if (stated.get(i).value().changes(names)) {
                    return true;
                }
            }
        }
        for (int i = 0; i < neighbours.size(); i++) {
            if (neighbours.get(i).changes(names)) {
                return true;
            }
        }
        return false;
    }

    /** The same facts of an element with another name of its own. */
    Item named(String name) {
        return new Item(new ItemId(id.sort(), id.owner(), name), facts, neighbours, span);
    }

    /** The same element and its facts with other names. */
    public Item renamed(UnaryOperator<ItemId> names) {
        TreeMap<Slot, List<Stated>> renamed = new TreeMap<>();
        facts.forEach((slot, stated) -> renamed.put(new Slot(slot.property(), slot.subject().renamed(names)),
                stated.stream().map(each -> each.renamed(names)).sorted().toList()));
        return new Item(names.apply(id), renamed, neighbours.stream().map(each -> each.renamed(names)).toList(), span);
    }
}
