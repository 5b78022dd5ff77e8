// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.function.IntFunction;
import org.loomwright.quantity.Length;

/**
 * One branch seen from each position of its breakout, by the index of the position.
 *
 * <p>{@code least[p]} is the least length that reaches in every vehicle, {@link #NOWHERE} where none is allowed;
 * {@code spare[p]} what any vehicle uses up at least, so that the excess of a length is the longest it may be made less
 * that.
 */
final class Legs {

    /** No length is allowed. */
    static final long NOWHERE = Long.MAX_VALUE;

    final PlanBranch branch;
    final long[] least;
    final long[] spare;
    private final RunTable[] children;
    private final IntFunction<RunTable> child;

    private Legs(PlanBranch branch, int positions, IntFunction<RunTable> child) {
        this.branch = branch;
        this.least = new long[positions];
        this.spare = new long[positions];
        this.children = branch.stops().isEmpty() ? null : new RunTable[positions];
        this.child = child;
    }

    /**
     * Looks at a branch.
     *
     * @param at     positions of its breakout
     * @param shifts by vehicle, how much of the run was used up before its start
     * @param making the cutting grid
     * @param most   the longest run that is looked at, for breakouts on the branch
     */
    static Legs of(PlanBranch branch, long[] at, long[] shifts, Making making, long[] grid) {
        Legs legs = new Legs(branch, at.length, p -> {
            long[] used = new long[shifts.length];
            branch.asks().forEach(ask -> used[ask.vehicle()] = Math.abs(at[p] - ask.station() - shifts[ask.vehicle()]));
            return new RunTable(branch.stops(), used, making, grid);
        });
        long[] stations = branch.asks().stream().mapToLong(ask -> ask.station() + shifts[ask.vehicle()]).toArray();
        for (int p = 0; p < at.length; p++) {
            legs.look(p, at[p], stations, making);
        }
        return legs;
    }

    private void look(int p, long at, long[] stations, Making making) {
        long reach = 0;
        long used = Long.MAX_VALUE;
        long back = 0;
        for (int i = 0; i < stations.length; i++) {
            Ask ask = branch.asks().get(i);
            long run = Math.abs(at - stations[i]);
            back = Math.max(back, run);
            reach = Math.max(reach, run + ask.reach());
            used = Math.min(used, run + ask.spare());
        }
        least[p] = back > branch.backLimit() ? NOWHERE : branch.pinned().isPresent() ? pinned(reach)
                : making.least(branch.made(), reach);
        spare[p] = used;
    }

    /** A length that is fixed need not be on the grid: it reaches or it does not. */
    private long pinned(long reach) {
        long length = branch.pinned().getAsLong();
        return length - branch.made().of(new Length(length)).minus().nanometres() >= reach ? length : NOWHERE;
    }

    /** The breakouts on the branch, with the branch's own breakout at a position; null when it has none. */
    RunTable children(int p) {
        if (children == null) {
            return null;
        }
        if (children[p] == null) {
            children[p] = child.apply(p);
        }
        return children[p];
    }

    /**
     * The length that the branch takes at a position.
     *
     * @param atLeast the breakouts on it need so much
     * @param limit   the largest excess
     * @return {@link #NOWHERE} when no length is allowed
     */
    long length(int p, long atLeast, long limit) {
        if (least[p] == NOWHERE) {
            return NOWHERE;
        }
        long needed = Math.max(least[p], atLeast);
        long length = branch.pinned().orElse(needed);
        return length < needed || length > branch.longest() || !branch.asks().isEmpty()
                && excess(p, length) > Math.min(limit, branch.excessLimit()) ? NOWHERE : length;
    }

    /** The largest excess of a length in any vehicle; needs an ask. */
    long excess(int p, long length) {
        return Making.longest(branch.made(), length) - spare[p];
    }
}
