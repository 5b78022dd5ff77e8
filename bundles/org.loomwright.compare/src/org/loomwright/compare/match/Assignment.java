// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.Arrays;

/**
 * The assignment of rows to columns with the greatest sum of weights, each row and column used at most once; a weight
 * of 0 means that the two do not go together. Successive shortest augmenting paths with potentials (the Hungarian
 * method, after H. W. Kuhn, Naval Research Logistics Quarterly 2, 1955), O(n³). Whole numbers, so there is nothing to
 * round; of equal sums the same one is found in every run.
 */
final class Assignment {

    private static final long FAR = Long.MAX_VALUE / 4;

    private Assignment() {
    }

    /** The column of each row, or -1. */
    static int[] best(long[][] weights) {
        int rows = weights.length;
        int columns = rows == 0 ? 0 : weights[0].length;
        int size = Math.max(rows, columns);
        long top = Arrays.stream(weights).flatMapToLong(Arrays::stream).max().orElse(0);
        long[] ofRow = new long[size + 1];
        long[] ofColumn = new long[size + 1];
        int[] rowAt = new int[size + 1];
        int[] back = new int[size + 1];
        for (int row = 1; row <= size; row++) {
            rowAt[0] = row;
            int column = 0;
            long[] least = new long[size + 1];
            Arrays.fill(least, FAR);
            boolean[] done = new boolean[size + 1];
            while (rowAt[column] != 0) {
                done[column] = true;
                int at = rowAt[column];
                int next = 0;
                long delta = FAR;
                for (int j = 1; j <= size; j++) {
                    if (!done[j]) {
                        long weight = at <= rows && j <= columns ? weights[at - 1][j - 1] : 0;
                        long cost = top - weight - ofRow[at] - ofColumn[j];
                        if (cost < least[j]) {
                            least[j] = cost;
                            back[j] = column;
                        }
                        if (least[j] < delta) {
                            delta = least[j];
                            next = j;
                        }
                    }
                }
                for (int j = 0; j <= size; j++) {
                    if (done[j]) {
                        ofRow[rowAt[j]] += delta;
                        ofColumn[j] -= delta;
                    } else {
                        least[j] -= delta;
                    }
                }
                column = next;
            }
            while (column != 0) {
                rowAt[column] = rowAt[back[column]];
                column = back[column];
            }
        }
        int[] columnOf = new int[rows];
        Arrays.fill(columnOf, -1);
        for (int j = 1; j <= columns; j++) {
            if (rowAt[j] >= 1 && rowAt[j] <= rows && weights[rowAt[j] - 1][j - 1] > 0) {
                columnOf[rowAt[j] - 1] = j - 1;
            }
        }
        return columnOf;
    }
}
