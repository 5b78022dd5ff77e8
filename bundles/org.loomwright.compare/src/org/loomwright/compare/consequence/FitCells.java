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
import org.loomwright.fit.FitCell;
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

    /** The worst geometry of each spot of a harness of the old side. */
    Map<Spot, FitCell> before(WiringView harness, Project project, Matching matching, Cancel cancel) {
        String platform = harness.platform().name();
        return cells(harness, project, cancel, (row, drawing) -> new Spot(name(matching, Sort.WIRING, "", drawing),
                name(matching, Sort.PLACE, platform, row.place()),
                name(matching, Sort.RUN, harness.name(), row.branch())));
    }

    /** The worst geometry of each spot of a harness of the new side. */
    Map<Spot, FitCell> after(WiringView harness, Project project, Cancel cancel) {
        return cells(harness, project, cancel, (row, drawing) -> new Spot(drawing, row.place(), row.branch()));
    }

    private Map<Spot, FitCell> cells(WiringView harness, Project project, Cancel cancel,
            BiFunction<FitRow, String, Spot> spot) {
        FitReport report = judge.judge(FitProblem.of(harness, project, defaults), cancel);
        Map<Spot, FitCell> cells = new LinkedHashMap<>();
        List<FitRow> rows = report.problem().rows();
        for (int row = 0; row < rows.size(); row++) {
            for (String drawing : harness.covers()) {
                Optional<FitCell> worst = report.worst(row, drawing);
                if (worst.isPresent()) {
                    cells.put(spot.apply(rows.get(row), drawing), worst.get());
                }
            }
        }
        return cells;
    }

    private static String name(Matching matching, Sort sort, String owner, String name) {
        return matching.name(new ItemId(sort, owner, name)).name();
    }
}
