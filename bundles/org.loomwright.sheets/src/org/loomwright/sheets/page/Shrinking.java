// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.List;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;

/**
 * Makes a drawing smaller.
 *
 * @param scale 1 leaves it as it is
 */
record Shrinking(double scale) {

    Mark of(Mark mark) {
        if (scale == 1) {
            return mark;
        }
        return switch (mark) {
            case Mark.Text text -> new Mark.Text(of(text.at()), text.points() * scale, text.bold(), text.ink(),
                    text.turned(), text.text());
            case Mark.Stroke stroke -> new Mark.Stroke(of(stroke.points()), stroke.width() * scale, stroke.ink(),
                    stroke.dash() * scale);
            case Mark.Fill fill -> new Mark.Fill(of(fill.points()), fill.ink());
            case Mark.Circle circle -> new Mark.Circle(of(circle.centre()), circle.radius() * scale,
                    circle.width() * scale, circle.filled(), circle.ink());
        };
    }

    private Point of(Point point) {
        return new Point(point.x() * scale, point.y() * scale);
    }

    private List<Point> of(List<Point> points) {
        return points.stream().map(this::of).toList();
    }
}
