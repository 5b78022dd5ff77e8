// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/** Builds the network of one fitment. One object for each. */
final class ConnectionsBuilder {

    /** A pin of this name is the case of the part, which a device {@code on} a ground node is bolted to. */
    private static final String CASE = "case";

    private final Fitment fitment;
    private final Condition none;
    private final List<Edge> edges = new ArrayList<>();
    private final Map<Point, List<Edge>> edgesAt = new LinkedHashMap<>();
    private final Map<Point, Point> points = new HashMap<>();
    private final List<Load> loads = new ArrayList<>();
    private final List<Supply> supplies = new ArrayList<>();
    private final Map<Point, Condition> grounds = new LinkedHashMap<>();
    private final Map<String, Condition> mated = new LinkedHashMap<>();
    private final Map<String, Set<String>> used = new LinkedHashMap<>();

    ConnectionsBuilder(Fitment fitment) {
        this.fitment = fitment;
        this.none = fitment.platform().vehicles().none();
    }

    Connections build() {
        platform();
        fitment.platform().devices().values()
                .forEach(device -> device(device, device.when().and(fitment.domain()), false));
        fitment.fitted().values().forEach(each -> wires(each.view(), each.when()));
        for (Fitment.Fitted each : fitment.fitted().values()) {
            boolean ours = each.view().wiring().isHarness();
            each.view().devices().values().forEach(device -> device(device, device.when().and(each.when()), ours));
            each.view().studs().values().forEach(stud -> stud(stud, stud.when().and(each.when())));
            each.view().connectors().values().forEach(connector -> housing(connector, each));
        }
        fitment.fitted().values().forEach(each -> each.view().connectors().values()
                .forEach(connector -> mates(connector, connector.when().and(each.when()))));
        return new Connections(fitment, edges, edgesAt, loads, supplies, grounds, open());
    }

    private void join(Point a, Point b, Condition when, Protection protection, Link link) {
        Condition there = when.and(fitment.domain());
        if (there.isNever() || a.equals(b)) {
            return;
        }
        Edge edge = new Edge(edges.size(), one(a), one(b), there, protection, link);
        edges.add(edge);
        edgesAt.computeIfAbsent(edge.a(), key -> new ArrayList<>()).add(edge);
        edgesAt.computeIfAbsent(edge.b(), key -> new ArrayList<>()).add(edge);
    }

    /** The one object for all equal points, so that they are equal at first sight. */
    private Point one(Point point) {
        Point before = points.putIfAbsent(point, point);
        return before == null ? point : before;
    }

    private void platform() {
        String name = fitment.platform().name();
        Platform platform = fitment.platform().platform();
        for (Platform.GroundNode ground : platform.grounds()) {
            if (!ground.none()) {
                grounds.put(new Point.Ground(name, ground.name().text()), fitment.domain());
            }
        }
        for (Platform.Strap strap : platform.straps()) {
            join(new Point.Ground(name, strap.from().text()), new Point.Ground(name, strap.to().text()),
                    fitment.platform().vehicles().resolve(strap.when()).condition(), Protection.NONE,
                    new Link.Strapped(strap));
        }
    }

    /** The ground node of that name, if it conducts. */
    private Optional<Point> ground(Optional<Ref> ref) {
        return ref.map(each -> (Point) new Point.Ground(fitment.platform().name(), each.text()))
                .filter(grounds::containsKey);
    }

    /** A ground node that nobody has declared; that is reported as such, and what hangs on it is taken for grounded. */
    private boolean isMisspelt(Optional<Ref> ref) {
        return ref.filter(each -> fitment.platform().platform().grounds().stream()
                .noneMatch(ground -> ground.name().text().equals(each.text()))).isPresent();
    }

    private void stud(WiringView.StudView stud, Condition when) {
        Point point = new Point.Spot(stud.node());
        Optional<Point> ground = ground(stud.stud().ground());
        ground.ifPresent(node -> join(point, node, when, Protection.NONE, new Link.Bolted()));
        if (ground.isPresent() || stud.stud().ground().isEmpty() || isMisspelt(stud.stud().ground())) {
            grounds.merge(point, when.and(fitment.domain()), Condition::or);
        }
    }

