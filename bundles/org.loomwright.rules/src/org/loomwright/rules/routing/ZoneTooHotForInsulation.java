// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.PartFacts;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.Dimension;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A wire whose insulation is not made for the ambient temperature of a zone that it touches. */
public final class ZoneTooHotForInsulation implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("zone-too-hot-for-insulation",
            "Is the insulation of every wire made for the zones that it touches?", Severity.ERROR, Kind.ENGINEERING,
            Scope.HARNESS, "the meaning of a temperature class: ambient and the heat of the wire's own current"
                    + " together stay within it");

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
        ZonesTouched touched = new ZonesTouched(target.wiring(), target.shapes().of(target.wiring()));
        for (WireView wire : target.wiring().wires()) {
            List<ZonesTouched.Touch> zones = touched.of(wire);
            for (Case<Part> cable : zones.isEmpty() ? List.<Case<Part>>of() : wire.cables()) {
                PartFacts.figures(cable.value(), Part.FigureKind.TEMPERATURE, cable.when()).stream()
                        .filter(each -> each.value().from().unit().dimension() == Dimension.TEMPERATURE)
                        .forEach(each -> wire(wire, cable, each, zones, findings));
            }
        }
    }

    /** Reports, for each vehicle, the hottest zone that is too hot. */
    private static void wire(WireView wire, Case<Part> cable, Case<Part.Figure> rated, List<ZonesTouched.Touch> zones,
            Findings findings) {
        double limit = rated.value().from().si();
        Condition rest = rated.when();
        for (ZonesTouched.Touch zone : zones) {
            if (zone.ambientC() < limit) {
                return;
            }
            report(wire, cable, rated.value(), zone, rest.and(zone.when()), findings);
            rest = rest.minus(zone.when());
        }
    }

    private static void report(WireView wire, Case<Part> cable, Part.Figure rated, ZonesTouched.Touch touch,
            Condition when, Findings findings) {
        String limit = Figure.of(rated.from().si()) + " C";
        String ambient = Figure.of(touch.ambientC()) + " C";
        String zone = touch.zone().name().text();
        Span name = wire.wire().name().span();
        Draft draft = findings.about(wire).when(when).key(zone + " " + cable.value().name())
                .at(name.equals(Span.NONE) ? wire.wire().span() : name, limit + " in " + ambient)
                .see(cable.span(), "cable " + cable.value().name())
                .see(touch.zone().name().span(), "zone " + zone)
                .says("wire " + wire.label() + " of " + cable.value().name() + " is insulated for " + limit
                        + " and touches zone " + zone + " of " + ambient)
                .step(cable.value().name() + ": " + limit
                        + (rated.basis().isEmpty() ? "" : " (" + rated.basis() + ")"))
                .rests(rated.basis())
                .step(touch.place() + " lies in zone " + zone + ": " + ambient + ", not below " + limit)
                .advise("take a cable of a class above " + ambient + ", with room for the heat of its own current, or"
                        + " lead it where it is cooler");
        draft.report();
    }
}
