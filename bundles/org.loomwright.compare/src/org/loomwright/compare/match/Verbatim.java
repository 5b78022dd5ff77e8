// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.Collections;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.IntStream;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;

/** Finds what two sides state in the same words. Each pair is looked at once, by as many threads as there are. */
final class Verbatim {

    private Verbatim() {
    }

    /** The elements that both sides have under one name with the same facts. Linear in the facts. */
    static Set<ItemId> of(FactSheet old, FactSheet now) {
        Item[] items = old.items().values().toArray(Item[]::new);
        boolean[] same = new boolean[items.length];
        IntStream.range(0, items.length).parallel().forEach(i -> same[i] = isSame(items[i],
                now.items().get(items[i].id())));
        Set<ItemId> verbatim = HashSet.newHashSet(items.length);
        for (int i = 0; i < items.length; i++) {
            if (same[i]) {
                verbatim.add(items[i].id());
            }
        }
        return Collections.unmodifiableSet(verbatim);
    }

    private static boolean isSame(Item item, Item namesake) {
        return namesake != null && item.statesAs(namesake);
    }
}
