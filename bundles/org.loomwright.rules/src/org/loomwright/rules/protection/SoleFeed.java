// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Supply;
import org.loomwright.harness.Part;

/**
 * The wires that bring current to loads of one sort: those that end at such a load and are fed at their other end, and
 * from there back toward the source for as long as nothing else is fed. The way back goes through splices, plugs and
 * parts, and ends at a switch, at a protective device, and where the way forks.
 *
 * <p>Linear in the length of these ways, but for the question whether a wire is fed, which is asked once for each wire
 * at such a load.
 */
final class SoleFeed {

    private final Connections connections;
    private final Predicate<Point> pins;
    private final Predicate<Supply> wanted;
    private final Condition none;
    private final Map<Integer, Condition> feeds = new HashMap<>();
    private final Map<Point, Condition> busy = new HashMap<>();
    private final Deque<Point> open = new ArrayDeque<>();

    /**
     * Follows the wires of some loads back.
     *
     * @param sort   the loads
     * @param wanted the sources that count
     */
    SoleFeed(Connections connections, Predicate<Part> sort, Predicate<Supply> wanted) {
        this(connections, sort, pin -> true, wanted);
    }

    /**
     * Follows the wires of some pins of some loads back.
     *
     * @param sort   the loads
     * @param pins   the pins of these that count
     * @param wanted the sources that count
     */
    SoleFeed(Connections connections, Predicate<Part> sort, Predicate<Point> pins, Predicate<Supply> wanted) {
        this.connections = connections;
        this.pins = pins;
        this.wanted = wanted;
        this.none = connections.fitment().platform().vehicles().none();
        List<Load> loads = connections.loads().stream().filter(load -> sort.test(load.part())).toList();
        if (loads.isEmpty()) {
            return;
        }
        connections.loads().stream().filter(load -> !sort.test(load.part()))
                .forEach(load -> load.pins().forEach(pin -> busy.merge(pin, load.when(), Condition::or)));
        connections.supplies().forEach(supply -> {
            supply.live().forEach(pin -> busy.merge(pin, supply.when(), Condition::or));
            supply.returns().forEach(pin -> busy.merge(pin, supply.when(), Condition::or));
        });
        connections.grounds().forEach((point, when) -> busy.merge(point, when, Condition::or));
        loads.forEach(load -> load.pins().stream().filter(Predicate.not(pins))
                .forEach(pin -> busy.merge(pin, load.when(), Condition::or)));
        loads.forEach(this::start);
        while (!open.isEmpty()) {
            back(open.remove());
        }
    }

    /** The vehicles in which an edge feeds such loads and nothing else, or one of them at its end. */
    Condition of(Edge edge) {
        return feeds.getOrDefault(edge.index(), none);
    }

    private void start(Load load) {
        for (Point pin : load.pins().stream().filter(pins).toList()) {
            start(pin, pin, load.when());
            for (Edge mate : connections.edgesAt(pin)) {
                if (mate.link() instanceof Link.Mated) {
                    start(pin, mate.other(pin), load.when().and(mate.when()));
                }
            }
        }
    }

    /** The wires that end at a pin, or in the cavity that is plugged onto it, and are fed at their other end. */
    private void start(Point pin, Point near, Condition when) {
        for (Edge edge : connections.edgesAt(near)) {
            Condition there = when.and(edge.when());
            if (edge.isWire() && passes(edge) && !there.isNever()) {
                add(edge, edge.other(near), connections.feeds(edge.other(near), there, wanted,
                        each -> !touches(each, near) && !touches(each, pin)));
            }
        }
    }

    private static boolean touches(Edge edge, Point point) {
        return edge.a().equals(point) || edge.b().equals(point);
    }

    private void add(Edge edge, Point far, Condition when) {
        Condition more = when.minus(of(edge));
        if (!more.isNever()) {
            feeds.merge(edge.index(), more, Condition::or);
            open.add(far);
        }
    }

    /** Goes on past a point where, beside what is known to feed these loads, there is one edge only. */
    private void back(Point point) {
        Condition here = none;
        for (Edge edge : connections.edgesAt(point)) {
            here = here.or(of(edge));
        }
        here = here.minus(busy.getOrDefault(point, none));
        for (Edge edge : connections.edgesAt(point)) {
            Condition alone = passes(edge) ? here.and(edge.when()).minus(of(edge)) : none;
            for (Edge other : connections.edgesAt(point)) {
                if (other != edge && !alone.isNever()) {
                    alone = alone.minus(other.when().minus(of(other)));
                }
            }
            add(edge, edge.other(point), alone);
        }
    }

    private static boolean passes(Edge edge) {
        return edge.protection() == Protection.NONE && !edge.isGround() && !(edge.link() instanceof Link.Inside inside
                && (inside.part().kind() == Part.Kind.SWITCH
                        || inside.join().filter(join -> !join.states().isEmpty()).isPresent()));
    }
}
