// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Supply;
import org.loomwright.harness.link.Node;

/**
 * How current gets from the battery to the wires of a circuit, from there to what it feeds, and back to ground, across
 * everything that is plugged together: the car's own wiring, the other harnesses of the kit, fuse blocks and switches.
 * To and from each end by the way of the fewest connections, one in each vehicle; a switch counts as closed. Where
 * the car's own wiring differs between the vehicles, each way is there with the vehicles that have it; where that
 * makes more than {@value #MOST_APART} wires, they are left to the sheets for one vehicle. Building it is linear in
 * the size of the network, but for conditions. For use by one thread.
 */
public final class CurrentWays {

    /** Where more loads return by one circuit, each is drawn with the last wire that feeds it alone. */
    private static final int MOST_LOADS = 2;
    /** Where more wires than these lie in harnesses that only some of the vehicles have, these are left out. */
    public static final int MOST_APART = 32;

    private final Connections connections;
    private final Condition none;
    private final Map<Point, List<Step>> feeds;
    private final Map<Point, List<Step>> returns;
    private final Map<Point, List<Load>> loadsAt = new HashMap<>();
    private final Map<String, Point> only = new HashMap<>();
    private final Set<String> apart;
    private boolean whole;
    private boolean shared;

    /** In some vehicles a point is reached from another by an edge; the depth counts the edges since the start. */
    private record Step(Condition when, int depth, Optional<Edge> by, Optional<Point> from) {
    }

    /**
     * A connection as a diagram shows it, in the direction of the current from the insulated pole.
     *
     * @param from one point, nearer to the battery
     * @param to   the other, nearer to ground
     * @param edge what makes it; empty for a load, in which the current works
     * @param when the vehicles that have it
     */
    public record Way(Point from, Point to, Optional<Edge> edge, Condition when) {
    }

    /**
     * What is around the wires of a circuit.
     *
     * @param ways    the connections, nearest to the battery first
     * @param omitted how many wires of harnesses that only some of the vehicles have were left out for their number
     */
    public record Around(List<Way> ways, int omitted) {

        public Around {
            ways = List.copyOf(ways);
        }
    }

    /** A network and the vehicles that matter. */
    public CurrentWays(Fitment fitment, Condition vehicles) {
        connections = Connections.of(new Fitment(fitment.platform(), fitment.words(), fitment.domain().and(vehicles),
                fitment.fitted()));
        none = vehicles.vehicles().none();
        apart = fitment.fitted().values().stream().filter(each -> !fitment.isOurs(each.view().name())
                && !vehicles.excludes(each.when()) && !fitment.domain().and(vehicles).implies(each.when()))
                .map(each -> each.view().name()).collect(Collectors.toSet());
        Map<Point, Condition> sources = new LinkedHashMap<>();
        boolean battery = connections.supplies().stream().anyMatch(each -> each.type().equals("battery"));
        for (Supply supply : connections.supplies()) {
            if (!battery || supply.type().equals("battery")) {
                supply.live().forEach(pin -> sources.merge(pin, supply.when(), Condition::or));
            }
        }
        feeds = spread(sources, edge -> !edge.isGround());
        returns = spread(connections.grounds(), edge -> true);
        connections.loads().forEach(load -> load.pins().forEach(pin ->
                loadsAt.computeIfAbsent(pin, any -> new ArrayList<>()).add(load)));
        connections.edges().forEach(edge -> List.of(edge.a(), edge.b()).forEach(point -> {
            if (point instanceof Point.Spot spot) {
                only.putIfAbsent(spot.node().owner() + ":" + spot.node().element(), point);
            }
        }));
    }

    /** The network around a harness of an order; empty when nothing is known that it is fitted to. */
    public static Optional<CurrentWays> of(Order order, LaidHarness harness) {
        String kit = "with kit " + order.name();
        List<Fitment> having = Fitment.of(order.project(), order.platform()).stream()
                .filter(each -> each.fitted().containsKey(harness.name())).toList();
        return having.stream().filter(each -> each.words().equals(kit)).findFirst()
                .or(() -> having.stream().findFirst()).map(each -> new CurrentWays(each, harness.vehicles()));
    }

