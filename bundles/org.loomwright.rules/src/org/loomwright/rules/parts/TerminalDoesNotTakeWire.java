// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.geometry.OutsideDiameter;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;
import org.loomwright.rules.Counting;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A terminal whose crimp range does not hold the wires of its cavity, or a seal that does not fit round the wire, in
 * some vehicle. The largest set of wires that could lie together is tried first; the vehicles are parted only when it
 * does not fit.
 */
public final class TerminalDoesNotTakeWire implements Rule<Target.OfHousing> {

    private static final RuleInfo INFO = new RuleInfo("terminal-does-not-take-wire",
            "Does each terminal take its wires, and each seal its wire?", Severity.ERROR, Kind.ENGINEERING,
            Scope.HOUSING, "the ranges that the catalogue states for terminal and seal");
    private static final double MM2 = 1e6;
    private static final double MM = 1e3;
    private static final double EXACT = 1e-9;

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHousing> target() {
        return Target.OfHousing.class;
    }

    @Override
    public void check(Target.OfHousing target, Findings findings) {
        for (FittedPart terminal : FittedPart.of(target, Connector.CavityKind.TERMINAL)) {
            List<WireEnd> ends = FittedPart.ends(target, terminal.fact().cavity().text());
            for (Case<Range> range : Range.of(terminal.part(), Part.FigureKind.TAKES, Dimension.AREA,
                    terminal.when())) {
                terminal(target, terminal, range, ends, findings);
            }
        }
        for (FittedPart seal : FittedPart.of(target, Connector.CavityKind.SEAL)) {
            List<WireEnd> ends = FittedPart.ends(target, seal.fact().cavity().text());
            shared(target, seal, ends, findings);
            for (Case<Range> range : Range.of(seal.part(), Part.FigureKind.FITS, Dimension.LENGTH, seal.when())) {
                ends.forEach(end -> seal(target, seal, range, end, findings));
            }
        }
    }

    private static void terminal(Target.OfHousing target, FittedPart terminal, Case<Range> range, List<WireEnd> ends,
            Findings findings) {
        double most = range.value().most() * MM2 + EXACT;
        double least = range.value().least() * MM2 - EXACT;
        if (Sections.largest(ends) <= most && Sections.smallest(ends) >= least) {
            return;
        }
        double margin = target.wiring().platform().limits().si(Limit.GAUGE_MARGIN);
        List<Sections> sets = Sections.of(ends, range.when());
        report(target, terminal, range, ends, true, sets.stream()
                .filter(set -> set.area(-margin) > most).toList(), findings);
        report(target, terminal, range, ends, false, sets.stream()
                .filter(set -> set.complete() && set.area(margin) < least).toList(), findings);
    }

    private static void report(Target.OfHousing target, FittedPart terminal, Case<Range> range, List<WireEnd> ends,
            boolean large, List<Sections> sets, Findings findings) {
        Comparator<Sections> bySection = Comparator.comparingDouble(set -> set.area(0));
        Optional<Sections> worst = sets.stream().max(large ? bySection : bySection.reversed());
        if (worst.isEmpty()) {
            return;
        }
        Sections set = worst.get();
        Condition when = sets.stream().map(Sections::when).reduce(Condition::or).orElseThrow();
        String section = Figure.of(set.area(0), 2) + " mm2";
        Draft draft = draft(target, terminal, when, large ? "large" : "small", findings)
                .says("terminal " + terminal.part().name() + " of " + terminal.label(target) + " takes "
                        + range.value().words() + ", and "
                        + (set.sizes().size() == 1 ? "its wire has " : "its wires together have ") + section)
                .at(terminal.fact().value().span(), "takes " + range.value().words())
                .step(set.sum())
                .rests(range.value().basis())
                .advise(large && set.sizes().size() > 1
                        ? "join the wires in a splice and lead one on, or fit a terminal for " + section
                        : "fit a terminal whose crimp range holds " + section + "; a crimp outside of it "
                                + (large ? "cuts strands" : "pulls off"));
        if (set.gauged()) {
            Limits limits = target.wiring().platform().limits();
            double margin = limits.si(Limit.GAUGE_MARGIN);
            draft.see(limits.place(Limit.GAUGE_MARGIN), "the practice's limit");
            draft.step("gauge sizes counted " + Figure.of(100 * margin) + " % "
                    + (large ? "lower" : "higher") + " (" + limits.cite(Limit.GAUGE_MARGIN) + "): "
                    + Figure.of(set.area(large ? -margin : margin), 2) + " mm2");
        }
        see(draft, ends, when);
        draft.report();
    }

