// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.loomwright.sheets.document.Point;

/**
 * Finds room for texts beside what is drawn: none lies on another, nor on what was taken before. Boxes are kept by
 * squares of the plane, so that each question looks at few of them.
 */
final class LabelRoom {

    private static final double SQUARE = 50;
    private static final double GAP = 0.8;
    /** How far from its point a text may be, in mm. */
    private static final double REACH = 120;

    private final Map<Long, List<Box>> squares = new HashMap<>();
    private final List<Box> signs = new ArrayList<>();
    private final Predicate<Box> allowed;

    /** A box in mm. */
    record Box(double left, double top, double right, double bottom) {

        boolean meets(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }

        /** The point of it that is nearest to another. */
        Point nearest(Point to) {
            return new Point(Math.clamp(to.x(), left, right), Math.clamp(to.y(), top, bottom));
        }

        /** Whether a line comes through, by the method of Liang and Barsky. */
        boolean isCrossed(Point from, Point to) {
            double[] steps = {from.x() - to.x(), to.x() - from.x(), from.y() - to.y(), to.y() - from.y()};
            double[] rooms = {from.x() - left, right - from.x(), from.y() - top, bottom - from.y()};
            double begin = 0;
            double end = 1;
            for (int i = 0; i < 4; i++) {
                if (steps[i] == 0 && rooms[i] < 0) {
                    return false;
                }
                begin = steps[i] < 0 ? Math.max(begin, rooms[i] / steps[i]) : begin;
                end = steps[i] > 0 ? Math.min(end, rooms[i] / steps[i]) : end;
            }
            return begin < end;
        }
    }

    /** @param allowed where texts may be: on the board, and whole on one sheet of paper */
    LabelRoom(Predicate<Box> allowed) {
        this.allowed = allowed;
    }

    /** Takes a box. */
    void take(Box box) {
        for (long square : squares(box)) {
            squares.computeIfAbsent(square, any -> new ArrayList<>()).add(box);
        }
    }

    /** Takes the box of a text or an outline, which no line to another one may cross. */
    void sign(Box box) {
        signs.add(box);
        take(box);
    }

    /** Takes the neighbourhood of a line. */
    void take(List<Point> path, double half) {
        for (int i = 1; i < path.size(); i++) {
            Point from = path.get(i - 1);
            Point to = path.get(i);
            int steps = (int) Math.max(1, Math.ceil(from.to(to) / 8));
            for (int k = 0; k < steps; k++) {
                double x1 = from.x() + (to.x() - from.x()) * k / steps;
                double y1 = from.y() + (to.y() - from.y()) * k / steps;
                double x2 = from.x() + (to.x() - from.x()) * (k + 1) / steps;
                double y2 = from.y() + (to.y() - from.y()) * (k + 1) / steps;
                take(new Box(Math.min(x1, x2) - half, Math.min(y1, y2) - half, Math.max(x1, x2) + half,
                        Math.max(y1, y2) + half));
            }
        }
    }

    /** Whether a box is free and allowed. */
    boolean isFree(Box box) {
        if (!allowed.test(box)) {
            return false;
        }
        for (long square : squares(box)) {
            for (Box taken : squares.getOrDefault(square, List.of())) {
                if (taken.meets(box)) {
                    return false;
                }
            }
        }
        return true;
    }

    /**
     * The nearest free box of a size around a point, to which a line can be drawn from the point without crossing
     * another; taken at once. Where there is none a line may cross, and where there is no room at all it is empty.
     *
     * @return its left bottom corner
     */
    Optional<Point> place(Point around, double width, double height, double least) {
        return place(around, width, height, least, true).or(() -> place(around, width, height, least, false));
    }

    private Optional<Point> place(Point around, double width, double height, double least, boolean clear) {
        for (double away = least; away < least + REACH; away += 3) {
            for (int i = 0; i < 16; i++) {
                double angle = Math.PI / 8 * ((i + 1) / 2 * (i % 2 == 0 ? 1 : -1)) - Math.PI / 4;
                double x = around.x() + away * Math.cos(angle) + (Math.cos(angle) < -0.1 ? -width
                        : Math.cos(angle) > 0.1 ? 0 : -width / 2);
                double y = around.y() + away * Math.sin(angle) + (Math.sin(angle) < 0 ? 0 : height);
                Box box = new Box(x - GAP, y - height - GAP, x + width + GAP, y + GAP);
                if (isFree(box) && (!clear || signs.stream().noneMatch(each ->
                        each.isCrossed(around, box.nearest(around))))) {
                    sign(box);
                    return Optional.of(new Point(x, y));
                }
            }
        }
        return Optional.empty();
    }

    private static List<Long> squares(Box box) {
        List<Long> keys = new ArrayList<>();
        for (long x = (long) Math.floor(box.left() / SQUARE); x <= (long) Math.floor(box.right() / SQUARE); x++) {
            for (long y = (long) Math.floor(box.top() / SQUARE); y <= (long) Math.floor(box.bottom() / SQUARE); y++) {
                keys.add(x * 1_000_003 + y);
            }
        }
        return keys;
    }
}