    /** Breadth first, so that no way is longer than it must be. */
    private Map<Point, List<Step>> spread(Map<Point, Condition> starts, Predicate<Edge> passes) {
        Map<Point, List<Step>> steps = new LinkedHashMap<>();
        Map<Point, Condition> reached = new HashMap<>();
        Map<Point, Condition> fresh = new LinkedHashMap<>();
        starts.forEach((point, when) -> {
            Condition there = when.and(connections.fitment().domain());
            if (!there.isNever()) {
                fresh.put(point, there);
                reached.put(point, there);
                steps.put(point, new ArrayList<>(List.of(new Step(there, 0, Optional.empty(), Optional.empty()))));
            }
        });
        for (int depth = 1; !fresh.isEmpty(); depth++) {
            Map<Point, Condition> next = new LinkedHashMap<>();
            for (Map.Entry<Point, Condition> each : fresh.entrySet()) {
                for (Edge edge : connections.edgesAt(each.getKey())) {
                    Point to = edge.other(each.getKey());
                    Condition more = passes.test(edge) ? each.getValue().and(edge.when())
                            .minus(reached.getOrDefault(to, none)) : none;
                    if (!more.isNever()) {
                        reached.merge(to, more, Condition::or);
                        next.merge(to, more, Condition::or);
                        steps.computeIfAbsent(to, any -> new ArrayList<>()).add(new Step(more, depth,
                                Optional.of(edge), Optional.of(each.getKey())));
                    }
                }
            }
            fresh.clear();
            fresh.putAll(next);
        }
        return steps;
    }

    /** The point of an end of a wire; an end that names no pin is at the only one of its part. */
    public Point point(Node node) {
        Node bare = node.kind() == Node.Kind.SPLICE || node.kind() == Node.Kind.STUD
                ? new Node(node.kind(), node.owner(), node.element(), "") : node;
        Point point = new Point.Spot(bare);
        return !connections.edgesAt(point).isEmpty() || !node.pin().isEmpty() ? point
                : only.getOrDefault(node.owner() + ":" + node.element(), point);
    }

    /** Names of the car's harnesses that not all vehicles have. */
    public Set<String> apart() {
        return apart;
    }

    private boolean isApart(Edge edge) {
        return edge.link() instanceof Link.OfWire wire && apart.contains(wire.wire().owner());
    }

    private boolean isShown(Edge edge) {
        return !shared || !isApart(edge);
    }

    /** How far a point is from the battery, in connections; a large number for one that it cannot feed. */
    public int depth(Point point) {
        return depth(feeds, point);
    }

    /** How far a point is from ground without a load between, in connections; a large number for one that is not. */
    public int height(Point point) {
        return depth(returns, point);
    }

    private static int depth(Map<Point, List<Step>> steps, Point point) {
        return steps.getOrDefault(point, List.of()).stream().mapToInt(Step::depth).min().orElse(1_000_000);
    }

    /** Whether a point is a pole of the battery, or of what else feeds where there is none. */
    public boolean isSource(Point point) {
        return depth(point) == 0;
    }

    /**
     * Everything around the wires of a circuit. Where it takes the current of many loads to ground, or what feeds them
     * is wired in many ways, that is left to the circuits of the loads, but for the last wire.
     *
     * @param ends  the points at which they end, and the vehicles in which they do
     * @param inner returns whether an edge is one of them, which is left out
     */
    public Around around(Map<Point, Condition> ends, Predicate<Edge> inner) {
        shared = false;
        whole = true;
        List<Way> all = all(ends, inner);
        boolean loads = all.stream().anyMatch(way -> way.edge().isEmpty());
        if (all.stream().filter(way -> way.edge().isEmpty() && fed(way.to()).isNever())
                .count() > MOST_LOADS || loads && apart(all) > MOST_APART) {
            whole = false;
            all = all(ends, inner);
        }
        int others = apart(all);
        if (others <= MOST_APART) {
            return new Around(all, 0);
        }
        shared = true;
        return new Around(all(ends, inner), others);
    }

    /** How many wires of the car differ in what a diagram says of them. */
    private int apart(List<Way> ways) {
        Set<String> told = new HashSet<>();
        for (Way way : ways) {
            way.edge().filter(this::isApart).map(edge -> ((Link.OfWire) edge.link()).wire()).ifPresent(wire ->
                    told.add(wire.label() + " " + way.from() + " " + way.to() + " "
                            + wire.colours().stream().map(each -> each.value().toString()).toList()));
        }
        return told.size();
    }

    private List<Way> all(Map<Point, Condition> ends, Predicate<Edge> inner) {
        Map<String, Way> ways = new LinkedHashMap<>();
        ends.forEach((point, when) -> back(feeds, point, when, true, inner, ways));
        Set<Integer> taken = new LinkedHashSet<>();
        ways.values().forEach(way -> way.edge().ifPresent(edge -> taken.add(edge.index())));
        ends.forEach((point, when) -> on(point, when, inner, taken, ways));
        return ways.values().stream().sorted(Comparator.comparingInt(each -> depth(each.from()))).toList();
    }

    private static void add(Map<String, Way> ways, Point from, Point to, Optional<Edge> edge, Condition when) {
        String key = edge.map(each -> "edge " + each.index()).orElse("load " + from + " " + to);
        ways.merge(key, new Way(from, to, edge, when), (a, b) -> new Way(a.from(), a.to(), a.edge(),
                a.when().or(b.when())));
    }

