// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import org.loomwright.quantity.Length;

/**
 * The limits of the rules of this package and what each rests on.
 *
 * @param spliceSpacing      least distance between two splices on one run
 * @param spliceSpacingBasis where that comes from
 * @param spliceClear        least distance of a splice from an opening, a barrier or a stretch that flexes
 * @param spliceClearBasis   where that comes from
 * @param supports           greatest distance between two supports of a run
 * @param supportsBasis      where that comes from
 * @param bendTimes          least inner radius of a bend, in diameters of the wire over its insulation
 * @param bendBasis          where that comes from
 * @param shapes             the most different bundles at one opening that are told apart
 */
record RoutingLimits(Length spliceSpacing, String spliceSpacingBasis, Length spliceClear, String spliceClearBasis,
        Length supports, String supportsBasis, int bendTimes, String bendBasis, int shapes) {

    /** Splices 40 mm apart, 50 mm from an opening; supports at most 610 mm (24 in) apart; bends of 10 diameters. */
    static RoutingLimits usual() {
        return new RoutingLimits(Length.ofMillimetres(40), "common practice: a crimped splice under shrink is about"
                + " 40 mm long", Length.ofMillimetres(50), "common practice: a splice is stiff and thick, and cracks"
                + " where a bundle bends or is squeezed", Length.ofMillimetres(610),
                "FAA AC 43.13-1B 11-96a: supports at most 24 in apart; 46 CFR 183.340(b)(4): 610 mm (24 in)", 10,
                "TM 1-1500-204-23-4: bend radius at least 10 times the outside diameter of the wire; FAA AC 43.13-1B"
                + " the same for the thickest wire of a bundle, from memory", 256);
    }
}
