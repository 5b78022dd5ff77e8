// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.quantity.ConductorSize;

/**
 * One electrical function with its number and colour.
 *
 * @param name      the circuit's number or name
 * @param title     words for people
 * @param colours   its colour, which its wires have unless they say otherwise
 * @param wires     its wires
 * @param splices   its splices
 * @param origins   which factory circuits it stands for, where numbers or colours conflict between years
 * @param asFactory the reason for keeping what the factory did; empty when none is given
 * @param when      the vehicles that have it
 * @param span      the whole element
 */
public record Circuit(Name name, String title, List<Fact<Colour>> colours, List<Wire> wires, List<Splice> splices,
        List<Origin> origins, Optional<Fact<String>> asFactory, Expression when, Span span) {

    /**
     * One cut piece with two ends.
     *
     * @param name      its name within the circuit
     * @param sizes     conductor size with its system
     * @param cables    kind of cable
     * @param colours   its own colour
     * @param from      its start
     * @param to        its end
     * @param lengths   its length where the source states one, instead of the route's
     * @param legend    the print legend; empty when not stated
     * @param asFactory the reason for keeping what the factory did
     * @param when      the vehicles that have it
     * @param span      the whole element
     */
    public record Wire(Name name, List<Fact<ConductorSize>> sizes, List<Fact<Ref>> cables, List<Fact<Colour>> colours,
            List<Fact<End>> from, List<Fact<End>> to, List<Fact<Measure>> lengths, String legend,
            Optional<Fact<String>> asFactory, Expression when, Span span) {
    }

    /**
     * One end of a wire: a connector's cavity, a splice, a stud or a pin of a device.
     *
     * @param target the connector, splice, stud or device
     * @param cavity the cavity or pin; empty when the target has only one
     */
    public record End(Ref target, Name cavity) {

        @Override
        public String toString() {
            return cavity.text().isEmpty() ? target.text() : target.text() + ":" + cavity.text();
        }
    }

    /** Where three or more wires of a circuit join. */
    public record Splice(Name name, Location at, Optional<Ref> method, Expression when, Span span) {
    }

    /** The factory's circuit that this one stands for in a drawing. */
    public record Origin(String number, Optional<Colour> colour, Ref drawing, Span span) {
    }
}
