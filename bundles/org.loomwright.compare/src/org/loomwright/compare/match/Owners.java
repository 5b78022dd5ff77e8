// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.List;
import java.util.Map;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;

/** Follows the renaming of owners: what belongs to a renamed harness belongs to it under its new name. */
final class Owners {

    private static final List<Sort> OWNING = List.of(Sort.WIRING, Sort.PLATFORM, Sort.KIT);

    private Owners() {
    }

    /** The same element with its owner as it is called on the new side. */
    static ItemId renamed(ItemId old, Map<ItemId, ItemId> partners) {
        if (old.owner().isEmpty()) {
            return old;
        }
        String owner = owner(old.owner(), partners);
        return owner.equals(old.owner()) ? old : new ItemId(old.sort(), owner, old.name());
    }

    /** An owner as it is called on the new side; that of a wire names its circuit after a slash. */
    static String owner(String owner, Map<ItemId, ItemId> partners) {
        int slash = owner.indexOf('/');
        if (slash >= 0) {
            String home = owner.substring(0, slash);
            String circuit = owner.substring(slash + 1);
            ItemId partner = partners.get(new ItemId(Sort.CIRCUIT, home, circuit));
            return partner != null ? partner.owner() + "/" + partner.name() : owner(home, partners) + "/" + circuit;
        }
        for (Sort sort : OWNING) {
            ItemId partner = partners.get(new ItemId(sort, "", owner));
            if (partner != null) {
                return partner.name();
            }
        }
        return owner;
    }
}
