// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.math.BigInteger;
import java.util.Objects;

/**
 * A condition in words, valid in the language and true of exactly the same vehicles.
 *
 * <p>The words are terms joined by {@code or}. A term names some axes and, for each, a set of members, as in
 * {@code year 1964 .. 1966 and (saloon or coupe) and fan and not heater}. First the number of terms counts, then the
 * number of words, which are all printed words but {@code and} and {@code or}. What no vehicle can be does not count:
 * the words may take in or leave out impossible vehicles as it suits them.
 *
 * <p>A set of members of a group is written by its members joined by {@code or}, or as {@code not} of the other ones so
 * joined; an option or upgrade as {@code fan} or {@code not fan}. A set of parts of years is written as runs joined by
 * {@code or}, as {@code not} of such runs, or as {@code year != 1966}. A run is written in the fewest words among
 * these:
 *
 * <ul>
 *   <li>1 word: {@code late66} for the part that starts with a break;
 *   <li>3 words: {@code year} compared with a year or break;
 *   <li>4 words: {@code year A .. B};
 *   <li>5 words: {@code year = A and not late66}, {@code year >= A and not late66};
 *   <li>6 words: {@code year >= A and year < late66}.
 * </ul>
 *
 * @param expression the words as an expression
 * @param terms how many terms it has; 1 for always, 0 for never
 * @param proof how good the words are known to be
 * @param left how many vehicles of the condition the words leave out; zero unless the proof is {@link Proof#PARTIAL}
 */
public record Wording(Expression expression, int terms, Proof proof, BigInteger left) {
    /** What is known about a wording. */
    public enum Proof {
        /** No wording has fewer terms, and none with as few terms has fewer words. */
        LEAST,
        /** As {@link #LEAST} among the wordings that name no axis but those of {@link Condition#support}. */
        LEAST_ON_SUPPORT,
        /** No term can be left out, and no axis of a term. */
        IRREDUNDANT,
        /** Too many terms for words: the first ones only; the rest is counted in {@link Wording#left}. */
        PARTIAL
    }

    public Wording {
        Objects.requireNonNull(expression);
        Objects.requireNonNull(proof);
        Objects.requireNonNull(left);
    }

    /** Returns whether the expression holds for exactly the vehicles of the condition. */
    public boolean isWhole() {
        return proof != Proof.PARTIAL;
    }

    /**
     * Returns the text for people: the words, {@code every vehicle} for always, {@code no vehicle} for never, and
     * {@code ... and 1,234 vehicles more} when the words are partial.
     */
    public String words() {
        if (expression instanceof Expression.Always) {
            return "every vehicle";
        }
        if (expression instanceof Expression.Not not && not.operand() instanceof Expression.Always) {
            return "no vehicle";
        }
        return isWhole() ? expression.words() : expression.words() + " and " + Tally.vehicles(left) + " more";
    }
}