    /** A seal has one bore. */
    private static void shared(Target.OfHousing target, FittedPart seal, List<WireEnd> ends, Findings findings) {
        Condition two = Counting.atLeast(2, ends.stream().map(WireEnd::when).toList(), seal.when());
        Draft draft = draft(target, seal, two, "shared", findings)
                .says("seal " + seal.part().name() + " of " + seal.label(target) + " stands round several wires")
                .at(seal.fact().value().span(), "one bore")
                .weighs(Severity.WARNING)
                .step("a wire seal has one bore (common practice)")
                .advise("lead one wire into the cavity, and join the others to it in a splice");
        see(draft, ends, two);
        draft.report();
    }

    private static void seal(Target.OfHousing target, FittedPart seal, Case<Range> range, WireEnd end,
            Findings findings) {
        Condition here = end.when().and(range.when());
        for (Case<ConductorSize> size : end.wire().sizes()) {
            Condition rest = here.and(size.when());
            for (Case<Part> cable : end.wire().cables()) {
                around(target, seal, range, end, size, Optional.of(cable.value()), rest.and(cable.when()), findings);
                rest = rest.minus(cable.when());
            }
            around(target, seal, range, end, size, Optional.empty(), rest, findings);
        }
    }

    private static void around(Target.OfHousing target, FittedPart seal, Case<Range> range, WireEnd end,
            Case<ConductorSize> size, Optional<Part> cable, Condition when, Findings findings) {
        if (when.isNever()) {
            return;
        }
        OutsideDiameter outside = OutsideDiameter.of(cable, size.value());
        boolean thick = outside.mm() > range.value().most() * MM + EXACT;
        if (!thick && outside.mm() >= range.value().least() * MM - EXACT) {
            return;
        }
        String diameter = Figure.of(outside.mm(), 2) + " mm";
        String wire = "wire " + end.wire().label() + " of " + size.value();
        Draft draft = draft(target, seal, when, (thick ? "thick " : "thin ") + wire, findings)
                .at(seal.fact().value().span(), "fits " + range.value().words())
                .see(end.span(), wire)
                .step(size.value() + (cable.isPresent() ? " of cable " + cable.get().name() : "") + ": " + diameter
                        + " over its insulation (" + outside.basis() + ")");
        if (outside.estimated()) {
            draft.weighs(Severity.NOTE)
                    .says("not judged: whether seal " + seal.part().name() + " of " + seal.label(target) + " fits "
                            + wire + " rests on a diameter that is estimated or from memory")
                    .advise("state the diameter of " + size.value() + " on its cable in the catalogue");
        } else {
            draft.says("seal " + seal.part().name() + " of " + seal.label(target) + " fits " + range.value().words()
                    + ", and " + wire + " has " + diameter)
                    .rests(range.value().basis())
                    .advise("fit a seal for " + diameter + ", or a wire with another insulation");
        }
        draft.report();
    }

    private static Draft draft(Target.OfHousing target, FittedPart fitted, Condition when, String key,
            Findings findings) {
        return findings.about(target.wiring().name(), target.connector().name(),
                "connector " + target.connector().name()).when(when)
                .key(fitted.fact().cavity() + " " + fitted.part().name() + " " + key);
    }

    private static void see(Draft draft, List<WireEnd> ends, Condition when) {
        ends.stream().filter(end -> !end.when().excludes(when))
                .forEach(end -> draft.see(end.span(), "wire " + end.wire().label()));
    }
}
