// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;

/** Finds what two sides state in the same words. Each pair is looked at once, by as many threads as there are. */
final class Verbatim {

    private Verbatim() {
    }

    /** The elements that both sides have under one name with the same facts. Linear in the facts. */
    static Set<ItemId> of(FactSheet old, FactSheet now) {
        return old.items().values().parallelStream().filter(item -> isSame(item, now.items().get(item.id())))
                .map(Item::id).collect(Collectors.toUnmodifiableSet());
    }

    private static boolean isSame(Item item, Item namesake) {
        return namesake != null && item.statesAs(namesake);
    }
}
