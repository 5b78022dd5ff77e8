// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Value;
import org.loomwright.compare.match.Matching;

/** Elements under another name or owner: renamed, names swapped, wires in other circuits. */
final class Names {

    private final FactSheet old;
    private final FactSheet now;
    private final Matching matching;
    private final FeltVehicles felt;
    private final Map<ItemId, ItemId> back;
    private final Set<ItemId> told = new HashSet<>();
    private final List<Change> changes = new ArrayList<>();

    Names(FactSheet old, FactSheet now, Matching matching, FeltVehicles felt) {
        this.old = old;
        this.now = now;
        this.matching = matching;
        this.felt = felt;
        this.back = matching.reversed();
    }

    /** A circuit that wires left, and the one that they are in now. */
    private record Way(ItemId from, ItemId to) {
    }

    List<Change> changes() {
        Map<Way, List<Delta.Renamed>> ways = new LinkedHashMap<>();
        List<Delta.Renamed> implied = new ArrayList<>();
        List<Delta.Renamed> own = new ArrayList<>();
        matching.partners().forEach((before, after) -> {
            if (!before.equals(after)) {
                Delta.Renamed delta = new Delta.Renamed(before, after);
                Item wire = now.items().get(after);
                boolean moved = before.sort() == Sort.WIRE && !wire.parent().map(back::get)
                        .equals(old.items().get(before).parent());
                if (moved) {
                    ways.computeIfAbsent(new Way(old.items().get(before).parent().orElseThrow(),
                            wire.parent().orElseThrow()), any -> new ArrayList<>()).add(delta);
                } else if (before.name().equals(after.name()) || isNamedAfterOthers(before, after)) {
                    implied.add(delta);
                } else {
                    own.add(delta);
                }
            }
        });
        renamed(own, implied);
        ways.forEach(this::moved);
        return changes;
    }

    /** Whether two have no name of their own but what they accept or forbid, and only what they name is renamed. */
    private boolean isNamedAfterOthers(ItemId before, ItemId after) {
        Optional<Value> was = says(old.items().get(before)).filter(each -> each.shown().equals(before.name()));
        Optional<Value> is = says(now.items().get(after)).filter(each -> each.shown().equals(after.name()));
        return was.isPresent() && is.isPresent() && was.get().renamed(matching::name).equals(is.get());
    }

    private static Optional<Value> says(Item item) {
        return item.value(item.id().sort() == Sort.WAIVER ? Property.ACCEPTS : Property.CONSTRAINT);
    }

    private void renamed(List<Delta.Renamed> own, List<Delta.Renamed> implied) {
        for (Delta.Renamed delta : own) {
            ItemId other = matching.partners().get(new ItemId(delta.from().sort(), delta.from().owner(),
                    delta.item().name()));
            boolean exchanged = other != null && other.name().equals(delta.from().name())
                    && other.owner().equals(delta.item().owner());
            if (!told.add(delta.from())) {
                continue;
            }
            List<Delta> deltas = new ArrayList<>(List.of(delta));
            String sentence = Labels.of(old.items().get(delta.from())) + " renamed " + Labels.name(delta.item());
            if (exchanged) {
                ItemId second = back.get(other);
                told.add(second);
                deltas.add(new Delta.Renamed(second, other));
                sentence = both(now.items().get(delta.item()), delta.from(), second) + " swapped names";
            }
            implied.stream().filter(each -> belongs(each, delta)).forEach(deltas::add);
            changes.add(new Change(Change.Kind.RENAMED, delta.item(), Aspect.TEXT, sentence, Felt.NONE, deltas,
                    Optional.of(old.items().get(delta.from()).span()),
                    Optional.of(now.items().get(delta.item()).span())));
        }
    }

    /** Whether an element has another owner only because that one is renamed. */
    private boolean belongs(Delta.Renamed each, Delta.Renamed owner) {
        if (!each.from().name().equals(each.item().name())) {
            return says(old.items().get(each.from())).orElseThrow().mentions().stream()
                    .filter(id -> !matching.name(id).name().equals(id.name())).findFirst().filter(owner.from()::equals)
                    .isPresent();
        }
        String home = FactSheet.home(each.from());
        return owner.from().owner().isEmpty() ? home.equals(owner.from().name())
                : each.from().owner().equals(owner.from().owner() + "/" + owner.from().name());
    }

    private void moved(Way way, List<Delta.Renamed> wires) {
        Item first = now.items().get(wires.getFirst().item());
        boolean added = !back.containsKey(way.to());
        boolean removed = matching.after(way.from()).isEmpty();
        String what = (wires.size() == 1 ? "wire " : "wires ") + wires.stream()
                .map(each -> Labels.name(each.from()) + (wires.size() == 1 ? " is now " : " -> ")
                        + Labels.name(each.item())).collect(Collectors.joining(", "));
        Change.Kind kind = added && !removed ? Change.Kind.SPLIT : removed && !added ? Change.Kind.JOINED
                : Change.Kind.MOVED;
        String home = FactSheet.home(way.to());
        String sentence = switch (kind) {
            case SPLIT -> "circuit " + Labels.of(matching.name(way.from())) + " split: " + what;
            case JOINED -> "circuits " + way.from().name() + " and " + way.to().name() + " of " + home + " joined: "
                    + what;
            default -> what + " of " + home;
        };
        List<Delta> deltas = new ArrayList<>(wires);
        if (added && told.add(way.to())) {
            deltas.add(new Delta.Added(now.items().get(way.to())));
        }
        if (removed && told.add(way.from())) {
            deltas.add(new Delta.Removed(old.items().get(way.from())));
        }
        changes.add(new Change(kind, added ? way.to() : first.id(), Aspect.ELECTRICAL,
                sentence + colours(way, wires), FeltVehicles.either(wires.stream()
                        .map(each -> felt.of(now, now.items().get(each.item()))).toList(), home), deltas,
                old.item(way.from()).map(Item::span), now.item(way.to()).map(Item::span)));
    }

    /** A wire without a colour of its own takes that of its circuit. */
    private String colours(Way way, List<Delta.Renamed> wires) {
        Optional<Value> was = old.item(way.from()).flatMap(circuit -> circuit.value(Property.COLOUR));
        Optional<Value> is = now.item(way.to()).flatMap(circuit -> circuit.value(Property.COLOUR));
        boolean takes = wires.stream().anyMatch(each -> now.items().get(each.item())
                .value(Property.COLOUR).isEmpty());
        if (!takes || was.map(Value::key).equals(is.map(Value::key))) {
            return "";
        }
        return ", colour " + was.map(Value::shown).orElse("none") + " -> " + is.map(Value::shown).orElse("none");
    }

    /** {@code connectors H1 and H2 of front}. */
    static String both(Item one, ItemId first, ItemId second) {
        String sort = Labels.sort(one);
        String several = sort.endsWith("s") || sort.endsWith("x") ? sort + "es" : sort.endsWith("ch") ? sort + "es"
                : sort + "s";
        return several + " " + Labels.name(first) + " and " + Labels.of(second);
    }
}
