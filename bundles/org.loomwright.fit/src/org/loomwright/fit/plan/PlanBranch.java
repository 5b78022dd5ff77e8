// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.OptionalLong;
import org.loomwright.quantity.CutTolerance;

/**
 * A branch whose length is to be found. Lengths in nanometres.
 *
 * @param name        its name
 * @param made        how far it may be made shorter and longer, by its length
 * @param pinned      its length, where a person has fixed it
 * @param excessLimit the longest excess
 * @param backLimit   the longest run along the trunk
 * @param longest     the longest that it may be, for parking where it is capped
 * @param weight      mass of its wires and covering, in mg/m
 * @param count       how many vehicles have the place; weighs its length among others
 * @param asks        what the vehicles ask
 * @param stops       breakouts on it, in order; stations count from its start
 */
public record PlanBranch(String name, CutTolerance made, OptionalLong pinned, long excessLimit, long backLimit,
        long longest, long weight, long count, List<Ask> asks, List<PlanStop> stops) {

    public PlanBranch {
        asks = List.copyOf(asks);
        stops = List.copyOf(stops);
    }

    /** The same branch of which other things are asked. */
    PlanBranch with(List<Ask> others, List<PlanStop> onIt) {
        return new PlanBranch(name, made, pinned, excessLimit, backLimit, longest, weight, count, others, onIt);
    }
}
