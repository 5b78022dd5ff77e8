// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.linear.LinearSolver;

/**
 * Linear programs solved by ojAlgo: with the dual simplex method, and where that gives up with the primal one. Anything
 * but an optimum or infeasibility that the library states is not known.
 */
final class LibraryProgram implements LinearProgram {

    private final double[] objective;

    LibraryProgram(double[] objective) {
        this.objective = objective.clone();
    }

    @Override
    public Answer solve(long[] low, long[] high, List<Row> rows) {
        int count = objective.length;
        double[] range = new double[count];
        for (int i = 0; i < count; i++) {
            range[i] = high[i] - low[i];
        }
        LinearSolver.Builder builder = LinearSolver.newBuilder(objective).lower(0.0).upper(range);
        for (Row row : rows) {
            double[] factors = new double[count];
            double most = row.most();
            for (int i = 0; i < row.unknowns().length; i++) {
                factors[row.unknowns()[i]] = row.factors()[i];
                most -= (double) row.factors()[i] * low[row.unknowns()[i]];
            }
            builder.inequality(most, factors);
        }
        Optimisation.Options dual = new Optimisation.Options();
        dual.linear().dual();
        Answer answer = answer(builder.build(dual).solve(), low);
        if (answer instanceof Answer.NotKnown) {
            Optimisation.Options primal = new Optimisation.Options();
            primal.linear().primal();
            return answer(builder.build(primal).solve(), low);
        }
        return answer;
    }

    private static Answer answer(Optimisation.Result result, long[] low) {
        if (result.getState() == Optimisation.State.INFEASIBLE) {
            return new Answer.Nothing();
        }
        if (!result.getState().isOptimal()) {
            return new Answer.NotKnown();
        }
        double[] x = new double[low.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = low[i] + result.doubleValue(i);
        }
        return new Answer.Least(x);
    }
}
