// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.List;

/**
 * The different ways in which vehicles of a condition choose on some axes.
 *
 * @param list the assignments, in order of their members
 * @param complete whether these are all; false when the cap cut the list
 */
public record Assignments(List<Assignment> list, boolean complete) {
    public Assignments {
        list = List.copyOf(list);
    }
}
