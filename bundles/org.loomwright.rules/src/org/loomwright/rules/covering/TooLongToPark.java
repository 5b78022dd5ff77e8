// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import org.loomwright.fit.FitStatus;
import org.loomwright.fit.Requirement;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A branch that some vehicles do not use, and that is longer than what it may be parked within there. */
public final class TooLongToPark implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("too-long-to-park",
            "Can every capped branch be parked where it is capped?", Severity.ERROR, Kind.ENGINEERING, Scope.HARNESS,
            "the definition of fit (docs/fit.md): parking");

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
        for (Outcome outcome : Outcome.all(target, FitStatus.TOO_LONG_TO_PARK)) {
            if (outcome.cell().requirement() instanceof Requirement.Parked parked) {
                report(outcome, parked, findings);
            }
        }
    }

    private static void report(Outcome outcome, Requirement.Parked parked, Findings findings) {
        Length made = parked.made().orElseThrow();
        Length within = parked.within().orElseThrow();
        Length over = Outcome.up(made.minus(within));
        outcome.draft(findings, over + " too long").see(parked.capSpan(), "parked here")
                .says("branch " + outcome.row().branch() + " is " + over
                        + " too long to be parked where these vehicles do not use it")
                .step(made + " of branch, more than the " + within + " that it may be parked within")
                .advise("make it shorter, or park it where there is more room")
                .report();
    }
}
