// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Connector;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/** Where the wires of a drawing or harness meet what is outside of it, and in which vehicles. */
final class Pins {

    private final WiringView view;
    private final Map<Node, Condition> wired = new LinkedHashMap<>();
    private final Map<Pin, Map<Node, Condition>> held = new LinkedHashMap<>();

    /** A pin or cavity of something else: of a device of the platform, or of the other half of an interface. */
    record Pin(String owner, String element, String cavity) {
    }

    Pins(WiringView view) {
        this.view = view;
        for (WireView wire : view.wires()) {
            Stream.concat(wire.from().stream(), wire.to().stream()).forEach(end -> wired.merge(end.value(),
                    end.when().and(wire.when()), Condition::or));
        }
        wired.forEach((node, when) -> outside(node, when).forEach((pin, in) -> held.computeIfAbsent(pin,
                key -> new LinkedHashMap<>()).merge(node, in, Condition::or)));
    }

    /** The own ends of wires, and the vehicles in which there is one. */
    Map<Node, Condition> wired() {
        return wired;
    }

    /** The own ends that are at a pin of something else. */
    Map<Node, Condition> at(Pin pin) {
        return held.getOrDefault(pin, Map.of());
    }

    /** What an end meets; nothing for a splice, a stud, a device in line, and a connector that mates nothing. */
    Map<Pin, Condition> outside(Node node, Condition when) {
        Map<Pin, Condition> pins = new LinkedHashMap<>();
        ConnectorView connector = view.connectors().get(node.element());
        if (node.kind() == Node.Kind.PIN && !node.owner().equals(view.name())) {
            pins.put(new Pin(node.owner(), node.element(), node.pin()), when);
        } else if (node.kind() == Node.Kind.CAVITY && connector != null) {
            for (Case<ConnectorView.Mate> mate : connector.mates()) {
                Condition rest = when.and(mate.when());
                for (Connector.CavityFact fact : maps(connector, node.pin())) {
                    Condition here = rest.and(view.platform().vehicles().resolve(fact.when()).condition());
                    add(pins, mate.value(), fact.value().text(), here);
                    rest = rest.minus(here);
                }
                add(pins, mate.value(), node.pin(), rest);
            }
        }
        return pins;
    }

    private static void add(Map<Pin, Condition> pins, ConnectorView.Mate mate, String cavity, Condition when) {
        if (!when.isNever()) {
            pins.merge(new Pin(mate.owner(), mate.element(), cavity), when, Condition::or);
        }
    }

    private static List<Connector.CavityFact> maps(ConnectorView connector, String cavity) {
        return connector.connector().cavities().stream().filter(fact -> fact.kind() == Connector.CavityKind.MAP
                && fact.cavity().text().equals(cavity)).toList();
    }
}
