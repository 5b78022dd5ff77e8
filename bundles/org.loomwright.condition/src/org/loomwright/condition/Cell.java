// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The vehicles for which exactly the same of some conditions hold.
 *
 * @param vehicles these vehicles; never none
 * @param holding indices, in the list that was asked about, of the conditions that hold for all of these vehicles; the
 *        others hold for none of them
 */
public record Cell(Condition vehicles, SortedSet<Integer> holding) {
    public Cell {
        holding = Collections.unmodifiableSortedSet(new TreeSet<>(holding));
    }
}
