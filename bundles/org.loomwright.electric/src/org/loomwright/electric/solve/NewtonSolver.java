// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.ArrayList;
import java.util.List;

/**
 * Nodal analysis with damped Newton steps: at each node that is not held the currents sum to zero. The search begins
 * with all elements taken as linear around their rated voltage, and halves a step that makes the sums worse. Where
 * there are several operating points, as with a load of constant power behind a long wire, it finds one near the rated
 * voltages.
 *
 * <p>A step costs about as much as there are elements that are no conductors, for networks that are nearly trees: what
 * only conductors meet at is taken away before, and comes back after. The order of elimination of the last network is
 * kept, and serves again if the next has the same elements between the same nodes, whatever their figures; no figure is
 * kept, and no result depends on what was solved before. Safe for use by several threads. It leaves to others what the
 * nodes are and whether a result is good enough.
 */
public final class NewtonSolver implements NetworkSolver {

    /** Currents at a node sum to less than this, in A. */
    public static final double GOOD = 1e-9;

    private volatile EliminationPlan last;

    @Override
    public Outcome solve(Netlist netlist) {
        NodalEquations equations = new NodalEquations(netlist, this::plan);
        return equations.isTied() ? new NewtonSearch(equations).run() : new Outcome.Floating(floating(netlist));
    }

    private EliminationPlan plan(EliminationPlan.Shape shape) {
        EliminationPlan known = last;
        if (known == null || !known.shape().same(shape)) {
            known = new EliminationPlan(shape, new EliminationOrder(shape));
            last = known;
        }
        return known;
    }

    private static List<Integer> floating(Netlist netlist) {
        int[] root = new int[netlist.nodes()];
        for (int i = 0; i < root.length; i++) {
            root[i] = i;
        }
        for (Netlist.Branch branch : netlist.branches()) {
            if (!(branch.element() instanceof Element.Draw)) {
                root[find(root, branch.from())] = find(root, branch.to());
            }
        }
        boolean[] tied = new boolean[root.length];
        for (int i = 0; i < root.length; i++) {
            tied[find(root, i)] |= netlist.isHeld(i);
        }
        List<Integer> floating = new ArrayList<>();
        for (int i = 0; i < root.length; i++) {
            if (!tied[find(root, i)]) {
                floating.add(i);
            }
        }
        return floating;
    }

    private static int find(int[] root, int node) {
        int at = node;
        while (root[at] != at) {
            root[at] = root[root[at]];
            at = root[at];
        }
        return at;
    }
}
