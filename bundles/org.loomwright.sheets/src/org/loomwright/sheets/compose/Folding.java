// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/**
 * Folds a drawing that is too large for a page into several, as a text is folded into lines: it is cut where only wires
 * cross the cut, and each of these gets a letter on both sides, by which it is followed. Linear in the marks for each
 * place that is tried.
 */
final class Folding {

    private static final double POINTS = 8.5;
    /** Room for the letters at a cut, in mm. */
    private static final double MARGIN = 5;
    private static final double STEP = 0.5;
    /** How far a cut stays away from anything but the wires that cross it, in mm. */
    private static final double CLEAR = 0.7;
    /** A part that is smaller than this share of what there is room for is only made when no other place will do. */
    private static final double LEAST = 0.4;

    /** How much of the room in mm is given up for a cut that one wire less crosses. */
    private static final double PRICE = 12;

    private final Typeface face;
    private final double width;
    private final double height;
    private int letters;

    /** @param width the most that a part may be wide, in mm, and {@code height} how high */
    Folding(Typeface face, double width, double height) {
        this.face = face;
        this.width = width;
        this.height = height;
    }

    /** The parts in reading order; the drawing itself when it is small enough. */
    List<Drawing> parts(Drawing drawing) {
        letters = 0;
        List<Drawing> parts = new ArrayList<>();
        for (Drawing row : cut(drawing, true)) {
            parts.addAll(cut(row, false));
        }
        return parts;
    }

    private List<Drawing> cut(Drawing drawing, boolean across) {
        List<Drawing> parts = new ArrayList<>();
        Drawing rest = drawing;
        double most = across ? width : height;
        while ((across ? rest.width() : rest.height()) > most) {
            double at = place(rest, across, most - MARGIN);
            if (at < 0) {
                break;
            }
            List<Mark> before = side(rest, across, 0, at);
            List<Mark> after = new ArrayList<>();
            double end = across ? rest.width() : rest.height();
            side(rest, across, at, end).forEach(mark -> after.add(across ? mark.moved(MARGIN - at, 0)
                    : mark.moved(0, MARGIN - at)));
            for (double crossing : crossings(rest, across, at)) {
                String letter = letter(letters++);
                before.add(text(letter, across ? new Point(at + 1, crossing + 1) : new Point(crossing - 1, at + 3.4)));
                after.add(text(letter, across ? new Point(MARGIN - 1 - face.width(letter, POINTS, true), crossing + 1)
                        : new Point(crossing - 1, MARGIN - 1)));
            }
            parts.add(trimmed(before, across, at + MARGIN, rest));
            rest = trimmed(after, across, end - at + MARGIN, rest);
        }
        parts.add(rest);
        return parts;
    }

    private static Mark text(String letter, Point at) {
        return new Mark.Text(at, POINTS, true, letter);
    }

    /** A to Z, AA to AZ and so on. */
    private static String letter(int index) {
        return (index < 26 ? "" : letter(index / 26 - 1)) + (char) ('A' + index % 26);
    }

    /** What stands between two places; the lines that cross them are cut. */
    private List<Mark> side(Drawing drawing, boolean across, double from, double to) {
        double far = 1e6;
        Clip clip = across ? new Clip(from, -far, to, far, face) : new Clip(-far, from, far, to, face);
        List<Mark> marks = new ArrayList<>();
        for (Mark mark : drawing.marks()) {
            double low = low(mark, across);
            double high = high(mark, across);
            if (low >= from - 1e-9 && high <= to + 1e-9) {
                marks.add(mark);
            } else if (high > from && low < to) {
                marks.addAll(clip.of(mark));
            }
        }
        return marks;
    }

    /** Cuts a part that was taken across to what it holds from top to bottom. */
    private Drawing trimmed(List<Mark> marks, boolean across, double length, Drawing whole) {
        double top = marks.stream().mapToDouble(each -> low(each, !across)).min().orElse(0) - 2;
        double bottom = marks.stream().mapToDouble(each -> high(each, !across)).max().orElse(0) + 2;
        double shift = -top;
        List<Mark> moved = marks.stream().map(each -> across ? each.moved(0, shift) : each.moved(shift, 0)).toList();
        return across ? new Drawing(length, bottom - top, moved) : new Drawing(bottom - top, length, moved);
    }

