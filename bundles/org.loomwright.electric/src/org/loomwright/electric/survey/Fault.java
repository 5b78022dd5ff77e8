// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
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
 * @param memory the figure from memory on which it rests; empty when it rests on none
 * @param maybe  whether it is there in the worst case only, since not all that belongs to it was solved together
 */
public record Fault(String rule, Piece piece, double weight, String words, List<String> steps, String advice,
        Set<String> owners, String memory, boolean maybe) {

    public Fault {
        steps = List.copyOf(steps);
        owners = Set.copyOf(owners);
    }

    /** A fault in which only its own piece has a part. */
    public Fault(String rule, Piece piece, double weight, String words, List<String> steps, String advice) {
        this(rule, piece, weight, words, steps, advice, Set.of(piece.subject().owner()));
    }

    /** A fault that rests on no figure from memory. */
    public Fault(String rule, Piece piece, double weight, String words, List<String> steps, String advice,
            Set<String> owners) {
        this(rule, piece, weight, words, steps, advice, owners, "", false);
    }

    /** The same, resting on a figure from memory: it is shown, and judges nothing. */
    public Fault rests(String figure) {
        return new Fault(rule, piece, weight, words, steps, advice, owners, figure, maybe);
    }

    /** The same that is there in the worst case only. */
    public Fault inTheWorstCase() {
        return new Fault(rule, piece, weight, words, steps, advice, owners, memory, true);
    }

    /** Returns what it has in common with faults that are told as one: rule, piece, and whether it judges. */
    public String key() {
        return rule + " " + piece.subject().owner() + ":" + piece.subject().element() + " " + piece.subject().label()
                + (memory.isEmpty() ? "" : " from memory");
    }

    /** The same with more owners that have a part in it. */
    Fault with(Set<String> others) {
        Set<String> all = new TreeSet<>(owners);
        all.addAll(others);
        return new Fault(rule, piece, weight, words, steps, advice, all, memory, maybe);
    }

    /** The same about the piece of another network that stands for the same thing. */
    Fault about(Piece same) {
        return new Fault(rule, same, weight, words, steps, advice, owners, memory, maybe);
    }

    /** What there may be instead where currents are not known exactly, and this is there at one bound only. */
    Optional<Fault> milder() {
        return rule.equals("wire-too-hot") ? Optional.of(new Fault("wire-overloaded", piece, 1, words, steps, advice,
                owners, memory, maybe)) : Optional.empty();
    }
}
