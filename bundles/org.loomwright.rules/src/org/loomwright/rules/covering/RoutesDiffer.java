// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.Requirement;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Shapes;
import org.loomwright.rules.Target;

/**
 * A covered drawing whose stations and ours are not on one axis: it is pinned elsewhere, or none of its trunks is known
 * to take the way of ours. Then nothing can be said of the branches on it.
 */
public final class RoutesDiffer implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("routes-differ",
            "Do the trunks of a harness of ours and of its drawings take the same way?", Severity.WARNING,
            Kind.ENGINEERING, Scope.HARNESS, "the definition of fit (docs/fit.md): stations are compared on one axis");

    /** What keeps a drawing off our axis; the trunk of ours, empty where the datum differs. */
    private record Why(String drawing, Requirement.Reason reason, String trunk) {
    }

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
        Map<Why, Condition> when = new LinkedHashMap<>();
        Map<Why, Set<String>> places = new LinkedHashMap<>();
        for (FitCell cell : report.cells()) {
            Optional<Requirement.Reason> reason = cell.reason().filter(each -> each == Requirement.Reason.DATUM
                    || each == Requirement.Reason.TRUNK);
            if (reason.isPresent()) {
                FitRow row = report.problem().rows().get(cell.row());
                FitColumn column = report.problem().columns().get(cell.column());
                Why why = new Why(column.drawing(), reason.get(),
                        reason.get() == Requirement.Reason.TRUNK ? row.trunk() : "");
                when.merge(why, column.vehicles(), Condition::or);
                places.computeIfAbsent(why, key -> new LinkedHashSet<>()).add(row.place());
            }
        }
        when.forEach((why, vehicles) -> report(harness, target.shapes(), why, vehicles,
                places.get(why), findings));
    }

    private static void report(WiringView harness, Shapes shapes, Why why, Condition when, Set<String> places,
            Findings findings) {
        Optional<WiringView> drawing = shapes.wiring(why.drawing());
        Draft draft = findings.about(harness.name(), "", "harness " + harness.name()).when(when)
                .key(why.drawing() + " " + why.trunk())
                .at(PlaceNotReached.coverSpan(harness, why.drawing()), "not on one axis");
        if (why.reason() == Requirement.Reason.DATUM) {
            draft.says("drawing " + why.drawing() + " is pinned at "
                    + drawing.map(RoutesDiffer::datum).orElse("no place") + " and harness " + harness.name() + " at "
                    + datum(harness) + ", so that their stations cannot be compared")
                    .advise("let both count from the same datum: measure where the drawing's trunk passes ours");
            drawing.flatMap(view -> view.wiring().datum()).ifPresent(ref -> draft.see(ref.span(), "its datum"));
        } else {
            draft.says("no trunk of drawing " + why.drawing() + " is known to take the way of trunk " + why.trunk()
                    + " of harness " + harness.name())
                    .advise("give trunks that take the same way the same name; where the ways differ, cover the drawing"
                            + " with another harness");
            draft.see(harness.run(why.trunk()).map(run -> run.name().span()).orElse(Span.NONE), "our trunk");
            drawing.ifPresent(view -> view.wiring().runs(Run.Kind.TRUNK)
                    .forEach(run -> draft.see(run.name().span(), "trunk " + run.name())));
        }
        draft.step("nobody can say whether " + harness.name() + " reaches " + Listing.of(places)).report();
    }

    private static String datum(WiringView view) {
        return view.wiring().datum().map(Ref::text).filter(name -> !name.isEmpty()).orElse("no place");
    }
}
