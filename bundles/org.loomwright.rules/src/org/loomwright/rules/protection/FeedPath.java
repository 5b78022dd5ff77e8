// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Path;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Supply;

/** Says in words by which way a source feeds a connection. */
final class FeedPath {

    private FeedPath() {
    }

    /**
     * {@code fed by way of battery:plus - F5:line - F5:load}; the names of the sources alone when no single vehicle has
     * a way from end to end.
     *
     * @param edge   the connection that is fed
     * @param within the vehicles in question
     * @param wanted the sources to start from
     * @param passes the connections that may be used; those into ground never are
     */
    static String words(Connections connections, Edge edge, Condition within, Predicate<Supply> wanted,
            Predicate<Edge> passes) {
        Map<Point, Condition> starts = new LinkedHashMap<>();
        List<String> names = new ArrayList<>();
        connections.supplies().stream().filter(wanted).forEach(supply -> {
            supply.live().forEach(pin -> starts.merge(pin, supply.when(), Condition::or));
            names.add(supply.device().name());
        });
        Predicate<Edge> way = each -> passes.test(each) && !each.isGround();
        Optional<List<Point>> path = Path.find(connections, starts, edge.a(), within, way)
                .or(() -> Path.find(connections, starts, edge.b(), within, way));
        return path.map(points -> "fed by way of " + points.stream().map(Point::toString)
                .collect(Collectors.joining(" - "))).orElse("fed by " + String.join(", ", names));
    }
}
