// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import org.loomwright.fit.Demand;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitStatus;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A branch of ours of which more has to be dressed back than is allowed. Where no length would keep within the limit,
 * {@link ExcessTooTightToMake} says so instead.
 */
public final class ExcessTooGreat implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("excess-too-great",
            "Does no branch leave more to dress back than is allowed?", Severity.ERROR, Kind.ENGINEERING,
            Scope.HARNESS, "the definition of fit (docs/fit.md): excess, worst case of all tolerances");

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
        for (Outcome outcome : Outcome.all(target, FitStatus.TOO_LONG)) {
            FitCell.Figures figures = outcome.cell().figures().orElseThrow();
            if (!ExcessTooTightToMake.isNever(figures.demand())) {
                report(outcome, figures, findings);
            }
        }
    }

    private static void report(Outcome outcome, FitCell.Figures figures, Findings findings) {
        Demand demand = figures.demand();
        String branch = outcome.row().branch();
        Length over = Outcome.up(figures.excess().minus(demand.excessLimit()));
        Draft draft = outcome.draft(findings, over + " too long").key(outcome.column().drawing())
                .says("branch " + branch + " is " + over + " too long for " + outcome.where())
                .step(demand.made() + " + " + demand.madeTolerance().plus() + " made longer - " + figures.along()
                        + " along the trunk - " + demand.factory() + " factory length - " + demand.extra()
                        + " needed besides + " + demand.excessAllowance() + " tolerances = " + figures.excess()
                        + " to dress back, more than " + demand.excessLimit())
                .advise("make it shorter, move its breakout, or allow more with: excessAtMost ... at "
                        + outcome.place());
        OtherLength.shorter(draft, outcome.harness(), branch, over);
        draft.report();
    }
}
