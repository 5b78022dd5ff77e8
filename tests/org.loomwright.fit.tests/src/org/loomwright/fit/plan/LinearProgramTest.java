// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Our own solver of linear programs. */
class LinearProgramTest {

    private static final int PROGRAMS = 2_000;

    private static Row row(Random random, int count) {
        RowSum sum = new RowSum();
        for (int i = 0; i < 1 + random.nextInt(4); i++) {
            sum.add(random.nextInt(count), random.nextInt(7) - 3);
        }
        return sum.atMost(random.nextInt(60) - 15, 1, false);
    }

    /**
     * ojAlgo, a general-purpose library, solves the same programs; each is solved again with further inequalities and
     * narrower ranges, as branching does, so that what is kept from the program before is tried too.
     */
    @Test
    @Tag("outside")
    void theLibraryFindsTheSame() {
        Random random = new Random(11);
        int none = 0;
        for (int p = 0; p < PROGRAMS; p++) {
            int count = 2 + random.nextInt(8);
            double[] objective = new double[count];
            long[] low = new long[count];
            long[] high = new long[count];
            for (int i = 0; i < count; i++) {
                objective[i] = random.nextInt(21) - 7;
                low[i] = random.nextInt(10) - 5;
                high[i] = low[i] + random.nextInt(30);
            }
            DualSimplex own = new DualSimplex(objective);
            List<Row> rows = new ArrayList<>();
            for (int round = 0; round < 6; round++) {
                for (int i = 0; i < 3; i++) {
                    Row row = row(random, count);
                    if (row.unknowns().length > 0) {
                        rows.add(row);
                    }
                }
                int x = random.nextInt(count);
                high[x] -= (high[x] - low[x]) / 3;
                if (round == 4) {
                    rows.removeFirst();
                }
                none += same(objective, own.solve(low, high, rows), new LibraryProgram(objective).solve(low, high,
                        rows), low, high, rows, "program " + p + ", round " + round) ? 0 : 1;
            }
        }
        assertTrue(none > PROGRAMS / 4 && none < 5 * PROGRAMS, none + " without figures");
    }

    /** True for figures, and when the library did not find out. */
    private static boolean same(double[] objective, LinearProgram.Answer own, LinearProgram.Answer library, long[] low,
            long[] high, List<Row> rows, String name) {
        if (own instanceof LinearProgram.Answer.Least least) {
            double[] x = least.figures();
            rows.forEach(row -> assertTrue(row.slack(x) > -1e-6, name));
            for (int i = 0; i < x.length; i++) {
                assertTrue(x[i] > low[i] - 1e-6 && x[i] < high[i] + 1e-6, name);
            }
            if (library instanceof LinearProgram.Answer.Least other) {
                assertEquals(sum(objective, other.figures()), sum(objective, x), 1e-6, name);
            }
        }
        assertTrue(library instanceof LinearProgram.Answer.NotKnown || own.getClass() == library.getClass(), name
                + ": " + own + ", " + library);
        return !(own instanceof LinearProgram.Answer.Nothing);
    }

    private static double sum(double[] objective, double[] x) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += objective[i] * x[i];
        }
        return sum;
    }

    /** By hand: x + y at least 3.5 with x to 2 and y to 9, least 2 x + y: x = 0, y = 3.5 as 2 x + 2 y at least 7. */
    @Test
    void aSumOnPaper() {
        DualSimplex own = new DualSimplex(new double[] {2, 1});
        Row least = new Row(new int[] {0, 1}, new long[] {-2, -2}, -7, false);
        long[] low = {0, 0};
        assertEquals("[0.0, 3.5]", figures(own.solve(low, new long[] {2, 9}, List.of(least))));
        assertEquals("[1.5, 2.0]", figures(own.solve(low, new long[] {2, 2}, List.of(least))));
        assertEquals(new LinearProgram.Answer.Nothing(), own.solve(low, new long[] {1, 2}, List.of(least)));
        assertEquals("[0.0, 3.5]", figures(own.solve(low, new long[] {2, 9}, List.of(least))));
    }

    private static String figures(LinearProgram.Answer answer) {
        return Arrays.toString(((LinearProgram.Answer.Least) answer).figures());
    }
}
