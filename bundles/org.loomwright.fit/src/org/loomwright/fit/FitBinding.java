// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import org.loomwright.quantity.Length;

/**
 * What binds a length of the harness: the place and the vehicles with the least margin.
 *
 * @param kind   what sort of length it is
 * @param name   the branch, or the breakout
 * @param row    index of the row with the least margin
 * @param column index of its column, the first of several
 * @param margin the margin there
 */
public record FitBinding(Kind kind, String name, int row, int column, Length margin) {

    /** Which length is bound. */
    public enum Kind {
        /** The length of a branch. */
        BRANCH,
        /** The station of a breakout on the trunk. */
        BREAKOUT
    }
}
