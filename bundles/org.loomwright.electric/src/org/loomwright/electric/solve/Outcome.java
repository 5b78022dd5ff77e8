// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.List;

/** What became of a network. */
public sealed interface Outcome {

    /**
     * Its potentials and currents.
     *
     * @param potentials in V, by node
     * @param currents   in A from the first node of each branch to the second, by branch
     * @param residual   the greatest sum of currents in A at a node that is not held; 0 would be exact
     * @param steps      Newton steps that were taken
     */
    record Solution(double[] potentials, double[] currents, double residual, int steps) implements Outcome {

        /** Returns the potential of one node over another, in V. */
        public double across(int from, int to) {
            return potentials[from] - potentials[to];
        }
    }

    /** Nodes that nothing joins to a held potential; what they stand at is nobody's to say. */
    record Floating(List<Integer> nodes) implements Outcome {
        public Floating {
            nodes = List.copyOf(nodes);
        }
    }

    /**
     * No operating point was found.
     *
     * @param residual the least residual that was reached, in A
     * @param node     the node at which it is greatest
     */
    record Unsolved(double residual, int node) implements Outcome {
    }
}
