// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

/** A colour of print, each part from 0 to 255. */
public record Ink(int red, int green, int blue) {

    public static final Ink BLACK = new Ink(0, 0, 0);
    public static final Ink WHITE = new Ink(255, 255, 255);
    /** For rules and frames. */
    public static final Ink GREY = new Ink(120, 120, 120);
    /** For every second row, and behind headings. */
    public static final Ink PALE = new Ink(238, 238, 238);
    /** For stamps. */
    public static final Ink STAMP = new Ink(225, 140, 140);

    public Ink {
        if ((red | green | blue) < 0 || red > 255 || green > 255 || blue > 255) {
            throw new IllegalArgumentException("no colour: " + red + " " + green + " " + blue);
        }
    }
}
