// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.loomwright.compare.ItemId;

/**
 * Which element of the old side is which of the new one. An element has at most one partner, of its own sort.
 *
 * @param partners new elements by old ones, in order
 * @param reversed old elements by new ones, in order
 * @param compared how many pairs of elements were compared; for tests that guard growth
 */
public record Matching(SortedMap<ItemId, ItemId> partners, SortedMap<ItemId, ItemId> reversed, long compared) {

    Matching(SortedMap<ItemId, ItemId> partners, long compared) {
        this(Collections.unmodifiableSortedMap(new TreeMap<>(partners)), back(partners), compared);
    }

    private static SortedMap<ItemId, ItemId> back(SortedMap<ItemId, ItemId> partners) {
        SortedMap<ItemId, ItemId> back = new TreeMap<>();
        partners.forEach((old, now) -> back.put(now, old));
        return Collections.unmodifiableSortedMap(back);
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
        ItemId name = name(old, partners);
        return !partners.containsKey(old) && reversed.containsKey(name) ? gone(name) : name;
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
