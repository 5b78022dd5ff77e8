// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.flow;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.Point.Spot;
import org.loomwright.electric.network.Junction;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.sheets.diagram.Diagram;
import org.loomwright.sheets.diagram.DiagramLayout;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.document.WireInk;
import org.loomwright.sheets.page.Typeface;

/**
 * A circuit of one vehicle in one mode for a screen, from its source at the left to ground at the right: the wires with
 * their currents and losses, the spots between them with their voltages, and what feeds and loads them. Wires without
 * current are dashed. Immutable.
 *
 * @param drawing the picture, in mm
 * @param paths   where each thing lies, by its name; in the order in which current reaches it
 * @param items   what each thing is, by its name
 */
public record CircuitPicture(Drawing drawing, Map<String, List<Point>> paths, Map<String, Item> items) {

    private static final double POINTS = 8.5;
    private static final double LINE = 3.9;
    private static final double BAR = 9;
    /** Letters of a screen may be wider than those that are measured. */
    private static final double ROOM = 1.2;
    private static final double DASH = 1.5;
    /** About that of a view below an editor. */
    private static final double ASPECT = 3;
    private static final int LONGEST = 34;

    public CircuitPicture {
        paths = Collections.unmodifiableMap(new LinkedHashMap<>(paths));
        items = Map.copyOf(items);
    }

    /**
     * Something that can be chosen.
     *
     * @param words all that the picture tells of it, and more, in one line
     * @param wire  whether it is a wire
     * @param amps  the current in A, without its direction; 0 for a spot
     * @param place where it is written; {@link Span#NONE} where it is in no file
     */
    public record Item(String words, boolean wire, double amps, Span place) {
    }

    /** What is about to be drawn as a box. */
    private record Box(String name, Item item, List<String> lines, boolean spot, boolean frame) {
    }

    /** What is about to be drawn as a line; without name it joins a box to a spot. */
    private record Line(int from, int to, String name, Item item, String colour, List<String> lines, boolean flows) {
    }

    /** Draws a circuit; empty lists when none of its wires is in the vehicle. */
    public static CircuitPicture of(OperatingPoint point, String circuit) {
        return new Draft(point, CircuitPart.of(point, circuit)).draw();
    }

    /** A voltage for people. */
    public static String volts(double value) {
        return Figure.of(value, 2) + " V";
    }

    /** A current for people. */
    public static String amps(double value) {
        double size = Math.abs(value);
        return size < 1 ? Figure.of(size * 1000, 1) + " mA" : Figure.of(size, 2) + " A";
    }

    /** Collects boxes and lines, has them laid out, and draws them. */
    private static final class Draft {

        private final OperatingPoint point;
        private final CircuitPart part;
        private final Typeface face = new Typeface();
        private final List<Box> boxes = new ArrayList<>();
        private final List<Line> lines = new ArrayList<>();
        private final Map<Integer, Integer> spots = new LinkedHashMap<>();
        private final TreeSet<String> names = new TreeSet<>();

        Draft(OperatingPoint point, CircuitPart part) {
            this.point = point;
            this.part = part;
        }

        CircuitPicture draw() {
            part.pieces().stream().filter(CircuitPart::isSource).forEach(this::source);
            part.pieces().stream().filter(each -> !CircuitPart.isSource(each)).forEach(each -> {
                if (CircuitPart.isLine(each)) {
                    wire(each);
                } else {
                    device(each);
                }
            });
            if (boxes.isEmpty()) {
                return new CircuitPicture(new Drawing(40, 12, List.of()), Map.of(), Map.of());
            }
            List<Diagram.Node> nodes = boxes.stream().map(each -> new Diagram.Node(each.name(), width(each.lines()) + 4,
                    each.lines().size() * LINE + (each.spot() ? 1.5 : 3))).toList();
            List<Diagram.Edge> edges = lines.stream().map(each -> new Diagram.Edge(each.from(), "", each.to(), "",
                    each.lines().isEmpty() ? 0 : Math.max(width(each.lines()), BAR) + 2,
                    each.lines().isEmpty() ? 0 : each.lines().size() * LINE + 3.6)).toList();
            return marks(new DiagramLayout().lay(nodes, edges, OptionalDouble.of(ASPECT)));
        }

        private double width(List<String> texts) {
            return ROOM * texts.stream().mapToDouble(each -> face.width(each, POINTS, true)).max().orElse(0);
        }

