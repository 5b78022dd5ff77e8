// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.loomwright.compare.ItemId;

/**
 * Which element of the old side is which of the new one. An element has at most one partner, of its own sort.
 *
 * @param partners new elements by old ones, in order
 * @param reversed old elements by new ones, in order
 * @param verbatim the elements that both sides have under one name with the same facts in the same words
 * @param compared how many pairs of elements were compared; for tests that guard growth
 */
public record Matching(SequencedMap<ItemId, ItemId> partners, SequencedMap<ItemId, ItemId> reversed,
        Set<ItemId> verbatim, long compared) {

    /** These partners, in the order in which the sides have them. Linear. */
    static Matching of(Map<ItemId, ItemId> partners, Collection<ItemId> old, Collection<ItemId> now,
            Set<ItemId> verbatim, long compared) {
        Map<ItemId, ItemId> back = new HashMap<>();
        SequencedMap<ItemId, ItemId> sorted = LinkedHashMap.newLinkedHashMap(partners.size());
        for (ItemId before : old) {
            ItemId after = partners.get(before);
            if (after != null) {
                sorted.put(before, after);
                if (!after.equals(before)) {
                    back.put(after, before);
                }
            }
        }
        SequencedMap<ItemId, ItemId> reversed = LinkedHashMap.newLinkedHashMap(partners.size());
        for (ItemId after : now) {
            ItemId before = back.get(after);
            if (before != null) {
                reversed.put(after, before);
            } else if (after.equals(sorted.get(after))) {
                reversed.put(after, after);
            }
        }
        return new Matching(Collections.unmodifiableSequencedMap(sorted),
                Collections.unmodifiableSequencedMap(reversed), verbatim, compared);
    }

    /** The new element that an old one has become. */
    public Optional<ItemId> after(ItemId old) {
        return Optional.ofNullable(partners.get(old));
    }

    /**
     * The name of an old element on the new side: that of its partner, else its own with its owner renamed. Lets the
     * mention of a renamed element read as no change. One that is gone, and whose name another one took, is marked.
     */
    public ItemId name(ItemId old) {
        ItemId partner = partners.get(old);
        if (partner != null) {
            return partner;
        }
        ItemId name = Owners.renamed(old, partners);
        return reversed.containsKey(name) ? gone(name) : name;
    }

    /** The name of an element that is gone, where another one has its name now. */
    public static ItemId gone(ItemId name) {
        return new ItemId(name.sort(), name.owner(), name.name() + " (gone)");
    }

    static ItemId name(ItemId old, Map<ItemId, ItemId> partners) {
        ItemId partner = partners.get(old);
        return partner != null ? partner : Owners.renamed(old, partners);
    }
}
