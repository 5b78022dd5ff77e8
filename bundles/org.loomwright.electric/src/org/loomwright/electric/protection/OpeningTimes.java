// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import java.util.Map;
import java.util.TreeMap;

/**
 * The slowest and the fastest that a blade fuse of medium or miniature size may open, by multiples of its rating (ISO
 * 8820-3 and SAE J1284 families, from memory). Nothing is decided by these figures alone: what rests on them is not
 * judged, and shown.
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

    /** Where the figures of the fastest opening come from. */
    public static final String FASTEST_BASIS = "fastest opening of blade fuses after ISO 8820-3, from memory";

    private static final TreeMap<Double, Double> FASTEST = new TreeMap<>(Map.of(OPENS, 0.75, 1.6, 0.25, 2.0, 0.15,
            3.5, 0.04, 6.0, 0.02));

    private OpeningTimes() {
    }

    /** Returns the longest time in s to open at a multiple of what a fuse carries; infinite below {@link #OPENS}. */
    public static double slowest(double multiple) {
        Map.Entry<Double, Double> row = SLOWEST.floorEntry(multiple);
        return row == null ? Double.POSITIVE_INFINITY : row.getValue();
    }

    /**
     * Returns the shortest time in s to open at a multiple of what a fuse carries: infinite below {@link #OPENS}, even
     * on a double logarithmic chart between the rows of the table, and with one I²t above the last.
     */
    public static double fastest(double multiple) {
        Map.Entry<Double, Double> low = FASTEST.floorEntry(multiple);
        Map.Entry<Double, Double> high = FASTEST.ceilingEntry(multiple);
        if (low == null) {
            return Double.POSITIVE_INFINITY;
        }
        if (high == null) {
            return low.getValue() * Math.pow(low.getKey() / multiple, 2);
        }
        double width = Math.log(high.getKey() / low.getKey());
        double share = width == 0 ? 0 : Math.log(multiple / low.getKey()) / width;
        return low.getValue() * Math.pow(high.getValue() / low.getValue(), share);
    }
}
