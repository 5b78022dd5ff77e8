// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Map;
import java.util.Optional;

/**
 * The harness that was found, or that there is none.
 *
 * @param found the best harness; empty when none fits all vehicles
 * @param work  how much work it was
 */
public record HarnessPlan(Optional<Solution> found, Work work) {

    /**
     * A harness, proved to be the best: each value below is its bound.
     *
     * @param stations station of each breakout, in nanometres from the start of its run
     * @param lengths  length of each branch that somebody asks for, in nanometres
     * @param excess   the largest excess in any vehicle, in nanometres
     * @param copper   mass of all wires and covering, in mg/m times nanometres
     * @param length   sum of branch lengths over vehicles, in nanometres
     */
    public record Solution(Map<String, Long> stations, Map<String, Long> lengths, long excess, long copper,
            long length) {

        public Solution {
            stations = Map.copyOf(stations);
            lengths = Map.copyOf(lengths);
        }
    }

    /**
     * Work done.
     *
     * @param passes    runs of the dynamic programme over a trunk
     * @param positions positions of breakouts that were looked at
     */
    public record Work(long passes, long positions) {
    }
}
