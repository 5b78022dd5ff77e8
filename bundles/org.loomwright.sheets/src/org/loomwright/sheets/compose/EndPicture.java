// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.document.WireInk;
import org.loomwright.sheets.page.Typeface;

/** A scheme of a housing seen from the wire side, a box for each cavity in the order of the catalogue. */
final class EndPicture {

    private static final int BESIDE = 8;
    private static final double WIDTH = 20;
    private static final double HEIGHT = 15;
    private static final double EDGE = 2.5;
    private static final double HEAD = 5;

    private EndPicture() {
    }

    /**
     * A cavity.
     *
     * @param name    its name
     * @param wires   the wires in it, over all vehicles; none for an empty one
     * @param colours their colours
     */
    record Hole(String name, List<String> wires, List<String> colours) {
    }

    static Drawing of(List<Hole> holes, Typeface face) {
        int beside = holes.size() <= BESIDE ? Math.max(1, holes.size())
                : Math.min(BESIDE, (holes.size() + 1) / 2);
        int rows = Math.max(1, (holes.size() + beside - 1) / beside);
        double width = beside * WIDTH + 2 * EDGE;
        double height = HEAD + rows * HEIGHT + 2 * EDGE;
        List<Mark> marks = new ArrayList<>();
        marks.add(new Text(new Point(0, 3.4), 8, true, "WIRE SIDE"));
        marks.add(Stroke.frame(0, HEAD, width, height - HEAD, 0.9, Ink.BLACK));
        for (int i = 0; i < holes.size(); i++) {
            hole(holes.get(i), EDGE + i % beside * WIDTH, HEAD + EDGE + i / beside * HEIGHT, face, marks);
        }
        return new Drawing(Math.max(width, 24), height, marks);
    }

    private static void hole(Hole hole, double x, double y, Typeface face, List<Mark> marks) {
        marks.add(Stroke.frame(x + 0.6, y + 0.6, WIDTH - 1.2, HEIGHT - 1.2, 0.3, Ink.BLACK));
        marks.add(new Text(new Point(x + 1.8, y + 4.8), 10, true, cut(hole.name(), 10, true, face)));
        if (hole.wires().isEmpty()) {
            marks.add(Stroke.line(x + 0.6, y + 0.6, x + WIDTH - 0.6, y + HEIGHT - 0.6, 0.15, Ink.GREY));
            return;
        }
        double bar = (WIDTH - 3.6) / Math.max(1, hole.colours().size());
        for (int i = 0; i < hole.colours().size(); i++) {
            marks.addAll(WireInk.bar(hole.colours().get(i), x + 1.8 + i * bar, y + 6, bar - 0.4, 2.4));
        }
        marks.add(new Text(new Point(x + 1.8, y + 12.6), 8, false, cut(String.join(" ", hole.wires()), 8, false,
                face)));
    }

    private static String cut(String words, double points, boolean bold, Typeface face) {
        String text = face.printable(words);
        for (int end = text.length() - 1; face.width(text, points, bold) > WIDTH - 3.4 && end > 0; end--) {
            text = face.printable(words).substring(0, end) + "…";
        }
        return text;
    }
}
