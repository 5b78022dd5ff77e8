// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.Arrays;

/**
 * How the nodes of a network are taken away one after the other: a node and its conductances are replaced by
 * conductances between its neighbours, the transformation of a star into a mesh (A. Rosen, Journal of the IEE 62,
 * 1924), which is what Gauss's elimination does to nodal equations. With conductances that are not negative it only
 * adds, multiplies and divides, so that no digits are lost however different they are. Depends on what is joined to
 * what and not on figures; see {@link EliminationOrder}.
 *
 * <p>Places are numbers of nodes in the order of elimination; nodes that are held have the places after all others.
 * Values are conductances in A/V: first those between two nodes, then by place those to what is held, then one that
 * counts for nothing. Immutable; safe for use by several threads.
 */
final class EliminationPlan {

    /** A conductor, with or without a source in it. */
    static final byte STRAIGHT = 0;
    /** Its current is no linear function of its voltage. */
    static final byte CURVED = 1;
    /** A current that does not depend on the voltage; joins nothing. */
    static final byte DRAWN = 2;

    /** What a plan is for: branches by the nodes that they go from and to, their kinds, and nodes that are held. */
    record Shape(int[] from, int[] to, byte[] kinds, boolean[] held) {

        boolean same(Shape other) {
            return Arrays.equals(from, other.from) && Arrays.equals(to, other.to) && Arrays.equals(kinds, other.kinds)
                    && Arrays.equals(held, other.held);
        }
    }

    private final Shape shape;
    private final int once;
    private final int free;
    private final boolean tied;
    private final int edges;
    private final int[] places;
    private final int[] first;
    private final int[] second;
    private final int[] slots;
    /** By place, where its neighbours begin in the next two; one more at the end. */
    private final int[] begin;
    private final int[] around;
    private final int[] links;
    /** For each pair of neighbours of each node, in order, the value between the two. */
    private final int[] mesh;
    private final int meshes;
    private final int meshesOnce;
    /** Two nodes for each value between nodes. */
    private final int[] ends;

    /** Takes over what an order has found, in nodes, and turns it into places. */
    EliminationPlan(Shape shape, EliminationOrder order) {
        this.shape = shape;
        once = order.once;
        free = order.free;
        tied = order.tied;
        edges = order.edges;
        places = order.places;
        begin = order.begin;
        around = order.around;
        links = order.links;
        mesh = order.mesh;
        meshes = order.meshes;
        meshesOnce = order.meshesOnce;
        ends = order.target;
        slots = order.slots;
        for (int i = begin[free] - 1; i >= 0; i--) {
            around[i] = places[around[i]];
        }
        int branches = slots.length;
        first = new int[branches];
        second = new int[branches];
        for (int i = 0; i < branches; i++) {
            int a = places[shape.from[i]];
            int b = places[shape.to[i]];
            first[i] = a;
            second[i] = b;
            if (slots[i] < 0) {
                slots[i] = edges + (a == b || shape.kinds[i] == DRAWN ? places.length : Math.min(a, b));
            }
        }
    }

    /** Returns what this plan is for. */
    Shape shape() {
        return shape;
    }

    /** Returns how many nodes are not held. */
    int free() {
        return free;
    }

    /** Returns how many of them go before any search, since only conductors meet there. */
    int once() {
        return once;
    }

    /** Returns how many values between two nodes there are at one time or another. */
    int edges() {
        return edges;
    }

    /** Returns how many values there are. */
    int size() {
        return edges + places.length + 1;
    }

    /** Returns how many conductances a step of a search works on, counting each as often as it does. */
    int operations() {
        return begin[free] - begin[once] + meshes - meshesOnce;
    }

    /** Whether every node is joined to one that is held. */
    boolean isTied() {
        return tied;
    }

    /** Returns for each node its place. */
    int[] places() {
        return places;
    }

    /** Returns for each branch the place that it goes from. */
    int[] first() {
        return first;
    }

    /** Returns for each branch the place that it goes to. */
    int[] second() {
        return second;
    }

    /** Returns for each branch which of the values its conductance is a part of. */
    int[] slots() {
        return slots;
    }

    /** Returns one of the two places that a value lies between. */
    int end(int which, boolean other) {
        return places[ends[2 * which + (other ? 1 : 0)]];
    }

    /**
     * Takes away the nodes of some places: each share of a conductance and of a current goes to the neighbours. False
     * if the conductances at a node do not sum to more than nothing, so that pivots would have to be looked for.
     *
     * @param currents by place, current in A into the node
     * @param inverse  by place, takes the resistance in V/A of all that meets there
     */
    boolean eliminate(int start, int end, double[] values, double[] currents, double[] inverse) {
        int pair = start == 0 ? 0 : meshesOnce;
        int last = begin[start];
        for (int at = start; at < end; at++) {
            int near = last;
            last = begin[at + 1];
            double leak = values[edges + at];
            double sum = leak;
            for (int i = near; i < last; i++) {
                sum += values[links[i]];
            }
            if (!(sum > 0)) {
                return false;
            }
            double each = 1 / sum;
            inverse[at] = each;
            double current = currents[at];
            for (int i = near; i < last; i++) {
                double share = values[links[i]] * each;
                int other = around[i];
                values[edges + other] += share * leak;
                currents[other] += share * current;
                for (int k = near; k < i; k++) {
                    values[mesh[pair++]] += share * values[links[k]];
                }
            }
        }
        return true;
    }

    /** Passes on the shares of other currents after {@link #eliminate}, which has left its values and inverses. */
    void forward(int start, int end, double[] values, double[] currents, double[] inverse) {
        for (int at = start; at < end; at++) {
            double each = currents[at] * inverse[at];
            for (int i = begin[at]; i < begin[at + 1]; i++) {
                currents[around[i]] += values[links[i]] * each;
            }
        }
    }

    /** Finds the potentials in V of some places from those of their neighbours, which come after. */
    void substitute(int start, int end, double[] values, double[] currents, double[] inverse, double[] potentials) {
        for (int at = end - 1; at >= start; at--) {
            double sum = currents[at];
            for (int i = begin[at]; i < begin[at + 1]; i++) {
                sum += values[links[i]] * potentials[around[i]];
            }
            potentials[at] = sum * inverse[at];
        }
    }
}
