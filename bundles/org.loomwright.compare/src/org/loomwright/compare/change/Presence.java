// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SequencedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Expression;

/** Elements that only one side has. What belongs to a new circuit, trunk or harness is told with it. */
final class Presence {

    private final FactSheet old;
    private final FactSheet now;
    private final Matching matching;
    private final FeltVehicles felt;
    private final Uses uses;

    Presence(FactSheet old, FactSheet now, Matching matching, FeltVehicles felt, Uses uses) {
        this.old = old;
        this.now = now;
        this.matching = matching;
        this.felt = felt;
        this.uses = uses;
    }

    List<Change> changes() {
        SequencedMap<ItemId, Item> added = without(now.items(), matching.reversed().keySet());
        // a circuit that wires moved to or from is told with them
        matching.partners().forEach((before, after) -> moved(before, after, old.items()).ifPresent(added::remove));
        SequencedMap<ItemId, Item> removed = without(old.items(), matching.partners().keySet());
        matching.reversed().forEach((after, before) -> moved(after, before, now.items()).ifPresent(removed::remove));
        List<Change> changes = new ArrayList<>();
        grouped(added).forEach((top, all) -> changes.add(change(now, added.get(top), all, true)));
        grouped(removed).forEach((top, all) -> changes.add(change(old, removed.get(top), all, false)));
        return changes;
    }

    /** The elements that have no partner. */
    private static SequencedMap<ItemId, Item> without(SequencedMap<ItemId, Item> items, Set<ItemId> partners) {
        SequencedMap<ItemId, Item> others = new LinkedHashMap<>();
        items.forEach((id, item) -> {
            if (!partners.contains(id)) {
                others.put(id, item);
            }
        });
        return others;
    }

    /** The circuit that the partner of a wire is in, when it is another one than the wire's own. */
    private Optional<ItemId> moved(ItemId wire, ItemId partner, SequencedMap<ItemId, Item> side) {
        if (wire.sort() != Sort.WIRE || wire.owner().equals(partner.owner())) {
            return Optional.empty();
        }
        SequencedMap<ItemId, Item> other = side == old.items() ? now.items() : old.items();
        return other.get(partner).parent();
    }

    /** Elements by the topmost one among them that they belong to. */
    private static Map<ItemId, List<Item>> grouped(SequencedMap<ItemId, Item> items) {
        Map<ItemId, List<Item>> groups = new LinkedHashMap<>();
        for (Item item : items.values()) {
            groups.computeIfAbsent(top(item, items), any -> new ArrayList<>()).add(item);
        }
        return groups;
    }

    private static ItemId top(Item item, SequencedMap<ItemId, Item> items) {
        if (!item.id().owner().isEmpty()) {
            for (Sort sort : List.of(Sort.WIRING, Sort.PLATFORM)) {
                ItemId home = new ItemId(sort, "", FactSheet.home(item.id()));
                if (items.containsKey(home)) {
                    return home;
                }
            }
        }
        return item.parent().filter(items::containsKey).orElse(item.id());
    }

    private Change change(FactSheet side, Item top, List<Item> all, boolean added) {
        Map<String, Long> counts = all.stream().filter(item -> item != top).map(Labels::sort)
                .collect(Collectors.groupingBy(sort -> sort, TreeMap::new, Collectors.counting()));
        String with = counts.isEmpty() ? "" : " with " + counts.entrySet().stream()
                .map(each -> each.getValue() + " " + (each.getValue() == 1 ? each.getKey() : several(each.getKey())))
                .collect(Collectors.joining(", "));
        Aspect aspect = aspect(top.id().sort());
        String used = top.id().sort() == Sort.PART ? "; " + uses.words(top.id()) : "";
        List<Delta> deltas = all.stream().map(item -> added ? (Delta) new Delta.Added(item)
                : new Delta.Removed(item)).toList();
        return new Change(added ? Change.Kind.ADDED : Change.Kind.REMOVED, top.id(), aspect,
                Labels.titled(top) + (added ? " added" : " removed") + with + used, vehicles(side, top), deltas,
                added ? Optional.empty() : Optional.of(top.span()), added ? Optional.of(top.span()) : Optional.empty());
    }

    private static String several(String sort) {
        return sort.endsWith("h") ? sort + "es" : sort + "s";
    }

    private Felt vehicles(FactSheet side, Item top) {
        Sort sort = top.id().sort();
        if (sort == Sort.PART) {
            return felt.users(uses.of(top.id()));
        }
        if (sort == Sort.CONSTRAINT) {
            return felt.constraints(top.id());
        }
        return sort == Sort.MEMBER || sort == Sort.OPTION || sort == Sort.BREAK
                ? felt.choice(side, top, new Expression.Choice(top.id().name())) : felt.of(side, top);
    }

    private static Aspect aspect(Sort sort) {
        return switch (sort) {
            case WIRING, CIRCUIT, WIRE, SPLICE, DEVICE, STUD, ZONE, GROUND, STRAP, MODE -> Aspect.ELECTRICAL;
            case CONNECTOR, PLACE, POSITION -> Aspect.INTERFACE;
            case PLATFORM, GROUP, MEMBER, OPTION, BREAK, CONSTRAINT, WAIVER, PRACTICE -> Aspect.CONDITION;
            case RUN, BREAKOUT, BARRIER -> Aspect.GEOMETRY;
            case PART, PLACED, KIT -> Aspect.PART;
        };
    }
}
