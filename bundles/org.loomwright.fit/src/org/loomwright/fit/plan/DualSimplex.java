// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * Linear programs in few bounded unknowns under ever more inequalities, by the dual simplex method (Lemke, Naval
 * Research Logistics 1, 1954) over the inequalities that hold with equality: as many of them as unknowns. A program is
 * taken up where the one before it ended, so that a further inequality or a narrower range costs a few steps.
 *
 * <p>What it says is proved: from the multipliers, rounded to binary fractions, a bound follows in whole numbers,
 * whatever was lost in the steps that led to them (Neumaier and Shcherbina, Mathematical Programming 99, 2004). What
 * cannot be proved so is handed to the library.
 *
 * <p>One object for each objective; each step takes O(unknowns² + inequalities).
 */
final class DualSimplex implements LinearProgram {

    private static final double LITTLE = 1e-9;
    private static final double BROKEN = 1e-7;
    private static final double PIVOT = 1e-8;
    private static final int MOST_STEPS = 5_000;
    private static final int STEPS_TO_RENEW = 80;
    /** Multipliers are rounded to so many binary places. */
    private static final int PLACES = 30;
    /** What a bound that is proved may be less than the figure that is reported. */
    private static final double SHORT = 5e-5;

    private final double[] objective;
    private final LinearProgram library;
    private final int count;
    /** What holds with equality: an inequality, or the range of an unknown. */
    private final Held[] held;
    private double[][] inverse;
    private int steps;
    private long[] low;
    private long[] high;
    /** The inequalities one behind the other, since all of them are looked at in each step. */
    private int[] first = {0};
    private int[] unknowns = {};
    private double[] factors = {};

    /** An inequality that holds with equality; without one, the upper or lower end of the range of an unknown. */
    private record Held(Row row, int unknown, boolean upper) {
    }

    DualSimplex(double[] objective) {
        this.objective = objective.clone();
        this.library = new LibraryProgram(objective);
        this.count = objective.length;
        this.held = new Held[count];
        begin();
    }

    private void begin() {
        inverse = new double[count][count];
        for (int i = 0; i < count; i++) {
            held[i] = new Held(null, i, objective[i] < 0);
            inverse[i][i] = objective[i] < 0 ? 1 : -1;
        }
        steps = 0;
    }

    @Override
    public Answer solve(long[] lowest, long[] highest, List<Row> rows) {
        low = lowest;
        high = highest;
        lay(rows);
        Set<Row> there = Collections.newSetFromMap(new IdentityHashMap<>());
        there.addAll(rows);
        for (Held each : held) {
            if (each.row != null && !there.contains(each.row)) {
                begin();
                break;
            }
        }
        Answer answer = steps(rows);
        if (answer instanceof Answer.NotKnown) {
            begin();
            answer = steps(rows);
        }
        return answer instanceof Answer.NotKnown ? library.solve(low, high, rows) : answer;
    }

    private void lay(List<Row> rows) {
        int size = 0;
        for (Row row : rows) {
            size += row.unknowns().length;
        }
        if (first.length <= rows.size()) {
            first = new int[2 * rows.size() + 1];
        }
        if (unknowns.length < size) {
            unknowns = new int[2 * size];
            factors = new double[2 * size];
        }
        int next = 0;
        int number = 0;
        for (Row row : rows) {
            for (int u = 0; u < row.unknowns().length; u++) {
                unknowns[next] = row.unknowns()[u];
                factors[next++] = row.factors()[u];
            }
            first[++number] = next;
        }
    }

    private double end(Held each) {
        return each.row != null ? each.row.most() : each.upper ? high[each.unknown] : -low[each.unknown];
    }

    /** The figures at which all that is held holds with equality. */
    private double[] figures() {
        double[] x = new double[count];
        for (int k = 0; k < count; k++) {
            double end = end(held[k]);
            if (end != 0) {
                for (int i = 0; i < count; i++) {
                    x[i] += inverse[i][k] * end;
                }
            }
        }
        return x;
    }

