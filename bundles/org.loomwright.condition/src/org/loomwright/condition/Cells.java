// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.List;

/**
 * A condition taken apart by what holds.
 *
 * @param list cells without a vehicle in common, in a fixed order
 * @param complete whether the cells together are the whole condition; false when the cap cut the list
 */
public record Cells(List<Cell> list, boolean complete) {
    public Cells {
        list = List.copyOf(list);
    }
}
