// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.compare.draft.HarnessDraft;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Drafts a harness from the drawings that it is to cover, and plans it. Writes nothing. */
public final class DraftHarness {

    /** Of so many contested breakouts every order is planned; of more only the one of the mean stations. */
    private static final int MOST_TURNED = 4;

    private final SourceReader reader;
    private final PlanHarness planner;

    public DraftHarness(SourceReader reader, PlanHarness planner) {
        this.reader = reader;
        this.planner = planner;
    }

    /**
     * A drafted harness with its plan.
     *
     * @param draft   the draft, with stations and lengths still open
     * @param planned its plan
     * @param source  the draft as a formatted file of its own, with stations and lengths still open
     * @param orders  how many orders of breakouts were planned, of which this is the best
     */
    public record Drafted(HarnessDraft draft, PlanHarness.Planned planned, Source source, int orders) {

        /** The draft with its plan; without a plan as it is, for the engineer to go on with. */
        public Source text() {
            return planned.text().orElse(source);
        }
    }

    /**
     * Drafts and plans a harness. Where drawings do not agree about the order of breakouts, each order is planned.
     *
     * @param drawings names of the drawings
     * @param name     what the harness is called
     * @throws BadCall when there is no such drawing, or they cannot be covered by one harness at all
     */
    public Drafted draft(Project project, List<String> drawings, String name, Cancel cancel, Progress progress)
            throws BadCall {
        List<WiringView> views = views(project, drawings);
        if (project.wiring(name).isPresent() || project.platforms().containsKey(name)) {
            throw new BadCall("something is called " + name
                    + " already; give the new harness another name with --name");
        }
        Optional<String> trouble = HarnessDraft.trouble(views);
        if (trouble.isPresent()) {
            throw new BadCall(trouble.get());
        }
        List<String> contested = HarnessDraft.of(name, project, views, Set.of(), cancel).contested();
        int count = contested.size() > MOST_TURNED ? 1 : 1 << contested.size();
        Drafted best = null;
        for (int each = 0; each < count; each++) {
            Set<String> turned = new LinkedHashSet<>();
            for (int i = 0; i < contested.size(); i++) {
                if ((each >> i & 1) == 1) {
                    turned.add(contested.get(i));
                }
            }
            Drafted drafted = planned(HarnessDraft.of(name, project, views, turned, cancel), project, count, cancel,
                    progress);
            best = best == null || isBetter(drafted.planned(), best.planned()) ? drafted : best;
        }
        return best;
    }

    private static List<WiringView> views(Project project, List<String> drawings) throws BadCall {
        List<WiringView> views = new ArrayList<>();
        for (String each : new LinkedHashSet<>(drawings)) {
            views.add(project.wiring(each).orElseThrow(() -> new BadCall("the project has no drawing " + each)));
        }
        if (views.isEmpty()) {
            throw new BadCall("--covers names no drawing");
        }
        return views;
    }

    private Drafted planned(HarnessDraft draft, Project project, int orders, Cancel cancel, Progress progress)
            throws BadCall {
        Source source = reader.read(draft.name() + ".loom", Formatter.format(draft.text())
                .getBytes(StandardCharsets.UTF_8));
        if (!source.problems().isEmpty()) {
            throw new IllegalStateException("a draft that cannot be read: " + source.problems().getFirst());
        }
        List<Source> sources = new ArrayList<>(project.everySource());
        sources.add(source);
        Project with = Project.link(sources);
        return new Drafted(draft, planner.plan(with.wiring(draft.name()).orElseThrow(), with, cancel, progress),
                source, orders);
    }

    private static boolean isBetter(PlanHarness.Planned one, PlanHarness.Planned other) {
        if (one.plan().found().isEmpty() || other.plan().found().isEmpty()) {
            return one.plan().found().isPresent();
        }
        HarnessPlan.Solution a = one.plan().found().get();
        HarnessPlan.Solution b = other.plan().found().get();
        for (Objective each : one.model().problem().order()) {
            int order = Long.compare(value(a, each), value(b, each));
            if (order != 0) {
                return order < 0;
            }
        }
        return false;
    }

    private static long value(HarnessPlan.Solution plan, Objective objective) {
        return switch (objective) {
            case EXCESS -> plan.excess();
            case COPPER -> plan.copper();
            case LENGTH -> plan.length();
        };
    }
}
