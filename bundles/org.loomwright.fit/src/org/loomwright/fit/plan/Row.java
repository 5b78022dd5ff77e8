// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.nio.LongBuffer;
import java.util.Arrays;

/**
 * An inequality in whole numbers: the sum of some unknowns, each with its factor, is at most a number.
 *
 * @param unknowns rising
 * @param factors  their factors
 * @param most     the number
 * @param local    true when it holds for a part of what is searched only
 */
record Row(int[] unknowns, long[] factors, long most, boolean local) {

    /** One unknown is at most a number; at least, for a factor of -1. */
    static Row of(int unknown, long factor, long most, boolean local) {
        return new Row(new int[] {unknown}, new long[] {factor}, most, local);
    }

    /** Something that is equal for equal inequalities. */
    LongBuffer plain() {
        LongBuffer plain = LongBuffer.allocate(2 * unknowns.length + 1);
        Arrays.stream(unknowns).forEach(plain::put);
        return plain.put(factors).put(most).flip();
    }

    /**
     * A tuck's lower bound is at most another's upper bound in the same vehicle, and what the slack between them adds.
     *
     * @param room upper constant less lower constant plus slack, in nanometres
     */
    static Row of(SlackRun run, TuckBound lower, TuckBound upper, long room, boolean local) {
        return new RowSum().add(run, lower, 1).add(run, upper, -1).atMost(Math.floorDiv(room, run.grid), 1, local);
    }

    double slack(double[] x) {
        double sum = most;
        for (int i = 0; i < unknowns.length; i++) {
            sum -= factors[i] * x[unknowns[i]];
        }
        return sum;
    }

    boolean holds(long[] x) {
        long sum = 0;
        for (int i = 0; i < unknowns.length; i++) {
            sum = Math.addExact(sum, Math.multiplyExact(factors[i], x[unknowns[i]]));
        }
        return sum <= most;
    }
}
