// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Readings of a function of a diagram on some of its axes, in their order. The function must not depend on the other
 * axes, see {@link Diagram#without}. Nothing here makes nodes.
 */
public final class Walk {
    private final Diagram diagram;
    private final int[] axes;
    private final Shape shape;

    /**
     * @param axes numbers of axes, rising
     */
    public Walk(Diagram diagram, int[] axes) {
        this.diagram = diagram;
        this.axes = axes.clone();
        int[] sizes = new int[axes.length];
        for (int i = 0; i < axes.length; i++) {
            sizes[i] = diagram.size(axes[i]);
        }
        this.shape = new Shape(sizes);
    }

    public Shape shape() {
        return shape;
    }

    /** Returns the points of a function in order, but no more than a cap and one. */
    public List<int[]> points(int node, int cap) {
        List<int[]> points = new ArrayList<>();
        points(node, 0, new int[axes.length], points, cap);
        return points;
    }

    private void points(int node, int i, int[] point, List<int[]> points, int cap) {
        if (node == Diagram.NONE || points.size() > cap) {
            return;
        }
        if (i == axes.length) {
            points.add(point.clone());
            return;
        }
        int at = skip(node, i);
        for (int member = 0; member < shape.size(i); member++) {
            point[i] = member;
            points(diagram.child(at, axes[i], member), i + 1, point, points, cap);
        }
    }

    /** Returns cubes without a point in common that together are the function, but no more than a cap and one. */
    List<Cube> cubes(int node, int cap) {
        List<Cube> cubes = new ArrayList<>();
        cubes(node, 0, Cube.all(shape), cubes, cap);
        return cubes;
    }

    private void cubes(int node, int i, Cube cube, List<Cube> cubes, int cap) {
        if (node == Diagram.NONE || cubes.size() > cap) {
            return;
        }
        if (i == axes.length) {
            cubes.add(cube);
            return;
        }
        Map<Integer, BitSet> branches = new LinkedHashMap<>();
        int at = skip(node, i);
        for (int member = 0; member < shape.size(i); member++) {
            branches.computeIfAbsent(diagram.child(at, axes[i], member), child -> new BitSet()).set(member);
        }
        branches.forEach((child, members) -> cubes(child, i + 1, cube.with(i, members), cubes, cap));
    }

    /** Returns whether a function is true of a point of a cube. */
    boolean meets(int node, Cube cube) {
        return meets(node, 0, cube, new HashSet<>());
    }

    private boolean meets(int node, int i, Cube cube, Set<Long> seen) {
        if (node == Diagram.NONE || i == axes.length) {
            return node != Diagram.NONE;
        }
        if (!seen.add((long) i << Integer.SIZE | node)) {
            return false;
        }
        int at = skip(node, i);
        BitSet members = cube.members(i);
        for (int member = members.nextSetBit(0); member >= 0; member = members.nextSetBit(member + 1)) {
            if (meets(diagram.child(at, axes[i], member), i + 1, cube, seen)) {
                return true;
            }
        }
        return false;
    }

    /** Returns the smallest cube that holds every point of a function that is not empty. */
    Cube hull(int node) {
        BitSet[] members = new BitSet[axes.length];
        for (int i = 0; i < axes.length; i++) {
            members[i] = new BitSet();
        }
        hull(node, 0, members, new HashSet<>());
        Cube hull = Cube.all(shape);
        for (int i = 0; i < axes.length; i++) {
            hull = hull.with(i, members[i]);
        }
        return hull;
    }

    private void hull(int node, int i, BitSet[] members, Set<Long> seen) {
        if (i == axes.length || !seen.add((long) i << Integer.SIZE | node)) {
            return;
        }
        int at = skip(node, i);
        for (int member = 0; member < shape.size(i); member++) {
            int child = diagram.child(at, axes[i], member);
            if (child != Diagram.NONE) {
                members[i].set(member);
                hull(child, i + 1, members, seen);
            }
        }
    }

    /** Passes the axes between two of ours; any member does. */
    private int skip(int node, int i) {
        int at = node;
        for (int axis = i == 0 ? 0 : axes[i - 1] + 1; axis < axes[i]; axis++) {
            at = diagram.child(at, axis, 0);
        }
        return at;
    }
}