        private void source(Piece piece) {
            double given = -point.amps(piece);
            String state = given >= -CircuitPart.NOTHING ? "gives " + amps(given) : "takes " + amps(given);
            String pole = volts(point.volts(piece));
            int box = box(piece, List.of(state + " at " + pole));
            join(box, spot(part.start(piece)), true);
        }

        private void device(Piece piece) {
            List<String> figures = new ArrayList<>();
            if (!point.conducts(piece)) {
                figures.add(piece.role() == Role.LOAD || piece.role() == Role.COIL ? "not fed" : "open");
            } else if (!part.flows(piece)) {
                figures.add("no current");
            } else if (piece.role() == Role.LOAD || piece.role() == Role.COIL) {
                double share = point.share(piece);
                figures.add(amps(point.amps(piece)) + " at " + volts(Math.abs(point.volts(piece))));
                if (share != 0) {
                    figures.add(Figure.of(100 * Math.abs(share), 0) + " % of its design voltage");
                }
            } else {
                figures.add(amps(point.amps(piece)) + ", loses " + loss(piece));
                if (piece.role().protects() && piece.rating() > 0) {
                    figures.add(Figure.of(100 * Math.abs(point.amps(piece)) / piece.rating(), 0) + " % of "
                            + Figure.of(piece.rating()) + " A");
                }
            }
            int box = box(piece, figures);
            join(spot(part.start(piece)), box, part.flows(piece));
            join(box, spot(part.end(piece)), part.flows(piece));
        }

        private int box(Piece piece, List<String> figures) {
            String label = face.printable(piece.subject().label());
            List<String> all = new ArrayList<>(List.of(shortened(label)));
            all.addAll(figures);
            boxes.add(new Box(unique(label), new Item(label + ": " + String.join(", ", figures), false,
                    Math.abs(point.amps(piece)), piece.subject().place()), all, false, true));
            return boxes.size() - 1;
        }

        private void join(int from, int to, boolean flows) {
            lines.add(new Line(from, to, "", null, "", List.of(), flows));
        }

        private void wire(Piece piece) {
            WireView wire = piece.subject().wire().orElseThrow();
            int from = spot(part.start(piece));
            int to = spot(part.end(piece));
            String colour = of(wire.colours()).map(Object::toString).orElse("");
            String size = of(wire.sizes()).map(each -> each.written()).orElse("");
            String what = face.printable((wire.label() + " " + colour + " " + size).strip());
            boolean flows = part.flows(piece);
            String figures = flows ? amps(point.amps(piece)) + ", loses " + loss(piece) : "no current";
            String words = "wire " + what + " of " + wire.owner() + " from " + boxes.get(from).name() + " to "
                    + boxes.get(to).name() + ": " + figures
                    + (flows ? ", " + Figure.of(point.celsius()[piece.index()], 0) + " C" : "");
            lines.add(new Line(from, to, unique("wire " + wire.label() + " of " + wire.owner()), new Item(words, true,
                    flows ? Math.abs(point.amps(piece)) : 0, wire.wire().span()), colour, List.of(what, figures),
                    flows));
        }

        private String loss(Piece piece) {
            double volts = Math.abs(point.volts(piece));
            return volts < 1 ? Figure.of(volts * 1000, 1) + " mV" : volts(volts);
        }

        private <V> Optional<V> of(List<Case<V>> cases) {
            Condition vehicles = point.vehicles();
            return cases.stream().filter(each -> vehicles.implies(each.when())).map(Case::value).findFirst();
        }

        private int spot(int group) {
            Integer known = spots.get(group);
            if (known != null) {
                return known;
            }
            List<Integer> junctions = part.junctions(group);
            List<String> labels = junctions.stream().map(point.schematic().junctions()::get)
                    .filter(Junction.At.class::isInstance).map(Object::toString).map(face::printable).distinct()
                    .toList();
            boolean ground = junctions.contains(0);
            boolean splice = junctions.stream().map(point.schematic().junctions()::get).anyMatch(Draft::isSplice);
            String label = labels.isEmpty() ? "end of a wire" : labels.stream().limit(3)
                    .collect(Collectors.joining(" = "));
            String volts = ground ? volts(0) : potential(junctions);
            boxes.add(new Box(unique((splice ? "splice " : "") + label), new Item((splice ? "splice " : "")
                    + String.join(" = ", labels) + ": " + volts, false, 0, Span.NONE),
                    List.of(shortened(label), volts), true, splice || ground));
            spots.put(group, boxes.size() - 1);
            return boxes.size() - 1;
        }

        private static boolean isSplice(Junction junction) {
            return junction instanceof Junction.At at && at.point() instanceof Spot spot
                    && spot.node().kind() == Node.Kind.SPLICE;
        }

