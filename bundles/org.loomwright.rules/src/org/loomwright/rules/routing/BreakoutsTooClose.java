// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitSettings;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Ours;
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
 * Two breakouts of a harness of ours that lie nearer to each other than the harness or the practice of the project
 * asks. Where nobody asks for a least distance, nothing is found.
 */
public final class BreakoutsTooClose implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("breakouts-too-close",
            "Do breakouts keep the distance that is asked for?", Severity.WARNING, Kind.ENGINEERING, Scope.HARNESS,
            "the least distance that the harness or the practice states");

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
        Limits limits = view.platform().limits();
        if (!view.wiring().isHarness() || setting(view).isEmpty() && limits.place(Limit.SPACING).equals(Span.NONE)) {
            return;
        }
        HarnessTree tree = target.shapes().of(view).tree();
        Length least = new FitSettings(tree, FitDefaults.usual().with(limits)).spacing();
        for (TreeRun run : tree.runs()) {
            List<Spot> breakouts = new ArrayList<>(run.points().stream()
                    .filter(spot -> spot.kind() == Spot.Kind.BREAKOUT && spot.station().length().isPresent()).toList());
            breakouts.sort(Comparator.comparing((Spot spot) -> station(spot)).thenComparing(Spot::span));
            for (int i = 0; i < breakouts.size(); i++) {
                for (int j = i + 1; j < breakouts.size()
                        && apart(breakouts.get(i), breakouts.get(j)).compareTo(least) < 0; j++) {
                    report(view, run, breakouts.get(i), breakouts.get(j), least, findings);
                }
            }
        }
    }

    private static Length station(Spot spot) {
        return spot.station().length().orElseThrow();
    }

    private static Length apart(Spot one, Spot other) {
        return station(other).minus(station(one));
    }

    private static Optional<Ours.Setting> setting(WiringView view) {
        return view.wiring().ours().settings().stream().filter(each -> each.kind() == Ours.SettingKind.SPACING)
                .filter(each -> each.value().isPresent() && each.place().isEmpty())
                .reduce((first, second) -> second);
    }

    private static void report(WiringView view, TreeRun run, Spot one, Spot other, Length least, Findings findings) {
        Limits limits = view.platform().limits();
        Optional<Ours.Setting> setting = setting(view);
        Length apart = apart(one, other);
        Condition when = run.when().and(one.when()).and(other.when());
        findings.about(view.name(), other.name(), "breakout " + other.name()).when(when).key(one.name())
                .at(other.span(), apart + " from " + one.name())
                .see(one.span(), "breakout " + one.name())
                .see(setting.map(Ours.Setting::span).orElse(limits.place(Limit.SPACING)), "the least distance")
                .says("breakouts " + one.name() + " and " + other.name() + " lie " + apart + " apart on " + run.name()
                        + ", less than " + least)
                .step(station(other) + " - " + station(one) + " = " + apart + ", less than " + least + " ("
                        + (setting.isPresent() ? "the harness's own" : limits.cite(Limit.SPACING)) + ")")
                .advise("move one of them, or let both branches leave at one breakout")
                .report();
    }
}
