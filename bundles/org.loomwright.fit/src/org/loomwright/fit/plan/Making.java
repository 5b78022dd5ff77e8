// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;

/** Lengths on the cutting grid and what comes of them when they are made. In nanometres. */
final class Making {

    private static final int MOST_ROUNDS = 64;

    private final long grid;

    Making(long grid) {
        this.grid = grid;
    }

    /** The next multiple of the grid that is not below. */
    long up(long length) {
        return Math.multiplyExact(Math.ceilDiv(length, grid), grid);
    }

    /** The least length that is at least so long however short it is made; {@link Long#MAX_VALUE} when none is. */
    long least(CutTolerance made, long atLeast) {
        long length = up(Math.max(0, atLeast));
        for (int round = 0; round < MOST_ROUNDS; round++) {
            long minus = made.of(new Length(length)).minus().nanometres();
            if (length - minus >= atLeast) {
                return length;
            }
            length = up(atLeast + minus);
        }
        return Long.MAX_VALUE;
    }

    /** A length when it is made as long as it may be. */
    static long longest(CutTolerance made, long length) {
        return length + made.of(new Length(length)).plus().nanometres();
    }
}
