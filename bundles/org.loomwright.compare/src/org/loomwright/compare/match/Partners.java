// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import org.loomwright.compare.ItemId;

/** The partners found so far, and what is called otherwise because of them. */
final class Partners {

    private final Map<ItemId, ItemId> all = new HashMap<>();
    private final Map<ItemId, ItemId> renamed = new HashMap<>();
    private boolean ownerRenamed;

    void put(ItemId old, ItemId now) {
        all.put(old, now);
        if (!old.equals(now)) {
            renamed.put(old, now);
            ownerRenamed |= old.sort().isOwner();
        }
    }

    /** New elements by old ones. */
    Map<ItemId, ItemId> all() {
        return Collections.unmodifiableMap(all);
    }

    /** The name of an old element on the new side, as far as it is known. One look-up while no owner is renamed. */
    ItemId name(ItemId old) {
        return ownerRenamed ? Matching.name(old, all) : renamed.getOrDefault(old, old);
    }

    /** An old element with its owner as it is called on the new side. */
    ItemId owned(ItemId old) {
        return ownerRenamed ? Owners.renamed(old, all) : old;
    }

    /** An owner as it is called on the new side. */
    String owner(String old) {
        return ownerRenamed ? Owners.owner(old, all) : old;
    }
}
