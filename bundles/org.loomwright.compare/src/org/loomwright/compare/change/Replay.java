// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.ChoiceNames;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.match.Matching;

/** Applies changes to the side that they start from. Pure; linear in the size of the side. */
public final class Replay {

    private Replay() {
    }

    /**
     * The side after the changes; its {@link FactSheet#content} is that of the new side when these are all of them.
     *
     * @throws IllegalArgumentException if a change does not apply to this side
     */
    public static FactSheet apply(FactSheet old, List<Change> changes) {
        Map<ItemId, ItemId> names = new HashMap<>();
        Set<ItemId> removed = new HashSet<>();
        List<Item> added = new ArrayList<>();
        List<Delta.Restated> restated = new ArrayList<>();
        for (Change change : changes) {
            for (Delta delta : change.deltas()) {
                switch (delta) {
                    case Delta.Renamed each -> names.put(each.from(), each.item());
                    case Delta.Removed each -> removed.add(each.item());
                    case Delta.Added each -> added.add(each.element());
                    case Delta.Restated each -> restated.add(each);
                }
            }
        }
        UnaryOperator<ItemId> name = names(old, removed, names);
        Map<ItemId, Item> items = new TreeMap<>();
        ChoiceNames.follow(old, names).items().values().stream().filter(item -> !removed.contains(item.id()))
                .map(item -> item.renamed(name)).forEach(item -> items.put(item.id(), item));
        restated.forEach(each -> items.compute(each.item(), (id, item) -> restated(item, each)));
        for (Item item : added) {
            if (items.put(item.id(), item) != null) {
                throw new IllegalArgumentException(item.id() + " is there already");
            }
        }
        return old.with(new TreeSet<>(items.keySet()).stream().map(items::get).toList());
    }

    /** What old elements are called afterwards, those that are gone included. */
    private static UnaryOperator<ItemId> names(FactSheet old, Set<ItemId> removed, Map<ItemId, ItemId> names) {
        SequencedMap<ItemId, ItemId> partners = new LinkedHashMap<>();
        SequencedMap<ItemId, ItemId> reversed = new LinkedHashMap<>();
        old.items().keySet().stream().filter(id -> !removed.contains(id)).forEach(id -> {
            ItemId after = names.getOrDefault(id, id);
            partners.put(id, after);
            reversed.put(after, id);
        });
        return new Matching(partners, reversed, Set.of(), 0)::name;
    }

    private static Item restated(Item item, Delta.Restated delta) {
        if (item == null || !words(item.in(delta.slot())).equals(words(delta.was()))) {
            throw new IllegalArgumentException(delta.item() + " does not state what is to be replaced: "
                    + delta.slot().words());
        }
        TreeMap<Slot, List<Stated>> facts = new TreeMap<>(item.facts());
        if (delta.is().isEmpty()) {
            facts.remove(delta.slot());
        } else {
            facts.put(delta.slot(), delta.is());
        }
        return new Item(item.id(), facts, item.neighbours(), item.span());
    }

    private static List<String> words(List<Stated> stated) {
        return stated.stream().map(each -> each.value().key() + "\u0001" + each.words()).toList();
    }
}
