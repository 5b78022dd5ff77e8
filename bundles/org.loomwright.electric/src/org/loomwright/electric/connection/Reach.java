// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;

/**
 * In which vehicles each point is connected with one of some starting points: the least solution of
 * R(n) = start(n) or OR over edges m-n of (R(m) and there(edge)). The order in which points are visited does not matter
 * for the result.
 */
public final class Reach {

    private final Map<Point, Condition> reached;
    private final Condition none;
    private final long steps;

    private Reach(Map<Point, Condition> reached, Condition none, long steps) {
        this.reached = reached;
        this.none = none;
        this.steps = steps;
    }

    /** Follows the edges that pass a test, from the starting points on. */
    static Reach from(Connections connections, Map<Point, Condition> starts, Predicate<Edge> passes) {
        return from(connections, starts, passes, (point, added) -> false);
    }

    /**
     * Follows the edges that pass a test, until that is enough.
     *
     * @param enough told of each point, and of the vehicles in which it is now known to be reached
     */
    static Reach from(Connections connections, Map<Point, Condition> starts, Predicate<Edge> passes,
            BiPredicate<Point, Condition> enough) {
        Condition none = connections.fitment().platform().vehicles().none();
        Map<Point, Condition> reached = new LinkedHashMap<>();
        Map<Point, Condition> fresh = new LinkedHashMap<>();
        Deque<Point> queue = new ArrayDeque<>();
        Set<Point> queued = new HashSet<>();
        starts.forEach((point, when) -> {
            if (!when.isNever()) {
                fresh.put(point, when);
                queue.add(point);
                queued.add(point);
            }
        });
        long steps = 0;
        while (!queue.isEmpty()) {
            Point point = queue.remove();
            queued.remove(point);
            Condition added = fresh.remove(point);
            reached.merge(point, added, Condition::or);
            if (enough.test(point, added)) {
                break;
            }
            for (Edge edge : connections.edgesAt(point)) {
                if (!passes.test(edge)) {
                    continue;
                }
                steps++;
                Point next = edge.other(point);
                Condition before = reached.getOrDefault(next, none);
                if (before.equals(added)) {
                    continue; // mostly the way that it came
                }
                Condition more = added.and(edge.when()).minus(before);
                if (!more.isNever()) {
                    fresh.merge(next, more, Condition::or);
                    if (queued.add(next)) {
                        queue.add(next);
                    }
                }
            }
        }
        return new Reach(reached, none, steps);
    }

    /** Returns the vehicles in which the point is reached. */
    public Condition at(Point point) {
        return reached.getOrDefault(point, none);
    }

    /** Returns every point that is reached in some vehicle, and in which. */
    public Map<Point, Condition> points() {
        return reached;
    }

    /** Returns how many edges were followed, for tests that guard growth. */
    public long steps() {
        return steps;
    }
}
