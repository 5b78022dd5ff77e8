// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitStatus;
import org.loomwright.fit.Requirement;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * What keeps the fit from being proved besides missing lengths and axes: a branch that leaves a branch whose way is not
 * known, and a covered drawing that could not be judged, or only as a whole.
 */
public final class FitNotProved implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("fit-not-proved",
            "Can the fit be judged in every drawing that is covered?", Severity.WARNING, Kind.ENGINEERING,
            Scope.HARNESS, "the definition of fit (docs/fit.md): what cannot be judged is not proved, never guessed");
    /** Of the problems of a fit those that no other rule tells of. */
    private static final String PLATFORM = "fit-platform";
    private static final String VEHICLES = "fit-vehicles";
    private static final String BOUNDED = "fit-bounded";
    private static final Set<String> TOLD_HERE = Set.of(PLATFORM, VEHICLES, BOUNDED);

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
        for (Outcome outcome : Outcome.all(target, FitStatus.NOT_PROVED)) {
            if (outcome.cell().reason().filter(Requirement.Reason.PARENT::equals).isPresent()) {
                parent(target, outcome, findings);
            }
        }
        if (!target.wiring().covers().isEmpty()) {
            target.shapes().fit(target.wiring()).problem().problems().stream()
                    .filter(problem -> TOLD_HERE.contains(problem.code()))
                    .forEach(problem -> drawing(target, problem, findings));
        }
    }

    private static void parent(Target.OfHarness target, Outcome outcome, Findings findings) {
        WiringView harness = target.wiring();
        String branch = outcome.row().branch();
        Optional<String> parent = target.shapes().of(harness).tree().run(branch).map(TreeRun::start)
                .map(spot -> spot.run());
        outcome.draft(findings, "hangs on " + parent.map(name -> "branch " + name).orElse("a branch"))
                .key(outcome.column().drawing())
                .says("nobody can say whether branch " + branch + " fits " + outcome.where() + ": "
                        + Requirement.Reason.PARENT.words())
                .advise("let it leave the trunk, or give "
                        + parent.map(name -> "the drawing's branch to the place of " + name)
                                .orElse("the drawing's branch") + " the name of ours and a known station")
                .report();
    }

    private static void drawing(Target.OfHarness target, Problem problem, Findings findings) {
        WiringView harness = target.wiring();
        String name = harness.wiring().ours().covers().stream().filter(ref -> ref.span().equals(problem.span()))
                .map(Ref::text).findFirst().orElse("");
        Condition ours = harness.when();
        Condition when = target.shapes().wiring(name).map(WiringView::when)
                .map(theirs -> switch (problem.code()) {
                    case VEHICLES -> theirs;
                    case BOUNDED -> theirs.and(ours);
                    default -> ours;
                }).orElse(ours);
        findings.about(harness.name(), "", "harness " + harness.name()).when(when).key(problem.code() + " " + name)
                .at(problem.span(), problem.code().equals(BOUNDED) ? "judged as a whole" : "not judged")
                .says(problem.message()).advise(problem.advice()).report();
    }
}
