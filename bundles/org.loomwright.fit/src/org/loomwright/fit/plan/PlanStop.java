// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;

/**
 * A breakout whose station is to be found. Lengths in nanometres.
 *
 * @param name     its name
 * @param first    the least station that it may have: behind the barriers that are before it
 * @param last     the greatest station; the same as {@code first} for one that a person has fixed
 * @param leastGap least distance from the breakout before it, or from the start of the run
 * @param mostGap  greatest distance from there
 * @param slack    how much of the stretch before it may be taken up in a vehicle; the stretch is at least that long
 * @param weight   mass of what runs through the stretch before it, wires and covering, in mg/m
 * @param branches what leaves here
 */
public record PlanStop(String name, long first, long last, long leastGap, long mostGap, long slack,
        long weight, List<PlanBranch> branches) {

    public PlanStop {
        branches = List.copyOf(branches);
        if (first < 0 || first > last || leastGap < 0 || leastGap > mostGap || slack < 0 || slack > leastGap) {
            throw new IllegalArgumentException("stop " + name + " has an empty range");
        }
    }

    /** The same breakout with other branches. */
    PlanStop with(List<PlanBranch> others) {
        return new PlanStop(name, first, last, leastGap, mostGap, slack, weight, others);
    }
}
