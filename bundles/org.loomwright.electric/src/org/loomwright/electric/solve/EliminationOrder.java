// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * An order of elimination that fills in little: always a node with the fewest neighbours next (minimum degree, as in
 * Tinney and Walker 1967). Wiring is nearly a tree, so that there is hardly any fill. Equal degrees in order of number.
 */
final class EliminationOrder {

    private EliminationOrder() {
    }

    /** Returns the nodes in the order in which to eliminate them. The neighbours are used up. */
    static int[] of(List<BitSet> neighbours) {
        int nodes = neighbours.size();
        int[] order = new int[nodes];
        List<BitSet> byDegree = new ArrayList<>();
        int[] degree = new int[nodes];
        for (int node = 0; node < nodes; node++) {
            degree[node] = neighbours.get(node).cardinality();
            at(byDegree, degree[node]).set(node);
        }
        int least = 0;
        for (int i = 0; i < nodes; i++) {
            while (byDegree.get(least).isEmpty()) {
                least++;
            }
            int node = byDegree.get(least).nextSetBit(0);
            byDegree.get(least).clear(node);
            order[i] = node;
            BitSet around = neighbours.get(node);
            for (int next = around.nextSetBit(0); next >= 0; next = around.nextSetBit(next + 1)) {
                BitSet its = neighbours.get(next);
                its.or(around);
                its.clear(next);
                its.clear(node);
                byDegree.get(degree[next]).clear(next);
                degree[next] = its.cardinality();
                at(byDegree, degree[next]).set(next);
                least = Math.min(least, degree[next]);
            }
        }
        return order;
    }

    private static BitSet at(List<BitSet> byDegree, int degree) {
        while (byDegree.size() <= degree) {
            byDegree.add(new BitSet());
        }
        return byDegree.get(degree);
    }
}
