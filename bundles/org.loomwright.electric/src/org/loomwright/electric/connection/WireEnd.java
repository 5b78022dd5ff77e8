// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * One of the spots where an end of a wire can be.
 *
 * @param wire   the wire
 * @param start  true for its start
 * @param node   the spot
 * @param when   the vehicles in which the end is there
 * @param target the name of the connector, splice, stud or device, where it is written
 * @param cavity the cavity or pin, where it is written; {@link Name#NONE} when none is
 */
public record WireEnd(WireView wire, boolean start, Node node, Condition when, Ref target, Name cavity) {

    /** Returns the ends of all wires of a drawing or harness, in source order. */
    public static List<WireEnd> of(WiringView view) {
        List<WireEnd> ends = new ArrayList<>();
        view.wires().forEach(wire -> ends.addAll(of(wire)));
        return ends;
    }

    /** Returns the ends of a wire, those of its start first. */
    public static List<WireEnd> of(WireView wire) {
        List<WireEnd> ends = new ArrayList<>();
        add(wire, true, wire.from(), wire.wire().from(), ends);
        add(wire, false, wire.to(), wire.wire().to(), ends);
        return ends;
    }

    /**
     * Returns the ends of a wire that are at something, in the vehicles that have it. Where the connector, splice, stud
     * or device is missing, the wire ends nowhere. An end that names no cavity or pin is at the only one of its part,
     * in the vehicles whose part has only one.
     */
    public static List<WireEnd> there(WiringView view, WireView wire) {
        List<WireEnd> there = new ArrayList<>();
        for (WireEnd end : of(wire)) {
            Node node = end.node();
            switch (node.kind()) {
                case CAVITY -> Optional.ofNullable(view.connectors().get(node.element()))
                        .ifPresent(each -> end.at(each.when(), each.housings(), there));
                case SPLICE -> Optional.ofNullable(view.splices().get(node.element()))
                        .ifPresent(each -> end.at(each.when(), List.of(), there));
                case STUD -> Optional.ofNullable(view.studs().get(node.element()))
                        .ifPresent(each -> end.at(each.when(), List.of(), there));
                case PIN -> Optional.ofNullable((node.owner().equals(view.name()) ? view.devices()
                        : view.platform().devices()).get(node.element()))
                        .ifPresent(each -> end.at(each.when(), each.parts(), there));
                case NOWHERE -> { }
            }
        }
        return there;
    }

    /** The same for all wires of a drawing or harness, in source order. */
    public static List<WireEnd> there(WiringView view) {
        List<WireEnd> there = new ArrayList<>();
        view.wires().forEach(wire -> there.addAll(there(view, wire)));
        return there;
    }

    /** Adds this end in those vehicles that have what it is at, one part after the other when it names no pin. */
    private void at(Condition present, List<Case<Part>> parts, List<WireEnd> there) {
        Condition rest = when.and(present);
        for (Case<Part> each : node.pin().isEmpty() ? parts : List.<Case<Part>>of()) {
            if (each.value().pins().size() == 1) {
                with(each.value().pins().getFirst().name().text(), rest.and(each.when()), there);
                rest = rest.minus(each.when());
            }
        }
        with(node.pin(), rest, there);
    }

    private void with(String pin, Condition vehicles, List<WireEnd> there) {
        if (!vehicles.isNever()) {
            Node at = pin.equals(node.pin()) ? node : new Node(node.kind(), node.owner(), node.element(), pin);
            there.add(new WireEnd(wire, start, at, vehicles, target, cavity));
        }
    }

    private static void add(WireView wire, boolean start, List<Case<Node>> cases, List<Fact<Circuit.End>> facts,
            List<WireEnd> ends) {
        for (Case<Node> each : cases) {
            Circuit.End written = written(each, facts);
            ends.add(written == null
                    ? new WireEnd(wire, start, each.value(), each.when(), Ref.of(each.value().element(), each.span()),
                            Name.NONE)
                    : new WireEnd(wire, start, each.value(), each.when(), written.target(), written.cavity()));
        }
    }

    /** What the source says of an end; null when it says nothing. */
    private static Circuit.End written(Case<Node> end, List<Fact<Circuit.End>> facts) {
        for (Fact<Circuit.End> fact : facts) {
            if (fact.span().equals(end.span()) && fact.value().target().text().equals(end.value().element())) {
                return fact.value();
            }
        }
        return null;
    }

    /** Returns where the end is written, as {@code J1:7}. */
    public Span span() {
        Span from = target.span();
        Span to = cavity.span();
        boolean joined = !cavity.text().isEmpty() && to.file().equals(from.file()) && to.end() > from.offset();
        return joined ? new Span(from.file(), from.offset(), to.end() - from.offset(), from.line(), from.column())
                : from;
    }
}
