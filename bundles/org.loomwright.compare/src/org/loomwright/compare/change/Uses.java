// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Value;
import org.loomwright.condition.Expression;

/** Who uses a catalogue part, on either side. Parts go by the names that they have on the new side. */
final class Uses {

    private static final int SHOWN = 3;

    private final Map<ItemId, List<Use>> uses = new HashMap<>();
    private final UnaryOperator<ItemId> names;

    private final FactSheet old;
    private final FactSheet now;
    private boolean read;

    Uses(FactSheet old, FactSheet now, UnaryOperator<ItemId> names) {
        this.old = old;
        this.now = now;
        this.names = names;
    }

    /** Reads both sides when somebody asks for the first time: most revisions leave the catalogue alone. */
    private void read() {
        if (read) {
            return;
        }
        read = true;
        now.items().values().forEach(item -> note(item, false, id -> id));
        old.items().values().forEach(item -> note(item, true, names));
    }

    /** An element that names a part, on which side, and under which condition. */
    record Use(Item item, Expression when, boolean old) {
    }

    private void note(Item item, boolean old, UnaryOperator<ItemId> names) {
        item.facts().forEach((slot, stated) -> {
            parts(slot.subject(), names).forEach(part -> stated.forEach(each -> add(part, item, each.when(), old)));
            stated.forEach(each -> parts(each.value(), names).forEach(part -> add(part, item, each.when(), old)));
        });
    }

    private void add(ItemId part, Item item, Expression when, boolean old) {
        uses.computeIfAbsent(part, any -> new ArrayList<>()).add(new Use(item, when, old));
    }

    private static List<ItemId> parts(Value value, UnaryOperator<ItemId> names) {
        return value.mentions().stream().filter(id -> id.sort() == Sort.PART).map(names).toList();
    }

    /** Who uses a part; who uses one that is like it uses it as well. */
    List<Use> of(ItemId part) {
        read();
        List<Use> all = new ArrayList<>();
        collect(part, all, new HashSet<>());
        return all;
    }

    private void collect(ItemId part, List<Use> all, Set<ItemId> seen) {
        if (seen.add(part)) {
            for (Use use : uses.getOrDefault(part, List.of())) {
                if (use.item().id().sort() == Sort.PART) {
                    collect(names(use), all, seen);
                } else {
                    all.add(use);
                }
            }
        }
    }

    private ItemId names(Use use) {
        return use.old() ? names.apply(use.item().id()) : use.item().id();
    }

    /** {@code used by device F1 of front, kit frontKit and 2 more}; {@code used by nothing}. */
    String words(ItemId part) {
        Set<String> labels = new LinkedHashSet<>();
        of(part).stream().sorted(Comparator.comparing(Use::old).thenComparing(use -> use.item().id().sort()))
                .forEach(use -> labels.add(Labels.of(use.item())));
        if (labels.isEmpty()) {
            return "used by nothing";
        }
        List<String> shown = labels.stream().limit(SHOWN).toList();
        return "used by " + String.join(", ", shown)
                + (labels.size() > SHOWN ? " and " + (labels.size() - SHOWN) + " more" : "");
    }
}
