// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import java.util.Map;
import java.util.TreeMap;

/**
 * The slowest that a blade fuse of medium or miniature size may open, by multiples of its rating (ISO 8820-3 and SAE
 * J1284 families, from memory). Nothing is decided by these figures alone: what rests on them is not judged, and shown.
 */
public final class OpeningTimes {

    /** Where the figures come from. */
    public static final String BASIS = "slowest opening of blade fuses after ISO 8820-3, from memory";
    /** Up to this multiple of its rating a fuse carries for ever (from memory). */
    public static final double FOR_EVER = 1.1;
    /** From this multiple of its rating on a fuse opens at all, within half an hour (from memory). */
    public static final double OPENS = 1.35;

    private static final TreeMap<Double, Double> SLOWEST = new TreeMap<>(Map.of(OPENS, 1800.0, 1.6, 50.0, 2.0, 5.0,
            3.5, 0.5, 6.0, 0.1));

    private OpeningTimes() {
    }

    /** Returns the longest time in s to open at a multiple of what a fuse carries; infinite below {@link #OPENS}. */
    public static double slowest(double multiple) {
        Map.Entry<Double, Double> row = SLOWEST.floorEntry(multiple);
        return row == null ? Double.POSITIVE_INFINITY : row.getValue();
    }
}
