// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/**
 * What a rule says about a place in the source.
 *
 * @param rule        id of the rule, or code of a problem of the text
 * @param severity    what it weighs
 * @param inherited   true when it is about what the factory did: shown on request, without effect on the outcome
 * @param element     what it is about, as a waiver names it: {@code front:12b}; empty for a problem of the text
 * @param subject     the same for people: {@code wire 12b of front}
 * @param sentence    what is wrong: one sentence without vehicles and without full stop
 * @param derivation  how a figure came about, one step an entry
 * @param basis       what the rule rests on; empty for a problem of the text
 * @param affected    the vehicles for which it holds; empty when it is not about vehicles
 * @param place       where it stands, the smallest span that is at fault
 * @param related     what else belongs to it
 * @param advice      what to try; may be empty
 * @param fixes       changes of the text that mend it
 * @param acceptance  the person's acceptance, where there is one
 * @param fingerprint recognises the finding after lines have moved: 32 hexadecimal digits
 */
public record Finding(String rule, Severity severity, boolean inherited, String element, String subject,
        String sentence, List<String> derivation, String basis, Optional<Affected> affected, Label place,
        List<Label> related, String advice, List<Fix> fixes, Optional<Acceptance> acceptance, String fingerprint) {

    /**
     * The vehicles for which a finding holds.
     *
     * @param condition the vehicles; empty in a finding that was kept from an earlier check, which has the words only
     * @param words     their shortest words: {@code year <= 1966 and fan}
     * @param tally     how many of how many: {@code 312 of 4,608 vehicles}
     * @param count     how many there are; empty when that took too long
     * @param of        how many vehicles can exist; empty when that took too long
     * @param bounded   true when the search for them was cut off, so that there may be more
     */
    public record Affected(Optional<Condition> condition, String words, String tally, Optional<BigInteger> count,
            Optional<BigInteger> of, boolean bounded) {

        /** Puts a condition into words; where even these take too much, nobody is told how many there are. */
        public static Affected of(Condition condition, boolean bounded) {
            try {
                return new Affected(Optional.of(condition), condition.words(), condition.tally(),
                        Optional.of(condition.count()), Optional.of(condition.vehicles().count()), bounded);
            } catch (TooManyCombinations e) {
                return new Affected(Optional.of(condition), "some vehicles", "too many combinations to count",
                        Optional.empty(), Optional.empty(), true);
            }
        }

        /** Returns whether it holds for every vehicle that can exist. */
        public boolean every() {
            return count.isPresent() && count.equals(of);
        }

        /** Returns the same without the condition, as it can be kept. */
        public Affected inWords() {
            return new Affected(Optional.empty(), words, tally, count, of, bounded);
        }

        Affected cutOff() {
            return new Affected(condition, words, tally, count, of, true);
        }
    }

    /** A place in the source and what it has to do with the finding. */
    public record Label(Span span, String text) {
    }

    /**
     * A change that mends a finding.
     *
     * @param title   what it does, a few words
     * @param edits   the change
     * @param certain false when it is a guess that a person has to look at
     */
    public record Fix(String title, List<TextEdit> edits, boolean certain) {
        public Fix {
            edits = List.copyOf(edits);
        }

        /** A change that leaves no doubt. */
        public Fix(String title, List<TextEdit> edits) {
            this(title, edits, true);
        }
    }

    /**
     * The acceptance of a finding by a person.
     *
     * @param how    by a waiver, by keeping what the factory did, or by the practice of the project
     * @param reason why
     * @param place  where it is written
     */
    public record Acceptance(How how, String reason, Span place) {

        /** Ways to accept. */
        public enum How {
            WAIVED("waived"),
            AS_FACTORY("as factory"),
            SET_ASIDE("set aside");

            private final String words;

            How(String words) {
                this.words = words;
            }

            /** Returns the words for people. */
            public String words() {
                return words;
            }
        }
    }

    public Finding {
        derivation = List.copyOf(derivation);
        related = List.copyOf(related);
        fixes = List.copyOf(fixes);
    }

    /** Returns whether it has an effect on the outcome: neither inherited nor accepted. */
    public boolean counts() {
        return !inherited && acceptance.isEmpty();
    }

    /** Returns the same with its vehicles in words only, as it can be kept. */
    public Finding inWords() {
        return affected.flatMap(Affected::condition).isEmpty() ? this : new Finding(rule, severity, inherited, element,
                subject, sentence, derivation, basis, affected.map(Affected::inWords), place, related, advice, fixes,
                acceptance, fingerprint);
    }
}
