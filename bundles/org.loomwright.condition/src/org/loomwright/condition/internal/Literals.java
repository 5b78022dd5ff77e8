// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.BitSet;

/** What it costs to name members of an axis in words. */
@FunctionalInterface
public interface Literals {
    /**
     * Returns the cheapest set of members that holds every member of one set and none outside another; costs nothing if
     * all members may be in it. Equal questions get equal answers.
     *
     * @param axis index in the shape
     * @param must members that have to be in it; at least one, all of them in {@code may}
     * @param may members that can be in it
     */
    Literal cheapest(int axis, BitSet must, BitSet may);

    /**
     * A set of members and how many words name it.
     *
     * @param members the set; not to be changed
     * @param words how many words; 0 for all members
     */
    record Literal(BitSet members, int words) {
    }
}
