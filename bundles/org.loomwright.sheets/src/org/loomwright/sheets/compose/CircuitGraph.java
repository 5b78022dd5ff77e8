// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Point;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Device;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.sheets.content.CurrentWays;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;

/**
 * What the diagram of a circuit shows: boxes for devices, splices, studs and plugs, each with what is plugged into it,
 * and lines for wires, those of the circuit itself and those around it.
 *
 * @param boxes   in the order in which they are met
 * @param lines   the wires of the circuit first
 * @param omitted how many wires of the car were left out, since it is wired in too many ways
 */
record CircuitGraph(List<Box> boxes, List<Line> lines, int omitted) {

    CircuitGraph {
        boxes = List.copyOf(boxes);
        lines = List.copyOf(lines);
    }

    /** What a box is, which tells how it is drawn. */
    enum Sort { SOURCE, GROUND, SPLICE, OTHER }

    /** A box: its name, and what else it says. */
    record Box(Sort sort, String name, List<String> words) {
    }

    /** A wire as its label says it; empty vehicles for all that matter, and no owners for one of the harness. */
    record Strand(String wire, String colour, String size, String ends, Set<String> owners, String vehicles,
            Condition when) {

        /** Whether its label is the same but for the vehicles and the drawing that it stands in. */
        private boolean isAlike(Strand other) {
            return owners.isEmpty() == other.owners.isEmpty() && wire.equals(other.wire)
                    && colour.equals(other.colour) && size.equals(other.size) && ends.equals(other.ends);
        }

        private Strand with(Strand other) {
            Set<String> both = new LinkedHashSet<>(owners);
            both.addAll(other.owners);
            return new Strand(wire, colour, size, ends, both, vehicles, when.or(other.when));
        }
    }

    /** Wires between two boxes of which no vehicle has two. */
    record Line(int from, int to, boolean own, List<Strand> strands) {
    }

    static CircuitGraph of(Order order, LaidHarness harness, Optional<CurrentWays> ways, List<Piece> pieces) {
        return new Builder(order, harness, ways).build(pieces);
    }

    /** Joins what is plugged together or is one device, and makes lines of what is between. */
    private static final class Builder {
        private final Order order;
        private final LaidHarness harness;
        private final Optional<CurrentWays> ways;
        private final Map<Object, Object> parents = new LinkedHashMap<>();
        private final Map<Object, Integer> index = new LinkedHashMap<>();
        private final Map<Integer, Set<Point>> members = new HashMap<>();
        private final List<Line> lines = new ArrayList<>();
        private final Map<Point, PieceEnd> ends = new HashMap<>();

        Builder(Order order, LaidHarness harness, Optional<CurrentWays> ways) {
            this.order = order;
            this.harness = harness;
            this.ways = ways;
        }

        CircuitGraph build(List<Piece> pieces) {
            Map<Point, Condition> met = new LinkedHashMap<>();
            for (Piece piece : pieces) {
                for (PieceEnd end : piece.ends()) {
                    Point point = point(end);
                    ends.putIfAbsent(point, end);
                    find(key(point));
                    join(point, key(point));
                    if (end.node().kind() != Node.Kind.NOWHERE) {
                        met.merge(point, piece.when(), Condition::or);
                    }
                }
            }
            String circuit = pieces.getFirst().circuit();
            CurrentWays.Around found = ways.map(each -> each.around(met, edge -> inner(edge, circuit)))
                    .orElse(new CurrentWays.Around(List.of(), 0));
            List<CurrentWays.Way> around = found.ways();
            for (CurrentWays.Way way : around) {
                join(way.from(), key(way.from()));
                join(way.to(), key(way.to()));
                if (!way.edge().filter(edge -> edge.isWire() || edge.isGround()).isPresent()) {
                    join(way.from(), way.to());
                }
            }
            joinAlike(around);
            for (Piece piece : pieces) {
                boolean turned = turned(point(piece.from()), point(piece.to()));
                PieceEnd from = turned ? piece.to() : piece.from();
                PieceEnd to = turned ? piece.from() : piece.to();
                line(point(from), point(to), true, new Strand(piece.wire(), piece.colour(), piece.written(),
                        label(from) + " to " + label(to), Set.of(), "", piece.when()));
            }
            around.forEach(this::line);
            List<Box> boxes = new ArrayList<>();
            for (int i = 0; i < members.size(); i++) {
                boxes.add(box(members.get(i)));
            }
            return new CircuitGraph(boxes, lines.stream().map(this::told).toList(), found.omitted());
        }

        /** The line with the vehicles of its wires in words, and the drawings that they stand in. */
        private Line told(Line line) {
            return new Line(line.from(), line.to(), line.own(), line.strands().stream().map(each -> {
                String words = harness.words(each.when());
                return new Strand(each.wire(), each.colour(), each.size(), each.ends() + of(each.owners()),
                        each.owners(), words.equals("all") ? "" : words, each.when());
            }).toList());
        }

