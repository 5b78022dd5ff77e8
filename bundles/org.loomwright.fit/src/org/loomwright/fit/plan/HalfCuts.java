// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Inequalities that follow for whole numbers: where two or three inequalities add up to one with even factors and an
 * odd number, half of it may be rounded down (Chvátal-Gomory cuts with multipliers of one half, after Caprara and
 * Fischetti, Mathematical Programming 74, 1996). Stations and lengths come out on half grid steps without them.
 */
final class HalfCuts {

    private static final double ROOM = 0.9;
    private static final int MOST = 40;

    private final double[] x;
    private final Row[] tight;
    private final double[] slack;
    /** By inequality, which unknowns have odd factors: as bits, and mixed to one number. */
    private final long[][] odd;
    private final long[] mixed;
    /** By odd factors and parity, the number of the tightest inequality; -1 for none. Probed one by one. */
    private final int[] table;

    /**
     * @param rows inequalities that hold
     * @param x    figures that fulfil them
     */
    HalfCuts(List<Row> rows, double[] x) {
        this.x = x;
        this.tight = rows.stream().filter(row -> row.slack(x) < ROOM).toArray(Row[]::new);
        this.slack = Arrays.stream(tight).mapToDouble(row -> row.slack(x)).toArray();
        this.odd = new long[tight.length][x.length / Long.SIZE + 1];
        this.mixed = new long[tight.length];
        this.table = new int[4 * Integer.highestOneBit(tight.length + 1)];
        Arrays.fill(table, -1);
        for (int i = 0; i < tight.length; i++) {
            for (int u = 0; u < tight[i].unknowns().length; u++) {
                if (tight[i].factors()[u] % 2 != 0) {
                    int unknown = tight[i].unknowns()[u];
                    odd[i][unknown / Long.SIZE] |= 1L << unknown;
                    mixed[i] ^= mix(unknown);
                }
            }
            int place = place(odd[i], mixed[i], parity(i));
            if (table[place] < 0 || slack[i] < slack[table[place]]) {
                table[place] = i;
            }
        }
    }

    private int parity(int i) {
        return (int) Math.floorMod(tight[i].most(), 2L);
    }

    /** Spreads numbers over all bits (the finalizer of Steele, Lea and Flood, OOPSLA 2014). */
    private static long mix(int unknown) {
        long z = (unknown + 1) * 0x9e3779b97f4a7c15L;
        z = (z ^ z >>> 30) * 0xbf58476d1ce4e5b9L;
        z = (z ^ z >>> 27) * 0x94d049bb133111ebL;
        return z ^ z >>> 31;
    }

    /** Where the tightest inequality with some odd factors and a parity stands, or would. */
    private int place(long[] bits, long mix, int parity) {
        int place = (int) (mix + parity) & table.length - 1;
        while (table[place] >= 0 && (mixed[table[place]] != mix || parity(table[place]) != parity
                || !Arrays.equals(odd[table[place]], bits))) {
            place = place + 1 & table.length - 1;
        }
        return place;
    }

    private record Cut(Row row, double broken) {
    }

    /** The inequalities that are broken most. */
    List<Row> broken(double little) {
        List<Cut> cuts = new ArrayList<>();
        long[] rest = new long[x.length / Long.SIZE + 1];
        for (int i = 0; i < tight.length; i++) {
            int pair = table[place(odd[i], mixed[i], 1 - parity(i))];
            if (pair > i) {
                add(cuts, little, i, pair);
            }
            for (int j = i + 1; j < tight.length; j++) {
                if (slack[i] + slack[j] < ROOM && intersects(odd[i], odd[j])) {
                    for (int word = 0; word < rest.length; word++) {
                        rest[word] = odd[i][word] ^ odd[j][word];
                    }
                    int third = table[place(rest, mixed[i] ^ mixed[j], 1 - (parity(i) + parity(j)) % 2)];
                    if (third >= 0 && third != i && third != j) {
                        add(cuts, little, i, j, third);
                    }
                }
            }
        }
        cuts.sort(Comparator.comparingDouble((Cut cut) -> -cut.broken));
        Set<LongBuffer> found = new HashSet<>();
        return cuts.stream().map(Cut::row).filter(row -> found.add(row.plain())).limit(MOST).toList();
    }

    private static boolean intersects(long[] one, long[] other) {
        for (int i = 0; i < one.length; i++) {
            if ((one[i] & other[i]) != 0) {
                return true;
            }
        }
        return false;
    }

    private void add(List<Cut> cuts, double little, int... from) {
        double left = 0;
        for (int each : from) {
            left += slack[each];
        }
        if ((1 - left) / 2 <= little) {
            return;
        }
        RowSum sum = new RowSum();
        long most = 0;
        boolean local = false;
        for (int each : from) {
            Row row = tight[each];
            most += row.most();
            local |= row.local();
            sum.add(row);
        }
        Row cut = sum.atMost(most, 2, local);
        cuts.add(new Cut(cut, -cut.slack(x)));
    }
}
