// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Labels;
import org.loomwright.compare.facts.ChoiceNames;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.match.Matching;
import org.loomwright.harness.clause.ClauseLine;
import org.loomwright.harness.link.WireView;

/**
 * The three versions under the same names: what one side renamed has its new name in all of them, so that a line which
 * the other side added names it rightly. A name that both sides changed otherwise is left to be a conflict where it is
 * declared, and is ours everywhere else.
 */
final class Unified {

    private static final Pattern LINE = Pattern.compile("(?<=\n)");

    private final Map<Integer, Map<String, String>> names = new HashMap<>();
    private final Map<Integer, Map<String, String>> own = new HashMap<>();
    private final Map<Integer, Map<String, String>> labels = new HashMap<>();
    private final Version version;

    private Unified(Version version) {
        this.version = version;
    }

    /** The texts of base, ours and theirs; lines keep their places. */
    static List<String> texts(Version base, Version ours, Version theirs, Matching toOurs, Matching toTheirs) {
        Unified then = new Unified(base);
        Unified one = new Unified(ours);
        Unified other = new Unified(theirs);
        Map<ItemId, String> inBase = new HashMap<>();
        Map<ItemId, String> inOurs = new HashMap<>();
        Map<ItemId, String> inTheirs = new HashMap<>();
        for (ItemId before : base.facts().items().keySet()) {
            ItemId left = toOurs.partners().getOrDefault(before, before);
            ItemId right = toTheirs.partners().getOrDefault(before, before);
            boolean renamed = !left.name().equals(before.name());
            boolean alsoRenamed = !right.name().equals(before.name());
            if ((renamed || alsoRenamed) && declares(before)) {
                String name = renamed ? left.name() : right.name();
                boolean clash = renamed && alsoRenamed && !left.name().equals(right.name());
                if (clash && before.sort() == Sort.MEMBER) {
                    continue; // a list takes both: what names it has to be the conflict
                }
                then.declare(before, clash ? before.name() : name, inBase, name);
                one.declare(left, clash ? left.name() : name, inOurs, name);
                other.declare(right, clash ? right.name() : name, inTheirs, name);
            }
        }
        return List.of(then.text(inBase), one.text(inOurs), other.text(inTheirs));
    }

    private void declare(ItemId id, String declared, Map<ItemId, String> mentions, String name) {
        version.facts().item(id).ifPresent(item -> {
            mentions.put(id, name);
            // members of a group are declared behind its name
            (id.sort() == Sort.MEMBER ? names : own).computeIfAbsent(item.span().line(), any -> new HashMap<>())
                    .put(id.name(), declared);
        });
    }

    private String text(Map<ItemId, String> mentions) {
        if (mentions.isEmpty()) {
            return version.text();
        }
        version.facts().items().values().forEach(item -> {
            if (item.id().sort() == Sort.WAIVER) {
                accepted(item, mentions);
            }
            if (declares(item.id()) && item.id().sort() != Sort.MEMBER) {
                own.putIfAbsent(item.span().line(), Map.of(item.id().name(), item.id().name()));
            }
            item.facts().forEach((slot, stated) -> stated.forEach(each -> {
                note(each.span().line(), Set.copyOf(slot.subject().mentions()), mentions);
                note(each.span().line(), Set.copyOf(each.value().mentions()), mentions);
                note(each.span().line(), ChoiceNames.named(version.facts(), item, each.when()), mentions);
            }));
        });
        StringBuilder text = new StringBuilder();
        int number = 0;
        for (String line : LINE.split(version.text())) {
            number++;
            Map<String, String> others = names.getOrDefault(number, Map.of());
            Map<String, String> declared = own.getOrDefault(number, Map.of());
            text.append(others.isEmpty() && declared.isEmpty() ? line : ClauseLine.renamed(line, others, declared,
                    labels.getOrDefault(number, Map.of())));
        }
        return text.toString();
    }

    /** Whether the second word of the line is the element's name: what forbids or requires may have none. */
    private static boolean declares(ItemId id) {
        return id.sort() != Sort.CONSTRAINT || !id.name().startsWith("never ") && !id.name().startsWith("require ");
    }

    /** A waiver names a wire by its label, which is made of the names of its circuit and its own. */
    private void accepted(Item waiver, Map<ItemId, String> mentions) {
        waiver.in(Slot.of(Property.ACCEPTS)).forEach(each -> {
            List<ItemId> named = each.value().mentions();
            if (named.size() > 1) {
                ItemId element = named.getLast();
                String name = mentions.getOrDefault(element, element.name());
                String circuit = mentions.getOrDefault(named.get(1), named.get(1).name());
                labels.computeIfAbsent(each.span().line(), any -> new HashMap<>()).put(Labels.name(element),
                        element.sort() == Sort.WIRE ? WireView.label(circuit, name) : name);
            }
        });
    }

    private void note(int line, Set<ItemId> named, Map<ItemId, String> mentions) {
        for (ItemId id : named) {
            String name = mentions.get(id);
            if (name != null && !name.equals(id.name())) {
                names.computeIfAbsent(line, any -> new HashMap<>()).put(id.name(), name);
            }
        }
    }
}
