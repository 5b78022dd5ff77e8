// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;

/**
 * A stiff trunk from the datum, with its breakouts in order.
 *
 * @param name  its name; empty for the datum itself, whose one stop stands at 0
 * @param stops its breakouts
 */
public record PlanTrunk(String name, List<PlanStop> stops) {

    public PlanTrunk {
        stops = List.copyOf(stops);
    }
}
