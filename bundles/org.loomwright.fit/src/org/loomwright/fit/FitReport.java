// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.quantity.Length;

/**
 * The judgement of a harness as it is written: a matrix of places by vehicle geometries.
 *
 * @param problem  what was judged
 * @param cells    by row, then column; none where a branch does not exist in the vehicles and the place is served
 *                 otherwise
 * @param bindings what binds each branch, in row order, and each breakout, in order of their first branch
 * @param work     how much work it was
 */
public record FitReport(FitProblem problem, List<FitCell> cells, List<FitBinding> bindings, Work work) {

    private static final Comparator<FitCell> BETTER = Comparator.comparing(FitCell::status)
            .thenComparing(cell -> cell.figures().map(each -> each.margin().negated()).orElse(Length.ZERO));

    public FitReport {
        cells = List.copyOf(cells);
        bindings = List.copyOf(bindings);
    }

    /** The verdict on all of it. */
    public enum Verdict {
        /** It fits every vehicle geometry, as far as the drawings go. */
        FITS("fits the drawings as transcribed"),
        /** It fails nowhere, but something could not be judged. */
        NOT_PROVED("not proved"),
        /** It does not fit somewhere. */
        DOES_NOT_FIT("does not fit");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }

    /**
     * Work done.
     *
     * @param evaluations how often a branch was looked at in some position
     * @param points      lattice points that the layings stepped over
     * @param coarsest    the coarsest lattice of a laying; half of 0.05 mm unless a trunk has very much slack
     */
    public record Work(long evaluations, long points, Length coarsest) {
    }

    /** The cell in a row and column. Linear in the number of cells. */
    public Optional<FitCell> cell(int row, int column) {
        return cells.stream().filter(each -> each.row() == row && each.column() == column).findFirst();
    }

    /** The worst cell of a row over all geometries of a drawing; of several the one with the least margin. */
    public Optional<FitCell> worst(int row, String drawing) {
        return cells.stream().filter(each -> each.row() == row)
                .filter(each -> problem.columns().get(each.column()).drawing().equals(drawing)).max(BETTER);
    }

    /** Number of cells of each status that occurs. */
    public Map<FitStatus, Integer> counts() {
        Map<FitStatus, Integer> counts = new EnumMap<>(FitStatus.class);
        cells.forEach(each -> counts.merge(each.status(), 1, Integer::sum));
        return counts;
    }

    /** The largest excess over all cells; empty when no branch could be laid. */
    public Optional<Length> largestExcess() {
        return cells.stream().flatMap(each -> each.figures().stream()).map(FitCell.Figures::excess)
                .max(Comparator.naturalOrder());
    }

    /** The verdict. A covered drawing that could not be judged at all leaves it not proved. */
    public Verdict verdict() {
        if (cells.stream().anyMatch(each -> each.status().isFailure())) {
            return Verdict.DOES_NOT_FIT;
        }
        boolean open = problem.columns().isEmpty() || !problem.unjudged().isEmpty()
                || cells.stream().anyMatch(each -> each.status() == FitStatus.NOT_PROVED);
        return open ? Verdict.NOT_PROVED : Verdict.FITS;
    }

    static boolean isWorse(FitCell one, FitCell other) {
        return BETTER.compare(one, other) > 0;
    }

    /** The verdict with what it rests on: {@code fits the drawings as transcribed: 31 lengths from sheets}. */
    public String words() {
        return verdict().words() + ": " + problem.evidence().words();
    }
}
