// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;

/**
 * Something wrong with the text itself, found while it was read: a syntax error, a bare number where a unit is needed,
 * a colour that does not exist, a name that nothing has. Rules turn problems into findings.
 *
 * @param code    a stable id such as {@code syntax}, {@code unit-missing}, {@code name-unknown}
 * @param span    the smallest span that is wrong
 * @param message what is wrong, in words of the trade, one sentence
 * @param advice  what to try; may be empty
 * @param edits   a change of the text that mends it; empty when none is known
 * @param certain false when the change is a guess that a person has to look at
 */
public record Problem(String code, Span span, String message, String advice, List<TextEdit> edits, boolean certain) {

    /** With a change that leaves no doubt, or none. */
    public Problem(String code, Span span, String message, String advice, List<TextEdit> edits) {
        this(code, span, message, advice, edits, true);
    }
}
