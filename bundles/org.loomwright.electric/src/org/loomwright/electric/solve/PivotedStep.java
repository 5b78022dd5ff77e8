// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/**
 * Nodal equations whose matrix is not positive definite, since some current falls with its voltage by more than what
 * its wires conduct: solved as L times U with pivots looked for. Rare.
 */
final class PivotedStep {

    private PivotedStep() {
    }

    /**
     * Finds the potentials in V of all places from one on; false if there is no single solution.
     *
     * @param values   conductances in A/V, see {@link EliminationPlan#slots}
     * @param currents by place, current in A into the node
     */
    static boolean solve(EliminationPlan plan, int start, double[] values, double[] currents, double[] potentials) {
        int size = plan.free() - start;
        double[] diagonal = new double[size];
        System.arraycopy(values, plan.edges() + start, diagonal, 0, size);
        DMatrixSparseTriplet entries = new DMatrixSparseTriplet(size, size, 2 * plan.edges() + size);
        for (int i = 0; i < plan.edges(); i++) {
            int a = plan.end(i, false) - start;
            int b = plan.end(i, true) - start;
            if (a >= 0 && b >= 0 && values[i] != 0) {
                entries.addItem(a, b, -values[i]);
                entries.addItem(b, a, -values[i]);
                diagonal[a] += values[i];
                diagonal[b] += values[i];
            }
        }
        DMatrixRMaj right = new DMatrixRMaj(size, 1);
        for (int i = 0; i < size; i++) {
            entries.addItem(i, i, diagonal[i]);
            right.data[i] = currents[start + i];
        }
        LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver = LinearSolverFactory_DSCC.lu(FillReducing.NONE);
        DMatrixRMaj left = new DMatrixRMaj(size, 1);
        if (!solver.setA(DConvertMatrixStruct.convert(entries, (DMatrixSparseCSC) null))) {
            return false;
        }
        solver.solve(right, left);
        System.arraycopy(left.data, 0, potentials, start, size);
        return true;
    }
}
