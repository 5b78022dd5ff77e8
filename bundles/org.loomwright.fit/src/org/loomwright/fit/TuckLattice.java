// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.List;
import org.loomwright.quantity.Length;

/** The lattice on which slack is taken up, so that whoever plans a harness can lay it as the judge does. */
public final class TuckLattice {

    /** Half of 0.05 mm, in nanometres. */
    static final long HALF_UNIT = 25_000;

    /** The most lattice points, over all breakouts of a trunk. */
    static final long MOST_POINTS = 1 << 19;

    private TuckLattice() {
    }

    /** The step for a trunk in nanometres, by the slack before each of its breakouts. */
    public static long step(List<Length> slacks) {
        return step(slacks, HALF_UNIT);
    }

    static long step(List<Length> slacks, long finest) {
        long step = finest;
        while (points(slacks, step) > MOST_POINTS) {
            step *= 2;
        }
        return step;
    }

    private static long points(List<Length> slacks, long step) {
        long all = 0;
        long reach = 0;
        for (Length slack : slacks) {
            reach += slack.nanometres() / step;
            all += reach + 1;
        }
        return slacks.size() > MOST_POINTS ? 0 : all;
    }
}
