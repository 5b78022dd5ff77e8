// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.facts.Value;

/** Changes of facts in words. */
final class Sentences {

    /** Values that say nothing but that the fact is there. */
    private static final Set<String> SILENT = Set.of("yes", "there", "1");

    private Sentences() {
    }

    /** {@code wire 12d of front: size 16 ga -> 14 ga}. */
    static String changed(Item item, Slot slot, List<Stated> was, List<Stated> is) {
        String head = Labels.of(item) + ": ";
        if (slot.property() == Property.EXISTS) {
            return head + "for " + when(was) + " -> " + when(is);
        }
        if (was.isEmpty() || is.isEmpty()) {
            String value = values(was.isEmpty() ? is : was);
            String verb = was.isEmpty() ? "added" : "removed";
            if ((was.isEmpty() ? is : was).stream().allMatch(each -> SILENT.contains(each.value().shown()))) {
                return head + slot.words() + " " + verb;
            }
            return slot.subject().tokens().isEmpty() ? head + slot.words() + " " + value + " " + verb
                    : head + slot.words() + " " + verb + ": " + value;
        }
        return head + lead(slot) + values(was) + " -> " + values(is);
    }

    /** {@code branch bLeft of front: length 254 mm is now written 10 in}. */
    static String reworded(Item item, Slot slot, List<Stated> was, List<Stated> is) {
        boolean own = slot.property() == Property.EXISTS;
        return Labels.of(item) + ": " + (own ? "for " + when(was) : lead(slot) + values(was)) + " is now written "
                + (own ? when(is) : values(is));
    }

    /** {@code branch bLeft <-> bRight}: what two elements exchanged. */
    static String exchanged(Slot slot, List<Stated> one, List<Stated> other) {
        return lead(slot) + values(one) + " <-> " + values(other);
    }

    private static String lead(Slot slot) {
        boolean named = !slot.subject().tokens().isEmpty() && !slot.property().words().isEmpty();
        return slot.words() + (named ? ": " : " ");
    }

    private static String values(List<Stated> stated) {
        return stated.stream().map(each -> shown(each)).collect(Collectors.joining(", "));
    }

    private static String shown(Stated stated) {
        Value value = stated.value();
        boolean list = value.tokens().size() > 1 && value.tokens().stream().allMatch(Value.Mention.class::isInstance);
        String words = list ? value.tokens().stream().map(Value.Token::shown).collect(Collectors.joining(", "))
                : value.shown();
        return stated.isAlways() ? words : words + " when " + stated.when().words();
    }

    private static String when(List<Stated> stated) {
        return stated.isEmpty() ? "no vehicle" : stated.stream()
                .map(each -> each.isAlways() ? "all" : each.when().words()).collect(Collectors.joining(" or "));
    }
}
