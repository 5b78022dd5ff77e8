// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;

/**
 * A trunk from the datum, with its breakouts in order.
 *
 * @param name    its name; empty for the datum itself, whose one stop stands at 0
 * @param stops   its breakouts
 * @param lattice slack is taken up in multiples of this, in nanometres
 */
public record PlanTrunk(String name, List<PlanStop> stops, long lattice) {

    /** A trunk whose slack, if it has any, is taken up by the nanometre. */
    public PlanTrunk(String name, List<PlanStop> stops) {
        this(name, stops, 1);
    }

    public PlanTrunk {
        stops = List.copyOf(stops);
        if (lattice <= 0) {
            throw new IllegalArgumentException("a lattice is positive");
        }
    }
}
