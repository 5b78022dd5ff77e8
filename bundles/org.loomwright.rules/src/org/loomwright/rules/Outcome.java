// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;

/** What came of asking some rules about some targets, in order. For one thread while it is filled. */
final class Outcome {

    /** Conditions that could not be followed to their end; see {@link Joining#tooMany}. */
    record TooMany(String what, String element, String subject, String message) {
    }

    private final List<Draft> drafts = new ArrayList<>();
    private final List<TooMany> tooMany = new ArrayList<>();
    private long targets;
    private long checks;

    /** Counts targets that were looked at. */
    void looked(int more) {
        targets += more;
    }

    /** Counts a call of a rule. */
    void asked() {
        checks++;
    }

    void add(List<Draft> found) {
        drafts.addAll(found);
    }

    void add(TooMany cut) {
        tooMany.add(cut);
    }

    /** What a question came to that no rule had anything to say to. */
    static Outcome silent(Silence silence) {
        Outcome outcome = new Outcome();
        outcome.targets = silence.targets();
        outcome.checks = silence.checks();
        return outcome;
    }

    boolean isSilent() {
        return drafts.isEmpty() && tooMany.isEmpty();
    }

    long targets() {
        return targets;
    }

    long checks() {
        return checks;
    }

    /** Hands all that was found on. */
    void to(Joining joining) {
        drafts.forEach(joining::add);
        tooMany.forEach(each -> joining.tooMany(each.what(), each.element(), each.subject(), each.message()));
    }
}
