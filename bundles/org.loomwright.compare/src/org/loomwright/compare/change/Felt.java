// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;

/**
 * The vehicles that feel a change.
 *
 * @param words     in shortest words: {@code year >= 1967 and fan}; {@code every vehicle}, {@code none}
 * @param tally     how many of how many; empty where they cannot be counted
 * @param condition the vehicles; empty where the words are those of the source
 * @param caveat    what the words rest on where they do not hold for both sides alike; may be empty
 */
public record Felt(String words, String tally, Optional<Condition> condition, String caveat) {

    /** No vehicle feels it. */
    public static final Felt NONE = new Felt("none", "", Optional.empty(), "");

    /** Vehicles of the words alone, as the source has them. */
    static Felt written(String words, String caveat) {
        return new Felt(words, "", Optional.empty(), caveat);
    }

    /** These vehicles; {@code all of front} for those of a whole harness. */
    static Felt of(Condition condition, Optional<Condition> whole, String home, String caveat) {
        try {
            String words = condition.isAlways() && !condition.isNever() ? "every vehicle"
                    : whole.filter(condition::equals).isPresent() && !condition.isNever() ? "all of " + home
                    : condition.words();
            return new Felt(words, condition.tally(), Optional.of(condition), caveat);
        } catch (TooManyCombinations e) {
            return written("some vehicles", caveat);
        }
    }
}
