// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import org.loomwright.harness.Ours.Objective;

/**
 * A harness whose stations and lengths are to be found.
 *
 * @param trunks   its trunks, which meet at the datum
 * @param vehicles number of vehicle geometries; asks carry numbers below it
 * @param grid     stations and lengths are multiples of this, in nanometres
 * @param order    the objectives, the most important first; each at most once
 */
public record PlanProblem(List<PlanTrunk> trunks, int vehicles, long grid, List<Objective> order) {

    public PlanProblem {
        trunks = List.copyOf(trunks);
        order = List.copyOf(order);
        if (grid <= 0 || order.stream().distinct().count() < order.size()) {
            throw new IllegalArgumentException("a grid is positive and an objective stands once");
        }
    }
}
