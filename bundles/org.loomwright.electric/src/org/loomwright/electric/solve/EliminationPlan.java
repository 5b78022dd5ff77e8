// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.Arrays;

/**
 * In which order the nodes of a network are taken away, and what each one leaves behind: a node and its conductances
 * are replaced by conductances between its neighbours, the transformation of a star into a mesh (A. Rosen, Journal of
 * the IEE 62, 1924), which is what Gauss's elimination does to nodal equations. Depends on what is joined to what and
 * not on figures.
 *
 * <p>Nodes that only conductors meet go first while they have at most {@link #FEW} neighbours: loose ends, series and
 * stars. What they leave behind is the same at each step of a search. The others follow, with few neighbours first
 * (minimum degree, as in Tinney and Walker 1967). Wiring is nearly a tree, so that there is hardly any fill, and a plan
 * costs about as much as there are elements.
 *
 * <p>Places are numbers of nodes in the order of elimination; nodes that are held have the places after all others.
 * Immutable once made.
 */
final class EliminationPlan {

    /** A conductor, with or without a source in it. */
    static final byte STRAIGHT = 0;
    /** Its current is no linear function of its voltage. */
    static final byte CURVED = 1;
    /** A current that does not depend on the voltage; joins nothing. */
    static final byte DRAWN = 2;

    private static final int FEW = 3;

    private final int[] from;
    private final int[] to;
    private final byte[] kinds;
    private final boolean[] held;

    /** By node. */
    private final int[] place;
    /** By branch, the conductance between two nodes that it is a part of; -1 if there is none. */
    private final int[] edgeOf;
    private int once;
    private int free;
    private boolean tied = true;

    /** By place, where its neighbours begin in {@link #around}; one more at the end. */
    private final int[] begin;
    /** Places of neighbours at the time of elimination. */
    private int[] around;
    /** The conductance to each of them. */
    private int[] edge;
    /** For each pair of neighbours of each node, in order, the conductance between the two. */
    private int[] mesh;
    private int meshes;
    private int meshesOnce;

    private int edges;
    private final int[] head;
    private int[] next;
    private int[] before;
    private int[] target;
    private final int[] degree;
    private final boolean[] reached;
    private final boolean[] bent;

    /** Plans for branches from and to nodes; all arrays are taken over. */
    EliminationPlan(int[] from, int[] to, byte[] kinds, boolean[] held) {
        this.from = from;
        this.to = to;
        this.kinds = kinds;
        this.held = held;
        int nodes = held.length;
        place = new int[nodes];
        edgeOf = new int[from.length];
        begin = new int[nodes + 1];
        around = new int[from.length + nodes];
        edge = new int[from.length + nodes];
        mesh = new int[from.length + nodes];
        head = new int[nodes];
        next = new int[4 * from.length];
        before = new int[4 * from.length];
        target = new int[4 * from.length];
        degree = new int[nodes];
        reached = new boolean[nodes];
        bent = new boolean[nodes];
        Arrays.fill(head, -1);
        Arrays.fill(place, -1);
        join();
        order();
    }

    /** Whether this plan is for such branches and held nodes. */
    boolean fits(int[] otherFrom, int[] otherTo, byte[] otherKinds, boolean[] otherHeld) {
        return Arrays.equals(from, otherFrom) && Arrays.equals(to, otherTo) && Arrays.equals(kinds, otherKinds)
                && Arrays.equals(held, otherHeld);
    }

    /** Returns how many nodes are not held. */
    int free() {
        return free;
    }

    /** Returns how many of them go before any search, since only conductors meet there. */
    int once() {
        return once;
    }

    /** Returns how many conductances between two nodes there are at one time or another. */
    int edges() {
        return edges;
    }

    /** Whether every node is joined to one that is held. */
    boolean isTied() {
        return tied;
    }

    int place(int node) {
        return place[node];
    }

    int edgeOf(int branch) {
        return edgeOf[branch];
    }

    /** Returns one of the two places that a conductance lies between. */
    int end(int which, boolean second) {
        return place[target[2 * which + (second ? 1 : 0)]];
    }

    private void join() {
        for (int i = 0; i < from.length; i++) {
            int a = from[i];
            int b = to[i];
            edgeOf[i] = -1;
            if (kinds[i] == DRAWN || a == b) {
                continue;
            }
            if (kinds[i] == CURVED) {
                bent[a] = true;
                bent[b] = true;
            }
            if (held[a]) {
                reached[b] = true;
            } else if (held[b]) {
                reached[a] = true;
            } else {
                edgeOf[i] = between(a, b);
            }
        }
    }

    /** The conductance between two nodes, a new one if there is none. */
    private int between(int a, int b) {
        boolean less = degree[a] <= degree[b];
        int near = less ? a : b;
        int far = less ? b : a;
        for (int half = head[near]; half >= 0; half = next[half]) {
            if (target[half] == far) {
                return half >> 1;
            }
        }
        int made = edges++;
        if (2 * made + 2 > target.length) {
            target = Arrays.copyOf(target, 2 * target.length);
            next = Arrays.copyOf(next, target.length);
            before = Arrays.copyOf(before, target.length);
        }
        link(2 * made, a, b);
        link(2 * made + 1, b, a);
        return made;
    }

