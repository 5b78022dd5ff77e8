// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;

/** Lays labels out, three beside each other, with dashed lines to cut along. */
final class LabelFlow {

    private static final int BESIDE = 3;
    private static final double LEAST = 22;
    private static final double INSIDE = 2.5;

    private final Flow flow;
    private final Wrapping wrapping;

    LabelFlow(Flow flow, Typeface face) {
        this.flow = flow;
        this.wrapping = new Wrapping(face);
    }

    private record Line(String text, double points, boolean bold) {
    }

    void lay(List<List<String>> labels) {
        double width = flow.width() / BESIDE;
        for (int from = 0; from < labels.size(); from += BESIDE) {
            List<List<Line>> beside = labels.subList(from, Math.min(labels.size(), from + BESIDE)).stream()
                    .map(each -> lines(each, width - 2 * INSIDE)).toList();
            double height = Math.min(flow.whole(), Math.max(LEAST, 2 * INSIDE + beside.stream()
                    .mapToDouble(LabelFlow::height).max().orElse(0)));
            if (height > flow.room()) {
                flow.turn();
            }
            for (int i = 0; i < beside.size(); i++) {
                double x = flow.left() + i * width;
                flow.mark(new Stroke(Stroke.frame(x, flow.y(), width, height, 0.2, Ink.GREY).points(), 0.2, Ink.GREY,
                        1.5));
                double y = flow.y() + INSIDE;
                for (Line line : beside.get(i)) {
                    if (y + Look.line(line.points()) > flow.y() + height) {
                        break;
                    }
                    flow.mark(new Text(new Point(x + INSIDE, y + Look.ascent(line.points())), line.points(),
                            line.bold(), line.text()));
                    y += Look.line(line.points());
                }
            }
            flow.down(height);
        }
        flow.down(Look.GAP);
    }

    private List<Line> lines(List<String> texts, double width) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            double points = i == 0 ? Look.HEADING : Look.CELL;
            boolean bold = i == 0;
            if (!texts.get(i).isEmpty()) {
                wrapping.lines(texts.get(i), points, bold, width).forEach(each -> lines.add(
                        new Line(each, points, bold)));
            }
        }
        return lines;
    }

    private static double height(List<Line> lines) {
        return lines.stream().mapToDouble(each -> Look.line(each.points())).sum();
    }
}
