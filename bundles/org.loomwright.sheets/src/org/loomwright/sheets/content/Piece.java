// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.Node;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * A piece of wire as the bench makes it: one way of a wire. All pieces of a wire together are for the vehicles that
 * have the wire, and no vehicle has two of them.
 *
 * @param wire      what people call the wire: circuit and wire together
 * @param circuit   its circuit
 * @param function  what the circuit does
 * @param colour    base and tracer; empty when none is stated
 * @param size      the conductor; empty when none is stated
 * @param cable     name of the cable; empty when none is stated
 * @param length    of the finished wire; empty when it is unknown
 * @param cut       length to cut; empty when it is unknown
 * @param tolerance of the finished length
 * @param measured  what the length comes from
 * @param legend    what is printed on it
 * @param pitch     the legend is printed again after this length; empty when the length is unknown
 * @param from      one end
 * @param to        the other end
 * @param when      the vehicles
 */
public record Piece(String wire, String circuit, String function, String colour, Optional<ConductorSize> size,
        String cable, Optional<Length> length, Optional<Length> cut, Tolerance tolerance, String measured,
        String legend, Optional<Length> pitch, PieceEnd from, PieceEnd to, Condition when) {

    /** The same for some of its vehicles. */
    public Piece within(Condition some) {
        return new Piece(wire, circuit, function, colour, size, cable, length, cut, tolerance, measured, legend,
                pitch, from, to, when.and(some));
    }

    /** Both ends. */
    public List<PieceEnd> ends() {
        return List.of(from, to);
    }

    /** Its size as written; empty when none is stated. */
    public String written() {
        return size.map(ConductorSize::written).orElse("");
    }

    /** Resistance of the conductor at 20 C in ohm; empty when length or size is unknown. */
    public Optional<Double> ohms() {
        return length.flatMap(metres -> size.map(each -> each.ohmPerMetre20() * metres.toMetres()));
    }

    /** The end that is not at a node; the second one when both are. */
    public PieceEnd other(Node node) {
        return from.node().equals(node) ? to : from;
    }
}
