// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The widest cubes that avoid some others: cubes to which no member can be added on any axis. Found by taking one
 * forbidden cube after another out of the cube of all points, each time keeping the widest pieces only.
 */
final class Primes {
    private final List<Cube> forbidden;
    private final int cap;

    /** Takes the cubes to avoid, and the most pieces to hold on the way. */
    Primes(List<Cube> forbidden, int cap) {
        this.forbidden = forbidden.stream()
                .sorted(Comparator.comparingInt(Cube::narrowAxes).thenComparing(Cube::compare))
                .toList();
        this.cap = cap;
    }

    /** Returns all widest cubes in a fixed order, those that leave more axes alone first; null past the cap. */
    List<Cube> find(Shape shape) {
        List<Cube> pieces = List.of(Cube.all(shape));
        for (Cube cube : forbidden) {
            pieces = without(pieces, cube);
            if (pieces.size() > cap) {
                return null;
            }
        }
        return pieces.stream()
                .sorted(Comparator.comparingInt(Cube::narrowAxes).thenComparing(Cube::compare))
                .toList();
    }

    private List<Cube> without(List<Cube> pieces, Cube cube) {
        List<Cube> kept = new ArrayList<>();
        List<Cube> cuts = new ArrayList<>();
        for (Cube piece : pieces) {
            if (piece.meets(cube)) {
                addCuts(piece, cube, cuts);
            } else {
                kept.add(piece);
            }
        }
        List<Cube> widest = new ArrayList<>(kept);
        for (int i = 0; i < cuts.size() && widest.size() <= cap; i++) {
            if (!isInside(cuts.get(i), i, kept, cuts)) {
                widest.add(cuts.get(i));
            }
        }
        return widest;
    }

    private static void addCuts(Cube piece, Cube cube, List<Cube> cuts) {
        for (int axis = 0; axis < piece.shape().axes(); axis++) {
            Cube cut = piece.cut(axis, cube);
            if (cut != null) {
                cuts.add(cut);
            }
        }
    }

    /** Pieces that were kept are never inside a cut, because a cut is inside a piece that was wider than they are. */
    private static boolean isInside(Cube cut, int index, List<Cube> kept, List<Cube> cuts) {
        for (Cube other : kept) {
            if (other.contains(cut)) {
                return true;
            }
        }
        for (int i = 0; i < cuts.size(); i++) {
            boolean same = cuts.get(i).equals(cut);
            if (same ? i < index : cuts.get(i).contains(cut)) {
                return true;
            }
        }
        return false;
    }
}
