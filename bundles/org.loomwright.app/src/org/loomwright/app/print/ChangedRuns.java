// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Delta;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;

/** Finds the trunks, branches and breakouts on which changes are: to be marked on a drawing of one side. */
final class ChangedRuns {

    private final FactSheet side;
    private final Map<ItemId, String> serving = new HashMap<>();

    ChangedRuns(FactSheet side) {
        this.side = side;
        side.items().values().stream().filter(item -> item.id().sort() == Sort.RUN).forEach(run ->
                mentions(run, Property.SERVES).forEach(place ->
                        serving.putIfAbsent(new ItemId(place.sort(), run.id().owner(), place.name()),
                                run.id().name())));
    }

    /** The numbers of the changes by name of the run or breakout on which they are, in one drawing or harness. */
    Map<String, List<Integer>> of(String home, List<Change> changes) {
        Map<String, List<Integer>> marks = new HashMap<>();
        for (int i = 0; i < changes.size(); i++) {
            Set<String> names = new LinkedHashSet<>();
            Stream.concat(Stream.of(changes.get(i).item()), changes.get(i).deltas().stream().map(Delta::item))
                    .filter(id -> FactSheet.home(id).equals(home)).forEach(id -> names.addAll(names(id, home, true)));
            for (String name : names) {
                marks.computeIfAbsent(name, any -> new ArrayList<>()).add(i + 1);
            }
        }
        return marks;
    }

    private List<String> names(ItemId id, String home, boolean ends) {
        Item item = side.items().get(id);
        if (item == null) {
            return List.of();
        }
        return switch (id.sort()) {
            case RUN, BREAKOUT, BARRIER -> List.of(id.name());
            case WIRE -> ends ? Stream.of(Property.FROM, Property.TO).flatMap(each -> mentions(item, each).stream())
                    .flatMap(end -> names(end, home, false).stream()).toList() : List.of();
            case CONNECTOR, STUD, SPLICE, PLACED -> seat(item, home);
            default -> List.of();
        };
    }

    /** The branch that an element names, the one that goes to its place, or the point that it sits at. */
    private List<String> seat(Item item, String home) {
        List<String> names = new ArrayList<>();
        for (Property property : List.of(Property.BRANCH, Property.AT, Property.PLACE)) {
            for (ItemId each : names.isEmpty() ? mentions(item, property) : List.<ItemId>of()) {
                String run = each.sort() == Sort.PLACE
                        ? serving.get(new ItemId(Sort.PLACE, home, each.name())) : each.name();
                if (run != null) {
                    names.add(run);
                }
            }
        }
        return names;
    }

    private static List<ItemId> mentions(Item item, Property property) {
        return item.in(Slot.of(property)).stream().flatMap(each -> each.value().mentions().stream()).toList();
    }
}