    /** A mark and how far it reaches along the way that is cut, in mm. */
    private record Reach(Mark mark, double low, double high) {
    }

    /** The place that the fewest wires cross, of those the last; negative when something else is everywhere. */
    private double place(Drawing drawing, boolean across, double most) {
        List<Reach> reaches = drawing.marks().stream().map(each -> new Reach(each, low(each, across),
                high(each, across))).toList();
        double best = -1;
        double least = Double.MAX_VALUE;
        for (double at = most; at > Math.max(MARGIN + 2, most * LEAST) && most - at < least; at -= STEP) {
            if (free(reaches, across, at)) {
                double cost = crossings(drawing, across, at).size() * PRICE + most - at;
                if (cost < least) {
                    least = cost;
                    best = at;
                }
            }
        }
        return best;
    }

    private static boolean free(List<Reach> reaches, boolean across, double at) {
        for (Reach each : reaches) {
            boolean near = each.low() < at + CLEAR && each.high() > at - CLEAR;
            if (near && !(each.mark() instanceof Mark.Stroke stroke && straight(stroke, across, at))) {
                return false;
            }
        }
        return true;
    }

    /** Whether a line that is no outline goes straight over a cut. */
    private static boolean straight(Mark.Stroke stroke, boolean across, double at) {
        List<Point> points = stroke.points();
        if (points.getFirst().to(points.getLast()) < 1e-6) {
            return false;
        }
        for (int i = 1; i < points.size(); i++) {
            double a = along(points.get(i - 1), across);
            double b = along(points.get(i), across);
            boolean near = Math.min(a, b) < at + CLEAR && Math.max(a, b) > at - CLEAR;
            boolean over = Math.min(a, b) <= at - CLEAR && Math.max(a, b) >= at + CLEAR
                    && Math.abs(along(points.get(i - 1), !across) - along(points.get(i), !across)) < 1e-6;
            if (near && !over) {
                return false;
            }
        }
        return true;
    }

    /** Where wires cross a cut; a wire is drawn of several lines, one over the other. */
    private static Set<Double> crossings(Drawing drawing, boolean across, double at) {
        TreeSet<Double> found = new TreeSet<>();
        for (Mark mark : drawing.marks()) {
            if (mark instanceof Mark.Stroke stroke && !stroke.ink().equals(Ink.WHITE)) {
                for (int i = 1; i < stroke.points().size(); i++) {
                    double a = along(stroke.points().get(i - 1), across);
                    double b = along(stroke.points().get(i), across);
                    if (Math.min(a, b) < at && Math.max(a, b) > at) {
                        found.add(Math.round(along(stroke.points().get(i), !across) * 1000) / 1000.0);
                    }
                }
            }
        }
        return found;
    }

    private static double along(Point point, boolean across) {
        return across ? point.x() : point.y();
    }

    private double low(Mark mark, boolean across) {
        return switch (mark) {
            case Mark.Text text -> across ? text.at().x() : text.at().y() - text.points() * Typeface.POINT;
            case Mark.Stroke stroke -> stroke.points().stream().mapToDouble(each -> along(each, across)).min()
                    .orElse(0);
            case Mark.Fill fill -> fill.points().stream().mapToDouble(each -> along(each, across)).min().orElse(0);
            case Mark.Circle circle -> along(circle.centre(), across) - circle.radius();
        };
    }

    private double high(Mark mark, boolean across) {
        return switch (mark) {
            case Mark.Text text -> across ? text.at().x() + face.width(face.printable(text.text()), text.points(),
                    text.bold()) : text.at().y() + 1;
            case Mark.Stroke stroke -> stroke.points().stream().mapToDouble(each -> along(each, across)).max()
                    .orElse(0);
            case Mark.Fill fill -> fill.points().stream().mapToDouble(each -> along(each, across)).max().orElse(0);
            case Mark.Circle circle -> along(circle.centre(), across) + circle.radius();
        };
    }
}
