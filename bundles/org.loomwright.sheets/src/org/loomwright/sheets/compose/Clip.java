// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/**
 * What of a drawing lies in a box. Lines are cut by the way of Liang and Barsky, areas by that of Sutherland and
 * Hodgman; a text is there whole or not at all.
 */
record Clip(double left, double top, double right, double bottom, Typeface face) {

    private static final int CORNERS = 32;

    List<Mark> of(Mark mark) {
        return switch (mark) {
            case Mark.Text text -> holds(text) ? List.of(text) : List.of();
            case Mark.Stroke stroke -> lines(stroke);
            case Mark.Fill fill -> area(fill);
            case Mark.Circle circle -> circle(circle);
        };
    }

    private boolean holds(Mark.Text text) {
        double width = face.width(face.printable(text.text()), text.points(), text.bold());
        return text.at().x() >= left && text.at().x() + width <= right && text.at().y() <= bottom - 1
                && text.at().y() - text.points() * Typeface.POINT >= top;
    }

    private List<Mark> lines(Mark.Stroke stroke) {
        List<Mark> parts = new ArrayList<>();
        List<Point> run = new ArrayList<>();
        for (int i = 1; i < stroke.points().size(); i++) {
            Optional<Point[]> part = line(stroke.points().get(i - 1), stroke.points().get(i));
            if (part.isEmpty()) {
                finish(run, stroke, parts);
                continue;
            }
            if (run.isEmpty() || run.getLast().to(part.get()[0]) > 1e-9) {
                finish(run, stroke, parts);
                run.add(part.get()[0]);
            }
            run.add(part.get()[1]);
        }
        finish(run, stroke, parts);
        return parts;
    }

    private static void finish(List<Point> run, Mark.Stroke stroke, List<Mark> parts) {
        if (run.size() > 1) {
            parts.add(new Mark.Stroke(run, stroke.width(), stroke.ink(), stroke.dash()));
        }
        run.clear();
    }

    private Optional<Point[]> line(Point a, Point b) {
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double[] steps = {-dx, dx, -dy, dy};
        double[] rooms = {a.x() - left, right - a.x(), a.y() - top, bottom - a.y()};
        double from = 0;
        double to = 1;
        for (int i = 0; i < 4; i++) {
            if (steps[i] == 0) {
                if (rooms[i] < 0) {
                    return Optional.empty();
                }
            } else if (steps[i] < 0) {
                from = Math.max(from, rooms[i] / steps[i]);
            } else {
                to = Math.min(to, rooms[i] / steps[i]);
            }
        }
        return from > to ? Optional.empty() : Optional.of(new Point[] {
            new Point(a.x() + from * dx, a.y() + from * dy), new Point(a.x() + to * dx, a.y() + to * dy)});
    }

    private List<Mark> area(Mark.Fill fill) {
        List<Point> points = fill.points();
        for (int side = 0; side < 4 && !points.isEmpty(); side++) {
            points = against(points, side);
        }
        return points.size() < 3 ? List.of() : List.of(new Mark.Fill(points, fill.ink()));
    }

    private List<Point> against(List<Point> points, int side) {
        List<Point> kept = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Point from = points.get((i + points.size() - 1) % points.size());
            Point to = points.get(i);
            double a = inside(from, side);
            double b = inside(to, side);
            if (a >= 0 != b >= 0) {
                double share = a / (a - b);
                kept.add(new Point(from.x() + (to.x() - from.x()) * share, from.y() + (to.y() - from.y()) * share));
            }
            if (b >= 0) {
                kept.add(to);
            }
        }
        return kept;
    }

    private double inside(Point point, int side) {
        return switch (side) {
            case 0 -> point.x() - left;
            case 1 -> right - point.x();
            case 2 -> point.y() - top;
            default -> bottom - point.y();
        };
    }

    private List<Mark> circle(Mark.Circle circle) {
        List<Point> round = new ArrayList<>();
        for (int i = 0; i <= CORNERS; i++) {
            double angle = 2 * Math.PI * i / CORNERS;
            round.add(circle.centre().plus(circle.radius() * Math.cos(angle), circle.radius() * Math.sin(angle)));
        }
        return circle.filled() ? area(new Mark.Fill(round.subList(0, CORNERS), circle.ink()))
                : lines(new Mark.Stroke(round, circle.width(), circle.ink(), 0));
    }
}
