// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.board;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.sheets.document.Point;

/**
 * A tree on a board.
 *
 * @param width  what it takes of a board in mm, with a free edge all round
 * @param height what it takes of a board in mm
 * @param fits   whether the board that was asked for does
 * @param paths  the way of each strand, from its start, as points whose distances add up to its length
 */
public record Board(double width, double height, boolean fits, Map<String, List<Point>> paths) {

    public Board {
        paths = Collections.unmodifiableMap(new LinkedHashMap<>(paths));
    }

    /** Length of a way in mm. */
    public static double length(List<Point> path) {
        double sum = 0;
        for (int i = 1; i < path.size(); i++) {
            sum += path.get(i - 1).to(path.get(i));
        }
        return sum;
    }

    /** The point of a way at a distance from its start; its end for what lies beyond. */
    public static Point at(List<Point> path, double distance) {
        double left = distance;
        for (int i = 1; i < path.size(); i++) {
            double step = path.get(i - 1).to(path.get(i));
            if (left <= step && step > 0) {
                Point from = path.get(i - 1);
                Point to = path.get(i);
                return new Point(from.x() + (to.x() - from.x()) * left / step,
                        from.y() + (to.y() - from.y()) * left / step);
            }
            left -= step;
        }
        return path.getLast();
    }

    /** The part of a way between two distances from its start. */
    public static List<Point> between(List<Point> path, double from, double to) {
        List<Point> part = new java.util.ArrayList<>();
        part.add(at(path, from));
        double sum = 0;
        for (int i = 1; i < path.size(); i++) {
            sum += path.get(i - 1).to(path.get(i));
            if (sum > from + 1e-9 && sum < to - 1e-9) {
                part.add(path.get(i));
            }
        }
        part.add(at(path, to));
        return part;
    }
}
