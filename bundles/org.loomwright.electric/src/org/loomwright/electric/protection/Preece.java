// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

/**
 * The steady current that melts a bare round copper wire in still air: I = 10244 d^1.5, d in inches (W. H. Preece 1884,
 * as reprinted by handbooks). An upper bound for a link with insulation, and no rating.
 */
public final class Preece {

    private static final double COPPER = 10_244;
    private static final double INCH = 25.4;

    private Preece() {
    }

    /** Returns the current in A for a diameter in mm. */
    public static double amps(double millimetres) {
        return COPPER * Math.pow(millimetres / INCH, 1.5);
    }

    /** Returns the current in A for a section in mm², as one round wire. */
    public static double ofSection(double mm2) {
        return amps(Math.sqrt(4 * mm2 / Math.PI));
    }
}