    private void device(DeviceView device, Condition when, boolean ours) {
        Optional<Point> ground = ground(device.device().grounded());
        for (Case<Part> each : device.parts()) {
            Part part = each.value();
            Condition there = each.when().and(when);
            Link.Holder holder = new Link.Holder(device.owner(), device.device().name(), ours, there);
            inside(holder, part, pin -> new Point.Spot(device.pin(pin)));
            List<Point> pins = part.pins().stream()
                    .map(pin -> (Point) new Point.Spot(device.pin(pin.name().text()))).toList();
            if (ground.isPresent()) {
                bolt(device, part, pins, ground.get(), there);
            }
            Optional<String> insulated = part.word(Part.WordKind.POLARITY).filter(part::hasPin);
            if (PartFacts.isLoad(part)) {
                List<Point> working = PartFacts.loadPins(part).stream().filter(pin -> !pin.equals(CASE))
                        .map(pin -> (Point) new Point.Spot(device.pin(pin))).toList();
                loads.add(new Load(device, part, there, working, insulated.map(pin -> new Point.Spot(device.pin(pin))),
                        ground.isPresent() || isMisspelt(device.device().grounded())));
            } else if (part.kind() == Part.Kind.SOURCE && !pins.isEmpty()) {
                Point live = insulated.map(pin -> (Point) new Point.Spot(device.pin(pin))).orElse(pins.getFirst());
                List<Point> returns = pins.stream().filter(pin -> !pin.equals(live)).toList();
                supplies.add(new Supply(device, part, there, List.of(live), returns));
                returns.forEach(pin -> grounds.merge(pin, there.and(fitment.domain()), Condition::or));
            }
        }
    }

    /** The case of a device on a ground node: its pin {@code case}, or the one pin of a switch. */
    private void bolt(DeviceView device, Part part, List<Point> pins, Point ground, Condition when) {
        if (part.hasPin(CASE)) {
            join(new Point.Spot(device.pin(CASE)), ground, when, Protection.NONE, new Link.Bolted());
        } else if (part.kind() == Part.Kind.SWITCH && pins.size() == 1) {
            join(pins.getFirst(), ground, when, Protection.NONE, new Link.Bolted());
        }
    }

    private void housing(ConnectorView connector, Fitment.Fitted fitted) {
        for (Case<Part> each : connector.housings()) {
            Link.Holder holder = new Link.Holder(connector.owner(), connector.connector().name(),
                    fitted.view().wiring().isHarness(), each.when().and(fitted.when()));
            inside(holder, each.value(), pin -> new Point.Spot(connector.cavity(pin)));
        }
    }

    private void inside(Link.Holder holder, Part part, java.util.function.Function<String, Point> point) {
        for (Part.Join join : part.joins()) {
            if (PartFacts.conducts(part, join)) {
                Condition there = holder.when()
                        .and(fitment.platform().vehicles().resolve(join.when()).condition());
                join(point.apply(join.from().text()), point.apply(join.to().text()), there,
                        PartFacts.protection(part, Optional.of(join)),
                        new Link.Inside(holder, part, Optional.of(join)));
            }
        }
        if (PartFacts.inSeries(part)) {
            join(point.apply(part.pins().getFirst().name().text()), point.apply(part.pins().getLast().name().text()),
                    holder.when(), PartFacts.protection(part, Optional.empty()),
                    new Link.Inside(holder, part, Optional.empty()));
        }
    }

    private void wires(WiringView view, Condition fitted) {
        for (WireView wire : view.wires()) {
            List<WireEnd> ends = WireEnd.there(view, wire);
            ends.forEach(end -> used.computeIfAbsent(key(end.node()), key -> new LinkedHashSet<>())
                    .add(spot(end.node()).pin()));
            for (WireEnd from : ends.stream().filter(WireEnd::start).toList()) {
                for (WireEnd to : ends.stream().filter(end -> !end.start()).toList()) {
                    wire(wire, from, to, from.when().and(to.when()).and(wire.when()).and(fitted));
                }
            }
        }
    }

