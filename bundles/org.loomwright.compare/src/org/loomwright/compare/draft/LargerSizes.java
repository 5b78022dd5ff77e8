// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.ampacity.AmpacityTable;
import org.loomwright.electric.ampacity.Gauges;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;

/**
 * Conductors of a written harness that may carry less than what a drawing has at the same pin: 33 CFR 183.425 Table 5,
 * alone in air at 30 C, each with the class of its insulation; by cross-section where a class is not known. So a
 * thinner conductor in hotter insulation stays, and whether it is thick enough for what flows is for the checks.
 */
final class LargerSizes {

    private static final double SAME = 1e-9;

    private final WiringView ours;
    private final Ampacity ampacity = Ampacity.cfr();
    private final Map<Span, Raise> raises = new LinkedHashMap<>();

    /** What is to be written in place of a size, and why. */
    private record Raise(WireView wire, Case<ConductorSize> old, ConductorSize now, String why) {
    }

    private LargerSizes(WiringView ours) {
        this.ours = ours;
    }

    static void raise(TakingOver job) {
        LargerSizes sizes = new LargerSizes(job.ours());
        Pins mine = new Pins(job.ours());
        for (WiringView drawing : job.drawings()) {
            Pins pins = new Pins(drawing);
            for (WireView wire : drawing.wires()) {
                if (!isLink(wire)) {
                    Stream.concat(wire.from().stream(), wire.to().stream()).forEach(end -> pins.outside(end.value(),
                            end.when().and(wire.when()).and(job.cover().whole)).forEach((pin, in) -> mine.at(pin)
                                    .forEach((node, has) -> sizes.compare(drawing, wire, node, in.and(has)))));
                }
            }
        }
        sizes.raises.values().forEach(raise -> {
            Span span = raise.old.span();
            String written = job.additions().written(span);
            String old = raise.old.value().written();
            if (written.contains(old)) {
                int at = written.indexOf(old);
                job.additions().replace(new Span(span.file(), span.offset() + at, old.length(), span.line(),
                        span.column() + at), raise.now.written());
                job.additions().above(raise.wire.wire().span(), "// " + raise.why);
            }
            job.choose(Choice.Kind.GAUGE, "wire " + raise.wire.label(), raise.why);
        });
    }

    private static boolean isLink(WireView wire) {
        return wire.cables().stream().anyMatch(each -> each.value().kind() == Part.Kind.FUSIBLE_LINK);
    }

    /** Looks at the thickest of ours at an end where a drawing has a wire. */
    private void compare(WiringView drawing, WireView theirs, Node node, Condition when) {
        if (when.isNever()) {
            return;
        }
        for (Case<ConductorSize> wanted : theirs.sizes()) {
            Condition needs = when.and(wanted.when());
            WireView best = null;
            Case<ConductorSize> size = null;
            for (WireView own : ours.wires()) {
                for (Case<ConductorSize> each : own.sizes()) {
                    if (Twins.endsAt(own, node) && !each.when().and(own.when()).excludes(needs) && !isLink(own)
                            && (size == null || each.value().areaMm2() > size.value().areaMm2())) {
                        best = own;
                        size = each;
                    }
                }
            }
            if (best != null) {
                compare(drawing, theirs, wanted.value(), best, size);
            }
        }
    }

    private void compare(WiringView drawing, WireView theirs, ConductorSize wanted, WireView own,
            Case<ConductorSize> size) {
        Raise known = raises.get(size.span());
        ConductorSize now = known == null ? size.value() : known.now;
        Optional<Double> class1 = celsius(theirs);
        Optional<Double> class2 = celsius(own);
        if (carries(wanted, class1, now, class2)) {
            return;
        }
        Optional<ConductorSize> larger = Gauges.smallest(now.system(), each -> carries(wanted, class1, each, class2));
        larger.ifPresent(each -> raises.put(size.span(), new Raise(own, size, each, each.written() + " for the "
                + wanted.written() + " of " + drawing.name() + "; it was " + size.value().written() + ".")));
    }

    /** Whether a conductor carries what another does. */
    private boolean carries(ConductorSize wanted, Optional<Double> theirs, ConductorSize size, Optional<Double> own) {
        Optional<Double> needs = theirs.flatMap(celsius -> amps(wanted, celsius));
        Optional<Double> has = own.flatMap(celsius -> amps(size, celsius));
        return needs.isPresent() && has.isPresent() ? has.get() >= needs.get() - SAME
                : size.areaMm2() >= wanted.areaMm2() - SAME;
    }

    private Optional<Double> amps(ConductorSize size, double celsius) {
        return ampacity.allowed(size, celsius, AmpacityTable.BASE_AMBIENT, 1).map(Allowance::amps);
    }

    private static Optional<Double> celsius(WireView wire) {
        return wire.cables().stream().flatMap(each -> each.value().figure(Part.FigureKind.TEMPERATURE).stream())
                .map(Part.Figure::from)
                .filter(each -> each.unit().dimension() == Dimension.TEMPERATURE).map(each -> each.si()).findFirst();
    }
}
