// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.List;
import java.util.Set;
import org.loomwright.electric.network.Piece;

/**
 * Something that is wrong at one operating point.
 *
 * @param rule   id of the rule that asks for it
 * @param piece  what it is about
 * @param weight how bad it is; of several operating points the worst is shown
 * @param words  one sentence without mode, vehicles and full stop
 * @param steps  how the figures came about
 * @param advice what to try
 * @param owners names of the drawings and harnesses that have a part in it
 */
public record Fault(String rule, Piece piece, double weight, String words, List<String> steps, String advice,
        Set<String> owners) {

    public Fault {
        steps = List.copyOf(steps);
        owners = Set.copyOf(owners);
    }

    /** A fault in which only its own piece has a part. */
    public Fault(String rule, Piece piece, double weight, String words, List<String> steps, String advice) {
        this(rule, piece, weight, words, steps, advice, Set.of(piece.subject().owner()));
    }

    /** The same with more owners that have a part in it. */
    Fault with(Set<String> others) {
        return new Fault(rule, piece, weight, words, steps, advice, others);
    }
}
