// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.Arrays;
import java.util.List;
import org.loomwright.condition.Condition;

/** Counts how many of some conditions hold at once, for all vehicles together. */
public final class Counting {

    private Counting() {
    }

    /**
     * Returns the vehicles, within some, for which at least {@code least} of the conditions hold. Takes
     * {@code conditions.size() * least} steps, however many combinations there are.
     */
    public static Condition atLeast(int least, List<Condition> conditions, Condition within) {
        if (least <= 0) {
            return within;
        }
        Condition[] reached = new Condition[least + 1];
        Arrays.fill(reached, within.vehicles().none());
        reached[0] = within;
        for (Condition condition : conditions) {
            for (int count = least; count > 0; count--) {
                reached[count] = reached[count].or(reached[count - 1].and(condition));
            }
        }
        return reached[least];
    }
}