        /** Makes one box of what different drawings of the car have alike: a device, a splice of one circuit. */
        private void joinAlike(List<CurrentWays.Way> around) {
            Map<String, Map<String, Point>> alike = new LinkedHashMap<>();
            for (CurrentWays.Way way : around) {
                for (Point point : List.of(way.from(), way.to())) {
                    if (!(point instanceof Point.Spot spot) || ways.orElseThrow().apart().stream()
                            .noneMatch(spot.node().owner()::equals)) {
                        continue;
                    }
                    Node node = spot.node();
                    if (node.kind() == Node.Kind.PIN) {
                        alike.computeIfAbsent(node.element() + " " + device(node).map(each -> each.device().title()),
                                any -> new LinkedHashMap<>()).putIfAbsent(node.owner(), point);
                    } else if (node.kind() == Node.Kind.SPLICE && way.edge().map(Edge::link).orElse(null)
                            instanceof Link.OfWire wire) {
                        alike.computeIfAbsent(node.element() + " " + wire.wire().circuit().title(),
                                any -> new LinkedHashMap<>()).putIfAbsent(node.owner(), point);
                    }
                }
            }
            alike.values().forEach(each -> each.forEach((owner, point) -> each.forEach((other, twin) -> {
                if (when(owner).excludes(when(other))) {
                    join(point, twin);
                }
            })));
        }

        private Condition when(String owner) {
            return view(owner).map(WiringView::when).orElse(harness.vehicles());
        }

        private static String label(PieceEnd end) {
            return end.label().isEmpty() ? "nowhere" : end.label();
        }

        private Point point(PieceEnd end) {
            return ways.map(each -> each.point(end.node())).orElseGet(() -> new Point.Spot(end.node()));
        }

        private boolean inner(Edge edge, String circuit) {
            return edge.link() instanceof Link.OfWire wire && wire.wire().owner().equals(harness.name())
                    && wire.wire().circuit().name().text().equals(circuit);
        }

        /** From the battery to ground; where neither says anything, from a plug to a device. */
        private boolean turned(Point from, Point to) {
            int feed = ways.map(each -> Integer.compare(each.depth(from), each.depth(to))).orElse(0);
            int ground = ways.map(each -> Integer.compare(each.height(to), each.height(from))).orElse(0);
            return feed != 0 ? feed > 0 : ground != 0 ? ground > 0 : rank(from) > rank(to);
        }

        private int rank(Point point) {
            Node node = ((Point.Spot) point).node();
            return switch (node.kind()) {
                case STUD -> 3;
                case PIN -> harness.view().devices().containsKey(node.element()) ? 1 : 0;
                default -> 1;
            };
        }

        /** All pins of a device are one box; a cavity is one by itself. */
        private static Object key(Point point) {
            return point instanceof Point.Spot spot && spot.node().kind() == Node.Kind.PIN
                    ? spot.node().owner() + ":" + spot.node().element() : point;
        }

        private Object find(Object key) {
            Object root = key;
            for (Object up = parents.get(root); up != null; up = parents.get(root)) {
                root = up;
            }
            return root;
        }

        private void join(Object a, Object b) {
            Object first = find(a);
            Object second = find(b);
            if (!first.equals(second)) {
                parents.put(second, first);
            }
        }

        private int at(Point point) {
            Object root = find(point);
            int at = index.computeIfAbsent(root, any -> index.size());
            members.computeIfAbsent(at, any -> new LinkedHashSet<>());
            return at;
        }

        private void line(CurrentWays.Way way) {
            if (way.edge().filter(Edge::isGround).isPresent()) {
                if (way.from() instanceof Point.Spot) {
                    members.get(at(way.from())).addAll(List.of(way.from(), way.to()));
                }
                return;
            }
            if (way.edge().map(Edge::link).orElse(null) instanceof Link.OfWire made) {
                WireView wire = made.wire();
                Condition rest = way.when();
                String ends = way.from() + " to " + way.to();
                for (Case<Colour> colour : wire.colours()) {
                    Condition when = rest.and(colour.when());
                    if (!when.isNever()) {
                        line(way.from(), way.to(), false, strand(wire, colour.value().toString(), ends, when));
                        rest = rest.minus(when);
                    }
                }
                if (!rest.isNever()) {
                    line(way.from(), way.to(), false, strand(wire, "", ends, rest));
                }
            } else {
                members.get(at(way.from())).addAll(List.of(way.from(), way.to()));
            }
        }

        private Strand strand(WireView wire, String colour, String ends, Condition when) {
            String size = wire.sizes().stream().filter(each -> !each.when().excludes(when))
                    .map(each -> each.value().written()).distinct().reduce((a, b) -> a + " or " + b).orElse("");
            return new Strand(wire.label(), colour, size, ends, wire.owner().equals(harness.name()) ? Set.of()
                    : Set.of(wire.owner()), "", when);
        }

