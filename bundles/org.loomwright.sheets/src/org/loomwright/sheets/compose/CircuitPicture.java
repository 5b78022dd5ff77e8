// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.diagram.Diagram;
import org.loomwright.sheets.diagram.DiagramLayout;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.document.WireInk;
import org.loomwright.sheets.page.Typeface;

/**
 * Draws what a circuit is connected to: boxes, and between them wires in their colours, edged dark so that white and
 * yellow show on white. The wires of the circuit are thick, those around it thin.
 */
final class CircuitPicture {

    private static final double POINTS = 8.5;
    private static final double LINE = 3.7;
    private static final double BAR = 9;
    private static final double SYMBOL = 7;
    private static final double PORT = 4;
    /** Thickness of a wire of the circuit and of one around it, and of the dark edge, in mm. */
    private static final double OWN = 1.5;
    private static final double OTHER = 0.9;
    private static final double EDGE = 0.3;

    private final Typeface face;
    private final DiagramLayout layout = new DiagramLayout();

    CircuitPicture(Typeface face) {
        this.face = face;
    }

    /** A label with its lines. */
    private record Label(String colour, boolean bar, boolean bold, List<String> lines) {

        double height() {
            return lines.size() * LINE + 1.4 + (bar ? 2.6 : 0);
        }
    }

    /** The drawing, with lines of text of about so many characters. */
    Drawing of(CircuitGraph graph, int length) {
        int[] from = new int[graph.boxes().size()];
        int[] to = new int[graph.boxes().size()];
        List<Diagram.Edge> edges = new ArrayList<>();
        List<List<Label>> labels = new ArrayList<>();
        for (CircuitGraph.Line line : graph.lines()) {
            boolean alike = oneColour(line);
            List<Label> all = line.strands().stream().map(each -> label(each, line.own(), !alike, length)).toList();
            double width = all.stream().flatMap(each -> each.lines().stream().map(text ->
                    face.width(text, POINTS, each.bold() && text.equals(each.lines().getFirst()))))
                    .mapToDouble(each -> each).max().orElse(0);
            edges.add(new Diagram.Edge(line.from(), "out " + edges.size(), line.to(), "in " + edges.size(),
                    Math.max(width, BAR) + 2, all.stream().mapToDouble(Label::height).sum()));
            labels.add(all);
            from[line.from()]++;
            to[line.to()]++;
        }
        List<List<String>> words = new ArrayList<>();
        List<Diagram.Node> nodes = new ArrayList<>();
        for (int i = 0; i < graph.boxes().size(); i++) {
            CircuitGraph.Box box = graph.boxes().get(i);
            List<String> lines = new ArrayList<>(List.of(face.printable(box.name())));
            box.words().forEach(each -> lines.addAll(folded(face.printable(each), length)));
            words.add(lines);
            double width = face.width(lines.getFirst(), POINTS, true);
            for (String line : lines) {
                width = Math.max(width, face.width(line, POINTS, false));
            }
            nodes.add(new Diagram.Node(box.name(), width + 4 + (symbol(box.sort()) ? SYMBOL : 0),
                    Math.max(lines.size() * LINE + 3, PORT * Math.max(from[i], to[i]) + 2)));
        }
        Diagram diagram = layout.lay(nodes, edges);
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            wire(graph.lines().get(i), diagram.wires().get(i).points(), marks);
        }
        for (int i = 0; i < labels.size(); i++) {
            labels(labels.get(i), diagram.wires().get(i).label(), marks);
        }
        for (int i = 0; i < words.size(); i++) {
            box(diagram.boxes().get(i), graph.boxes().get(i).sort(), words.get(i), marks);
        }
        return new Drawing(Math.max(40, diagram.width()), Math.max(12, diagram.height()), marks);
    }

    private static boolean symbol(CircuitGraph.Sort sort) {
        return sort == CircuitGraph.Sort.GROUND || sort == CircuitGraph.Sort.SOURCE;
    }

    private static boolean oneColour(CircuitGraph.Line line) {
        return line.strands().stream().map(CircuitGraph.Strand::colour).distinct().count() == 1
                && !line.strands().getFirst().colour().isEmpty();
    }

    private Label label(CircuitGraph.Strand strand, boolean own, boolean bar, int length) {
        List<String> lines = new ArrayList<>(folded(face.printable((strand.wire() + " " + strand.colour() + " "
                + strand.size()).replaceAll(" +", " ").trim()), length));
        lines.addAll(folded(face.printable(strand.ends()), length));
        lines.addAll(folded(face.printable(strand.vehicles()), length));
        return new Label(strand.colour(), bar, own, lines);
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

    /** In its colour with the tracer along it; black where vehicles differ in colour, which their labels then tell. */
    private static void wire(CircuitGraph.Line line, List<Point> points, List<Mark> marks) {
        double width = line.own() ? OWN : OTHER;
        if (!oneColour(line)) {
            marks.add(new Stroke(points, width / 2, Ink.BLACK, 0));
            return;
        }
        String colour = line.strands().getFirst().colour();
        marks.add(new Stroke(points, width + 2 * EDGE, Ink.BLACK, 0));
        marks.add(new Stroke(points, width, WireInk.base(colour), 0));
        WireInk.tracer(colour).ifPresent(ink -> marks.add(new Stroke(points, width / 3, ink, 0)));
    }

    private static void labels(List<Label> labels, Point at, List<Mark> marks) {
        double y = at.y() + 0.6;
        for (Label label : labels) {
            if (label.bar()) {
                marks.addAll(WireInk.bar(label.colour(), at.x(), y, BAR, 2.2));
            }
            double top = y + (label.bar() ? 2.6 : 0);
            for (int line = 0; line < label.lines().size(); line++) {
                marks.add(new Text(new Point(at.x(), top + (line + 0.8) * LINE), POINTS, label.bold() && line == 0,
                        label.lines().get(line)));
            }
            y += label.height();
        }
    }

    private static void box(Diagram.Box box, CircuitGraph.Sort sort, List<String> words, List<Mark> marks) {
        marks.add(Fill.box(box.x(), box.y(), box.width(), box.height(), Ink.WHITE));
        marks.add(Stroke.frame(box.x(), box.y(), box.width(), box.height(), sort == CircuitGraph.Sort.SPLICE ? 0.9
                : 0.4, Ink.BLACK));
        double x = box.x() + box.width() - 5;
        double y = box.y() + Math.min(4.5, box.height() / 2);
        if (sort == CircuitGraph.Sort.GROUND) {
            marks.add(Stroke.line(x, y - 2.8, x, y, 0.5, Ink.BLACK));
            for (int i = 0; i < 3; i++) {
                double half = 2.4 - 0.8 * i;
                marks.add(Stroke.line(x - half, y + 0.9 * i, x + half, y + 0.9 * i, 0.5, Ink.BLACK));
            }
        } else if (sort == CircuitGraph.Sort.SOURCE) {
            marks.add(Stroke.line(x - 2, y, x + 2, y, 0.7, Ink.BLACK));
            marks.add(Stroke.line(x, y - 2, x, y + 2, 0.7, Ink.BLACK));
        }
        for (int line = 0; line < words.size(); line++) {
            marks.add(new Text(new Point(box.x() + 2, box.y() + 1.4 + (line + 0.8) * LINE), POINTS, line == 0,
                    words.get(line)));
        }
    }
}
