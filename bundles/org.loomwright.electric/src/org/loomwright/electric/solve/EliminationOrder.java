// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.Arrays;

/**
 * An order of elimination, and what each node leaves behind. Nodes that only conductors meet go first while they have
 * at most {@link #FEW} neighbours: loose ends and series, then stars of three. What they leave behind is the same at
 * each step of a search. The others follow, with few neighbours first (minimum degree, as in Tinney and Walker 1967).
 * Wiring is nearly a tree, so that there is hardly any fill, and an order costs about as much as there are elements.
 */
final class EliminationOrder {

    private static final int FEW = 3;
    private static final int SERIES = 2;

    /** How many nodes go before any search; how many are not held; whether all of them are joined to one that is. */
    int once;
    int free;
    boolean tied = true;
    /** How many conductances between two nodes there are at one time or another, and two nodes for each. */
    int edges;
    int[] target;
    /** By node, when it goes; held nodes after all others. */
    final int[] places;
    /** By branch, the conductance between two nodes that it is a part of, or -1. */
    final int[] slots;
    /** By place, where its neighbours begin in the next two, neighbours and conductances to them. */
    final int[] begin;
    int[] around;
    int[] links;
    /** For each pair of neighbours of each node the conductance between the two; how many of them before a search. */
    int[] mesh;
    int meshes;
    int meshesOnce;

    /** Each conductance is in the lists of both its nodes, by two halves whose numbers differ by 1. */
    private final int[] head;
    private int[] next;
    private int[] before;
    private final int[] degree;
    private final boolean[] reached;
    private final boolean[] bent;
    private final int[] stack;

    EliminationOrder(EliminationPlan.Shape shape) {
        int nodes = shape.held().length;
        int branches = shape.from().length;
        places = new int[nodes];
        slots = new int[branches];
        begin = new int[nodes + 1];
        around = new int[branches + nodes];
        links = new int[branches + nodes];
        mesh = new int[branches + nodes];
        head = new int[nodes];
        next = new int[3 * branches];
        before = new int[3 * branches];
        target = new int[3 * branches];
        degree = new int[nodes];
        reached = new boolean[nodes];
        bent = new boolean[nodes];
        stack = new int[FEW * nodes + 1];
        Arrays.fill(head, -1);
        Arrays.fill(places, -1);
        join(shape);
        order(shape.held());
    }

    private void join(EliminationPlan.Shape shape) {
        boolean[] held = shape.held();
        for (int i = 0; i < slots.length; i++) {
            int a = shape.from()[i];
            int b = shape.to()[i];
            byte kind = shape.kinds()[i];
            if (kind != EliminationPlan.STRAIGHT) {
                bent[a] = true;
                bent[b] = true;
            }
            slots[i] = -1;
            if (kind == EliminationPlan.DRAWN || a == b) {
                continue;
            }
            if (held[a]) {
                reached[b] = true;
            } else if (held[b]) {
                reached[a] = true;
            } else {
                slots[i] = between(a, b);
            }
        }
    }

    /** The conductance between two nodes, a new one if there is none. */
    private int between(int a, int b) {
        boolean less = degree[a] <= degree[b];
        int far = less ? b : a;
        for (int half = head[less ? a : b]; half >= 0; half = next[half]) {
            if (target[half] == far) {
                return half >> 1;
            }
        }
        int made = 2 * edges;
        if (made + 2 > target.length) {
            target = Arrays.copyOf(target, 2 * target.length + 2);
            next = Arrays.copyOf(next, target.length);
            before = Arrays.copyOf(before, target.length);
        }
        link(made, a, b);
        link(made + 1, b, a);
        return edges++;
    }

    private void link(int half, int node, int other) {
        int after = head[node];
        target[half] = other;
        next[half] = after;
        before[half] = -1;
        if (after >= 0) {
            before[after] = half;
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

    private void order(boolean[] held) {
        int nodes = held.length;
        int[] waiting = new int[nodes];
        int left = 0;
        for (int node = nodes - 1; node >= 0; node--) {
            if (!held[node]) {
                waiting[left++] = node;
            }
        }
        sweep(waiting, left, SERIES, false);
        left = left(waiting, left);
        sweep(waiting, left, FEW, false);
        left = left(waiting, left);
        once = free;
        meshesOnce = meshes;
        while (left > 0) {
            int limit = Integer.MAX_VALUE;
            for (int i = 0; i < left; i++) {
                limit = Math.min(limit, degree[waiting[i]]);
            }
            sweep(waiting, left, limit, true);
            left = left(waiting, left);
        }
        int last = free;
        for (int node = 0; node < nodes; node++) {
            if (held[node]) {
                places[node] = last++;
            }
        }
    }

    /** Takes away nodes with at most so many neighbours, and those that come to have no more. */
    private void sweep(int[] waiting, int left, int limit, boolean all) {
        for (int i = 0; i < left; i++) {
            int height = 1;
            stack[0] = waiting[i];
            while (height > 0) {
                int node = stack[--height];
                if (degree[node] > limit || places[node] >= 0 || !all && bent[node]) {
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
    }

    private int left(int[] waiting, int before) {
        int kept = 0;
        for (int i = 0; i < before; i++) {
            if (places[waiting[i]] < 0) {
                waiting[kept++] = waiting[i];
            }
        }
        return kept;
    }

    private void eliminate(int node) {
        int first = begin[free];
        int end = first;
        int count = degree[node];
        boolean isReached = reached[node];
        tied &= count > 0 || isReached;
        if (first + count > around.length) {
            around = Arrays.copyOf(around, 2 * around.length + count);
            links = Arrays.copyOf(links, around.length);
        }
        for (int half = head[node]; half >= 0; half = next[half]) {
            int other = target[half];
            around[end] = other;
            links[end++] = half >> 1;
            unlink(half ^ 1, other);
            reached[other] |= isReached;
        }
        places[node] = free++;
        begin[free] = end;
        if (count > 1) {
            mesh(first, end);
        }
    }

    private void mesh(int first, int end) {
        int pairs = (end - first) * (end - first - 1) / 2;
        if (meshes + pairs > mesh.length) {
            mesh = Arrays.copyOf(mesh, 2 * mesh.length + pairs);
        }
        for (int i = first + 1; i < end; i++) {
            for (int k = first; k < i; k++) {
                mesh[meshes++] = between(around[i], around[k]);
            }
        }
    }
}
