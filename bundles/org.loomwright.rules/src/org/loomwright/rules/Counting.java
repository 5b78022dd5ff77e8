// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.loomwright.condition.Condition;

/** Counts how many of some conditions hold at once, for all vehicles together. */
public final class Counting {

    private Counting() {
    }

    /**
     * Returns the vehicles, within some, for which at least {@code least} of the conditions hold. Takes
     * {@code conditions.size()} steps for the conditions that hold for all of them or for none, and for the others
     * their number times {@code least}, however many combinations there are.
     */
    public static Condition atLeast(int least, List<Condition> conditions, Condition within) {
        List<Condition> open = new ArrayList<>();
        int missing = least;
        for (Condition condition : conditions) {
            if (within.implies(condition)) {
                missing--;
            } else if (!within.excludes(condition)) {
                open.add(condition);
            }
        }
        if (missing <= 0) {
            return within;
        }
        if (missing > open.size()) {
            return within.vehicles().none();
        }
        Condition[] reached = new Condition[missing + 1];
        Arrays.fill(reached, within.vehicles().none());
        reached[0] = within;
        for (Condition condition : open) {
            for (int count = missing; count > 0; count--) {
                reached[count] = reached[count].or(reached[count - 1].and(condition));
            }
        }
        return reached[missing];
    }
}
