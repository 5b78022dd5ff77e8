// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Inequalities that follow for whole numbers: where two or three inequalities add up to one with even factors and an
 * odd number, half of it may be rounded down (Chvátal-Gomory cuts with multipliers of one half, after Caprara and
 * Fischetti, Mathematical Programming 74, 1996). Stations and lengths come out on half grid steps without them.
 */
final class HalfCuts {

    private static final double ROOM = 0.9;
    private static final int MOST = 40;

    private final double[] x;
    private final List<Row> tight = new ArrayList<>();
    private final List<Double> slack = new ArrayList<>();
    private final List<BitSet> odd = new ArrayList<>();
    private final List<Map<BitSet, Integer>> tightest = List.of(new HashMap<>(), new HashMap<>());

    /**
     * @param rows inequalities that hold
     * @param x    figures that fulfil them
     */
    HalfCuts(List<Row> rows, double[] x) {
        this.x = x;
        for (Row row : rows) {
            double left = row.slack(x);
            if (left < ROOM) {
                tight.add(row);
                slack.add(left);
                BitSet bits = new BitSet();
                for (int i = 0; i < row.unknowns().length; i++) {
                    bits.set(row.unknowns()[i], row.factors()[i] % 2 != 0);
                }
                odd.add(bits);
                tightest.get(parity(row)).merge(bits, tight.size() - 1,
                        (one, other) -> slack.get(other) < slack.get(one) ? other : one);
            }
        }
    }

    private static int parity(Row row) {
        return (int) Math.floorMod(row.most(), 2L);
    }

    private record Cut(Row row, double broken) {
    }

    /** The inequalities that are broken most. */
    List<Row> broken(double little) {
        Map<List<Object>, Double> found = new HashMap<>();
        List<Cut> cuts = new ArrayList<>();
        // looked at for each pair
        double[] left = slack.stream().mapToDouble(each -> each).toArray();
        long[][] bits = odd.stream().map(BitSet::toLongArray).toArray(long[][]::new);
        for (int i = 0; i < tight.size(); i++) {
            Integer pair = tightest.get(1 - parity(tight.get(i))).get(odd.get(i));
            if (pair != null && pair > i) {
                add(cuts, little, i, pair);
            }
            for (int j = i + 1; j < tight.size(); j++) {
                if (left[i] + left[j] < ROOM && intersects(bits[i], bits[j])) {
                    BitSet rest = (BitSet) odd.get(i).clone();
                    rest.xor(odd.get(j));
                    int parity = 1 - (parity(tight.get(i)) + parity(tight.get(j))) % 2;
                    Integer third = tightest.get(parity).get(rest);
                    if (third != null && third != i && third != j) {
                        add(cuts, little, i, j, third);
                    }
                }
            }
        }
        cuts.sort(Comparator.comparingDouble((Cut cut) -> -cut.broken));
        List<Row> rows = new ArrayList<>();
        for (Cut cut : cuts) {
            if (rows.size() < MOST && found.putIfAbsent(cut.row.plain(), cut.broken) == null) {
                rows.add(cut.row);
            }
        }
        return rows;
    }

    private static boolean intersects(long[] one, long[] other) {
        for (int i = Math.min(one.length, other.length) - 1; i >= 0; i--) {
            if ((one[i] & other[i]) != 0) {
                return true;
            }
        }
        return false;
    }

    private void add(List<Cut> cuts, double little, int... from) {
        double left = 0;
        for (int each : from) {
            left += slack.get(each);
        }
        if ((1 - left) / 2 <= little) {
            return;
        }
        TreeMap<Integer, Long> factors = new TreeMap<>();
        long most = 0;
        boolean local = false;
        for (int each : from) {
            Row row = tight.get(each);
            most += row.most();
            local |= row.local();
            for (int i = 0; i < row.unknowns().length; i++) {
                factors.merge(row.unknowns()[i], row.factors()[i], Long::sum);
            }
        }
        factors.replaceAll((unknown, factor) -> factor / 2);
        Row cut = Row.of(factors, Math.floorDiv(most, 2L), local);
        cuts.add(new Cut(cut, -cut.slack(x)));
    }
}
