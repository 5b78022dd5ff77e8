// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.Wiring;

/** A plan as changes of the text of its harness. What is pinned, and what already says so, stays as it is. */
public final class PlanText {

    private static final int MM_DECIMALS = 6;

    private PlanText() {
    }

    /** Returns the changes that write a plan down; a station that counts from another breakout goes on doing so. */
    public static List<TextEdit> edits(Wiring harness, HarnessPlan.Solution plan) {
        List<TextEdit> edits = new ArrayList<>();
        for (Run run : harness.runs()) {
            for (Run.Breakout each : run.breakouts()) {
                Long station = plan.stations().get(each.name().text());
                Long from = each.after().map(Ref::text).map(plan.stations()::get).orElse(0L);
                if (station != null && from != null) {
                    edit(Optional.of(each.at()), station - from, each.at().span(), edits);
                }
            }
            Long length = plan.lengths().get(run.name().text());
            if (length != null && run.to().isPresent()) {
                Span end = run.to().get().span();
                edit(run.length(), length, new Span(end.file(), end.end(), 0, end.line(),
                        end.column() + end.length()), edits);
            }
        }
        return edits;
    }

    private static void edit(Optional<Measure> measure, long nanometres, Span where, List<TextEdit> edits) {
        if (measure.isEmpty()) {
            edits.add(new TextEdit(where, " " + words(nanometres)));
        } else if (!Provisional.isFixed(measure.get())
                && measure.get().length().filter(now -> now.nanometres() == nanometres).isEmpty()) {
            edits.add(new TextEdit(measure.get().span(), words(nanometres) + rest(measure.get())));
        }
    }

    private static String rest(Measure measure) {
        String end = switch (measure.end()) {
            case TIP -> " measured to tip";
            case HOUSING -> " measured to housing";
            case FACE -> " measured to face";
            case UNSTATED -> "";
        };
        return measure.tolerance().map(tolerance -> " " + tolerance).orElse("") + end
                + (measure.path() ? " path" : "");
    }

    private static String words(long nanometres) {
        return BigDecimal.valueOf(nanometres, MM_DECIMALS).stripTrailingZeros().toPlainString() + " mm";
    }
}