    /** The multipliers of what is held: the objective and they add up to nothing. */
    private double[] multipliers() {
        double[] y = new double[count];
        for (int k = 0; k < count; k++) {
            for (int i = 0; i < count; i++) {
                y[k] -= objective[i] * inverse[i][k];
            }
        }
        return y;
    }

    private Answer steps(List<Row> rows) {
        double[] x = figures();
        double[] y = multipliers();
        for (int step = 0; step < MOST_STEPS; step++) {
            if (steps >= STEPS_TO_RENEW) {
                if (!renew()) {
                    return new Answer.NotKnown();
                }
                x = figures();
                y = multipliers();
            }
            Held enters = broken(x, rows);
            if (enters == null) {
                return isProved(y, null, null, bound(x)) ? new Answer.Least(x) : new Answer.NotKnown();
            }
            double[] weights = weights(enters);
            int leaves = leaves(weights, y, step > MOST_STEPS / 2);
            if (leaves < 0) {
                return isProved(weights, enters, weights, 0) ? new Answer.Nothing() : new Answer.NotKnown();
            }
            double moved = (end(enters) - value(enters, x)) / weights[leaves];
            for (int i = 0; i < count; i++) {
                x[i] += moved * inverse[i][leaves];
            }
            double share = Math.max(0, y[leaves] / weights[leaves]);
            for (int k = 0; k < count; k++) {
                y[k] = Math.max(0, y[k] - share * weights[k]);
            }
            y[leaves] = share;
            exchange(leaves, enters, weights);
        }
        return new Answer.NotKnown();
    }

