// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitReport;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Severity;

/** What is said of the fit of one harness in a few lines. */
final class FitText {

    private final Judged judged;
    private final FitReport report;

    FitText(Judged judged) {
        this.judged = judged;
        this.report = judged.report();
    }

    /** {@code front fits the drawings as transcribed: 31 lengths from sheets, 4 missing}. */
    String verdict(Palette palette) {
        String name = Cells.printable(judged.harness().name());
        if (judged.coversNothing()) {
            return name + " covers no drawing, so there is none that it must fit";
        }
        if (report.problem().rows().isEmpty()) {
            return name + " has no branch, and its drawings have none: there is nothing to fit";
        }
        Tone tone = judged.weight().map(FindingText::tone).orElse(Tone.GOOD);
        String words = name + " " + report.words();
        List<String> unjudged = report.problem().unjudged();
        return palette.paint(tone, words) + (unjudged.isEmpty() ? ""
                : "; not judged against " + String.join(", ", unjudged));
    }

    /** {@code least margin 10.0 mm: cornerLeft in front70}; empty when nothing has to reach. */
    String leastMargin() {
        return extreme(figures -> figures.margin().negated()).map(cell -> "least margin "
                + Millimetres.margin(cell.figures().orElseThrow().margin()) + " mm: " + where(cell)).orElse("");
    }

    /** {@code largest excess 133.4 mm: cornerRight in front64, 150 mm allowed}; empty when nothing has to reach. */
    String largestExcess() {
        return extreme(FitCell.Figures::excess).map(cell -> "largest excess "
                + Millimetres.excess(cell.figures().orElseThrow().excess()) + " mm: " + where(cell) + ", "
                + Millimetres.exact(cell.figures().orElseThrow().demand().excessLimit()) + " mm allowed").orElse("");
    }

    private Optional<FitCell> extreme(Function<FitCell.Figures, Length> by) {
        Comparator<FitCell> order = Comparator.comparing(cell -> by.apply(cell.figures().orElseThrow()));
        return report.cells().stream().filter(cell -> cell.figures().isPresent())
                .reduce((one, other) -> order.compare(other, one) > 0 ? other : one);
    }

    private String where(FitCell cell) {
        return report.problem().rows().get(cell.row()).place() + " in "
                + report.problem().columns().get(cell.column()).drawing();
    }

    /** Whether the verdict is one to look into. */
    boolean isOpen() {
        return judged.objects(Severity.WARNING);
    }
}
