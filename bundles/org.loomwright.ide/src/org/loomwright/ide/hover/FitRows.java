// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.fit.FitBinding;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.Shown;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;

/** How a branch, a breakout or a place fits, for each drawing the worst of its geometries. */
final class FitRows {

    private static final int EXPONENT = 6;
    private static final BigDecimal NM_PER_INCH = BigDecimal.valueOf(25_400_000);

    private FitRows() {
    }

    /** For a place of a harness of ours, by one of its branches or by any ({@code branch} empty). */
    static List<Row> of(Moment moment, WiringView harness, String place, String branch, Shown shown, Cancel cancel) {
        List<Row> rows = new ArrayList<>();
        if (!harness.wiring().isHarness() || harness.covers().isEmpty()) {
            return rows;
        }
        try {
            FitReport report = moment.fit(harness, cancel);
            for (int row = 0; row < report.problem().rows().size(); row++) {
                FitRow each = report.problem().rows().get(row);
                if (each.place().equals(place) && (branch.isEmpty() || each.branch().equals(branch))) {
                    cells(report, row, shown.unit()).forEach((drawing, words) ->
                            rows.add(new Row("fit in " + drawing, words)));
                }
            }
        } catch (TooManyCombinations e) {
            rows.add(new Row("fit", "too many combinations to judge"));
        }
        return rows;
    }

    private static Map<String, String> cells(FitReport report, int row, Unit unit) {
        Map<String, String> worst = new TreeMap<>();
        report.problem().columns().stream().map(column -> column.drawing()).distinct()
                .forEach(drawing -> report.worst(row, drawing)
                        .ifPresent(cell -> worst.put(drawing, words(cell, unit))));
        return worst;
    }

    private static String words(FitCell cell, Unit unit) {
        return cell.status().words() + cell.figures().map(figures -> ", margin " + rounded(figures.margin(), unit,
                RoundingMode.FLOOR) + ", excess " + rounded(figures.excess(), unit, RoundingMode.CEILING))
                .orElse("");
    }

    /** What binds a breakout. */
    static List<Row> ofBreakout(Moment moment, WiringView harness, String breakout, Shown shown, Cancel cancel) {
        if (!harness.wiring().isHarness() || harness.covers().isEmpty()) {
            return List.of();
        }
        try {
            FitReport report = moment.fit(harness, cancel);
            return report.bindings().stream().filter(each -> each.kind() == FitBinding.Kind.BREAKOUT
                            && each.name().equals(breakout))
                    .map(each -> new Row("bound by", report.problem().rows().get(each.row()).place() + " in "
                            + report.problem().columns().get(each.column()).label() + ", margin "
                            + rounded(each.margin(), shown.unit(), RoundingMode.FLOOR))).toList();
        } catch (TooManyCombinations e) {
            return List.of();
        }
    }

    /** In tenths of a millimetre or hundredths of an inch, never rounded to the pleasant side. */
    private static String rounded(Length length, Unit unit, RoundingMode mode) {
        return unit == Unit.IN ? BigDecimal.valueOf(length.nanometres()).divide(NM_PER_INCH, 2, mode) + " in"
                : BigDecimal.valueOf(length.nanometres(), EXPONENT).setScale(1, mode).toPlainString() + " mm";
    }
}
