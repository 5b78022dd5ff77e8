// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;

/**
 * A wire with what its names mean.
 *
 * @param owner   name of the drawing or harness that it belongs to
 * @param circuit its circuit
 * @param wire    the snapshot
 * @param when    the vehicles that have it
 * @param sizes   conductor size, by vehicles
 * @param cables  kind of cable, by vehicles; the harness's default where the wire has none of its own
 * @param colours colour, by vehicles; the circuit's where the wire has none of its own
 * @param from    where it starts, by vehicles
 * @param to      where it ends, by vehicles
 * @param lengths its stated length, by vehicles; empty where the route gives it
 */
public record WireView(String owner, Circuit circuit, Circuit.Wire wire, Condition when,
        List<Case<ConductorSize>> sizes, List<Case<Part>> cables, List<Case<Colour>> colours, List<Case<Node>> from,
        List<Case<Node>> to, List<Case<Measure>> lengths) {

    /**
     * What people call the wire: circuit and wire together, {@code 12b}; with a low line between them, {@code 12_1},
     * where they would run into each other. Unique in a drawing or harness whose circuits and wires are.
     */
    public String label() {
        return label(circuit.name().text(), wire.name().text());
    }

    /** The label of a wire of that name in a circuit of that name. */
    public static String label(String circuit, String wire) {
        boolean reads = !circuit.isEmpty() && !wire.isEmpty() && Character.isDigit(circuit.charAt(circuit.length() - 1))
                && Character.isLetter(wire.charAt(0));
        return reads ? circuit + wire : circuit + "_" + wire;
    }
}
