// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The least force at which a crimped connection may pull apart, by the section of the conductor: IEC 60352-2, the
 * table of tensile strength (from memory). It stands in where a catalogue has no figure; the terminal's maker decides.
 */
public final class PullForce {

    /** What stands behind each figure. */
    public static final String BASIS = "IEC 60352-2";

    /** Sections in mm2, and newtons. */
    private static final NavigableMap<Double, Double> TABLE = new TreeMap<>(Map.ofEntries(Map.entry(0.05, 6.0),
            Map.entry(0.08, 11.0), Map.entry(0.12, 15.0), Map.entry(0.14, 18.0), Map.entry(0.22, 28.0),
            Map.entry(0.25, 32.0), Map.entry(0.32, 40.0), Map.entry(0.5, 60.0), Map.entry(0.75, 85.0),
            Map.entry(0.82, 90.0), Map.entry(1.0, 108.0), Map.entry(1.3, 135.0), Map.entry(1.5, 150.0),
            Map.entry(2.1, 200.0), Map.entry(2.5, 230.0), Map.entry(3.3, 275.0), Map.entry(4.0, 310.0),
            Map.entry(5.3, 355.0), Map.entry(6.0, 360.0), Map.entry(8.4, 370.0), Map.entry(10.0, 380.0)));
    /** A conductor that is this much thinner than a row, as gauges in ga are, counts as of the row below. */
    private static final double ROUNDING = 0.005;

    private PullForce() {
    }

    /**
     * The least force.
     *
     * @param area of the conductor in mm2
     * @return in N, of the row that is not thicker than the conductor; empty outside of the table
     */
    public static OptionalDouble newtons(double area) {
        Map.Entry<Double, Double> row = TABLE.floorEntry(area + ROUNDING);
        return row == null || area > TABLE.lastKey() + ROUNDING ? OptionalDouble.empty()
                : OptionalDouble.of(row.getValue());
    }
}
