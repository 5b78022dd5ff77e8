// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * The cover of points by the fewest cubes and, with as few cubes, the fewest words; points that are neither wanted nor
 * forbidden may be covered or not. Exact: all widest cubes, all smallest covers by them, the best narrowing of each.
 */
final class LeastCover {
    private static final int MOST_POINTS = 16_384;
    private static final int MOST_FORBIDDEN = 500;
    private static final int MOST_PRIMES = 500;
    private static final long MOST_PAIRS = 2_000_000;
    private static final int MOST_COVERS = 1_000;
    private static final long MOST_VISITS = 300_000;

    private final Walk walk;
    private final Literals literals;

    LeastCover(Walk walk, Literals literals) {
        this.walk = walk;
        this.literals = literals;
    }

    /**
     * Returns the least cover, or nothing when one of the bounds of this class is reached.
     *
     * @param wanted the function to cover, on the axes of the walk; not empty
     * @param forbidden the function to avoid, on the same axes
     */
    Optional<List<Cube>> find(int wanted, int forbidden) {
        List<int[]> points = walk.points(wanted, MOST_POINTS);
        List<Cube> walls = walk.cubes(forbidden, MOST_FORBIDDEN);
        if (points.size() > MOST_POINTS || walls.size() > MOST_FORBIDDEN) {
            return Optional.empty();
        }
        List<Cube> primes = new Primes(walls, MOST_PRIMES).find(walk.shape());
        if (primes == null || (long) points.size() * primes.size() > MOST_PAIRS) {
            return Optional.empty();
        }
        FewestCubes fewest = new FewestCubes(rows(points, primes), MOST_COVERS, MOST_VISITS);
        List<BitSet> covers = fewest.find();
        if (!fewest.isExact()) {
            return Optional.empty();
        }
        Narrowing narrowing = new Narrowing(points, literals, MOST_VISITS);
        for (BitSet cover : covers) {
            narrowing.offer(cover.stream().mapToObj(primes::get).toList());
        }
        return narrowing.isExact() ? Optional.of(narrowing.best()) : Optional.empty();
    }

    /** Returns for each point the cubes that hold it. */
    private static List<BitSet> rows(List<int[]> points, List<Cube> primes) {
        List<BitSet> rows = new ArrayList<>();
        for (int[] point : points) {
            BitSet row = new BitSet(primes.size());
            for (int i = 0; i < primes.size(); i++) {
                if (primes.get(i).contains(point)) {
                    row.set(i);
                }
            }
            rows.add(row);
        }
        return rows;
    }
}
