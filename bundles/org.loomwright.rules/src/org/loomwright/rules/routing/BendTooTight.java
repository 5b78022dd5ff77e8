// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.geometry.OutsideDiameter;
import org.loomwright.geometry.Section;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A bend of a run that is tighter than a wire or a covering in it may be bent. */
public final class BendTooTight implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("bend-too-tight",
            "May everything in a run be bent as its bends ask?", Severity.WARNING, Kind.ENGINEERING, Scope.HARNESS,
            Limit.BEND_RADIUS.basis());

    /**
     * What lies in a bend needs at least this radius.
     *
     * @param mm      the least radius that is beyond doubt, in mm
     * @param usualMm the same with an estimate where nothing is stated
     * @param subject what needs it
     * @param why     where the figure comes from
     */
    private record Need(double mm, double usualMm, String subject, String why, Span span, Condition when) {
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
        for (Run run : target.wiring().wiring().runs()) {
            for (Run.Bend bend : run.bends()) {
                if (bend.radius().unit().dimension() == Dimension.LENGTH) {
                    for (Case<Spot> spot : PlacedParts.spots(target.shapes().of(target.wiring()).tree(), run,
                            bend.at())) {
                        bend(target, bend, spot, findings);
                    }
                }
            }
        }
    }

    private static void bend(Target.OfHarness target, Run.Bend bend, Case<Spot> spot, Findings findings) {
        Condition there = target.wiring().platform().vehicles().resolve(bend.when()).condition().and(spot.when());
        double radius = Length.of(bend.radius()).toMillimetres();
        List<Need> needs = new ArrayList<>();
        for (Section section : target.shapes().of(target.wiring()).sections()) {
            if (PlacedParts.holds(section, spot.value())) {
                section.wires().forEach(occupant -> wire(occupant, target.wiring().platform().limits(), needs));
            }
        }
        for (PlacedParts.At covering : PlacedParts.of(target.wiring(), target.shapes(),
                part -> part.kind() == Part.Kind.COVERING)) {
            BundleTooBigForOpening.figure(covering.part(), Part.FigureKind.RADIUS)
                    .filter(mm -> PlacedParts.holds(covering, spot.value()))
                    .ifPresent(mm -> needs.add(new Need(mm, mm, "covering " + covering.name(),
                            stated(covering.part()), covering.placed().name().span(), covering.when())));
        }
        needs.removeIf(need -> need.when().excludes(there) || need.usualMm() <= radius);
        needs.sort(Comparator.comparing((Need need) -> -need.usualMm()).thenComparing(Need::subject));
        List<Need> certain = needs.stream().filter(need -> need.mm() > radius).toList();
        Condition surely = report(target, bend, certain, there, true, findings);
        report(target, bend, needs.stream().filter(need -> need.mm() <= radius).toList(), there.minus(surely), false,
                findings);
    }

    private static void wire(Section.Occupant occupant, Limits limits, List<Need> needs) {
        WireView wire = occupant.wire();
        for (Case<ConductorSize> size : wire.sizes()) {
            Condition rest = size.when().and(occupant.when());
            for (Case<Part> cable : wire.cables()) {
                needs.add(need(wire, Optional.of(cable.value()), size.value(), rest.and(cable.when()), limits));
                rest = rest.minus(cable.when());
            }
            needs.add(need(wire, Optional.empty(), size.value(), rest, limits));
        }
    }

    private static Need need(WireView wire, Optional<Part> cable, ConductorSize size, Condition when,
            Limits limits) {
        double times = limits.si(Limit.BEND_RADIUS);
        String cited = limits.place(Limit.BEND_RADIUS).equals(Span.NONE) ? ""
                : "; " + limits.cite(Limit.BEND_RADIUS);
        Optional<Double> stated = cable.flatMap(part -> BundleTooBigForOpening.figure(part, Part.FigureKind.RADIUS));
        OutsideDiameter outside = OutsideDiameter.of(cable, size);
        double usual = stated.orElse(times * outside.mm());
        double least = stated.orElse(times * (outside.estimated() ? size.diameterMm() : outside.mm()));
        String why = stated.isPresent() ? stated(cable.get()) : Figure.of(times) + " x "
                + PossibleBundle.mm(outside.mm()) + " over the insulation (" + outside.basis() + cited
                + ")";
        return new Need(least, usual, "wire " + wire.label(), why, wire.wire().name().span(), when);
    }

    private static String stated(Part part) {
        String basis = part.figure(Part.FigureKind.RADIUS).map(Part.Figure::basis).orElse("");
        return "the catalogue's figure of " + part.name() + (basis.isEmpty() ? "" : ", " + basis);
    }

    private static Condition report(Target.OfHarness target, Run.Bend bend, List<Need> needs, Condition there,
            boolean certain, Findings findings) {
        Condition when = needs.stream().map(Need::when).reduce(Condition::or).map(there::and)
                .orElse(there.minus(there));
        if (when.isNever()) {
            return when;
        }
        Need worst = needs.stream().filter(need -> !need.when().excludes(there)).findFirst().orElseThrow();
        String name = bend.name().text();
        String most = PossibleBundle.mm(worst.usualMm());
        Draft draft = findings.about(target.wiring().name(), name, "bend " + name).when(when)
                .key(certain ? "cannot" : "may").weighs(certain ? INFO.severity() : Severity.NOTE)
                .at(bend.name().span(), "radius " + bend.radius().written())
                .see(worst.span(), worst.subject())
                .says(certain ? "bend " + name + " of " + bend.radius().written() + " is too tight for "
                        + worst.subject() + ", which needs " + most
                        : "not judged: whether bend " + name + " of " + bend.radius().written() + " is wide enough for "
                                + worst.subject() + ", which may need " + most)
                .step(worst.subject() + ": " + worst.why() + " = " + most);
        if (needs.size() > 1) {
            draft.step((needs.size() - 1) + " more in the same bend " + (needs.size() == 2 ? "needs" : "need")
                    + " less than that and more than " + bend.radius().written());
        }
        draft.advise(certain ? "lead the run in a wider curve, or state the least radius that the cable's maker allows"
                : "state the diameter or the least radius of the cable in the catalogue").report();
        return when;
    }
}
