// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Connector;
import org.loomwright.harness.link.ConnectorView;

/**
 * Which cavity of the mate a cavity meets: the one that {@code map} states, on either half of the connection, else the
 * one of its own name unless that one meets another.
 */
public final class CavityMap {

    private final ConnectorView connector;
    private final Optional<ConnectorView> mate;

    private CavityMap(ConnectorView connector, Optional<ConnectorView> mate) {
        this.connector = connector;
        this.mate = mate;
    }

    /** Prepares the map of a connector; {@code mate} is empty for one that is plugged onto a device. */
    public static CavityMap of(ConnectorView connector, Optional<ConnectorView> mate) {
        return new CavityMap(connector, mate);
    }

    /** The cavities of the mate that a cavity meets, and in which vehicles. */
    public Map<String, Condition> meets(String cavity) {
        Map<String, Condition> meets = new LinkedHashMap<>();
        Condition rest = connector.when().vehicles().all();
        for (Connector.CavityFact fact : maps(connector)) {
            if (fact.cavity().text().equals(cavity)) {
                Condition when = when(connector, fact);
                meets.merge(fact.value().text(), when.and(rest), Condition::or);
                rest = rest.minus(when);
            }
        }
        for (Connector.CavityFact fact : mate.map(CavityMap::maps).orElse(List.of())) {
            Condition when = when(mate.orElseThrow(), fact).and(rest);
            if (fact.value().text().equals(cavity)) {
                meets.merge(fact.cavity().text(), when, Condition::or);
                rest = rest.minus(when);
            }
        }
        meets.merge(cavity, rest.minus(taken(cavity)), Condition::or);
        meets.values().removeIf(Condition::isNever);
        return meets;
    }

    /** When the cavity of that name in the mate meets another one of the connector. */
    private Condition taken(String cavity) {
        Condition taken = connector.when().vehicles().none();
        for (Connector.CavityFact fact : maps(connector)) {
            if (fact.value().text().equals(cavity)) {
                taken = taken.or(when(connector, fact));
            }
        }
        for (Connector.CavityFact fact : mate.map(CavityMap::maps).orElse(List.of())) {
            if (fact.cavity().text().equals(cavity)) {
                taken = taken.or(when(mate.orElseThrow(), fact));
            }
        }
        return taken;
    }

    private static List<Connector.CavityFact> maps(ConnectorView view) {
        return view.connector().cavities().stream()
                .filter(fact -> fact.kind() == Connector.CavityKind.MAP).toList();
    }

    private static Condition when(ConnectorView view, Connector.CavityFact fact) {
        return view.when().vehicles().resolve(fact.when()).condition();
    }
}