    /** Follows the steps by which a point was reached back to where they start. */
    private void back(Map<Point, List<Step>> steps, Point point, Condition when, boolean feed,
            Predicate<Edge> inner, Map<String, Way> ways) {
        for (Step step : steps.getOrDefault(point, List.of())) {
            Condition both = step.when().and(when);
            if (both.isNever() || step.by().filter(this::isShown).isEmpty()) {
                continue;
            }
            Point from = step.from().orElseThrow();
            if (step.by().filter(inner).isEmpty()) {
                add(ways, feed ? from : point, feed ? point : from, step.by(), both);
            }
            back(steps, from, both, feed, inner, ways);
        }
    }

    /** Back to the start of the wire by which a point is fed. */
    private void lastWire(Point point, Condition when, Map<String, Way> ways) {
        for (Step step : feeds.getOrDefault(point, List.of())) {
            Condition both = step.when().and(when);
            if (!both.isNever() && step.by().filter(this::isShown).isPresent()) {
                add(ways, step.from().orElseThrow(), point, step.by(), both);
                if (!step.by().orElseThrow().isWire()) {
                    lastWire(step.from().orElseThrow(), both, ways);
                }
            }
        }
    }

    /** A point from which the circuit goes on, and the vehicles. */
    private record Front(Point point, Condition when) {
    }

    /** From an end over plugs, wires and splices to the next device; through a load to ground. */
    private void on(Point end, Condition when, Predicate<Edge> inner, Set<Integer> fed, Map<String, Way> ways) {
        Deque<Front> open = new ArrayDeque<>(List.of(new Front(end, when)));
        Map<Point, Condition> seen = new HashMap<>();
        while (!open.isEmpty() && !isSource(end)) {
            Front front = open.remove();
            Condition fresh = front.when().minus(seen.getOrDefault(front.point(), none));
            if (fresh.isNever()) {
                continue;
            }
            seen.merge(front.point(), fresh, Condition::or);
            back(returns, front.point(), fresh.minus(fed(front.point())), false, inner, ways);
            for (Load load : loadsAt.getOrDefault(front.point(), List.of())) {
                through(load, front.point(), fresh.and(load.when()), inner, ways);
            }
            if (isBolted(front.point())) {
                continue; // what else returns by this ground is no part of the circuit
            }
            for (Edge edge : connections.edgesAt(front.point())) {
                Condition there = fresh.and(edge.when());
                if (there.isNever() || !isShown(edge) || edge.isGround() || inner.test(edge)
                        || fed.contains(edge.index()) || edge.link() instanceof Link.Inside) {
                    continue;
                }
                Point next = edge.other(front.point());
                Condition away = away(front.point(), next, there);
                Condition back = edge.isWire() ? none : there.minus(away);
                if (!away.isNever()) {
                    add(ways, front.point(), next, Optional.of(edge), away);
                }
                if (!back.isNever()) {
                    add(ways, next, front.point(), Optional.of(edge), back);
                }
                there = away.or(back);
                if (there.isNever()) {
                    continue;
                }
                open.add(new Front(next, there));
            }
        }
    }

    /** The vehicles, of some, in which one point is farther from the battery than another, or neither is fed. */
    private Condition away(Point from, Point to, Condition when) {
        Condition away = when.minus(fed(from));
        for (Step near : feeds.getOrDefault(from, List.of())) {
            for (Step far : feeds.getOrDefault(to, List.of())) {
                if (far.depth() > near.depth()) {
                    away = away.or(near.when().and(far.when()).and(when));
                }
            }
        }
        return away;
    }

    private boolean isBolted(Point point) {
        return point instanceof Point.Spot spot && spot.node().kind() == Node.Kind.STUD
                && connections.edgesAt(point).stream().anyMatch(Edge::isGround);
    }

    /** Through a load: to ground behind it from a fed pin, or back to what feeds it from the other one. */
    private void through(Load load, Point pin, Condition when, Predicate<Edge> inner, Map<String, Way> ways) {
        if (when.isNever()) {
            return;
        }
        for (Point other : load.pins()) {
            if (other.equals(pin)) {
                continue;
            }
            Condition returned = reach(returns, other).minus(fed(other)).and(when).minus(
                    reach(returns, pin).minus(fed(pin)));
            if (!returned.isNever()) {
                add(ways, pin, other, Optional.empty(), returned);
                back(returns, other, returned, false, inner, ways);
            }
            Condition feeding = fed(other).and(when).minus(fed(pin));
            if (!feeding.isNever()) {
                add(ways, other, pin, Optional.empty(), feeding);
                if (whole) {
                    back(feeds, other, feeding, true, inner, ways);
                } else {
                    lastWire(other, feeding, ways);
                }
            }
        }
    }

    /** The vehicles in which the battery feeds a point without a load between. */
    private Condition fed(Point point) {
        return reach(feeds, point);
    }

    private Condition reach(Map<Point, List<Step>> steps, Point point) {
        return steps.getOrDefault(point, List.of()).stream().map(Step::when).reduce(none, Condition::or);
    }
}
