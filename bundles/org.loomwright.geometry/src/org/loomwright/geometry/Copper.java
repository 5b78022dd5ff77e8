// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;

/**
 * The copper in a wire: section times length times density.
 *
 * @param densityGramsPerCm3 density of the conductor in g/cm³
 * @param basis              where the density comes from, for people
 */
public record Copper(double densityGramsPerCm3, String basis) {

    /** 8.96 g/cm³ at 20 C, the usual handbook value for copper. */
    public static final Copper HANDBOOK = new Copper(8.96, "density of copper 8.96 g/cm3 at 20 C, handbook value");

    /** Mass of the conductor in g/m; 1 mm² of 1 m is 1 cm³. */
    public double gramsPerMetre(ConductorSize size) {
        return size.areaMm2() * densityGramsPerCm3;
    }

    /** Mass of the conductor of a piece of wire in g. */
    public double grams(ConductorSize size, Length length) {
        return gramsPerMetre(size) * length.toMetres();
    }
}
