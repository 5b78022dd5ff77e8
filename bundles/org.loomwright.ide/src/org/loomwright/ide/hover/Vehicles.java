// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;

/** Vehicles in words with their number. */
final class Vehicles {

    private Vehicles() {
    }

    /** {@code year <= 1966 and fan (312 of 4,608 vehicles)}. */
    static String of(Condition when) {
        try {
            return when.isNever() ? "no vehicle" : when.isAlways() ? "every vehicle (" + when.tally() + ")"
                    : when.words() + " (" + when.tally() + ")";
        } catch (TooManyCombinations e) {
            return "some vehicles; too many combinations to count";
        }
    }

    /** The words alone, {@code all} for all that something is for. */
    static String brief(Condition when, Condition whole) {
        try {
            return when.equals(whole) ? "" : when.words();
        } catch (TooManyCombinations e) {
            return "some vehicles";
        }
    }
}
