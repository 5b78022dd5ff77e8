// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Supply;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Shapes;

/**
 * The one account of the runs that may stand without a fuse, as far as part kinds and types tell them: what feeds the
 * cranking motor ({@code type cranking} or {@code starter}) or is the ignition primary ({@code type ignitionCoil}), see
 * {@link SoleFeed}; the resistor cable; the generator's own wires ({@code type generator}); and the battery's lead to
 * the first protective device. The alternator's end counts as self-limited ({@code type alternator}).
 */
final class UnfusedRuns {

    /** Longest unprotected lead from the battery to the first device, after 33 CFR 183.455(b). */
    static final Length OPEN_RUN = Length.ofMetres(7 * 0.0254);
    /** The same when it is enclosed all the way. */
    static final Length ENCLOSED_RUN = Length.ofMetres(40 * 0.0254);

    /**
     * What is known of an unfused run.
     *
     * @param when    the vehicles
     * @param stands  true when it may stand, false when its permission hangs on something unknown
     * @param reason  why
     */
    record Run(Condition when, boolean stands, String reason) {
    }

    private final Connections connections;
    private final Shapes shapes;
    private final OpenFeeds feeds;

    UnfusedRuns(OpenFeeds feeds, Shapes shapes) {
        this.connections = feeds.connections();
        this.shapes = shapes;
        this.feeds = feeds;
    }

    /** Whether a source limits its own current, so that a short circuit at its end does not need a fuse there. */
    static boolean selfLimited(Supply supply) {
        String type = supply.type().toLowerCase(Locale.ROOT);
        return type.equals("alternator") || type.equals("generator");
    }

    /** What allows a wire to stand without a fuse, for some vehicles. */
    List<Run> of(Edge edge, Link.OfWire wire, Condition when) {
        List<Run> runs = new ArrayList<>();
        if (wire.cable().filter(part -> part.kind() == Part.Kind.RESISTOR_CABLE).isPresent()) {
            return List.of(new Run(when, true, "it is a resistor cable of the ignition"));
        }
        runs.add(new Run(feeds.cranking().of(edge).and(when), true, "it feeds the cranking motor"));
        runs.add(new Run(feeds.ignition().of(edge).and(when), true, "it is the ignition primary"));
        for (Supply supply : connections.supplies()) {
            if (supply.type().equalsIgnoreCase("generator")) {
                List<Point> pins = new ArrayList<>(supply.live());
                pins.addAll(supply.returns());
                touching(edge, pins, supply.when()).ifPresent(there -> runs.add(new Run(there.and(when), true,
                        "it belongs to the generator's armature or field")));
            } else if (!selfLimited(supply)) {
                touching(edge, supply.live(), supply.when())
                        .ifPresent(there -> runs.addAll(battery(edge, wire, there.and(when))));
            }
        }
        return runs.stream().filter(run -> !run.when().isNever()).toList();
    }

    /** In which vehicles the edge ends at one of some pins, or in a cavity that is plugged onto one. */
    private Optional<Condition> touching(Edge edge, List<Point> pins, Condition within) {
        Condition there = within.vehicles().none();
        for (Point point : List.of(edge.a(), edge.b())) {
            if (pins.contains(point)) {
                there = there.or(within);
            }
            for (Edge mate : connections.edgesAt(point)) {
                if (mate.link() instanceof Link.Mated && pins.contains(mate.other(point))) {
                    there = there.or(within.and(mate.when()));
                }
            }
        }
        return there.isNever() ? Optional.empty() : Optional.of(there);
    }

    private List<Run> battery(Edge edge, Link.OfWire wire, Condition when) {
        Condition first = when.vehicles().none();
        for (Point point : List.of(edge.a(), edge.b())) {
            first = first.or(protectedAt(point));
            for (Edge mate : connections.edgesAt(point)) {
                if (mate.link() instanceof Link.Mated) {
                    first = first.or(protectedAt(mate.other(point)).and(mate.when()));
                }
            }
        }
        List<Run> runs = new ArrayList<>();
        Condition rest = when.and(first);
        for (Case<Optional<Length>> length : lengths(wire.wire())) {
            Condition both = rest.and(length.when());
            rest = rest.minus(length.when());
            if (length.value().isEmpty()) {
                runs.add(new Run(both, false, "its length is not known, and a battery lead may run 7 in to its first"
                        + " protective device, 40 in when it is enclosed"));
            } else if (length.value().get().compareTo(OPEN_RUN) <= 0) {
                runs.add(new Run(both, true, "it is the battery's lead to its first protective device and not longer"
                        + " than 7 in (33 CFR 183.455(b))"));
            } else if (length.value().get().compareTo(ENCLOSED_RUN) <= 0) {
                runs.add(new Run(both, false, "a battery lead longer than 7 in may run to its first protective device"
                        + " only when it is enclosed all the way"));
            }
        }
        if (!rest.isNever()) {
            runs.add(new Run(rest, false, "its length is not known, and a battery lead may run 7 in to its first"
                    + " protective device, 40 in when it is enclosed"));
        }
        return runs;
    }

    private Condition protectedAt(Point point) {
        Condition there = connections.fitment().platform().vehicles().none();
        for (Edge edge : connections.edgesAt(point)) {
            if (edge.protection() != Protection.NONE) {
                there = there.or(edge.when());
            }
        }
        return there;
    }

    private List<Case<Optional<Length>>> lengths(WireView wire) {
        List<Case<Optional<Length>>> lengths = new ArrayList<>();
        for (Case<Measure> stated : wire.lengths()) {
            lengths.add(new Case<>(stated.value().length(), stated.when(), stated.span()));
        }
        WiringView view = connections.fitment().fitted().get(wire.owner()).view();
        RoutedWire routed = shapes.of(view).route(wire);
        if (routed != null) {
            routed.routes().forEach(run -> lengths.add(
                    new Case<>(run.route().length().length(), run.when(), wire.wire().span())));
        }
        return lengths;
    }
}
