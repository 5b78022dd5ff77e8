// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;

/**
 * A part of what is to be searched.
 *
 * @param low     by unknown, its least value
 * @param high    its greatest value
 * @param sides   by ask: 1 behind, -1 before its station, 0 either
 * @param rows    inequalities that hold in this part
 * @param bound   no figures in this part have a lesser sum
 * @param touched the breakout whose range or sides are narrower than in the part that this one is of; -1 for none
 * @param cause   what was chosen to get here: an ask, or the number of asks and an unknown; -1 for all
 * @param limit   of the excess, under which the part was made
 */
record SlackNode(long[] low, long[] high, byte[] sides, Tucks tucks, List<Row> rows, double bound, int touched,
        int cause, long limit) {

    /** A part of it in which the breakout lies on one side of an ask's station. */
    SlackNode sided(int ask, int stop, boolean behind, List<Row> with, double least) {
        byte[] chosen = sides.clone();
        chosen[ask] = (byte) (behind ? 1 : -1);
        return new SlackNode(low, high, chosen, tucks, with, least, stop, ask, limit);
    }

    /** A part of it in which an unknown is at most a value. */
    SlackNode atMost(int unknown, long value, int stop, List<Row> with, double least) {
        long[] lower = high.clone();
        lower[unknown] = value;
        return new SlackNode(low, lower, sides, tucks, with, least, stop, sides.length + unknown, limit);
    }

    /** A part of it in which an unknown is at least a value. */
    SlackNode atLeast(int unknown, long value, int stop, List<Row> with, double least) {
        long[] higher = low.clone();
        higher[unknown] = value;
        return new SlackNode(higher, high, sides, tucks, with, least, stop, sides.length + unknown, limit);
    }
}
