// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Point;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Node;
import org.loomwright.quantity.Dimension;

/** What the terminals in the cavities of a mated pair state. */
public final class Terminals {

    private Terminals() {
    }

    /**
     * Returns the lesser of what two terminals state, in its SI unit; empty where neither states anything.
     *
     * @param edge a mated pair of cavities, or a cavity and a pin
     */
    public static Optional<Double> least(Connections connections, Map<String, Part> parts, Edge edge,
            Part.FigureKind kind, Dimension dimension) {
        Optional<Double> least = Optional.empty();
        for (Point point : List.of(edge.a(), edge.b())) {
            if (point instanceof Point.Spot spot && spot.node().kind() == Node.Kind.CAVITY) {
                var fitted = connections.fitment().fitted().get(spot.node().owner());
                var connector = fitted == null ? null : fitted.view().connectors().get(spot.node().element());
                if (connector == null) {
                    continue;
                }
                for (Connector.CavityFact fact : connector.connector().cavities()) {
                    Part part = parts.get(fact.value().text());
                    boolean here = fact.kind() == Connector.CavityKind.TERMINAL && part != null
                            && fact.cavity().text().equals(spot.node().pin());
                    Optional<Double> figure = here ? LoadModels.figure(part, kind, dimension) : Optional.empty();
                    if (figure.isPresent() && !edge.when().vehicles().resolve(fact.when()).condition()
                            .excludes(edge.when())) {
                        least = Optional.of(Math.min(least.orElse(Double.MAX_VALUE), figure.get()));
                    }
                }
            }
        }
        return least;
    }
}
