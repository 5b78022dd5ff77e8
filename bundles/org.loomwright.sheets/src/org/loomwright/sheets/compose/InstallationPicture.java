// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.sheets.board.Strand;
import org.loomwright.sheets.compose.LabelRoom.Box;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Circle;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/** The harness as the installer sees it: which branches the vehicle uses, which are capped, and what they end in. */
final class InstallationPicture {

    private static final double WIDTH = 186;
    private static final double MOST = 190;
    private static final double POINTS = 8;
    private static final Ink USED = new Ink(0, 110, 60);
    private static final Ink CAPPED = new Ink(190, 40, 40);

    private InstallationPicture() {
    }

    static Drawing of(Boarding boarding, Typeface face) {
        double scale = Math.min(WIDTH / boarding.board().width(), MOST / boarding.board().height());
        double height = Math.max(50, boarding.board().height() * scale + 30);
        double dx = 0;
        double dy = 15;
        List<Mark> marks = new ArrayList<>();
        List<Mark> texts = new ArrayList<>();
        LabelRoom room = new LabelRoom(box -> box.left() >= 0 && box.right() <= WIDTH && box.top() >= 0
                && box.bottom() <= height);
        for (Strand strand : boarding.strands()) {
            List<Point> path = boarding.path(strand.name()).stream()
                    .map(each -> new Point(each.x() * scale + dx, each.y() * scale + dy)).toList();
            String state = InstallationSheet.state(boarding.harness(), strand.name());
            boolean capped = state.startsWith("CAPPED");
            boolean some = !capped && !state.equals("used");
            marks.add(new Stroke(path, capped ? 0.8 : 1.6, capped ? CAPPED : USED, capped || some ? 2 : 0));
            room.take(path, 1.8);
        }
        for (Strand strand : boarding.strands()) {
            Point end = boarding.path(strand.name()).getLast();
            Point at = new Point(end.x() * scale + dx, end.y() * scale + dy);
            boolean capped = InstallationSheet.state(boarding.harness(), strand.name()).startsWith("CAPPED");
            List<String> ends = boarding.ends().getOrDefault(strand.name(), List.of());
            marks.add(new Circle(at, 1.1, 0.4, !capped, capped ? CAPPED : USED));
            if (!strand.parent().isEmpty() || !ends.isEmpty()) {
                label(strand.name() + (capped ? " CAPPED" : ends.isEmpty() ? "" : ": " + String.join(" ", ends)), at,
                        face, room, marks, texts);
            }
        }
        Optional<Strand> root = boarding.strands().stream().filter(each -> each.parent().isEmpty()).findFirst();
        root.ifPresent(strand -> {
            Point start = boarding.path(strand.name()).getFirst();
            Point at = new Point(start.x() * scale + dx, start.y() * scale + dy);
            marks.add(new Circle(at, 1.8, 0.6, false, Ink.BLACK));
            label("DATUM " + String.join(" ", boarding.ends().getOrDefault("", List.of())), at, face, room, marks,
                    texts);
        });
        marks.addAll(texts);
        return new Drawing(WIDTH, height, marks);
    }

    private static void label(String words, Point at, Typeface face, LabelRoom room, List<Mark> marks,
            List<Mark> texts) {
        String text = face.printable(words);
        double width = face.width(text, POINTS, true);
        room.take(new Box(at.x() - 1.5, at.y() - 1.5, at.x() + 1.5, at.y() + 1.5));
        room.place(at, width, 3, 2.5).ifPresent(corner -> {
            Point near = new Point(Math.clamp(at.x(), corner.x(), corner.x() + width), corner.y() - 1.4);
            if (near.to(at) > 6) {
                marks.add(new Stroke(List.of(at, near), 0.15, Ink.GREY, 0));
            }
            texts.add(new Text(new Point(corner.x(), corner.y() - 0.4), POINTS, true, text));
        });
    }
}
