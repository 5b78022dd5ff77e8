// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Labels;
import org.loomwright.compare.change.Space;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.facts.Value;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Vehicles;

/**
 * What the connectors of one harness offered to devices, neighbours and add-ons on the old side and do not any more. A
 * connector counts when it mates something, or when something outside mates it. Names are compared as the new side has
 * them; a cavity keeps its function as long as the same wire or circuit ends in it.
 */
final class MatingFaces {

    private final FactSheet old;
    private final FactSheet now;
    private final UnaryOperator<ItemId> names;
    private final String harness;
    private final Space space;
    private final Comparison comparison;
    private final Map<ItemId, ItemId> back;
    private final List<Loss> losses = new ArrayList<>();

    /**
     * @param comparison the two sides
     * @param old        the old one, with the names that choices have on the new one
     * @param harness    the harness as the old side calls it
     */
    MatingFaces(Comparison comparison, FactSheet old, String harness) {
        this.comparison = comparison;
        this.old = old;
        this.now = comparison.now();
        this.back = comparison.matching().reversed();
        this.names = comparison.matching()::name;
        this.harness = harness;
        FactSheet.Home home = old.homes().get(harness);
        this.space = Space.of(old, now, home == null ? "" : names
                .apply(new ItemId(Sort.PLATFORM, "", home.platform())).name(), comparison.matching());
    }

    /** Something that a connector does not offer any more, and to which vehicles. */
    record Loss(String connector, String what, String vehicles) {
    }

    /** A wire that ends in a cavity, with the names of the new side. */
    private record Ending(ItemId wire, Optional<ItemId> circuit, Item item, Stated stated) {
    }

    List<Loss> losses() {
        Set<ItemId> mated = new HashSet<>();
        old.items().values().forEach(item -> item.in(Slot.of(Property.MATES))
                .forEach(mate -> mated.addAll(mate.value().mentions())));
        Map<ItemId, Map<String, List<Ending>>> then = endings(old, names, harness);
        Map<ItemId, Map<String, List<Ending>>> here = endings(now, id -> id,
                names.apply(new ItemId(Sort.WIRING, "", harness)).name());
        for (Item item : old.items().values()) {
            boolean mates = item.id().sort() == Sort.CONNECTOR && item.id().owner().equals(harness)
                    && (!item.in(Slot.of(Property.MATES)).isEmpty() || mated.contains(item.id()));
            if (mates) {
                connector(item, then, here);
            }
        }
        return losses;
    }

    private void connector(Item before, Map<ItemId, Map<String, List<Ending>>> then,
            Map<ItemId, Map<String, List<Ending>>> here) {
        Optional<Item> partner = comparison.matching().after(before.id()).flatMap(now::item);
        if (partner.isEmpty()) {
            losses.add(new Loss(Labels.of(before), "is gone", ""));
            return;
        }
        Item after = partner.get();
        Item was = before.renamed(names);
        lost(before, after, was.in(Slot.of(Property.EXISTS)), Property.EXISTS, "is no longer there");
        lost(before, after, was.in(Slot.of(Property.HOUSING)), Property.HOUSING, "no longer has housing ");
        lost(before, after, was.in(Slot.of(Property.MATES)), Property.MATES, "no longer mates ");
        place(before, after);
        housing(was);
        was.facts().forEach((slot, stated) -> {
            if (slot.property() == Property.MAP && !words(stated).equals(words(after.in(slot)))) {
                losses.add(new Loss(Labels.of(after), "cavity " + slot.subject().shown() + " meets another cavity",
                        ""));
            }
        });
        then.getOrDefault(names.apply(before.id()), Map.of()).forEach((cavity, endings) -> endings.forEach(ending ->
                function(after, cavity, ending, here.getOrDefault(after.id(), Map.of()).getOrDefault(cavity,
                        List.of()))));
    }

    private static List<String> words(List<Stated> stated) {
        return stated.stream().map(each -> each.value().key() + " " + each.when().words()).sorted().toList();
    }

    /** Values that a connector had for vehicles for which it does not have them any more. */
    private void lost(Item before, Item after, List<Stated> was, Property property, String what) {
        Map<String, Stated> byValue = new LinkedHashMap<>();
        was.forEach(each -> byValue.putIfAbsent(each.value().key(), each));
        byValue.forEach((key, first) -> {
            Predicate<Stated> same = each -> each.value().key().equals(key);
            missing(conditions(old, before, was.stream().filter(same)),
                    conditions(now, after, after.in(Slot.of(property)).stream().filter(same)))
                    .ifPresent(vehicles -> losses.add(new Loss(Labels.of(after),
                            property == Property.EXISTS ? what : what + first.value().shown(), vehicles)));
        });
    }

    private static Stream<List<Expression>> conditions(FactSheet side, Item item, Stream<Stated> stated) {
        return stated.map(each -> Stream.concat(Space.conditions(side, item).stream(), Stream.of(each.when()))
                .toList());
    }

