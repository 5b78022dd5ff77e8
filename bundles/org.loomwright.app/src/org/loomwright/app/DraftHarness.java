// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.compare.draft.HarnessDraft;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;

/** Drafts a harness from the drawings that it is to cover, and plans it. Writes nothing. */
public final class DraftHarness {

    /**
     * So many choices are planned all ways: contested breakouts in either order, moved functions with one branch or one
     * to each place. Of more, breakouts stand by their mean stations, and moved functions get a branch to each place.
     */
    private static final int MOST_TURNED = 4;

    /** Milligrams a metre times nanometres in a gram. */
    private static final double PER_GRAM = 1e12;

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
        HarnessDraft plain = HarnessDraft.of(name, project, views, HarnessDraft.Variant.PLAIN, cancel);
        List<String> contested = plain.contested().size() > MOST_TURNED ? List.of() : plain.contested();
        List<String> moved = plain.moved().subList(0, Math.min(plain.moved().size(), MOST_TURNED - contested.size()));
        Ways ways = new Ways(project, views, name, contested, moved);
        Drafted[] all = new Drafted[1 << contested.size() + moved.size()];
        int best = 0;
        for (int each = 0; each < all.length; each++) {
            progress.report("planning drafts of " + name, each, all.length);
            all[each] = planned(ways, ways.variant(each, Map.of(), cancel), cancel, progress);
            best = isBetter(all[each].planned(), all[best].planned()) ? each : best;
        }
        if (moved.isEmpty()) {
            return all[best];
        }
        Map<String, String> reasons = new HashMap<>();
        for (int i = 0; i < moved.size(); i++) {
            int apart = 1 << contested.size() + i;
            reasons.put(moved.get(i), "both were planned: one with " + words(all[best & ~apart]) + ", one to each with "
                    + words(all[best | apart]));
        }
        return planned(ways, ways.variant(best, reasons, cancel), cancel, progress);
    }

    /** The ways in which a harness may be drafted, counted through: a bit for each choice. */
    private record Ways(Project project, List<WiringView> views, String name, List<String> contested,
            List<String> moved) {

        /** The bits of contested breakouts turn them, those of moved functions give them a branch to each place. */
        HarnessDraft variant(int way, Map<String, String> reasons, Cancel cancel) {
            Set<String> turned = new LinkedHashSet<>();
            Set<String> joined = new LinkedHashSet<>();
            for (int i = 0; i < contested.size(); i++) {
                if ((way >> i & 1) == 1) {
                    turned.add(contested.get(i));
                }
            }
            for (int i = 0; i < moved.size(); i++) {
                if ((way >> contested.size() + i & 1) == 0) {
                    joined.add(moved.get(i));
                }
            }
            return HarnessDraft.of(name, project, views, new HarnessDraft.Variant(turned, joined, reasons), cancel);
        }
    }

    /** What a draft comes to: {@code 88.4 mm of excess and 539 g of copper and covering}. */
    private static String words(Drafted drafted) {
        return drafted.planned().plan().found().map(each -> String.format(Locale.ROOT,
                "%.1f mm of excess, %.0f g of copper and covering", new Length(each.excess()).toMillimetres(),
                each.copper() / PER_GRAM)).orElse("no harness that serves all drawings");
    }

    private static List<WiringView> views(Project project, List<String> drawings) throws BadCall {
        List<WiringView> views = new ArrayList<>();
        for (String each : new LinkedHashSet<>(drawings)) {
            views.add(project.wiring(each).orElseThrow(() -> new BadCall("the project has no drawing " + each)));
        }
        if (views.isEmpty()) {
            throw new BadCall("--covers names no drawing");
        }
        // whoever names them in another order gets the same draft
        views.sort(Comparator.comparing(WiringView::name, new NaturalOrder()));
        return views;
    }

    private Drafted planned(Ways ways, HarnessDraft draft, Cancel cancel, Progress progress) throws BadCall {
        Project project = ways.project();
        Source source = reader.read(draft.name() + ".loom", Formatter.format(draft.text())
                .getBytes(StandardCharsets.UTF_8));
        if (!source.problems().isEmpty()) {
            throw new IllegalStateException("a draft that cannot be read: " + source.problems().getFirst());
        }
        List<Source> sources = new ArrayList<>(project.everySource());
        sources.add(source);
        Project with = Project.link(sources);
        return new Drafted(draft, planner.plan(with.wiring(draft.name()).orElseThrow(), with, cancel, progress),
                source, 1 << ways.contested().size());
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
