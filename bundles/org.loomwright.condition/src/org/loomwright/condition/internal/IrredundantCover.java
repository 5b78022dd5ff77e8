// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * A cover for functions that are too large for the least one: point by point, the first that is not yet covered is made
 * as wide as the forbidden points allow, the last axes first, and put into few words; then cubes that the others cover
 * are left out.
 */
final class IrredundantCover {
    private static final int MOST_CUBES = 256;

    private final Diagram diagram;
    private final int[] axes;
    private final Walk walk;
    private final Literals literals;

    IrredundantCover(Diagram diagram, int[] axes, Literals literals) {
        this.diagram = diagram;
        this.axes = axes;
        this.walk = new Walk(diagram, axes);
        this.literals = literals;
    }

    /** Covers a function on the axes, avoiding another; stops after 256 cubes. */
    Cover find(int wanted, int forbidden) {
        List<Cube> found = new ArrayList<>();
        List<Integer> nodes = new ArrayList<>();
        int left = wanted;
        while (left != Diagram.NONE && found.size() < MOST_CUBES) {
            Cube cube = narrowed(widened(firstPoint(left), forbidden), wanted, forbidden);
            int node = diagram.where(cube, axes);
            found.add(cube);
            nodes.add(node);
            left = diagram.minus(left, node);
        }
        List<Cube> cubes = needed(wanted, nodes).stream().map(found::get).toList();
        return new Cover(axes, cubes, left == Diagram.NONE ? Cover.Quality.IRREDUNDANT : Cover.Quality.PARTIAL, left);
    }

    private Cube firstPoint(int node) {
        int[] all = diagram.first(node);
        int[] point = new int[axes.length];
        for (int i = 0; i < axes.length; i++) {
            point[i] = all[axes[i]];
        }
        return Cube.of(walk.shape(), point);
    }

    private Cube widened(Cube start, int forbidden) {
        Cube cube = withoutNeedlessAxes(start, forbidden);
        for (int i = axes.length - 1; i >= 0; i--) {
            for (int member = 0; member < walk.shape().size(i) && !cube.isFull(i); member++) {
                BitSet members = cube.members(i);
                members.set(member);
                Cube wide = cube.with(i, members);
                cube = walk.meets(forbidden, wide) ? cube : wide;
            }
        }
        return cube;
    }

    private Cube withoutNeedlessAxes(Cube start, int forbidden) {
        Cube cube = start;
        for (int i = axes.length - 1; i >= 0; i--) {
            BitSet members = new BitSet();
            members.set(0, walk.shape().size(i));
            Cube wide = cube.with(i, members);
            cube = walk.meets(forbidden, wide) ? cube : wide;
        }
        return cube;
    }

    /**
     * Returns the cube with the fewest words that still holds all the wanted points it holds; when that makes an axis
     * needless, again without that axis.
     */
    private Cube narrowed(Cube widest, int wanted, int forbidden) {
        Cube cube = widest;
        Cube before = null;
        while (!cube.equals(before)) {
            before = cube;
            Cube hull = walk.hull(diagram.and(wanted, diagram.where(cube, axes)));
            for (int i = 0; i < axes.length; i++) {
                cube = cube.with(i, literals.cheapest(i, hull.members(i), cube.members(i)).members());
            }
            cube = withoutNeedlessAxes(cube, forbidden);
        }
        return cube;
    }

    /** Returns the indices of the cubes that are kept when each that the others cover is left out, first ones first. */
    private List<Integer> needed(int wanted, List<Integer> nodes) {
        int[] after = new int[nodes.size() + 1];
        for (int i = nodes.size() - 1; i >= 0; i--) {
            after[i] = diagram.or(after[i + 1], nodes.get(i));
        }
        List<Integer> needed = new ArrayList<>();
        int before = Diagram.NONE;
        for (int i = 0; i < nodes.size(); i++) {
            int others = diagram.or(before, after[i + 1]);
            if (diagram.minus(diagram.and(wanted, nodes.get(i)), others) != Diagram.NONE) {
                needed.add(i);
                before = diagram.or(before, nodes.get(i));
            }
        }
        return needed;
    }
}
