// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.ItemId;
import org.loomwright.harness.Span;

/**
 * One change as a reviewer would tell it.
 *
 * @param kind     what sort of change
 * @param item     what it is about: on the new side, or on the old one when it is gone
 * @param aspect   what it is about
 * @param sentence the change in words, without vehicles and without full stop
 * @param felt     the vehicles that feel it
 * @param deltas   all that it replaces
 * @param before   where the old side states it; empty for what is new
 * @param after    where the new side states it; empty for what is gone
 */
public record Change(Kind kind, ItemId item, Aspect aspect, String sentence, Felt felt, List<Delta> deltas,
        Optional<Span> before, Optional<Span> after) {

    /** Sorts of changes. */
    public enum Kind {
        ADDED,
        REMOVED,
        /** Another name, or two names exchanged. */
        RENAMED,
        /** Another owner: a wire in another circuit. */
        MOVED,
        /** A circuit of which some wires became one of their own. */
        SPLIT,
        /** Two circuits that became one. */
        JOINED,
        CHANGED,
        /** Two elements exchanged what they state. */
        SWAPPED,
        /** Breakouts in another order along their run. */
        REORDERED,
        /** The same, written otherwise. */
        REWORDED;

        /** The word for programs: {@code added}. */
        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Change {
        deltas = List.copyOf(deltas);
    }

    /** Whether a vehicle or the bench can tell the difference. */
    public boolean isFelt() {
        return aspect != Aspect.TEXT;
    }
}
