// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.harness.Ours.Objective;

/** The search along one trunk. Trunks are independent of each other but for the excess, which each may use up. */
interface TrunkSearch {

    /**
     * A largest excess and what it is at least, in nanometres.
     *
     * @param value one that a harness has
     * @param bound no harness has less
     */
    record Excess(long value, long bound) {
    }

    /**
     * Stations and lengths of a trunk.
     *
     * @param excess the largest excess
     * @param gaps   by sum, how much less of it there may be under the sums before it; absent where it is the least
     */
    record Part(Map<String, Long> stations, Map<String, Long> lengths, long excess, Map<Objective, Long> gaps) {
    }

    /** Returns whether some harness fits; empty when that was not found out. */
    Optional<Boolean> fits();

    /** The least largest excess under which the sums before it are not made worse; empty when none was found. */
    Optional<Excess> leastExcess(List<Objective> before);

    /** The harness with the least sums, the more important first, under a limit that one keeps. */
    Part best(long limit, List<Objective> sums);

    /** All work that was done. */
    HarnessPlan.Work work();
}