        private String potential(List<Integer> junctions) {
            double[] known = junctions.stream().mapToDouble(each -> point.potentials()[each])
                    .filter(each -> !Double.isNaN(each)).toArray();
            OptionalDouble most = Arrays.stream(known).max();
            if (most.isEmpty()) {
                return "joined to nothing";
            }
            String high = volts(most.getAsDouble());
            String low = volts(Arrays.stream(known).min().getAsDouble());
            return high.equals(low) ? high : low.replace(" V", "") + " .. " + high;
        }

        private String unique(String name) {
            String free = name;
            for (int i = 2; !names.add(free); i++) {
                free = name + " (" + i + ")";
            }
            return free;
        }

        private static String shortened(String text) {
            return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 3) + "...";
        }

        private CircuitPicture marks(Diagram diagram) {
            List<Mark> marks = new ArrayList<>();
            Map<String, List<Point>> paths = new LinkedHashMap<>();
            Map<String, Item> items = new LinkedHashMap<>();
            for (int i = 0; i < lines.size(); i++) {
                Line line = lines.get(i);
                Diagram.Wire laid = diagram.wires().get(i);
                marks.add(new Mark.Stroke(laid.points(), line.name().isEmpty() ? 0.3 : 0.55, Ink.BLACK,
                        line.flows() ? 0 : DASH));
                if (!line.name().isEmpty()) {
                    marks.addAll(label(line, laid.label()));
                    paths.put(line.name(), laid.points());
                    items.put(line.name(), line.item());
                }
            }
            for (int i = 0; i < boxes.size(); i++) {
                Box box = boxes.get(i);
                Diagram.Box at = diagram.boxes().get(i);
                marks.addAll(box(box, at));
                double middle = at.y() + at.height() / 2;
                paths.put(box.name(), List.of(new Point(at.x(), at.y()), new Point(at.x() + at.width(), at.y()),
                        new Point(at.x() + at.width(), at.y() + at.height()), new Point(at.x(), at.y() + at.height()),
                        new Point(at.x(), middle), new Point(at.x() + at.width(), middle)));
                items.put(box.name(), box.item());
            }
            Map<String, List<Point>> sorted = new LinkedHashMap<>();
            order().forEach(each -> sorted.put(each, paths.get(each)));
            return new CircuitPicture(new Drawing(Math.max(40, diagram.width()), Math.max(12, diagram.height()),
                    marks), sorted, items);
        }

        /** The names in the order in which current reaches them. */
        private List<String> order() {
            LinkedHashSet<Integer> reached = new LinkedHashSet<>();
            LinkedHashSet<String> order = new LinkedHashSet<>();
            for (int i = 0; i < boxes.size(); i++) {
                Deque<Integer> next = new ArrayDeque<>(List.of(i));
                while (!next.isEmpty()) {
                    int box = next.remove();
                    if (reached.add(box)) {
                        order.add(boxes.get(box).name());
                        lines.stream().filter(each -> each.from() == box).forEach(each -> {
                            if (!each.name().isEmpty()) {
                                order.add(each.name());
                            }
                            next.add(each.to());
                        });
                    }
                }
            }
            return List.copyOf(order);
        }

        private static List<Mark> label(Line line, Point at) {
            List<Mark> marks = new ArrayList<>(WireInk.bar(line.colour(), at.x(), at.y(), BAR, 2.2));
            for (int i = 0; i < line.lines().size(); i++) {
                marks.add(new Mark.Text(new Point(at.x(), at.y() + 2.6 + (i + 0.8) * LINE), POINTS, i > 0,
                        line.lines().get(i)));
            }
            return marks;
        }

        private static List<Mark> box(Box box, Diagram.Box at) {
            List<Mark> marks = new ArrayList<>();
            marks.add(Mark.Fill.box(at.x(), at.y(), at.width(), at.height(), box.spot() ? Ink.PALE : Ink.WHITE));
            if (box.frame()) {
                marks.add(Mark.Stroke.frame(at.x(), at.y(), at.width(), at.height(), box.spot() ? 0.3 : 0.45,
                        Ink.BLACK));
            }
            for (int i = 0; i < box.lines().size(); i++) {
                marks.add(new Mark.Text(new Point(at.x() + 2, at.y() + (box.spot() ? 0.4 : 1.2) + (i + 0.8) * LINE),
                        POINTS, box.spot() ? i > 0 : i == 0, box.lines().get(i)));
            }
            return marks;
        }
    }
}
