// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.link.Case;
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
 * Two splices at stated stations of one run that lie so close together that the bundle gets a lump. A splice at a named
 * point is somewhere about that point: the bench staggers those.
 */
public final class SplicesNotStaggered implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("splices-not-staggered",
            "Do splices on one run keep their distance?", Severity.WARNING, Kind.ENGINEERING, Scope.HARNESS,
            Limit.SPLICE_SPACING.basis());

    private record Placed(WiringView.SpliceView splice, Spot spot, Length station, Condition when) {
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
        List<Placed> placed = new ArrayList<>();
        for (WiringView.SpliceView splice : target.wiring().splices().values()) {
            for (Case<Spot> each : target.shapes().of(target.wiring()).spots().of(splice.node())) {
                if (each.value().kind() == Spot.Kind.STATION) {
                    each.value().station().length().ifPresent(station -> placed.add(
                            new Placed(splice, each.value(), station, each.when())));
                }
            }
        }
        placed.sort(Comparator.comparing((Placed each) -> each.spot().run()).thenComparing(Placed::station)
                .thenComparing(each -> each.splice().splice().name().span()));
        Limits limits = target.wiring().platform().limits();
        Length least = limits.length(Limit.SPLICE_SPACING);
        for (int i = 0; i < placed.size(); i++) {
            for (int j = i + 1; j < placed.size() && near(placed.get(i), placed.get(j), least); j++) {
                pair(placed.get(i), placed.get(j), limits, findings);
            }
        }
    }

    private static boolean near(Placed one, Placed other, Length least) {
        return one.spot().run().equals(other.spot().run())
                && other.station().minus(one.station()).compareTo(least) < 0;
    }

    private static void pair(Placed one, Placed other, Limits limits, Findings findings) {
        if (one.splice() == other.splice()) {
            return;
        }
        String first = one.splice().splice().name().text();
        String second = other.splice().splice().name().text();
        Length least = limits.length(Limit.SPLICE_SPACING);
        Length apart = other.station().minus(one.station());
        findings.about(other.splice().owner(), second, "splice " + second).when(one.when().and(other.when()))
                .key(first)
                .at(other.splice().splice().name().span(), other.spot().label())
                .see(one.splice().splice().name().span(), "splice " + first + ", " + one.spot().label())
                .see(limits.place(Limit.SPLICE_SPACING), "the practice's limit")
                .says("splices " + first + " and " + second + " lie " + apart + " apart on " + one.spot().run()
                        + ", less than " + least)
                .step(other.station() + " - " + one.station() + " = " + apart + ", less than " + least + " ("
                        + limits.cite(Limit.SPLICE_SPACING) + ")")
                .advise("move one of them by " + least.minus(apart)
                        + " or more along the run, so that the bundle has no lump there")
                .report();
    }
}
