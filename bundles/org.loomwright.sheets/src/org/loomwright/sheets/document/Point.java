// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

/** A point in mm; x grows to the right, y downwards. */
public record Point(double x, double y) {

    /** The point that lies so much further. */
    public Point plus(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }

    /** Distance from another point in mm. */
    public double to(Point other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
