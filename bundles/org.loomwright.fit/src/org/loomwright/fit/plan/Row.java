// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * An inequality in whole numbers: the sum of some unknowns, each with its factor, is at most a number.
 *
 * @param unknowns rising
 * @param factors  their factors
 * @param most     the number
 * @param local    true when it holds for a part of what is searched only
 */
record Row(int[] unknowns, long[] factors, long most, boolean local) {

    /** An inequality in lowest terms. */
    static Row of(TreeMap<Integer, Long> factors, long most, boolean local) {
        factors.values().removeIf(each -> each == 0);
        long divisor = Math.max(1, factors.values().stream().reduce(0L, SlackSearch::divisor));
        return new Row(factors.keySet().stream().mapToInt(each -> each).toArray(),
                factors.values().stream().mapToLong(each -> each / divisor).toArray(), Math.floorDiv(most, divisor),
                local);
    }

    /** One unknown is at most a number; at least, for a factor of -1. */
    static Row of(int unknown, long factor, long most, boolean local) {
        return new Row(new int[] {unknown}, new long[] {factor}, most, local);
    }

    /** Something that is equal for equal inequalities. */
    List<Object> plain() {
        return List.of(Arrays.toString(unknowns), Arrays.toString(factors), most);
    }

    /**
     * A tuck's lower bound is at most another's upper bound in the same vehicle, and what the slack between them adds.
     *
     * @param room upper constant less lower constant plus slack, in nanometres
     */
    static Row of(SlackRun run, TuckBound lower, TuckBound upper, long room, boolean local) {
        TreeMap<Integer, Long> factors = new TreeMap<>();
        add(run, factors, lower, 1);
        add(run, factors, upper, -1);
        return of(factors, Math.floorDiv(room, run.grid), local);
    }

    private static void add(SlackRun run, TreeMap<Integer, Long> factors, TuckBound bound, long sign) {
        if (bound.stop() >= 0) {
            factors.merge(bound.stop(), sign, Long::sum);
            factors.merge(run.legs.get(bound.leg()).unknown(), sign * bound.length(), Long::sum);
        }
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
