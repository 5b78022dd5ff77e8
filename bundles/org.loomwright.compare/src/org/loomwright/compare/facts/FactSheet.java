// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.loomwright.compare.ItemId;
import org.loomwright.condition.Expression;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;

/**
 * One side of a comparison. Immutable; safe for use by several threads.
 *
 * @param items     all elements, in order
 * @param homes     by name of the drawing, harness, kit or platform: what its conditions are about
 * @param platforms the platforms that the side has, by name
 */
public record FactSheet(SequencedMap<ItemId, Item> items, Map<String, Home> homes,
        Map<String, PlatformView> platforms) {

    public FactSheet {
        items = Collections.unmodifiableSequencedMap(items);
        homes = Map.copyOf(homes);
        platforms = Map.copyOf(platforms);
    }

    /**
     * What the conditions of a drawing, harness or kit are about.
     *
     * @param platform name of its platform; empty when nothing tells
     * @param whole    the vehicles that it is for, covered drawings included
     */
    public record Home(String platform, Expression whole) {
    }

    /** All that a project states. Linear in the size of the project. */
    public static FactSheet of(Project project) {
        return new ProjectFacts(project).sheet();
    }

    /** A sheet of these elements with the homes and platforms of this one. */
    public FactSheet with(Collection<Item> others) {
        return new FactSheet(inOrder(others), homes, platforms);
    }

    /** Elements by their ids, in the order of these. O(n log n), near linear where they come in order. */
    static SequencedMap<ItemId, Item> inOrder(Collection<Item> items) {
        List<Item> sorted = new ArrayList<>(items);
        sorted.sort(Comparator.comparing(Item::id));
        SequencedMap<ItemId, Item> all = LinkedHashMap.newLinkedHashMap(sorted.size());
        sorted.forEach(item -> all.put(item.id(), item));
        return all;
    }

    /** The element of that id. */
    public Optional<Item> item(ItemId id) {
        return Optional.ofNullable(items.get(id));
    }

    /** The name under which the home of an element is known. */
    public static String home(ItemId id) {
        int slash = id.owner().indexOf('/');
        String owner = slash < 0 ? id.owner() : id.owner().substring(0, slash);
        return owner.isEmpty() ? id.name() : owner;
    }

    /** All facts as text, one a line and in order, without what is derived: equal for sides that state the same. */
    public List<String> content() {
        List<String> lines = new ArrayList<>();
        for (Item item : items.values()) {
            lines.add(item.id().label());
            item.facts().forEach((slot, stated) -> {
                if (!slot.property().isDerived()) {
                    stated.forEach(each -> lines.add("    " + slot.property() + " " + slot.subject().key() + " = "
                            + each.value().key() + " | " + each.words()));
                }
            });
        }
        return List.copyOf(lines);
    }
}
