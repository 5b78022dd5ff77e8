// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/**
 * The derivative of the nodal equations of one network. Its pattern is worked out once. While no element's current
 * falls with its voltage it is positive definite and is factored by Cholesky's method, otherwise as L times U.
 */
final class NodalMatrix {

    private final int[] from;
    private final int[] to;
    private final int free;
    private final DMatrixSparseCSC matrix;
    /** For each branch the places of its four entries among the values: from-from, to-to, from-to, to-from; or -1. */
    private final int[] places;
    private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> cholesky =
            LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);
    private final DMatrixRMaj right;
    private final DMatrixRMaj left;

    /** Numbers the nodes that are not held; {@code row} takes their numbers, -1 for the others. */
    NodalMatrix(Netlist netlist, int[] row) {
        int branches = netlist.branches().size();
        from = new int[branches];
        to = new int[branches];
        free = number(netlist, row);
        List<BitSet> rows = new ArrayList<>(free);
        for (int i = 0; i < free; i++) {
            rows.add(new BitSet(free));
            rows.get(i).set(i);
        }
        int at = 0;
        for (Netlist.Branch branch : netlist.branches()) {
            from[at] = row[branch.from()];
            to[at] = row[branch.to()];
            if (from[at] >= 0 && to[at] >= 0) {
                rows.get(from[at]).set(to[at]);
                rows.get(to[at]).set(from[at]);
            }
            at++;
        }
        int entries = rows.stream().mapToInt(BitSet::cardinality).sum();
        matrix = new DMatrixSparseCSC(free, free, entries);
        fill(rows, entries);
        places = new int[4 * branches];
        for (int i = 0; i < branches; i++) {
            places[4 * i] = place(from[i], from[i]);
            places[4 * i + 1] = place(to[i], to[i]);
            places[4 * i + 2] = place(from[i], to[i]);
            places[4 * i + 3] = place(to[i], from[i]);
        }
        right = new DMatrixRMaj(free, 1);
        left = new DMatrixRMaj(free, 1);
    }

    private static int number(Netlist netlist, int[] row) {
        int[] open = new int[netlist.nodes()];
        int count = 0;
        for (int node = 0; node < netlist.nodes(); node++) {
            row[node] = -1;
            if (!netlist.isHeld(node)) {
                row[node] = count;
                open[count++] = node;
            }
        }
        List<BitSet> neighbours = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            neighbours.add(new BitSet());
        }
        for (Netlist.Branch branch : netlist.branches()) {
            int a = row[branch.from()];
            int b = row[branch.to()];
            if (a >= 0 && b >= 0 && a != b) {
                neighbours.get(a).set(b);
                neighbours.get(b).set(a);
            }
        }
        int[] order = EliminationOrder.of(neighbours);
        for (int i = 0; i < count; i++) {
            row[open[order[i]]] = i;
        }
        return count;
    }

    private void fill(List<BitSet> rows, int entries) {
        int next = 0;
        for (int column = 0; column < free; column++) {
            matrix.col_idx[column] = next;
            BitSet set = rows.get(column);
            for (int i = set.nextSetBit(0); i >= 0; i = set.nextSetBit(i + 1)) {
                matrix.nz_rows[next++] = i;
            }
        }
        matrix.col_idx[free] = next;
        matrix.nz_length = entries;
        matrix.indicesSorted = true;
    }

    private int place(int rowOf, int column) {
        return rowOf < 0 || column < 0 ? -1
                : Arrays.binarySearch(matrix.nz_rows, matrix.col_idx[column], matrix.col_idx[column + 1], rowOf);
    }

    /** Returns how many nodes are not held. */
    int free() {
        return free;
    }

    /**
     * Solves for the step that takes away the sums of currents.
     *
     * @param slopes by branch, in A/V
     * @param sums   of currents that leave each free node, in A
     * @param step   takes the change of each potential, in V
     * @return false if the equations have no single solution
     */
    boolean step(double[] slopes, double[] sums, double[] step) {
        Arrays.fill(matrix.nz_values, 0, matrix.nz_length, 0);
        boolean rising = true;
        for (int i = 0; i < slopes.length; i++) {
            rising &= slopes[i] >= 0;
            if (from[i] == to[i]) {
                continue;
            }
            add(places[4 * i], slopes[i]);
            add(places[4 * i + 1], slopes[i]);
            add(places[4 * i + 2], -slopes[i]);
            add(places[4 * i + 3], -slopes[i]);
        }
        for (int i = 0; i < free; i++) {
            right.data[i] = -sums[i];
        }
        if (!(rising && factored(cholesky)) && !factored(null)) {
            return false;
        }
        System.arraycopy(left.data, 0, step, 0, free);
        for (int i = 0; i < free; i++) {
            if (!Double.isFinite(step[i])) {
                return false;
            }
        }
        return true;
    }

    private boolean factored(LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> known) {
        LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
                known == null ? LinearSolverFactory_DSCC.lu(FillReducing.NONE) : known;
        boolean good = solver.setA(matrix);
        if (good && known != null) {
            solver.setStructureLocked(true);
        }
        if (good) {
            solver.solve(right, left);
        }
        return good;
    }

    private void add(int place, double value) {
        if (place >= 0) {
            matrix.nz_values[place] += value;
        }
    }
}
