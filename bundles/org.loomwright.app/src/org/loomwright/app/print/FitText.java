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
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** What is said of the fit of one harness in a few lines. */
final class FitText {

    private static final String ACCEPTED = "fits but for what is accepted";

    private final Judged judged;
    private final FitReport report;
    private final boolean accepted;

    /**
     * @param found what the rules found, and a person accepted; tells whether a failure of the fit counts
     */
    FitText(Judged judged, Report found) {
        this.judged = judged;
        this.report = judged.report();
        this.accepted = isAccepted(judged, found);
    }

    /** Whether it does not fit, and somebody accepted every finding that says so. */
    static boolean isAccepted(Judged judged, Report found) {
        if (judged.weight().filter(weight -> weight == Severity.ERROR).isEmpty()) {
            return false;
        }
        List<Finding> about = StandardRules.fitBook().infos().stream().map(RuleInfo::id)
                .flatMap(id -> found.of(id).stream())
                .filter(finding -> finding.element().split(":", 2)[0].equals(judged.harness().name()))
                .filter(finding -> finding.severity().atLeast(Severity.WARNING)).toList();
        return !about.isEmpty() && about.stream().noneMatch(Finding::counts);
    }

    /** The verdict in a few words. */
    static String words(Judged judged, Report found) {
        return judged.coversNothing() ? "covers nothing" : isAccepted(judged, found) ? ACCEPTED
                : judged.report().verdict().words();
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
        Tone tone = accepted ? Tone.WARNING : judged.weight().map(FindingText::tone).orElse(Tone.GOOD);
        String words = name + " " + (accepted ? ACCEPTED + ": " + report.problem().evidence().words()
                : report.words());
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
        return cell.place(report.problem().rows().get(cell.row())) + " in "
                + report.problem().columns().get(cell.column()).drawing();
    }

    /** Whether the verdict is one to look into. */
    boolean isOpen() {
        return judged.objects(Severity.WARNING);
    }
}
