// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;

/**
 * Vehicles in words, where nothing hangs on them: a condition that is too tangled for words is {@code some vehicles}.
 */
public final class VehicleWords {

    private VehicleWords() {
    }

    /** {@code year >= 1967 and fan}; {@code every vehicle}. */
    public static String of(Condition condition) {
        try {
            return condition.words();
        } catch (TooManyCombinations e) {
            return "some vehicles";
        }
    }

    /** The same, and {@code all} for all that something is for. */
    public static String of(Condition condition, Condition whole) {
        return condition.equals(whole) ? "all" : of(condition);
    }

    /** {@code 4,608 vehicles}. */
    public static String count(Condition condition) {
        try {
            return org.loomwright.condition.Tally.vehicles(condition.count());
        } catch (TooManyCombinations e) {
            return "more vehicles than can be counted";
        }
    }
}
