// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.List;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;

/** The smallest change of a side. Names in it are those of the new side, but for what is renamed or removed. */
public sealed interface Delta {

    /** The element that it is about: on the new side, or on the old one when it is gone. */
    ItemId item();

    /** An element that the old side does not have. */
    record Added(Item element) implements Delta {
        @Override
        public ItemId item() {
            return element.id();
        }
    }

    /** An element that the new side does not have. */
    record Removed(Item element) implements Delta {
        @Override
        public ItemId item() {
            return element.id();
        }
    }

    /** An element under another name or owner; whatever names it follows. */
    record Renamed(ItemId from, ItemId item) implements Delta {
    }

    /** Other facts in one slot; none before where it is new, none after where it is gone. */
    record Restated(ItemId item, Slot slot, List<Stated> was, List<Stated> is) implements Delta {
        public Restated {
            was = List.copyOf(was);
            is = List.copyOf(is);
        }
    }
}
