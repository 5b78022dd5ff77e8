// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Questions to which no rule had anything to say in an earlier check, in this run or another one. They decide how much
 * is worked out, never what is found: a question is asked again unless all that its answer rests on is the same.
 * Immutable; safe for use by several threads.
 */
public final class Silences {

    /** Nothing is known. */
    public static final Silences NONE = new Silences(List.of());

    private final Map<String, Silence> byQuestion = new HashMap<>();

    /** Takes what is known of each question; of two with one name the later one counts. */
    public Silences(List<Silence> silences) {
        silences.forEach(each -> byQuestion.put(each.question(), each));
    }

    Optional<Silence> find(String question) {
        return Optional.ofNullable(byQuestion.get(question));
    }
}
