// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/** The fit of a harness, spot by spot, with the names of the new side, so that two sides can be held together. */
final class FitCells {

    private final FitJudge judge;
    private final FitDefaults defaults;

    FitCells(FitJudge judge, FitDefaults defaults) {
        this.judge = judge;
        this.defaults = defaults;
    }

    /** A place of a drawing, and the branch that serves it. */
    record Spot(String drawing, String place, String branch) {
    }

    /**
     * The worst geometry of a spot.
     *
     * @param cell     what came of it
     * @param vehicles all vehicles of that drawing in which the spot has the status of the worst geometry
     */
    record Worst(FitCell cell, Condition vehicles) {

        /** The vehicles in shortest words. */
        String words() {
            try {
                return vehicles.isAlways() ? "every vehicle" : vehicles.words();
            } catch (TooManyCombinations e) {
                return "some vehicles";
            }
        }
    }

    /** The worst geometry of each spot of a harness of the old side. */
    Map<Spot, Worst> before(WiringView harness, Project project, Matching matching, Cancel cancel) {
        String platform = harness.platform().name();
        return cells(harness, project, cancel, (row, drawing) -> new Spot(name(matching, Sort.WIRING, "", drawing),
                name(matching, Sort.PLACE, platform, row.place()),
                name(matching, Sort.RUN, harness.name(), row.branch())));
    }

    /** The worst geometry of each spot of a harness of the new side. */
    Map<Spot, Worst> after(WiringView harness, Project project, Cancel cancel) {
        return cells(harness, project, cancel, (row, drawing) -> new Spot(drawing, row.place(), row.branch()));
    }

    private Map<Spot, Worst> cells(WiringView harness, Project project, Cancel cancel,
            BiFunction<FitRow, String, Spot> spot) {
        FitReport report = judge.judge(FitProblem.of(harness, project, defaults), cancel);
        Map<Spot, Worst> cells = new LinkedHashMap<>();
        List<FitRow> rows = report.problem().rows();
        for (int row = 0; row < rows.size(); row++) {
            for (String drawing : harness.covers()) {
                Optional<FitCell> worst = report.worst(row, drawing);
                if (worst.isPresent()) {
                    cells.put(spot.apply(rows.get(row), drawing),
                            new Worst(worst.get(), alike(report, worst.get(), drawing)));
                }
            }
        }
        return cells;
    }

    /** The vehicles of all geometries of a drawing that have the status of a cell in its row. */
    private static Condition alike(FitReport report, FitCell worst, String drawing) {
        List<FitColumn> columns = report.problem().columns();
        Condition own = columns.get(worst.column()).vehicles();
        return report.cells().stream()
                .filter(cell -> cell.row() == worst.row() && cell.status() == worst.status())
                .map(cell -> columns.get(cell.column())).filter(column -> column.drawing().equals(drawing))
                .map(FitColumn::vehicles).reduce(own, Condition::or);
    }

    private static String name(Matching matching, Sort sort, String owner, String name) {
        return matching.name(new ItemId(sort, owner, name)).name();
    }
}
