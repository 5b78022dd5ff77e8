// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

/**
 * How long a copper conductor bears a short circuit if no heat leaves it: t = (k S / I)² with
 * k = 226 sqrt(ln(1 + (Tf - Ti) / (234.5 + Ti))) A s^0.5 / mm². The formula follows from the heat capacity and
 * resistivity of copper and gives the constants of IEC 60364-5-54. It holds up to 5 s; beyond that
 * heat leaves, and the conductor bears more.
 */
public final class Withstand {

    /** Up to which time in s no heat is taken to leave. */
    public static final double ADIABATIC = 5;
    /** Final temperature in C for classes up to 105 C, PVC (IEC 60364-5-54 for PVC, from memory). */
    public static final double PVC = 160;
    /** Final temperature in C for higher classes, cross-linked (IEC 60364-5-54 for XLPE, from memory). */
    public static final double CROSS_LINKED = 250;
    private static final double K = 226;
    private static final double BETA = 234.5;

    private Withstand() {
    }

    /** Returns k in A s^0.5 / mm² for an initial and a final temperature in C. */
    public static double k(double initial, double last) {
        return K * Math.sqrt(Math.log(1 + (last - initial) / (BETA + initial)));
    }

    /** Returns how long in s a conductor of so many mm² bears a current in A, its class in C taken as its start. */
    public static double seconds(double mm2, double classC, double amps) {
        double k = k(classC, classC <= 105 ? PVC : CROSS_LINKED);
        return Math.pow(k * mm2 / amps, 2);
    }
}
