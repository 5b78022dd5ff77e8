// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.List;

/**
 * The fewest words for a cover whose cubes may be made narrower as long as they still cover every point together. A
 * cube has to keep the points that no other one holds; a point that several hold is given to each of them in turn, as
 * long as it is left out by the cheapest cubes that keep what they have to. Exact unless the visits to points run out.
 */
final class Narrowing {
    private final List<int[]> points;
    private final Literals literals;
    private long visitsLeft;
    private int fewestWords = Integer.MAX_VALUE;
    private List<Cube> best = List.of();

    Narrowing(List<int[]> points, Literals literals, long mostVisits) {
        this.points = points;
        this.literals = literals;
        this.visitsLeft = mostVisits;
    }

    /** Narrows one more cover, of which no cube is needless, and keeps it if it takes fewer words than all before. */
    void offer(List<Cube> cover) {
        visitsLeft -= points.size();
        if (!isExact()) {
            return;
        }
        Cube[] kept = new Cube[cover.size()];
        for (int[] point : points) {
            int owner = owner(point, cover);
            if (owner >= 0) {
                kept[owner] = kept[owner] == null
                        ? Cube.of(cover.get(owner).shape(), point)
                        : kept[owner].hull(point);
            }
        }
        search(cover, kept);
    }

    /** Returns which cube alone holds a point, or -1. */
    private static int owner(int[] point, List<Cube> cover) {
        int owner = -1;
        for (int i = 0; i < cover.size(); i++) {
            if (cover.get(i).contains(point)) {
                if (owner >= 0) {
                    return -1;
                }
                owner = i;
            }
        }
        return owner;
    }

    private void search(List<Cube> widest, Cube[] kept) {
        visitsLeft -= points.size();
        if (!isExact()) {
            return;
        }
        List<Cube> cubes = new ArrayList<>();
        int words = 0;
        for (int i = 0; i < kept.length; i++) {
            Cube cube = widest.get(i);
            for (int axis = 0; axis < cube.shape().axes(); axis++) {
                Literals.Literal literal = literals.cheapest(axis, kept[i].members(axis), widest.get(i).members(axis));
                words += literal.words();
                cube = cube.with(axis, literal.members());
            }
            cubes.add(cube);
        }
        if (words >= fewestWords) {
            return;
        }
        int[] open = firstUncovered(cubes);
        if (open == null) {
            fewestWords = words;
            best = cubes;
            return;
        }
        for (int i = 0; i < kept.length; i++) {
            if (widest.get(i).contains(open)) {
                Cube[] wider = kept.clone();
                wider[i] = kept[i].hull(open);
                search(widest, wider);
            }
        }
    }

    private int[] firstUncovered(List<Cube> cubes) {
        for (int[] point : points) {
            if (cubes.stream().noneMatch(cube -> cube.contains(point))) {
                return point;
            }
        }
        return null;
    }

    boolean isExact() {
        return visitsLeft >= 0;
    }

    /** Returns the cubes with the fewest words; none if nothing was offered. */
    List<Cube> best() {
        return best;
    }
}
