// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.Optional;
import org.loomwright.fit.Demand;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A place of a covered drawing that our harness has no branch for, or that its branch does not reach. */
public final class PlaceNotReached implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("place-not-reached",
            "Does a harness of ours reach every place of the drawings that it covers?", Severity.ERROR,
            Kind.ENGINEERING, Scope.HARNESS,
            "the definition of fit (docs/fit.md): reach, worst case of all tolerances");
    /** Lengths to make longer are given in steps of this, rounded up. */
    private static final Length TENTH = new Length(100_000);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHarness> target() {
        return Target.OfHarness.class;
    }

    @Override
    public void check(Target.OfHarness target, Findings findings) {
        WiringView harness = target.wiring();
        if (harness.covers().isEmpty()) {
            return;
        }
        FitReport report = target.shapes().fit(harness);
        for (FitCell cell : report.cells()) {
            FitRow row = report.problem().rows().get(cell.row());
            FitColumn column = report.problem().columns().get(cell.column());
            if (cell.status() == FitStatus.NOT_SERVED) {
                notServed(harness, row, column, cell, findings);
            } else if (cell.status() == FitStatus.TOO_SHORT) {
                tooShort(harness, row, column, cell, findings);
            }
        }
    }

    private static void notServed(WiringView harness, FitRow row, FitColumn column, FitCell cell, Findings findings) {
        findings.about(harness.name(), "", "harness " + harness.name()).when(column.vehicles())
                .key(column.drawing() + " " + row.place())
                .at(coverSpan(harness, column.drawing()), "has a branch to " + row.place())
                .see(cell.factorySpan().orElse(Span.NONE), "the factory's branch")
                .says(column.drawing() + " has a branch to " + row.place() + " and harness " + harness.name()
                        + " has none")
                .advise("add a branch to " + row.place() + ", or do not cover this drawing for these vehicles")
                .report();
    }

    /** Where a harness says that it covers a drawing. */
    static Span coverSpan(WiringView harness, String drawing) {
        return harness.wiring().ours().covers().stream().filter(each -> each.text().equals(drawing)).map(Ref::span)
                .findFirst().orElse(harness.wiring().name().span());
    }

    private static void tooShort(WiringView harness, FitRow row, FitColumn column, FitCell cell, Findings findings) {
        FitCell.Figures figures = cell.figures().orElseThrow();
        Demand demand = figures.demand();
        Length lacking = figures.margin().negated().roundedUpTo(TENTH);
        Optional<Run> branch = harness.run(row.branch());
        Draft draft = findings.about(harness.name(), row.branch(), "branch " + row.branch()).when(column.vehicles())
                .key(column.drawing())
                .at(branch.map(run -> run.name().span()).orElse(row.span()), lacking + " too short")
                .see(demand.factorySpan(), "the factory's branch")
                .says("branch " + row.branch() + " is " + lacking + " too short for " + demand.place() + " as "
                        + column.drawing() + " has it")
                .step(demand.made() + " - " + demand.madeTolerance().minus() + " made shorter - " + figures.along()
                        + " along the trunk - " + demand.factory() + " factory length - " + demand.extra()
                        + " needed besides - " + demand.reachAllowance() + " tolerances = " + figures.margin()
                        + " left")
                .advise("make it at least " + lacking + " longer, or move its breakout towards the factory's");
        OtherLength.longer(draft, harness, row.branch(), lacking);
        draft.report();
    }
}
