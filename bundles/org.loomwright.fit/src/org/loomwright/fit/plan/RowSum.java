// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/** Adds up the left side of an inequality in whole numbers; each step takes O(unknowns in it). */
final class RowSum {

    private int[] unknowns = new int[8];
    private long[] factors = new long[8];
    private int count;

    RowSum add(int unknown, long factor) {
        int at = count;
        while (at > 0 && unknowns[at - 1] >= unknown) {
            at--;
        }
        if (at < count && unknowns[at] == unknown) {
            factors[at] += factor;
            return this;
        }
        if (count == unknowns.length) {
            unknowns = Arrays.copyOf(unknowns, 2 * count);
            factors = Arrays.copyOf(factors, 2 * count);
        }
        System.arraycopy(unknowns, at, unknowns, at + 1, count - at);
        System.arraycopy(factors, at, factors, at + 1, count - at);
        unknowns[at] = unknown;
        factors[at] = factor;
        count++;
        return this;
    }

    RowSum add(Row row) {
        for (int i = 0; i < row.unknowns().length; i++) {
            add(row.unknowns()[i], row.factors()[i]);
        }
        return this;
    }

    /** The station and the length that a bound of a tuck goes by, so many times. */
    RowSum add(SlackRun run, TuckBound bound, long times) {
        if (bound.stop() >= 0) {
            add(bound.stop(), times);
            add(run.legs.get(bound.leg()).unknown(), times * bound.length());
        }
        return this;
    }

    /** The inequality in lowest terms, after all factors were divided by a number that divides them. */
    Row atMost(long most, long divisor, boolean local) {
        int kept = 0;
        long common = 0;
        for (int i = 0; i < count; i++) {
            if (factors[i] != 0) {
                unknowns[kept] = unknowns[i];
                factors[kept++] = factors[i] / divisor;
                common = SlackSearch.divisor(common, factors[i] / divisor);
            }
        }
        long lowest = Math.max(1, common);
        int[] left = Arrays.copyOf(unknowns, kept);
        long[] times = Arrays.copyOf(factors, kept);
        for (int i = 0; i < kept; i++) {
            times[i] /= lowest;
        }
        return new Row(left, times, Math.floorDiv(Math.floorDiv(most, divisor), lowest), local);
    }
}
