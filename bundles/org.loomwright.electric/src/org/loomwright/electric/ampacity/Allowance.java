// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;

/**
 * How much current a wire may carry for ever, and how the figure came about.
 *
 * @param amps         the allowed current in A
 * @param base         the table's current for the wire in A, before factors
 * @param size         the conductor
 * @param row          the row of the table that it starts from
 * @param rowAmps      the table's current of that row in A
 * @param rating       the column of the table, in C
 * @param ambient      the factor for the ambient temperature
 * @param bundle       the factor for the bundle
 * @param ambientC     the ambient temperature in C
 * @param extrapolated true when the conductor is smaller than any in the table
 * @param basis        where the table comes from
 */
public record Allowance(double amps, double base, ConductorSize size, ConductorSize row, double rowAmps, int rating,
        Factor ambient, Factor bundle, double ambientC, boolean extrapolated, String basis) {

    /** Returns how the figure came about: table, factors with their reasons, result and source, in one line. */
    public String derivation() {
        String from = size.equals(row) ? name(size) + ", " + rating + " C"
                : name(size) + ": " + Figure.of(rowAmps) + " A for " + name(row) + ", " + rating + " C, x "
                        + Figure.of(base / rowAmps, 3) + " by cross-section"
                        + (extrapolated ? ", below the table, extrapolated" : "");
        return Figure.of(base) + " A (" + from + ") x " + Figure.of(ambient.value(), 2) + " (" + ambient.reason()
                + ") x " + Figure.of(bundle.value(), 2) + " (" + bundle.reason() + ") = " + Figure.of(amps, 1) + " A; "
                + basis;
    }

    private static String name(ConductorSize size) {
        return size.system() == SizeSystem.AWG ? size.size() + " AWG" : size.written();
    }

    /** Returns the greatest current in A that could be allowed if the figures from memory were wrong. */
    public double sureAmps() {
        return base * ambient.sure() * bundle.sure();
    }

    /**
     * Returns the conductor's temperature in C at a current: Ta + (Tr - Ta) (I / I_allowed(Ta))². Infinite where
     * nothing is allowed.
     */
    public double temperature(double current) {
        if (current == 0) {
            return ambientC;
        }
        return amps == 0 ? Double.POSITIVE_INFINITY
                : ambientC + (rating - ambientC) * (current / amps) * (current / amps);
    }
}