    /** The vehicles of the first that the second do not have, in words; nothing when there are none. */
    private Optional<String> missing(Stream<List<Expression>> then, Stream<List<Expression>> here) {
        List<List<Expression>> before = then.toList();
        List<List<Expression>> after = here.toList();
        Optional<Condition> was = any(before);
        Optional<Condition> is = any(after);
        if (was.isEmpty() || is.isEmpty()) {
            return words(before, after);
        }
        Condition lost = was.get().minus(is.get());
        return lost.isNever() ? Optional.empty() : Optional.of(lost.isAlways() ? "every vehicle" : lost.words());
    }

    /** Without vehicles to count, what was written must still be written. */
    private static Optional<String> words(List<List<Expression>> before, List<List<Expression>> after) {
        Set<String> now = new HashSet<>();
        after.forEach(each -> now.add(Expression.allOf(each).words()));
        return before.stream().map(each -> Expression.allOf(each).words()).filter(each -> !now.contains(each))
                .findFirst().map(each -> "as written: " + each);
    }

    private Optional<Condition> any(List<List<Expression>> alternatives) {
        Optional<Condition> any = space.vehicles().map(Vehicles::none);
        for (List<Expression> each : alternatives) {
            Optional<Condition> so = any;
            any = so.flatMap(sum -> space.all(each).map(sum::or));
        }
        return any;
    }

    /** Where the connector is in the vehicle: its place, or the place that its branch serves. */
    private void place(Item before, Item after) {
        Optional<Value> was = place(old, before).map(value -> value.renamed(names));
        Optional<Value> is = place(now, after);
        if (was.isPresent() && !was.map(Value::key).equals(is.map(Value::key))) {
            losses.add(new Loss(Labels.of(after), "is at " + is.map(Value::shown).orElse("no place") + ", no longer at "
                    + was.get().shown(), ""));
        }
    }

    private static Optional<Value> place(FactSheet side, Item connector) {
        return connector.value(Property.PLACE).or(() -> connector.value(Property.BRANCH)
                .flatMap(branch -> branch.mentions().stream().findFirst()).flatMap(side::item)
                .flatMap(run -> run.value(Property.SERVES)));
    }

    /** A housing under the same name must mate as it did. */
    private void housing(Item was) {
        for (Stated stated : was.in(Slot.of(Property.HOUSING))) {
            for (ItemId part : stated.value().mentions()) {
                Optional<Item> before = Optional.ofNullable(back.get(part))
                        .flatMap(old::item);
                Optional<Item> after = now.item(part);
                if (before.isPresent() && after.isPresent()) {
                    before.get().facts().forEach((slot, facts) -> {
                        boolean mates = slot.property() == Property.MATING_WORD || slot.property() == Property.PIN;
                        List<Stated> here = after.get().in(slot);
                        if (mates && (slot.property() == Property.PIN ? here.isEmpty()
                                : !words(facts).equals(words(here)))) {
                            losses.add(new Loss(Labels.of(was), "housing " + part.name() + " has another "
                                    + slot.words(), ""));
                        }
                    });
                }
            }
        }
    }

    /** A cavity keeps its function where the same wire or circuit ends in it. */
    private void function(Item after, String cavity, Ending before, List<Ending> endings) {
        missing(conditions(old, before.item(), Stream.of(before.stated())), endings.stream()
                .filter(each -> each.wire().equals(before.wire()) || each.circuit().equals(before.circuit()))
                .flatMap(each -> conditions(now, each.item(), Stream.of(each.stated()))))
                .ifPresent(vehicles -> losses.add(new Loss(Labels.of(after), "cavity " + cavity
                        + " no longer holds circuit " + before.circuit().map(ItemId::name).orElse("?"), vehicles)));
    }

    /** Wires by connector and cavity. */
    private static Map<ItemId, Map<String, List<Ending>>> endings(FactSheet side, UnaryOperator<ItemId> names,
            String harness) {
        Map<ItemId, Map<String, List<Ending>>> all = new HashMap<>();
        for (Item item : side.items().values()) {
            if (item.id().sort() == Sort.WIRE && FactSheet.home(item.id()).equals(harness)) {
                for (Property end : List.of(Property.FROM, Property.TO)) {
                    for (Stated stated : item.in(Slot.of(end))) {
                        stated.value().mentions().stream().filter(id -> id.sort() == Sort.CONNECTOR).forEach(id ->
                                all.computeIfAbsent(names.apply(id), any -> new LinkedHashMap<>())
                                        .computeIfAbsent(cavity(stated.value()), any -> new ArrayList<>())
                                        .add(new Ending(names.apply(item.id()), item.parent().map(names), item,
                                                stated)));
                    }
                }
            }
        }
        return all;
    }

    private static String cavity(Value end) {
        return end.tokens().size() < 2 ? "" : end.tokens().get(1).shown().substring(1);
    }
}