    private double bound(double[] x) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += objective[i] * x[i];
        }
        return sum;
    }

    private static double value(Held each, double[] x) {
        if (each.row == null) {
            return each.upper ? x[each.unknown] : -x[each.unknown];
        }
        return each.row.most() - each.row.slack(x);
    }

    /** What the figures break by most; null when they break nothing. */
    private Held broken(double[] x, List<Row> rows) {
        Row worst = null;
        double most = BROKEN;
        for (int number = 0; number < rows.size(); number++) {
            double over = -rows.get(number).most();
            for (int i = first[number]; i < first[number + 1]; i++) {
                over += factors[i] * x[unknowns[i]];
            }
            if (over > most) {
                most = over;
                worst = rows.get(number);
            }
        }
        int unknown = -1;
        boolean upper = false;
        for (int i = 0; i < count; i++) {
            double over = Math.max(low[i] - x[i], x[i] - high[i]);
            if (over > most) {
                most = over;
                unknown = i;
                upper = x[i] > high[i];
            }
        }
        return unknown >= 0 ? new Held(null, unknown, upper) : worst == null ? null : new Held(worst, -1, false);
    }

    /** What enters as a sum of what is held. */
    private double[] weights(Held enters) {
        double[] weights = new double[count];
        if (enters.row == null) {
            double sign = enters.upper ? 1 : -1;
            for (int k = 0; k < count; k++) {
                weights[k] = sign * inverse[enters.unknown][k];
            }
            return weights;
        }
        for (int u = 0; u < enters.row.unknowns().length; u++) {
            double factor = enters.row.factors()[u];
            double[] line = inverse[enters.row.unknowns()[u]];
            for (int k = 0; k < count; k++) {
                weights[k] += factor * line[k];
            }
        }
        return weights;
    }

    /** The held one whose multiplier comes to nothing first; -1 for none. Of equal ones the safest, or the first. */
    private int leaves(double[] weights, double[] y, boolean first) {
        double least = Double.MAX_VALUE;
        for (int k = 0; k < count; k++) {
            if (weights[k] > PIVOT) {
                least = Math.min(least, (y[k] + LITTLE) / weights[k]);
            }
        }
        int best = -1;
        for (int k = 0; k < count; k++) {
            if (weights[k] > PIVOT && y[k] / weights[k] <= least
                    && (best < 0 || !first && weights[k] > weights[best])) {
                best = k;
            }
        }
        return best;
    }

    private void exchange(int leaves, Held enters, double[] weights) {
        double pivot = weights[leaves];
        for (int i = 0; i < count; i++) {
            double[] line = inverse[i];
            double part = line[leaves] / pivot;
            if (part != 0) {
                for (int k = 0; k < count; k++) {
                    line[k] -= part * weights[k];
                }
            }
            line[leaves] = part;
        }
        held[leaves] = enters;
        steps++;
    }

    /** Works the inverse out anew, without what rounding has added up to; false when that cannot be done. */
    private boolean renew() {
        double[][] matrix = new double[count][2 * count];
        for (int k = 0; k < count; k++) {
            if (held[k].row == null) {
                matrix[k][held[k].unknown] = held[k].upper ? 1 : -1;
            } else {
                for (int u = 0; u < held[k].row.unknowns().length; u++) {
                    matrix[k][held[k].row.unknowns()[u]] = held[k].row.factors()[u];
                }
            }
            matrix[k][count + k] = 1;
        }
        for (int i = 0; i < count; i++) {
            int best = i;
            for (int k = i + 1; k < count; k++) {
                best = Math.abs(matrix[k][i]) > Math.abs(matrix[best][i]) ? k : best;
            }
            if (Math.abs(matrix[best][i]) < PIVOT) {
                return false;
            }
            double[] line = matrix[best];
            matrix[best] = matrix[i];
            matrix[i] = line;
            double pivot = line[i];
            for (int c = i; c < 2 * count; c++) {
                line[c] /= pivot;
            }
            for (int k = 0; k < count; k++) {
                double factor = matrix[k][i];
                if (k != i && factor != 0) {
                    for (int c = i; c < 2 * count; c++) {
                        matrix[k][c] -= factor * line[c];
                    }
                }
            }
        }
        for (int i = 0; i < count; i++) {
            inverse[i] = Arrays.copyOfRange(matrix[i], count, 2 * count);
        }
        steps = 0;
        return true;
    }

    /**
     * Whether multipliers prove what is said, in whole numbers: with an inequality that enters, that it and what is
     * held have nothing in common within the ranges; without, that the objective is not less than a value, but for
     * {@link #SHORT}.
     */
    private boolean isProved(double[] multipliers, Held enters, double[] weights, double value) {
        try {
            long[] left = new long[count];
            long most = 0;
            if (enters == null) {
                for (int i = 0; i < count; i++) {
                    left[i] = Math.multiplyExact(Math.round(objective[i]), 1L << PLACES);
                    if (Math.round(objective[i]) != objective[i]) {
                        return false;
                    }
                }
            } else {
                most = add(left, enters, 1L << PLACES);
            }
            for (int k = 0; k < count; k++) {
                double y = enters == null ? multipliers[k] : -weights[k];
                if (y > 0) {
                    most = Math.addExact(most, add(left, held[k], Math.round(Math.scalb(y, PLACES))));
                }
            }
            // the sum of all multiplied inequalities and of the objective, at its least within the ranges
            long least = 0;
            for (int i = 0; i < count; i++) {
                least = Math.addExact(least, Math.multiplyExact(left[i], left[i] > 0 ? low[i] : high[i]));
            }
            long proved = Math.subtractExact(least, most);
            return enters != null ? proved > 0 : Math.scalb((double) proved, -PLACES) >= value - SHORT;
        } catch (ArithmeticException tooLarge) {
            return false;
        }
    }

    /** Adds a multiple of what is held; returns its end times the multiple. */
    private long add(long[] left, Held each, long times) {
        if (each.row == null) {
            int sign = each.upper ? 1 : -1;
            left[each.unknown] = Math.addExact(left[each.unknown], sign * times);
            return Math.multiplyExact(times, each.upper ? high[each.unknown] : -low[each.unknown]);
        }
        for (int u = 0; u < each.row.unknowns().length; u++) {
            int unknown = each.row.unknowns()[u];
            left[unknown] = Math.addExact(left[unknown], Math.multiplyExact(times, each.row.factors()[u]));
        }
        return Math.multiplyExact(times, each.row.most());
    }
}
