// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;

/**
 * A shortest way through a network that some vehicle has as a whole; for people, to show why something is connected.
 */
public final class Path {

    private record Step(Point before, Condition when) {
    }

    private Path() {
    }

    /**
     * Returns the points of a way with the fewest edges from one of some starting points to a goal.
     *
     * @param starts the starting points, in order
     * @param within the vehicles in question
     * @param passes the edges that may be used
     * @return empty when the search finds no way that one vehicle has from end to end
     */
    public static Optional<List<Point>> find(Connections connections, Map<Point, Condition> starts, Point goal,
            Condition within, Predicate<Edge> passes) {
        Map<Point, Step> seen = new LinkedHashMap<>();
        Deque<Point> queue = new ArrayDeque<>();
        starts.forEach((point, when) -> {
            Condition both = when.and(within);
            if (!both.isNever()) {
                seen.put(point, new Step(null, both));
                queue.add(point);
            }
        });
        while (!queue.isEmpty()) {
            Point point = queue.remove();
            if (point.equals(goal)) {
                return Optional.of(back(seen, goal));
            }
            for (Edge edge : connections.edgesAt(point)) {
                Point next = edge.other(point);
                if (!seen.containsKey(next) && passes.test(edge)) {
                    Condition both = seen.get(point).when().and(edge.when());
                    if (!both.isNever()) {
                        seen.put(next, new Step(point, both));
                        queue.add(next);
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static List<Point> back(Map<Point, Step> seen, Point goal) {
        List<Point> points = new ArrayList<>();
        for (Point at = goal; at != null; at = seen.get(at).before()) {
            points.add(at);
        }
        Collections.reverse(points);
        return points;
    }
}
