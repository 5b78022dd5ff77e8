// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import org.loomwright.harness.Ours.Objective;

/**
 * What a part of a harness costs, in the order in which sums count.
 *
 * @param first  what counts most
 * @param second what counts among equals
 */
record Cost(long first, long second) implements Comparable<Cost> {

    static final Cost NONE = new Cost(0, 0);

    /** Copper and length, those of them that are asked for and in that order. */
    static Cost of(List<Objective> sums, long copper, long length) {
        long first = sums.isEmpty() ? 0 : pick(sums.get(0), copper, length);
        return new Cost(first, sums.size() < 2 ? 0 : pick(sums.get(1), copper, length));
    }

    private static long pick(Objective sum, long copper, long length) {
        return switch (sum) {
            case COPPER -> copper;
            case LENGTH -> length;
            case EXCESS -> throw new IllegalArgumentException("the excess is no sum");
        };
    }

    Cost plus(Cost other) {
        return new Cost(Math.addExact(first, other.first), Math.addExact(second, other.second));
    }

    @Override
    public int compareTo(Cost other) {
        int order = Long.compare(first, other.first);
        return order != 0 ? order : Long.compare(second, other.second);
    }
}
