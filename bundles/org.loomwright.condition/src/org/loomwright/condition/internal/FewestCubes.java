// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * All ways to cover points by as few cubes as possible, by depth-first search on the point with the fewest cubes. A way
 * is given up when points that share no cube outnumber the cubes that may still be chosen. Exact unless a bound is
 * reached.
 */
final class FewestCubes {
    private final List<BitSet> rows;
    private final int mostCovers;
    private final List<BitSet> covers = new ArrayList<>();
    private long visitsLeft;

    /**
     * @param rows for each point, the cubes that hold it; at least one each
     * @param mostCovers the most covers to list
     * @param mostVisits the most visits to points that are not covered yet
     */
    FewestCubes(List<BitSet> rows, int mostCovers, long mostVisits) {
        this.mostCovers = mostCovers;
        this.visitsLeft = mostVisits;
        this.rows = hardest(rows);
    }

    /** Leaves out each point that is covered by whatever covers another one. */
    private List<BitSet> hardest(List<BitSet> rows) {
        Set<BitSet> distinct = new LinkedHashSet<>(rows);
        List<BitSet> byCubes = new ArrayList<>(distinct);
        byCubes.sort(Comparator.comparingInt(BitSet::cardinality));
        List<BitSet> hardest = new ArrayList<>();
        for (BitSet row : byCubes) {
            visitsLeft -= hardest.size();
            if (isExact() && hardest.stream().noneMatch(other -> isSubset(other, row))) {
                hardest.add(row);
            }
        }
        return hardest;
    }

    private static boolean isSubset(BitSet inner, BitSet outer) {
        for (int i = inner.nextSetBit(0); i >= 0; i = inner.nextSetBit(i + 1)) {
            if (!outer.get(i)) {
                return false;
            }
        }
        return true;
    }

    /** Returns the covers with the fewest cubes, in a fixed order; check {@link #isExact} before believing either. */
    List<BitSet> find() {
        int size = isExact() ? independent(rows) : 0;
        while (covers.isEmpty() && isExact()) {
            search(rows, new BitSet(), size);
            size++;
        }
        return covers;
    }

    /** Returns whether the search ran to its end. */
    boolean isExact() {
        return visitsLeft >= 0 && covers.size() <= mostCovers;
    }

    private void search(List<BitSet> open, BitSet chosen, int more) {
        if (open.isEmpty()) {
            covers.add((BitSet) chosen.clone());
            return;
        }
        visitsLeft -= open.size();
        if (!isExact() || independent(open) > more) {
            return;
        }
        BitSet row = open.stream().min(Comparator.comparingInt(BitSet::cardinality)).orElseThrow();
        BitSet tried = new BitSet();
        for (int cube = row.nextSetBit(0); cube >= 0; cube = row.nextSetBit(cube + 1)) {
            tried.set(cube);
            List<BitSet> rest = rest(open, cube, tried);
            if (rest != null) {
                chosen.set(cube);
                search(rest, chosen, more - 1);
                chosen.clear(cube);
            }
        }
    }

    /** Returns what is left to cover after a cube, without the cubes that were tried; null if a point has none left. */
    private static List<BitSet> rest(List<BitSet> open, int cube, BitSet tried) {
        List<BitSet> rest = new ArrayList<>();
        for (BitSet row : open) {
            if (row.get(cube)) {
                continue;
            }
            BitSet left = row;
            if (row.intersects(tried)) {
                left = (BitSet) row.clone();
                left.andNot(tried);
                if (left.isEmpty()) {
                    return null;
                }
            }
            rest.add(left);
        }
        return rest;
    }

    /** Returns a lower bound: points, picked greedily, no two of which share a cube. */
    private static int independent(List<BitSet> open) {
        List<BitSet> byCubes = new ArrayList<>(open);
        byCubes.sort(Comparator.comparingInt(BitSet::cardinality));
        BitSet used = new BitSet();
        int count = 0;
        for (BitSet row : byCubes) {
            if (!row.intersects(used)) {
                used.or(row);
                count++;
            }
        }
        return count;
    }
}
