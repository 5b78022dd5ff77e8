// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The best assignment, held against trying all of them. */
class AssignmentTest {

    @Test
    void noAssignmentIsBetter() {
        Random random = new Random(1955);
        for (int round = 0; round < 400; round++) {
            int rows = 1 + random.nextInt(5);
            int columns = 1 + random.nextInt(5);
            long[][] weights = new long[rows][columns];
            for (long[] row : weights) {
                Arrays.setAll(row, i -> Math.max(0, random.nextInt(30) - 8));
            }
            int[] best = Assignment.best(weights);
            assertEquals(greatest(weights, 0, 0), sum(weights, best), Arrays.deepToString(weights));
        }
    }

    @Test
    void aWeightOfNothingIsNoPartner() {
        assertArrayEquals(new int[] {-1, 0}, Assignment.best(new long[][] {{0}, {3}}));
        assertArrayEquals(new int[] {-1}, Assignment.best(new long[][] {{0}}));
        assertArrayEquals(new int[0], Assignment.best(new long[0][0]));
    }

    /** Best pair first would take 10 and be left with 1. */
    @Test
    void theSumCountsAndNotTheBestPair() {
        assertArrayEquals(new int[] {1, 0}, Assignment.best(new long[][] {{10, 9}, {9, 1}}));
    }

    private static long sum(long[][] weights, int[] columnOf) {
        long sum = 0;
        int used = 0;
        for (int i = 0; i < columnOf.length; i++) {
            if (columnOf[i] >= 0) {
                assertTrue((used & 1 << columnOf[i]) == 0, "a column is taken twice");
                used |= 1 << columnOf[i];
                sum += weights[i][columnOf[i]];
            }
        }
        return sum;
    }

    private static long greatest(long[][] weights, int row, int used) {
        if (row == weights.length) {
            return 0;
        }
        long best = greatest(weights, row + 1, used);
        for (int j = 0; j < weights[row].length; j++) {
            if ((used & 1 << j) == 0) {
                best = Math.max(best, weights[row][j] + greatest(weights, row + 1, used | 1 << j));
            }
        }
        return best;
    }
}
