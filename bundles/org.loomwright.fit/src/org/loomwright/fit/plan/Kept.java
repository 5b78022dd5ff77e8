// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.fit.FitDefaults;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * Planning again without changing more than must be: which of the stations and lengths that a harness has can stay.
 * They are taken one after the other in the order of the source, stations first, each as long as some harness with it
 * and those before it fits. So none of those that change could have stayed besides those that do.
 *
 * @param harness the harness with these figures pinned
 * @param names   breakouts and branches that keep theirs
 */
public record Kept(WiringView harness, Set<String> names) {

    public Kept {
        names = Set.copyOf(names);
    }

    /** Finds them: a question whether a harness fits for each figure, one in all where everything can stay. */
    public static Kept of(WiringView harness, Project project, FitDefaults defaults, HarnessPlanner planner,
            Cancel cancel) {
        List<String> known = new ArrayList<>();
        for (Run run : harness.wiring().runs()) {
            run.breakouts().stream().filter(each -> each.at().value().isPresent())
                    .forEach(each -> known.add(each.name().text()));
        }
        for (Run run : harness.wiring().runs(Run.Kind.BRANCH)) {
            if (run.length().flatMap(Measure::value).isPresent()) {
                known.add(run.name().text());
            }
        }
        if (fits(harness, Set.copyOf(known), project, defaults, planner, cancel)) {
            return new Kept(pinned(harness, Set.copyOf(known)), Set.copyOf(known));
        }
        Set<String> kept = new LinkedHashSet<>();
        for (String each : known) {
            kept.add(each);
            if (!fits(harness, kept, project, defaults, planner, cancel)) {
                kept.remove(each);
            }
        }
        return new Kept(pinned(harness, kept), kept);
    }

    private static boolean fits(WiringView harness, Set<String> kept, Project project, FitDefaults defaults,
            HarnessPlanner planner, Cancel cancel) {
        return planner.fits(PlanModel.of(pinned(harness, kept), project, defaults).problem(), cancel)
                .equals(Optional.of(true));
    }

    private static WiringView pinned(WiringView view, Set<String> names) {
        Wiring wiring = view.wiring();
        Wiring pinned = new Wiring(wiring.kind(), wiring.name(), wiring.title(), wiring.platform(), wiring.position(),
                wiring.when(), wiring.sheets(), wiring.defaults(), wiring.datum(), wiring.runs().stream()
                        .map(run -> pinned(run, names)).toList(), wiring.connectors(), wiring.studs(),
                wiring.devices(), wiring.circuits(), wiring.placed(), wiring.ours(), wiring.span());
        return new WiringView(pinned, view.platform(), view.when(), view.connectors(), view.splices(), view.studs(),
                view.devices(), view.circuits(), view.wires(), view.covers());
    }

    private static Run pinned(Run run, Set<String> names) {
        return new Run(run.kind(), run.name(), run.from(), run.to(), run.length().map(each -> names.contains(run.name()
                .text()) ? pinned(each) : each), run.breakouts().stream().map(each -> names.contains(each.name().text())
                        ? new Run.Breakout(each.name(), each.after(), pinned(each.at()), each.when(), each.span())
                        : each).toList(), run.barriers(), run.slacks(), run.bends(), run.when(), run.span());
    }

    private static Measure pinned(Measure measure) {
        return new Measure(measure.value(), measure.tolerance(), measure.provenance(), measure.samples(),
                measure.end(), measure.path(), true, measure.span());
    }
}
