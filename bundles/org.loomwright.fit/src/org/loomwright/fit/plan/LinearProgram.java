// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Optional;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.linear.LinearSolver;

/** Linear programs in bounded unknowns, solved by ojAlgo. */
final class LinearProgram {

    private final double[] objective;

    LinearProgram(double[] objective) {
        this.objective = objective.clone();
    }

    /** The figures with the least objective; empty when no figures fulfil all. */
    Optional<double[]> solve(long[] low, long[] high, List<Row> rows) {
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
        Optimisation.Options options = new Optimisation.Options();
        options.linear().dual();
        Optimisation.Result result = builder.build(options).solve();
        if (!result.getState().isOptimal()) {
            if (!result.getState().isFailure() && result.getState() != Optimisation.State.INFEASIBLE) {
                throw new IllegalStateException("a linear program ended as " + result.getState());
            }
            return Optional.empty();
        }
        double[] x = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = low[i] + result.doubleValue(i);
        }
        return Optional.of(x);
    }
}
