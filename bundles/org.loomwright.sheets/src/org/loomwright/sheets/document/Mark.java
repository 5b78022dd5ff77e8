// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

import java.util.List;

/** One thing that is put on paper. Lengths are in mm unless they are called points (1/72 in). */
public sealed interface Mark {

    /** The same, moved. */
    Mark moved(double dx, double dy);

    /**
     * A line of text.
     *
     * @param at     where its baseline begins
     * @param points size of the type in points
     * @param turned degrees by which it is turned, against the clock
     */
    record Text(Point at, double points, boolean bold, Ink ink, double turned, String text) implements Mark {

        /** Black text that is not turned. */
        public Text(Point at, double points, boolean bold, String text) {
            this(at, points, bold, Ink.BLACK, 0, text);
        }

        @Override
        public Mark moved(double dx, double dy) {
            return new Text(at.plus(dx, dy), points, bold, ink, turned, text);
        }
    }

    /**
     * A line through points.
     *
     * @param width its thickness
     * @param dash  length of dashes and of the gaps between them; 0 for none
     */
    record Stroke(List<Point> points, double width, Ink ink, double dash) implements Mark {

        public Stroke {
            points = List.copyOf(points);
        }

        /** A line between two points. */
        public static Stroke line(double x1, double y1, double x2, double y2, double width, Ink ink) {
            return new Stroke(List.of(new Point(x1, y1), new Point(x2, y2)), width, ink, 0);
        }

        /** A frame. */
        public static Stroke frame(double x, double y, double width, double height, double line, Ink ink) {
            return new Stroke(List.of(new Point(x, y), new Point(x + width, y), new Point(x + width, y + height),
                    new Point(x, y + height), new Point(x, y)), line, ink, 0);
        }

        /** Its length in mm. */
        public double length() {
            double sum = 0;
            for (int i = 1; i < points.size(); i++) {
                sum += points.get(i - 1).to(points.get(i));
            }
            return sum;
        }

        @Override
        public Mark moved(double dx, double dy) {
            return new Stroke(points.stream().map(each -> each.plus(dx, dy)).toList(), width, ink, dash);
        }
    }

    /** A filled area within points. */
    record Fill(List<Point> points, Ink ink) implements Mark {

        public Fill {
            points = List.copyOf(points);
        }

        /** A filled box. */
        public static Fill box(double x, double y, double width, double height, Ink ink) {
            return new Fill(List.of(new Point(x, y), new Point(x + width, y), new Point(x + width, y + height),
                    new Point(x, y + height)), ink);
        }

        @Override
        public Mark moved(double dx, double dy) {
            return new Fill(points.stream().map(each -> each.plus(dx, dy)).toList(), ink);
        }
    }

    /** A circle, filled or as a line of that thickness. */
    record Circle(Point centre, double radius, double width, boolean filled, Ink ink) implements Mark {

        @Override
        public Mark moved(double dx, double dy) {
            return new Circle(centre.plus(dx, dy), radius, width, filled, ink);
        }
    }
}
