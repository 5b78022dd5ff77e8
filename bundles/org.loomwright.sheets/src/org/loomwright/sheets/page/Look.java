// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

/** The measures that all pages share; lengths in mm, type in points. Type is read at arm's length in a workshop. */
final class Look {

    static final double MARGIN = 12;
    static final double TITLE = 15;
    static final double SUBJECT = 10.5;
    static final double HEADING = 12;
    static final double BODY = 10.5;
    static final double CELL = 9;
    static final double SMALL = 8;
    static final double LEADING = 1.22;
    static final double PADDING = 1.1;
    static final double GAP = 3;
    static final double RULE = 0.2;
    static final double SWATCH = 6.5;
    static final double SWATCH_HEIGHT = 2.6;
    static final double TICK = 4;
    static final double STAMP = 40;

    private Look() {
    }

    /** Height of a line of type in mm. */
    static double line(double points) {
        return points * LEADING * Typeface.POINT;
    }

    /** From the top of a line to its baseline in mm. */
    static double ascent(double points) {
        return points * 0.95 * Typeface.POINT;
    }
}
