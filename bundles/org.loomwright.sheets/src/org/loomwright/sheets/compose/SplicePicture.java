// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.document.WireInk;
import org.loomwright.sheets.page.Typeface;
import org.loomwright.sheets.page.Wrapping;

/** A splice with its wires per side: those towards the datum at the left, the others at the right. */
final class SplicePicture {

    private static final double WIDTH = 250;
    private static final double STEP = 6;
    private static final double TEXT = 92;
    private static final double BAR = 16;
    private static final double POINTS = 9;
    private static final double LINE = 3.9;

    private SplicePicture() {
    }

    /** A wire with its lines of text, and how much room they take from above. */
    private record Row(Piece piece, List<String> lines) {

        double height() {
            return Math.max(STEP, lines.size() * LINE + 2.2);
        }
    }

    static Drawing of(LaidHarness harness, String name, List<Piece> near, List<Piece> far, Typeface face) {
        List<Row> left = rows(harness, near, name, "from ", face);
        List<Row> right = rows(harness, far, name, "to ", face);
        double rows = Math.max(STEP, Math.max(height(left), height(right)));
        double middle = 7 + rows / 2;
        List<Mark> marks = new ArrayList<>();
        marks.add(new Text(new Point(0, 3.6), 8, true, "towards the datum"));
        String away = "away from the datum";
        marks.add(new Text(new Point(WIDTH - face.width(away, 8, true), 3.6), 8, true, away));
        double from = WIDTH / 2 - 9;
        double to = WIDTH / 2 + 9;
        side(left, TEXT, from, middle, face, marks);
        side(right, WIDTH - TEXT, to, middle, face, marks);
        marks.add(Fill.box(from, middle - 2.4, to - from, 4.8, Ink.WHITE));
        marks.add(Stroke.frame(from, middle - 2.4, to - from, 4.8, 0.6, Ink.BLACK));
        marks.add(new Text(new Point(WIDTH / 2 - face.width(face.printable(name), POINTS, true) / 2, middle + 1.2),
                POINTS, true, name));
        return new Drawing(WIDTH, rows + 12, marks);
    }

    private static double height(List<Row> rows) {
        return rows.stream().mapToDouble(Row::height).sum();
    }

    private static List<Row> rows(LaidHarness harness, List<Piece> pieces, String name, String way, Typeface face) {
        Wrapping wrapping = new Wrapping(face);
        List<Row> rows = new ArrayList<>();
        for (Piece piece : pieces) {
            String other = piece.ends().stream().filter(each -> !each.node().element().equals(name))
                    .map(each -> each.label()).findFirst().orElse("");
            String vehicles = harness.words(piece.when());
            rows.add(new Row(piece, wrapping.lines(piece.wire() + "  " + piece.colour() + "  " + piece.written() + "  "
                    + way + other + (vehicles.equals("all") ? "" : "  " + vehicles), POINTS, false, TEXT - 2)));
        }
        return rows;
    }

    private static void side(List<Row> rows, double text, double end, double middle, Typeface face, List<Mark> marks) {
        boolean leftward = text < end;
        double top = middle - height(rows) / 2;
        for (Row row : rows) {
            double y = top + row.height() / 2;
            double swatch = leftward ? text : text - BAR;
            double near = leftward ? text + BAR : text - BAR;
            double bend = leftward ? end - 6 : end + 6;
            marks.add(new Stroke(List.of(new Point(near, y), new Point(bend, y), new Point(end, middle)), 0.6,
                    Ink.BLACK, 0));
            WireInk.bar(row.piece().colour(), swatch, y - 1.2, BAR, 2.4).forEach(marks::add);
            double base = y + 1.2 - (row.lines().size() - 1) * LINE / 2;
            for (String line : row.lines()) {
                double x = leftward ? text - 2 - face.width(line, POINTS, false) : text + 2;
                marks.add(new Text(new Point(x, base), POINTS, false, line));
                base += LINE;
            }
            top += row.height();
        }
    }
}
