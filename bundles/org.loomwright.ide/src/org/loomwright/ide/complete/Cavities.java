// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/** What is in the cavities of a connector: the wires, for the vehicles in question. */
final class Cavities {

    private Cavities() {
    }

    /** The cavities of a connector, in order, with what stands beside each. */
    static Map<String, String> of(ConnectorView connector) {
        Map<String, String> cavities = new LinkedHashMap<>();
        for (Case<Part> housing : connector.housings()) {
            housing.value().pins().forEach(pin -> cavities.putIfAbsent(pin.name().text(), pin.title()));
        }
        return cavities;
    }

    /** The wires that end in a cavity in some of the vehicles; the one that is being written is none of them. */
    static List<WireView> in(WiringView view, Node cavity, Optional<Condition> vehicles, Optional<WireView> but) {
        List<WireView> found = new ArrayList<>();
        for (WireView wire : view.wires()) {
            if (but.filter(own -> own == wire).isEmpty() && (ends(wire.from(), cavity, vehicles)
                    || ends(wire.to(), cavity, vehicles))) {
                found.add(wire);
            }
        }
        return found;
    }

    private static boolean ends(List<Case<Node>> ends, Node cavity, Optional<Condition> vehicles) {
        return ends.stream().anyMatch(end -> end.value().equals(cavity)
                && vehicles.map(when -> !end.when().excludes(when)).orElse(true));
    }

    /** Whether a cavity holds neither a wire nor a plug in any of the vehicles. */
    static boolean isFree(WiringView view, ConnectorView connector, String cavity, Optional<Condition> vehicles,
            Optional<WireView> but) {
        boolean plugged = connector.connector().cavities().stream()
                .anyMatch(fact -> fact.kind() == Connector.CavityKind.PLUG && fact.cavity().text().equals(cavity)
                        && vehicles.map(when -> !when.vehicles().resolve(fact.when()).condition().excludes(when))
                                .orElse(true));
        return !plugged && in(view, connector.cavity(cavity), vehicles, but).isEmpty();
    }
}
