// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.diagram;

import java.util.List;
import org.loomwright.sheets.document.Point;

/**
 * A diagram that is laid out; lengths in mm.
 *
 * @param width  of all of it
 * @param height of all of it
 * @param boxes  where the boxes stand, in the order in which they were given
 * @param wires  how the wires run, in the order in which they were given
 */
public record Diagram(double width, double height, List<Box> boxes, List<Wire> wires) {

    public Diagram {
        boxes = List.copyOf(boxes);
        wires = List.copyOf(wires);
    }

    /** A box to lay out: its size, and the names of its pins. */
    public record Node(String name, double width, double height) {
    }

    /**
     * A wire to lay out.
     *
     * @param from  index of the box that it leaves, in reading order
     * @param to    index of the box that it reaches
     * @param width room for its label in mm; 0 where it has none
     */
    public record Edge(int from, String fromPin, int to, String toPin, double width, double height) {
    }

    /** A box in its place: left top corner and size. */
    public record Box(double x, double y, double width, double height) {
    }

    /** A wire in its place, and the left top corner of its label. */
    public record Wire(List<Point> points, Point label) {

        public Wire {
            points = List.copyOf(points);
        }
    }
}
