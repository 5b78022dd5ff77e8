// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.loomwright.condition.Condition;

/**
 * The network of one {@link Fitment}: points, edges, loads, sources and grounds, for all its vehicles at once.
 * Never changes; safe for use by several threads. Linear in the size of the drawings and harnesses, but for conditions.
 */
public final class Connections {

    private final Fitment fitment;
    private final List<Edge> edges;
    private final Map<Point, List<Edge>> edgesAt;
    private final List<Load> loads;
    private final List<Supply> supplies;
    private final Map<Point, Condition> grounds;
    private final Map<Point, Condition> open;
    private final Map<String, Reach> known = new HashMap<>();

    Connections(Fitment fitment, List<Edge> edges, Map<Point, List<Edge>> edgesAt, List<Load> loads,
            List<Supply> supplies, Map<Point, Condition> grounds, Map<Point, Condition> open) {
        this.fitment = fitment;
        this.edges = List.copyOf(edges);
        this.edgesAt = edgesAt;
        this.loads = List.copyOf(loads);
        this.supplies = List.copyOf(supplies);
        this.grounds = grounds;
        this.open = open;
    }

    /** Builds the network of a choice of harnesses. */
    public static Connections of(Fitment fitment) {
        return new ConnectionsBuilder(fitment).build();
    }

    /** Returns what is fitted. */
    public Fitment fitment() {
        return fitment;
    }

    /** Returns all edges; an edge's index is its place here. */
    public List<Edge> edges() {
        return edges;
    }

    /** Returns the edges at a point, in order. */
    public List<Edge> edgesAt(Point point) {
        return edgesAt.getOrDefault(point, List.of());
    }

    /** Returns the loads, those of the platform first. */
    public List<Load> loads() {
        return loads;
    }

    /** Returns the sources, those of the platform first. */
    public List<Supply> supplies() {
        return supplies;
    }

    /** Returns the points that are ground, and in which vehicles: ground nodes that conduct, and studs. */
    public Map<Point, Condition> grounds() {
        return grounds;
    }

    /**
     * Returns the cavities behind which nothing is described, and in which vehicles: those of connectors that mate
     * nothing there. What lies behind them is not known.
     */
    public Map<Point, Condition> open() {
        return open;
    }

    /**
     * Returns where the current of the insulated pole can get to from any source by any edge but ground: {@link #fed}
     * with nothing left out. Found once.
     */
    public Reach live() {
        return known("live", () -> fed(supply -> true, edge -> true));
    }

    /** Returns what is connected with {@link #grounds} by any edge. Found once. */
    public Reach grounded() {
        return known("ground", () -> from(grounds, edge -> true));
    }

    /** Returns what is connected with {@link #open} cavities by any edge. Found once. */
    public Reach undescribed() {
        return known("open", () -> from(open, edge -> true));
    }

    private Reach known(String what, Supplier<Reach> finder) {
        synchronized (known) {
            Reach reach = known.get(what);
            if (reach == null) {
                reach = finder.get();
                known.put(what, reach);
            }
            return reach;
        }
    }

    /** Returns where the current of the insulated pole can get to from the sources that pass a test. */
    public Reach fed(Predicate<Supply> wanted, Predicate<Edge> passes) {
        return Reach.from(this, live(wanted), edge -> !edge.isGround() && passes.test(edge));
    }

    private Map<Point, Condition> live(Predicate<Supply> wanted) {
        Map<Point, Condition> live = new LinkedHashMap<>();
        for (Supply supply : supplies) {
            if (wanted.test(supply)) {
                supply.live().forEach(pin -> live.merge(pin, supply.when(), Condition::or));
            }
        }
        return live;
    }

    /**
     * Returns in which of some vehicles a source can feed a point, by edges that pass a test. The same as to ask
     * {@link #fed} about the point, but the effort is that of what is connected with it in these vehicles, and ends
     * with the source of the last one.
     */
    public Condition feeds(Point point, Condition within, Predicate<Supply> wanted, Predicate<Edge> passes) {
        Feeding feeding = new Feeding(live(wanted), within);
        Reach.from(this, Map.of(point, within), edge -> !edge.isGround() && passes.test(edge), feeding::enough);
        return feeding.feeds;
    }

    /** Until a source is found for each vehicle. */
    private static final class Feeding {
        private final Map<Point, Condition> live;
        private final Condition within;
        private Condition feeds;

        Feeding(Map<Point, Condition> live, Condition within) {
            this.live = live;
            this.within = within;
            this.feeds = within.vehicles().none();
        }

        boolean enough(Point point, Condition reached) {
            Condition there = live.get(point);
            if (there != null) {
                feeds = feeds.or(reached.and(there));
            }
            return feeds.equals(within);
        }
    }

    /** Returns what is connected with some points by edges that pass a test. */
    public Reach from(Map<Point, Condition> starts, Predicate<Edge> passes) {
        return Reach.from(this, starts, passes);
    }
}
