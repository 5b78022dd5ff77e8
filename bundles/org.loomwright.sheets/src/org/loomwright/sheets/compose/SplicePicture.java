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

/** A splice with its wires per side: those towards the datum at the left, the others at the right. */
final class SplicePicture {

    private static final double WIDTH = 250;
    private static final double STEP = 6;
    private static final double TEXT = 92;
    private static final double BAR = 16;
    private static final double POINTS = 9;

    private SplicePicture() {
    }

    static Drawing of(LaidHarness harness, String name, List<Piece> near, List<Piece> far, Typeface face) {
        int rows = Math.max(1, Math.max(near.size(), far.size()));
        double height = rows * STEP + 12;
        double middle = 7 + rows * STEP / 2;
        List<Mark> marks = new ArrayList<>();
        marks.add(new Text(new Point(0, 3.6), 8, true, "towards the datum"));
        String away = "away from the datum";
        marks.add(new Text(new Point(WIDTH - face.width(away, 8, true), 3.6), 8, true, away));
        double left = WIDTH / 2 - 9;
        double right = WIDTH / 2 + 9;
        side(harness, near, name, TEXT, left, middle, rows, face, marks);
        side(harness, far, name, WIDTH - TEXT, right, middle, rows, face, marks);
        marks.add(Fill.box(left, middle - 2.4, right - left, 4.8, Ink.WHITE));
        marks.add(Stroke.frame(left, middle - 2.4, right - left, 4.8, 0.6, Ink.BLACK));
        marks.add(new Text(new Point(WIDTH / 2 - face.width(face.printable(name), POINTS, true) / 2, middle + 1.2),
                POINTS, true, name));
        return new Drawing(WIDTH, height, marks);
    }

    private static void side(LaidHarness harness, List<Piece> pieces, String name, double text, double end,
            double middle, int rows, Typeface face, List<Mark> marks) {
        boolean leftward = text < end;
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            double y = 7 + (rows - pieces.size()) * STEP / 2 + (i + 0.5) * STEP;
            double swatch = leftward ? text : text - BAR;
            double near = leftward ? text + BAR : text - BAR;
            double bend = leftward ? end - 6 : end + 6;
            marks.add(new Stroke(List.of(new Point(near, y), new Point(bend, y), new Point(end, middle)), 0.6,
                    Ink.BLACK, 0));
            WireInk.bar(piece.colour(), swatch, y - 1.2, BAR, 2.4).forEach(marks::add);
            String other = piece.ends().stream().filter(each -> !each.node().element().equals(name))
                    .map(each -> each.label()).findFirst().orElse("");
            String vehicles = harness.words(piece.when());
            String words = piece.wire() + "  " + piece.colour() + "  " + piece.written() + "  "
                    + (leftward ? "from " : "to ") + other + (vehicles.equals("all") ? "" : "  " + vehicles);
            String fitting = fitting(face, face.printable(words), TEXT - 2);
            double x = leftward ? text - 2 - face.width(fitting, POINTS, false) : text + 2;
            marks.add(new Text(new Point(x, y + 1.2), POINTS, false, fitting));
        }
    }

    /** What does not fit ends in three points; the whole stands in the wire list. */
    private static String fitting(Typeface face, String words, double width) {
        String text = words;
        for (int end = words.length() - 1; face.width(text, POINTS, false) > width && end > 0; end--) {
            text = words.substring(0, end) + "...";
        }
        return text;
    }
}
