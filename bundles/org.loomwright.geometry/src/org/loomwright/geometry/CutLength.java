// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.link.Node;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * How long a wire is, and how long it is cut.
 *
 * @param from       where it starts
 * @param to         where it ends
 * @param when       the vehicles in which it has this length
 * @param stated     true when the source states the wire's length, which then wins over the route
 * @param pinned     true for a length that is never cut to fit: a pinned one, and a resistor cable's
 * @param length     nominal length of the finished wire between its ends in the terminals; empty when it is unknown
 * @param cut        length to cut; empty when it is unknown
 * @param tolerance  length tolerance of the finished wire
 * @param provenance how far to trust the length
 * @param terms      what the cut length is the sum of, in order: {@code route 812.5 mm}, ...
 */
public record CutLength(Node from, Node to, Condition when, boolean stated, boolean pinned, Optional<Length> length,
        Optional<Length> cut, Tolerance tolerance, Provenance provenance, List<Term> terms) {

    public CutLength {
        terms = List.copyOf(terms);
    }

    /** One summand of a cut length. */
    public record Term(String what, Length length) {

        @Override
        public String toString() {
            return what + " " + length;
        }
    }
}
