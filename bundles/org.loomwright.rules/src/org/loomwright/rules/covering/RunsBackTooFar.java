// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitStatus;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A branch of ours that runs further along the trunk than is allowed before the factory's branch leaves it. */
public final class RunsBackTooFar implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("runs-back-too-far",
            "Does every branch leave the trunk near enough to the factory's?", Severity.ERROR, Kind.ENGINEERING,
            Scope.HARNESS, "the definition of fit (docs/fit.md): doubling back");

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
        for (Outcome outcome : Outcome.all(target, FitStatus.DOUBLES_BACK)) {
            FitCell.Figures figures = outcome.cell().figures().orElseThrow();
            Length limit = figures.demand().backLimit();
            String place = outcome.place();
            outcome.draft(findings, figures.along() + " along the trunk").key(outcome.column().drawing())
                    .says("branch " + outcome.row().branch() + " runs " + Outcome.up(figures.along())
                            + " along the trunk to " + outcome.where())
                    .step(figures.along() + " along the trunk, more than " + limit)
                    .advise("move its breakout towards the factory's, or allow more than " + limit
                            + " with: doublingBackAtMost ... at " + place)
                    .report();
        }
    }
}