    private void link(int half, int node, int other) {
        int first = head[node];
        target[half] = other;
        next[half] = first;
        before[half] = -1;
        if (first >= 0) {
            before[first] = half;
        }
        head[node] = half;
        degree[node]++;
    }

    private void unlink(int half, int node) {
        int after = next[half];
        int prior = before[half];
        if (prior >= 0) {
            next[prior] = after;
        } else {
            head[node] = after;
        }
        if (after >= 0) {
            before[after] = prior;
        }
        degree[node]--;
    }

    private void order() {
        int nodes = held.length;
        int[] waiting = new int[nodes];
        int left = 0;
        for (int node = nodes - 1; node >= 0; node--) {
            if (!held[node]) {
                waiting[left++] = node;
            }
        }
        int[] stack = new int[FEW * nodes + 1];
        for (int limit = 1; limit <= FEW; limit++) {
            left = sweep(waiting, left, stack, limit, false);
        }
        once = free;
        meshesOnce = meshes;
        while (left > 0) {
            int limit = Integer.MAX_VALUE;
            for (int i = 0; i < left; i++) {
                limit = Math.min(limit, degree[waiting[i]]);
            }
            left = sweep(waiting, left, stack, limit, true);
        }
        int last = free;
        for (int node = 0; node < nodes; node++) {
            if (held[node]) {
                place[node] = last++;
            }
        }
        for (int i = begin[free] - 1; i >= 0; i--) {
            around[i] = place[around[i]];
        }
    }

    /** Takes away nodes with at most so many neighbours; returns how many are left waiting. */
    private int sweep(int[] waiting, int left, int[] stack, int limit, boolean all) {
        for (int i = 0; i < left; i++) {
            int height = 0;
            stack[height++] = waiting[i];
            while (height > 0) {
                int node = stack[--height];
                if (place[node] >= 0 || degree[node] > limit || !all && bent[node]) {
                    continue;
                }
                eliminate(node);
                for (int k = begin[free - 1]; k < begin[free]; k++) {
                    if (degree[around[k]] <= limit && height < stack.length) {
                        stack[height++] = around[k];
                    }
                }
            }
        }
        int kept = 0;
        for (int i = 0; i < left; i++) {
            if (place[waiting[i]] < 0) {
                waiting[kept++] = waiting[i];
            }
        }
        return kept;
    }

    private void eliminate(int node) {
        int first = begin[free];
        int end = first;
        tied &= degree[node] > 0 || reached[node];
        if (first + degree[node] > around.length) {
            around = Arrays.copyOf(around, 2 * around.length + degree[node]);
            edge = Arrays.copyOf(edge, around.length);
        }
        for (int half = head[node]; half >= 0; half = next[half]) {
            int other = target[half];
            around[end] = other;
            edge[end++] = half >> 1;
            unlink(half ^ 1, other);
            reached[other] |= reached[node];
        }
        int pairs = (end - first) * (end - first - 1) / 2;
        if (meshes + pairs > mesh.length) {
            mesh = Arrays.copyOf(mesh, 2 * mesh.length + pairs);
        }
        for (int i = first + 1; i < end; i++) {
            for (int k = first; k < i; k++) {
                mesh[meshes++] = between(around[i], around[k]);
            }
        }
        place[node] = free++;
        begin[free] = end;
    }

    /**
     * Takes away the nodes of some places: each share of a conductance and of a current goes to the neighbours. False
     * if the conductances at a node do not sum to more than nothing, so that pivots would have to be looked for.
     *
     * @param values   conductances between nodes in A/V
     * @param ground   by place, conductance in A/V to what is held
     * @param currents by place, current in A into the node
     * @param inverse  by place, takes the resistance in V/A of all that meets there
     */
    boolean eliminate(int start, int end, double[] values, double[] ground, double[] currents, double[] inverse) {
        int pair = start == 0 ? 0 : meshesOnce;
        for (int at = start; at < end; at++) {
            int first = begin[at];
            int last = begin[at + 1];
            double sum = ground[at];
            for (int i = first; i < last; i++) {
                sum += values[edge[i]];
            }
            if (!(sum > 0)) {
                return false;
            }
            double each = 1 / sum;
            inverse[at] = each;
            double leak = ground[at];
            double current = currents[at];
            for (int i = first; i < last; i++) {
                double share = values[edge[i]] * each;
                int other = around[i];
                ground[other] += share * leak;
                currents[other] += share * current;
                for (int k = first; k < i; k++) {
                    values[mesh[pair++]] += share * values[edge[k]];
                }
            }
        }
        return true;
    }

    /** Finds the potentials in V of some places from those of their neighbours, which come after. */
    void substitute(int start, int end, double[] values, double[] currents, double[] inverse, double[] potentials) {
        for (int at = end - 1; at >= start; at--) {
            double sum = currents[at];
            for (int i = begin[at]; i < begin[at + 1]; i++) {
                sum += values[edge[i]] * potentials[around[i]];
            }
            potentials[at] = sum * inverse[at];
        }
    }
}
