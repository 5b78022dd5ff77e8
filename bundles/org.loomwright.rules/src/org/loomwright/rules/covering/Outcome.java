// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Target;

/**
 * What came of one place in one vehicle geometry of a covered drawing.
 *
 * @param harness the harness of ours
 * @param row     its place and branch
 * @param column  the drawing and its vehicles
 * @param cell    what came of it
 */
record Outcome(WiringView harness, FitRow row, FitColumn column, FitCell cell) {

    /** Lengths to change are given in steps of this, rounded up. */
    private static final Length TENTH = new Length(100_000);

    /** All that came out in one way; none for a harness that covers nothing. Linear in the number of cells. */
    static List<Outcome> all(Target.OfHarness target, FitStatus status) {
        List<Outcome> all = new ArrayList<>();
        WiringView harness = target.wiring();
        if (!harness.covers().isEmpty()) {
            FitReport report = target.shapes().fit(harness);
            for (FitCell cell : report.cells()) {
                if (cell.status() == status) {
                    all.add(new Outcome(harness, report.problem().rows().get(cell.row()),
                            report.problem().columns().get(cell.column()), cell));
                }
            }
        }
        return all;
    }

    /** Begins a finding about the branch, at its name. */
    Draft draft(Findings findings, String label) {
        Span name = harness.run(row.branch()).map(run -> run.name().span()).orElse(row.span());
        return findings.about(harness.name(), row.branch(), "branch " + row.branch()).when(column.vehicles())
                .at(name, label).see(cell.factorySpan().orElse(Span.NONE), "the factory's branch");
    }

    /** The place in these vehicles. */
    String place() {
        return cell.place(row);
    }

    /** {@code headlampLeft as front68 has it}. */
    String where() {
        return place() + " as " + column.drawing() + " has it";
    }

    /** Rounded up to a tenth of a millimetre. */
    static Length up(Length length) {
        return length.roundedUpTo(TENTH);
    }
}
