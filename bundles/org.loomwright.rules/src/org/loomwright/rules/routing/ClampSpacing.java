// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * Two neighbouring supports of a run that are too far apart. Clips and openings support a run, and the datum, where it
 * is pinned. A run on which no clip is placed is not asked: nobody has said yet how it is held.
 */
public final class ClampSpacing implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("clamp-spacing", "Is every run held often enough?",
            Severity.WARNING, Kind.ENGINEERING, Scope.HARNESS, Limit.CLAMP_SPACING.basis());

    /** Something that holds a run. */
    private record Support(String element, String words, boolean clip, Length station, Condition when, Span span) {

        String label() {
            return element.isEmpty() ? words : words + " at " + station;
        }
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
        WiringView view = target.wiring();
        List<PlacedParts.At> placed = PlacedParts.of(view, target.shapes(),
                part -> part.kind() == Part.Kind.CLIP || part.kind() == Part.Kind.OPENING);
        if (placed.stream().noneMatch(each -> each.part().kind() == Part.Kind.CLIP)) {
            return;
        }
        Length most = view.platform().limits().length(Limit.CLAMP_SPACING);
        for (TreeRun run : target.shapes().of(view).tree().runs()) {
            List<Support> supports = supports(run, placed);
            Condition clipped = view.platform().vehicles().anyOf(
                    supports.stream().filter(Support::clip).map(Support::when).toList());
            for (int i = 0; i < supports.size(); i++) {
                Condition rest = supports.get(i).when().and(clipped);
                for (int j = i + 1; j < supports.size() && !rest.isNever(); j++) {
                    Support next = supports.get(j);
                    Length apart = next.station().minus(supports.get(i).station());
                    if (apart.compareTo(most) > 0) {
                        report(view, run, supports.get(i), next, apart, rest.and(next.when()), findings);
                    }
                    rest = rest.minus(next.when());
                }
            }
        }
    }

    private static List<Support> supports(TreeRun run, List<PlacedParts.At> placed) {
        List<Support> supports = new ArrayList<>();
        if (run.start().kind() == Spot.Kind.DATUM) {
            supports.add(new Support("", "the datum", false, Length.ZERO, run.when(), run.start().span()));
        }
        for (PlacedParts.At each : placed) {
            boolean clip = each.part().kind() == Part.Kind.CLIP;
            Optional<Length> station = each.from().station().length()
                    .filter(at -> each.from().run().equals(run.name()));
            station.ifPresent(at -> supports.add(new Support(each.name(), (clip ? "clip " : "opening ") + each.name(),
                    clip, at, each.when(), each.placed().name().span())));
        }
        supports.sort(Comparator.comparing(Support::station).thenComparing(Support::span));
        return supports;
    }

    private static void report(WiringView view, TreeRun run, Support from, Support to, Length apart, Condition when,
            Findings findings) {
        Limits limits = view.platform().limits();
        Length most = limits.length(Limit.CLAMP_SPACING);
        findings.about(view.name(), to.element(), to.words()).when(when).key(from.words())
                .at(to.span(), apart + " from the one before")
                .see(from.span(), from.label())
                .see(limits.place(Limit.CLAMP_SPACING), "the practice's limit")
                .says("nothing holds " + run.name() + " for " + apart + " between " + from.label() + " and "
                        + to.label())
                .step(to.station() + " - " + from.station() + " = " + apart + ", more than " + most + " ("
                        + limits.cite(Limit.CLAMP_SPACING) + ")")
                .advise("place clips between them so that no stretch is longer than " + most)
                .report();
    }
}