        private void line(Point from, Point to, boolean own, Strand strand) {
            int a = at(from);
            int b = at(to);
            members.get(a).add(from);
            members.get(b).add(to);
            List<Strand> strands = lines.stream().filter(each -> each.from() == a && each.to() == b
                    && each.own() == own && each.strands().stream().allMatch(other ->
                    other.when().excludes(strand.when()))).map(Line::strands).findFirst().orElseGet(() -> {
                        lines.add(new Line(a, b, own, new ArrayList<>()));
                        return lines.getLast().strands();
                    });
            for (int i = 0; i < strands.size(); i++) {
                if (strands.get(i).isAlike(strand)) {
                    strands.set(i, strands.get(i).with(strand));
                    return;
                }
            }
            strands.add(strand);
        }

        private Box box(Set<Point> points) {
            Sort sort = points.stream().anyMatch(each -> ways.filter(any -> any.isSource(each)).isPresent())
                    ? Sort.SOURCE : Sort.OTHER;
            Map<String, Set<String>> names = new LinkedHashMap<>();
            Set<String> titles = new LinkedHashSet<>();
            Map<String, Set<String>> plugs = new LinkedHashMap<>();
            for (Point point : points) {
                if (!(point instanceof Point.Spot spot)) {
                    titles.add("on ground " + ((Point.Ground) point).name());
                    sort = Sort.GROUND;
                    continue;
                }
                Node node = spot.node();
                switch (node.kind()) {
                    case SPLICE -> {
                        name(names, node.element(), node);
                        sort = Sort.SPLICE;
                    }
                    case STUD -> {
                        name(names, node.element(), node);
                        titles.add(Optional.ofNullable(ends.get(point)).map(PieceEnd::title).orElseGet(() ->
                                view(node.owner()).map(each -> each.studs().get(node.element()))
                                        .flatMap(each -> each.stud().place())
                                        .map(each -> harness.place(each.text())).orElse("")));
                        view(node.owner()).map(each -> each.studs().get(node.element()))
                                .flatMap(each -> each.stud().ground())
                                .ifPresent(each -> titles.add("on ground " + each.text()));
                        sort = Sort.GROUND;
                    }
                    case PIN -> {
                        name(names, node.element(), node);
                        Device device = device(node).map(DeviceView::device).orElse(null);
                        titles.add(device == null ? "" : device.title());
                        if (device != null && device.grounded().isPresent() && sort == Sort.OTHER) {
                            titles.add("case on ground " + device.grounded().get().text());
                        }
                    }
                    case CAVITY -> name(plugs, node.label(), node);
                    case NOWHERE -> name(names, "nowhere", node);
                }
            }
            List<String> words = new ArrayList<>(titles);
            if (names.isEmpty() && !plugs.isEmpty()) {
                Node node = points.stream().map(each -> ((Point.Spot) each).node()).min(Comparator.comparing(
                        each -> !each.owner().equals(harness.name()))).orElseThrow();
                view(node.owner()).map(each -> each.connectors().get(node.element()))
                        .map(ConnectorView::connector).ifPresent(each -> words.add(each.title()));
            }
            List<String> plugged = new ArrayList<>();
            plugs.forEach((label, owners) -> plugged.add(label + of(owners)));
            plugged.sort(Comparator.comparing(each -> each.contains(" of ")));
            List<String> called = new ArrayList<>();
            names.forEach((label, owners) -> called.add(label + of(owners)));
            String name = called.isEmpty() ? plugged.isEmpty() ? "nowhere" : plugged.removeFirst()
                    : String.join(", ", called);
            if (!plugged.isEmpty()) {
                words.add((called.isEmpty() ? "plugged into " : "plug ") + String.join(", ", plugged));
            }
            words.removeIf(String::isBlank);
            return new Box(sort, name, words);
        }

        private void name(Map<String, Set<String>> names, String label, Node node) {
            Set<String> owners = names.computeIfAbsent(label, any -> new LinkedHashSet<>());
            if (!node.owner().equals(harness.name()) && order.project().wiring(node.owner()).isPresent()) {
                owners.add(node.owner());
            }
        }

        private static String of(Set<String> owners) {
            return owners.isEmpty() ? "" : " of " + String.join(", ", owners);
        }

        private Optional<WiringView> view(String owner) {
            return owner.equals(harness.name()) ? Optional.of(harness.view()) : order.project().wiring(owner);
        }

        private Optional<DeviceView> device(Node node) {
            return Optional.ofNullable(view(node.owner()).map(WiringView::devices).orElse(order.platform().devices())
                    .get(node.element()));
        }
    }
}
