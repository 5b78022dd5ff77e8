// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;

/** Joins changes in which two elements exchanged what they state: two connectors that changed places are one swap. */
final class Swaps {

    private static final Set<Property> EXCHANGED = EnumSet.of(Property.PLACE, Property.BRANCH, Property.MATES,
            Property.SERVES, Property.LEAVES, Property.FROM, Property.TO, Property.AT, Property.GROUND);

    private final List<Change> changes;
    private final FactSheet now;

    Swaps(List<Change> changes, FactSheet now) {
        this.changes = changes;
        this.now = now;
    }

    /** A pair of elements, the first one first. */
    private record Pair(ItemId one, ItemId other) {
    }

    /** The changes, with swaps in place of what they are made of. */
    List<Change> joined() {
        Map<String, Integer> waiting = new HashMap<>();
        Map<Pair, List<int[]>> pairs = new LinkedHashMap<>();
        for (int i = 0; i < changes.size(); i++) {
            if (changes.get(i).kind() == Change.Kind.CHANGED
                    && changes.get(i).deltas().getFirst() instanceof Delta.Restated restated && canSwap(restated)) {
                Integer partner = waiting.remove(key(restated, false));
                if (partner == null) {
                    waiting.putIfAbsent(key(restated, true), i);
                } else {
                    Pair pair = new Pair(changes.get(partner).item(), changes.get(i).item());
                    pairs.computeIfAbsent(pair, any -> new ArrayList<>()).add(new int[] {partner, i});
                }
            }
        }
        Set<Integer> gone = new HashSet<>();
        pairs.values().forEach(parts -> parts.forEach(part -> gone.addAll(List.of(part[0], part[1]))));
        List<Change> joined = new ArrayList<>();
        for (int i = 0; i < changes.size(); i++) {
            if (!gone.contains(i)) {
                joined.add(changes.get(i));
            }
        }
        pairs.forEach((pair, parts) -> {
            List<Change> all = parts.stream().flatMap(part -> List.of(changes.get(part[0]), changes.get(part[1]))
                    .stream()).toList();
            joined.add(swap(pair, parts, all));
        });
        return joined;
    }

    private static boolean canSwap(Delta.Restated restated) {
        return EXCHANGED.contains(restated.slot().property()) && restated.was().size() == 1
                && restated.is().size() == 1 && restated.was().getFirst().isAlways()
                && restated.is().getFirst().isAlways();
    }

    private static String key(Delta.Restated restated, boolean forward) {
        String was = restated.was().getFirst().value().key();
        String is = restated.is().getFirst().value().key();
        return restated.item().sort() + "\u0001" + FactSheet.home(restated.item()) + "\u0001"
                + restated.slot().property() + "\u0001" + (forward ? was + "\u0001" + is : is + "\u0001" + was);
    }

    private Change swap(Pair pair, List<int[]> parts, List<Change> all) {
        Item one = now.items().get(pair.one());
        String what = parts.stream().map(part -> (Delta.Restated) changes.get(part[0]).deltas().getFirst())
                .map(delta -> Sentences.exchanged(delta.slot(), delta.was(), delta.is()))
                .collect(Collectors.joining(", "));
        Change first = all.getFirst();
        return new Change(Change.Kind.SWAPPED, pair.one(),
                all.stream().map(Change::aspect).min(Enum::compareTo).orElseThrow(),
                Names.both(one, pair.one(), pair.other()) + " swapped: " + what,
                FeltVehicles.either(all.stream().map(Change::felt).toList(), FactSheet.home(pair.one())),
                all.stream().flatMap(each -> each.deltas().stream()).toList(), first.before(), first.after());
    }
}
