// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.List;

/**
 * How far a branch has to run along the vehicle's trunk, or along the branch that it leaves, before it comes to where
 * the factory's branch leaves it: a function of where the breakout on the trunk comes to lie. All figures in
 * nanometres.
 */
public sealed interface Way {

    /**
     * The run in the vehicle when the trunk's breakout lies there.
     *
     * @param position station of the breakout of the trunk in the vehicle, not negative
     */
    long along(long position);

    /**
     * A branch that leaves the trunk.
     *
     * @param station where the factory's branch leaves the same trunk; negative when it leaves a trunk that runs
     *                another way from the datum
     */
    record Direct(long station) implements Way {

        @Override
        public long along(long position) {
            return Math.abs(position - station);
        }
    }

    /**
     * A branch that leaves a branch. The parent lies along the vehicle's way to the parent's place, so where it breaks
     * out depends on how much of the parent was used up on the trunk.
     *
     * @param trunk name of the vehicle's trunk in which the harness's trunk lies; empty for a parent that leaves the
     *              datum
     * @param hops  from the trunk outwards: the vehicle's way to the parent's place, and the breakout's station on the
     *              parent
     * @param leave where the factory's branch leaves the vehicle's runs that the harness follows
     */
    record OffBranch(String trunk, List<Hop> hops, VehiclePath leave) implements Way {

        public OffBranch {
            hops = List.copyOf(hops);
        }

        @Override
        public long along(long position) {
            VehiclePath at = VehiclePath.of(trunk, position);
            for (Hop hop : hops) {
                at = at.towards(hop.place(), hop.station());
            }
            return at.distance(leave);
        }
    }

    /** One parent branch: the vehicle's way to its place, and the station on it of the breakout that leaves it. */
    record Hop(VehiclePath place, long station) {
    }
}
