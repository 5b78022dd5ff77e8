// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.diagram.Diagram;
import org.loomwright.sheets.diagram.DiagramLayout;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Circle;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.document.WireInk;
import org.loomwright.sheets.page.Typeface;

/**
 * The circuit diagrams: one for each circuit of a harness, from its feed at the left to its end at the right, with the
 * colours of the wires drawn and written. Where vehicles differ, each wire says for which of them it is.
 */
final class CircuitSheet {

    private static final double POINTS = 8.5;
    private static final double LINE = 3.7;
    private static final double BAR = 9;
    private static final double SPLICE = 5;
    /** Characters in a line of a label, and where that makes a diagram too high for a page. */
    private static final int SHORT = 25;
    private static final int LONG = 46;
    /** About the room on a sheet of A4 in mm. */
    private static final double PAGE_WIDTH = 262;
    private static final double PAGE_HEIGHT = 142;

    private final LaidHarness harness;
    private final Typeface face;
    private final DiagramLayout layout = new DiagramLayout();

    private CircuitSheet(LaidHarness harness, Typeface face) {
        this.harness = harness;
        this.face = face;
    }

    static Document of(LaidHarness harness, Typeface face) {
        CircuitSheet sheet = new CircuitSheet(harness, face);
        Map<String, List<Piece>> circuits = new TreeMap<>(new NaturalOrder());
        harness.pieces().forEach(each -> circuits.computeIfAbsent(each.circuit(), any -> new ArrayList<>()).add(each));
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Words("Read from the left, the feed, to the right. Where a line has several labels,"
                + " each is the wire of other vehicles: no vehicle has two of them."));
        circuits.forEach((circuit, pieces) -> {
            blocks.add(new Block.Heading("Circuit " + circuit + "  " + pieces.getFirst().function()));
            blocks.add(new Block.Picture(sheet.drawing(pieces), ""));
        });
        return new Document(harness.name() + "-circuit-diagrams", "Circuit diagrams",
                harness.title() + " (" + harness.name() + ")", true, blocks, List.of());
    }

    /** A box with its lines of text. */
    private record Thing(Node node, List<String> lines) {
    }

    /** A label with its lines. */
    private record Label(String colour, List<String> lines) {

        double height() {
            return lines.size() * LINE + 3.6;
        }
    }

    /** Wires between the same two ends of which no vehicle has two: one line with a label for each. */
    private record Line(PieceEnd from, PieceEnd to, List<Piece> pieces) {

        boolean takes(Piece piece, PieceEnd start, PieceEnd end) {
            return from.node().equals(start.node()) && to.node().equals(end.node())
                    && pieces.stream().allMatch(each -> each.when().excludes(piece.when()));
        }
    }

    /** With the longer lines only where that leaves the type larger on the page. */
    private Drawing drawing(List<Piece> pieces) {
        Drawing usual = drawing(pieces, SHORT);
        if (scale(usual) >= 1) {
            return usual;
        }
        Drawing flat = drawing(pieces, LONG);
        return scale(flat) > scale(usual) ? flat : usual;
    }

    private static double scale(Drawing drawing) {
        return Math.min(PAGE_WIDTH / drawing.width(), PAGE_HEIGHT / drawing.height());
    }

    private Drawing drawing(List<Piece> pieces, int length) {
        Map<String, Integer> index = new LinkedHashMap<>();
        List<Thing> things = new ArrayList<>();
        List<Diagram.Edge> edges = new ArrayList<>();
        List<List<Label>> labels = new ArrayList<>();
        for (Line line : lines(pieces)) {
            List<Label> all = line.pieces().stream().map(each -> label(each, length)).toList();
            double width = all.stream().flatMap(each -> each.lines().stream())
                    .mapToDouble(each -> face.width(each, POINTS, false)).max().orElse(0);
            edges.add(new Diagram.Edge(thing(line.from(), index, things), line.from().node().pin(),
                    thing(line.to(), index, things), line.to().node().pin(), Math.max(width, BAR) + 2,
                    all.stream().mapToDouble(Label::height).sum()));
            labels.add(all);
        }
        List<Diagram.Node> nodes = things.stream().map(this::size).toList();
        return marks(layout.lay(nodes, edges), things, labels);
    }

    private List<Line> lines(List<Piece> pieces) {
        List<Line> lines = new ArrayList<>();
        for (Piece piece : pieces) {
            boolean turned = rank(piece.from().node()) > rank(piece.to().node());
            PieceEnd from = turned ? piece.to() : piece.from();
            PieceEnd to = turned ? piece.from() : piece.to();
            lines.stream().filter(each -> each.takes(piece, from, to)).findFirst().orElseGet(() -> {
                lines.add(new Line(from, to, new ArrayList<>()));
                return lines.getLast();
            }).pieces().add(piece);
        }
        return lines;
    }

    private Label label(Piece piece, int length) {
        List<String> lines = new ArrayList<>(List.of(face.printable(piece.wire() + " " + piece.colour() + " "
                + piece.written())));
        String vehicles = harness.words(piece.when());
        if (!vehicles.equals("all")) {
            lines.addAll(folded(face.printable(vehicles), length));
        }
        return new Label(piece.colour(), lines);
    }

    /** Sources first, grounds last: the order in which a diagram is read. */
    private int rank(Node node) {
        return switch (node.kind()) {
            case STUD -> 3;
            case SPLICE -> 1;
            case PIN -> harness.view().devices().containsKey(node.element()) ? 1 : 0;
            default -> 1;
        };
    }

    private int thing(PieceEnd end, Map<String, Integer> index, List<Thing> things) {
        String key = end.node().label();
        return index.computeIfAbsent(key, any -> {
            List<String> lines = new ArrayList<>();
            if (end.node().kind() == Node.Kind.SPLICE) {
                lines.add(end.node().element());
            } else {
                lines.add(end.label().isEmpty() ? "nowhere" : end.label());
                lines.addAll(folded(face.printable(end.title()), SHORT));
                mates(end.node()).ifPresent(lines::add);
            }
            things.add(new Thing(end.node(), lines.stream().map(face::printable).filter(each -> !each.isBlank())
                    .toList()));
            return things.size() - 1;
        });
    }

    private Optional<String> mates(Node node) {
        ConnectorView connector = node.kind() == Node.Kind.CAVITY ? harness.view().connectors().get(node.element())
                : null;
        if (connector == null) {
            return Optional.empty();
        }
        Set<String> mates = new LinkedHashSet<>();
        connector.mates().stream().filter(each -> !each.when().excludes(harness.vehicles()))
                .forEach(each -> mates.add(each.value().element()));
        return mates.isEmpty() ? Optional.empty() : Optional.of("> " + String.join(", ", mates));
    }

    /** Words in lines of some {@code length} characters. */
    private static List<String> folded(String text, int length) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" +")) {
            if (!line.isEmpty() && line.length() + word.length() > length) {
                lines.add(line);
                line = word;
            } else {
                line = line.isEmpty() ? word : line + " " + word;
            }
        }
        if (!line.isEmpty()) {
            lines.add(line);
        }
        return lines;
    }

    private Diagram.Node size(Thing thing) {
        double width = 0;
        for (int i = 0; i < thing.lines().size(); i++) {
            width = Math.max(width, face.width(thing.lines().get(i), POINTS, i == 0));
        }
        return thing.node().kind() == Node.Kind.SPLICE ? new Diagram.Node(thing.lines().getFirst(),
                Math.max(SPLICE, width + 2), SPLICE + 1)
                : new Diagram.Node(thing.lines().getFirst(), width + 4, thing.lines().size() * LINE + 3);
    }

    private Drawing marks(Diagram diagram, List<Thing> things, List<List<Label>> labels) {
        List<Mark> marks = new ArrayList<>();
        for (Diagram.Wire wire : diagram.wires()) {
            marks.add(new Stroke(wire.points(), 0.45, Ink.BLACK, 0));
        }
        for (int i = 0; i < labels.size(); i++) {
            Point at = diagram.wires().get(i).label();
            double y = at.y();
            for (Label label : labels.get(i)) {
                marks.addAll(WireInk.bar(label.colour(), at.x(), y, BAR, 2.2));
                for (int line = 0; line < label.lines().size(); line++) {
                    marks.add(new Text(new Point(at.x(), y + 2.6 + (line + 0.8) * LINE), POINTS, false,
                            label.lines().get(line)));
                }
                y += label.height();
            }
        }
        for (int i = 0; i < things.size(); i++) {
            box(diagram.boxes().get(i), things.get(i), marks);
        }
        return new Drawing(Math.max(40, diagram.width()), Math.max(12, diagram.height()), marks);
    }

    private static void box(Diagram.Box box, Thing thing, List<Mark> marks) {
        boolean splice = thing.node().kind() == Node.Kind.SPLICE;
        marks.add(Fill.box(box.x(), box.y(), box.width(), box.height(), Ink.WHITE));
        marks.add(Stroke.frame(box.x(), box.y(), box.width(), box.height(), splice ? 0.8 : 0.4, Ink.BLACK));
        if (thing.node().kind() == Node.Kind.STUD) {
            marks.add(new Circle(new Point(box.x() + box.width(), box.y() + box.height() / 2), 1.3, 0.6, true,
                    Ink.BLACK));
        }
        for (int line = 0; line < thing.lines().size(); line++) {
            marks.add(new Text(new Point(box.x() + (splice ? 1 : 2), box.y() + (splice ? 0.6 : 1.4)
                    + (line + 0.8) * LINE), POINTS, line == 0, thing.lines().get(line)));
        }
    }
}
