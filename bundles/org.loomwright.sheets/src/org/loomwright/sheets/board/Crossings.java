// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.board;

import java.util.Collection;
import java.util.List;
import org.loomwright.sheets.document.Point;

/** Looks whether paths cross: by the signs of areas of triangles, which is exact up to rounding. */
final class Crossings {

    private static final double NEAR = 1e-6;

    private Crossings() {
    }

    /** A path with the box around it. */
    private record Boxed(List<Point> path, double left, double top, double right, double bottom) {

        static Boxed of(List<Point> path) {
            return new Boxed(path, path.stream().mapToDouble(Point::x).min().orElse(0),
                    path.stream().mapToDouble(Point::y).min().orElse(0),
                    path.stream().mapToDouble(Point::x).max().orElse(0),
                    path.stream().mapToDouble(Point::y).max().orElse(0));
        }

        boolean apart(Boxed other) {
            return right < other.left || other.right < left || bottom < other.top || other.bottom < top;
        }
    }

    /** Whether any two paths cross; that one begins on another does not count. Quadratic in the paths at worst. */
    static boolean any(Collection<List<Point>> paths) {
        List<Boxed> all = paths.stream().map(Boxed::of).toList();
        for (int i = 0; i < all.size(); i++) {
            for (int j = i + 1; j < all.size(); j++) {
                if (!all.get(i).apart(all.get(j)) && cross(all.get(i).path(), all.get(j).path())) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean cross(List<Point> one, List<Point> other) {
        for (int i = 1; i < one.size(); i++) {
            for (int j = 1; j < other.size(); j++) {
                Point a = one.get(i - 1);
                Point b = one.get(i);
                Point c = other.get(j - 1);
                Point d = other.get(j);
                boolean start = i == 1 && on(a, c, d) || j == 1 && on(c, a, b);
                if (!start && meet(a, b, c, d)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean meet(Point a, Point b, Point c, Point d) {
        boolean proper = side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
        return proper || on(b, c, d) || on(d, a, b) || on(a, c, d) || on(c, a, b);
    }

    private static double side(Point a, Point b, Point c) {
        double area = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
        return Math.abs(area) <= NEAR * (1 + a.to(b)) ? 0 : Math.signum(area);
    }

    /** Whether a point is on a line. */
    private static boolean on(Point point, Point from, Point to) {
        return from.to(point) + point.to(to) - from.to(to) < NEAR;
    }
}