    private void wire(WireView wire, WireEnd from, WireEnd to, Condition when) {
        if (from.node().kind() == Node.Kind.NOWHERE || to.node().kind() == Node.Kind.NOWHERE) {
            return;
        }
        Point a = new Point.Spot(spot(from.node()));
        Point b = new Point.Spot(spot(to.node()));
        Condition rest = when;
        for (Case<Part> cable : wire.cables()) {
            Protection protection = cable.value().kind() == Part.Kind.FUSIBLE_LINK ? Protection.LINK : Protection.NONE;
            join(a, b, rest.and(cable.when()), protection,
                    new Link.OfWire(wire, from, to, Optional.of(cable.value())));
            rest = rest.minus(cable.when());
        }
        join(a, b, rest, Protection.NONE, new Link.OfWire(wire, from, to, Optional.empty()));
    }

    /** A splice and a stud have no pins. */
    private static Node spot(Node node) {
        return switch (node.kind()) {
            case SPLICE, STUD -> new Node(node.kind(), node.owner(), node.element(), "");
            case CAVITY, PIN, NOWHERE -> node;
        };
    }

    private static String key(Node node) {
        return node.owner() + ":" + node.element();
    }

    private void mates(ConnectorView connector, Condition when) {
        for (Case<ConnectorView.Mate> each : connector.mates()) {
            Condition both = each.when().and(when);
            ConnectorView.Mate mate = each.value();
            if (mate.device()) {
                deviceOf(mate).ifPresent(device -> plug(connector, device, both.and(device.when())));
            } else {
                Fitment.Fitted other = fitment.fitted().get(mate.owner());
                ConnectorView view = other == null ? null : other.view().connectors().get(mate.element());
                if (view != null) {
                    plug(connector, view, both.and(view.when()).and(other.when()));
                }
            }
        }
    }

    private Optional<DeviceView> deviceOf(ConnectorView.Mate mate) {
        Fitment.Fitted owner = fitment.fitted().get(mate.owner());
        DeviceView inLine = owner == null ? null : owner.view().devices().get(mate.element());
        return Optional.ofNullable(inLine)
                .or(() -> Optional.ofNullable(fitment.platform().devices().get(mate.element())));
    }

    private void plug(ConnectorView connector, DeviceView device, Condition when) {
        Set<String> pins = new LinkedHashSet<>(cavities(connector));
        device.parts().forEach(part -> part.value().pins().forEach(pin -> pins.add(pin.name().text())));
        CavityMap map = CavityMap.of(connector, Optional.empty());
        for (String cavity : pins) {
            map.meets(cavity).forEach((pin, mapped) -> join(new Point.Spot(connector.cavity(cavity)),
                    new Point.Spot(device.pin(pin)), when.and(mapped), Protection.NONE, new Link.Mated()));
        }
        mated.merge(connector.owner() + ":" + connector.name(), when, Condition::or);
    }

    private void plug(ConnectorView connector, ConnectorView other, Condition when) {
        Set<String> cavities = new LinkedHashSet<>(cavities(connector));
        cavities.addAll(cavities(other));
        CavityMap map = CavityMap.of(connector, Optional.of(other));
        for (String cavity : cavities) {
            map.meets(cavity).forEach((pin, mapped) -> join(new Point.Spot(connector.cavity(cavity)),
                    new Point.Spot(other.cavity(pin)), when.and(mapped), Protection.NONE, new Link.Mated()));
        }
        mated.merge(connector.owner() + ":" + connector.name(), when, Condition::or);
        mated.merge(other.owner() + ":" + other.name(), when, Condition::or);
    }

    private Set<String> cavities(ConnectorView connector) {
        Set<String> cavities = new LinkedHashSet<>();
        connector.housings().forEach(each -> each.value().pins().forEach(pin -> cavities.add(pin.name().text())));
        cavities.addAll(used.getOrDefault(connector.owner() + ":" + connector.name(), Set.of()));
        return cavities;
    }

    private Map<Point, Condition> open() {
        Map<Point, Condition> open = new LinkedHashMap<>();
        for (Fitment.Fitted each : fitment.fitted().values()) {
            for (ConnectorView connector : each.view().connectors().values()) {
                Condition free = connector.when().and(each.when()).and(fitment.domain())
                        .minus(mated.getOrDefault(connector.owner() + ":" + connector.name(), none));
                if (!free.isNever()) {
                    used.getOrDefault(connector.owner() + ":" + connector.name(), Set.of())
                            .forEach(cavity -> open.put(new Point.Spot(connector.cavity(cavity)), free));
                }
            }
        }
        return open;
    }
}
