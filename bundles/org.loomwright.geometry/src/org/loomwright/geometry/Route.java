// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.List;

/**
 * The way along the harness between two spots.
 *
 * @param from   where it starts
 * @param to     where it ends
 * @param legs   one for each run that it uses, in order; none when both are the same spot
 * @param length all of it; unknown when one leg is
 */
public record Route(Spot from, Spot to, List<Leg> legs, Distance length) {

    public Route {
        legs = List.copyOf(legs);
    }

    /**
     * The part of a route on one run.
     *
     * @param run    the trunk or branch
     * @param from   where the route enters it
     * @param to     where the route leaves it
     * @param length of this part
     */
    public record Leg(String run, Spot from, Spot to, Distance length) {
    }
}
