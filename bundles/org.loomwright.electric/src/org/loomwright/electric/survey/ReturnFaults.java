// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;

/** Looks at loads that are declared to return through others: whether enough current finds its way through those. */
public final class ReturnFaults implements Inspector {

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        if (!point.solved()) {
            return faults;
        }
        for (Piece piece : point.schematic().pieces()) {
            if (piece.role() == Role.LOAD && point.conducts(piece) && piece.model() instanceof Model.Working working
                    && fed.hangs(piece)) {
                lost(point, piece, working, faults);
            }
        }
        return faults;
    }

    private static void lost(OperatingPoint point, Piece piece, Model.Working working, List<Fault> faults) {
        boolean declared = piece.subject().device().filter(each -> each.device().returns()).isPresent();
        double share = Fed.currentShare(point, piece);
        Limits limits = point.schematic().fitment().platform().limits();
        if (declared && share < limits.si(Limit.RETURNS)) {
            faults.add(new Fault("intended-return-lost", piece, 1 - share, piece.subject().label()
                    + " is meant to return through other loads and carries " + Figure.of(share * 100, 0)
                    + " % of its current", List.of(Figure.of(Math.abs(point.amps(piece)), 3) + " A of "
                            + Figure.of(working.amps(), 3) + " A, " + limits.value(Limit.RETURNS) + " are wanted ("
                            + limits.cite(Limit.RETURNS) + ")"),
                    "let a filament lamp carry its return, or give it a return to ground of its own"));
        }
    }
}
