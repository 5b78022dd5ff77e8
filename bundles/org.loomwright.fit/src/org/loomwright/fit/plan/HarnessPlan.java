// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Map;
import java.util.Optional;

/**
 * The harness that was found, or that there is none.
 *
 * @param found   the best harness that was found
 * @param settled true when it is proved to be the best, or that there is none
 * @param work    how much work it was
 */
public record HarnessPlan(Optional<Solution> found, boolean settled, Work work) {

    /** True when it is proved that no harness fits all vehicles. */
    public boolean isImpossible() {
        return found.isEmpty() && settled;
    }

    /**
     * A harness.
     *
     * @param stations station of each breakout, in nanometres from the start of its run
     * @param lengths  length of each branch that somebody asks for, in nanometres
     * @param excess   the largest excess in any vehicle, in nanometres
     * @param copper   mass of all wires and covering, in mg/m times nanometres
     * @param length   sum of branch lengths over vehicles, in nanometres
     * @param bounds   what these three are at least
     */
    public record Solution(Map<String, Long> stations, Map<String, Long> lengths, long excess, long copper,
            long length, Bounds bounds) {

        public Solution {
            stations = Map.copyOf(stations);
            lengths = Map.copyOf(lengths);
        }

        /** True when each figure is proved to be the least under those that count more. */
        public boolean isBest() {
            return excess == bounds.excess() && copper == bounds.copper() && length == bounds.length();
        }
    }

    /**
     * What no harness is below, each under the objectives that count more as they were found.
     *
     * @param excess in nanometres
     * @param copper in mg/m times nanometres; {@link Long#MIN_VALUE} when nothing is known
     * @param length in nanometres; {@link Long#MIN_VALUE} when nothing is known
     */
    public record Bounds(long excess, long copper, long length) {
    }

    /**
     * Work done.
     *
     * @param passes    runs of the dynamic programme over a trunk
     * @param positions positions of breakouts that were looked at, and layings into a vehicle
     * @param programs  linear programs
     * @param nodes     parts of what was searched with them
     */
    public record Work(long passes, long positions, long programs, long nodes) {

        static final Work NONE = new Work(0, 0, 0, 0);

        Work plus(Work other) {
            return new Work(passes + other.passes, positions + other.positions, programs + other.programs,
                    nodes + other.nodes);
        }
    }
}
