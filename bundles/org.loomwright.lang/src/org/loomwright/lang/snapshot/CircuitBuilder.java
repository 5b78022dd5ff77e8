// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Circuit.End;
import org.loomwright.harness.Circuit.Origin;
import org.loomwright.harness.Circuit.Splice;
import org.loomwright.harness.Circuit.Wire;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;
import org.loomwright.model.loom.AsFactory;
import org.loomwright.model.loom.CableFact;
import org.loomwright.model.loom.CircuitFact;
import org.loomwright.model.loom.ColourFact;
import org.loomwright.model.loom.EndFact;
import org.loomwright.model.loom.LegendFact;
import org.loomwright.model.loom.LengthFact;
import org.loomwright.model.loom.SizeFact;
import org.loomwright.model.loom.WireFact;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;

/** Builds circuits with their wires and splices. */
final class CircuitBuilder extends Builder {
    private static final Location NOWHERE = new Location(Optional.empty(), Optional.empty(), Optional.empty());

    CircuitBuilder(FileText file, Quantities quantities) {
        super(file, quantities);
    }

    Circuit build(org.loomwright.model.loom.Circuit source) {
        Written written = of(source);
        FactList<Colour> colours = new FactList<>();
        addColour(source.getColour(), new Expression.Always(), written.span("colour"), colours);
        List<Wire> wires = new ArrayList<>();
        List<Splice> splices = new ArrayList<>();
        List<Origin> origins = new ArrayList<>();
        List<Fact<String>> reasons = new ArrayList<>(1);
        for (CircuitFact fact : source.getFacts()) {
            switch (fact) {
                case org.loomwright.model.loom.Wire each -> wires.add(new WireBuilder().build(each));
                case org.loomwright.model.loom.Splice each -> splices.add(splice(each));
                case ColourFact each -> addColour(each.getColour(), when(each.getWhen()), of(each).span(), colours);
                case org.loomwright.model.loom.Origin each -> origins.add(origin(each));
                case AsFactory each -> addReason(each, reasons);
                default -> { }
            }
        }
        return new Circuit(written.name("name"), text(source.getTitle()), colours.facts(), List.copyOf(wires),
                List.copyOf(splices), List.copyOf(origins), reasons.stream().findFirst(), when(source.getWhen()),
                written.span());
    }

    private void addColour(org.loomwright.model.loom.Colour source, Expression when, Span span,
            FactList<Colour> colours) {
        if (source != null && source.getBase() != null) {
            colours.add(colour(source), when, span);
        }
    }

    private static Colour colour(org.loomwright.model.loom.Colour source) {
        return new Colour(text(source.getBase()), text(source.getTracer()));
    }

    private void addReason(AsFactory source, List<Fact<String>> reasons) {
        Span span = of(source).span();
        if (!reasons.isEmpty()) {
            file.again(span, "reason for keeping what the factory did");
        }
        reasons.add(new Fact<>(text(source.getReason()), when(source.getWhen()), span));
    }

    private Splice splice(org.loomwright.model.loom.Splice source) {
        Written written = of(source);
        return new Splice(written.name("name"), lengths.location(source.getAt()).orElse(NOWHERE), written.ref("method"),
                when(source.getWhen()), written.span());
    }

    private Origin origin(org.loomwright.model.loom.Origin source) {
        Written written = of(source);
        Optional<Colour> colour = Optional.ofNullable(source.getColour()).filter(each -> each.getBase() != null)
                .map(CircuitBuilder::colour);
        return new Origin(text(source.getNumber()), colour, written.needed("drawing"), written.span());
    }

    /** Builds one wire; what its head says and what its block says are facts of one list. */
    private final class WireBuilder {
        private final FactList<ConductorSize> sizes = new FactList<>();
        private final FactList<Ref> cables = new FactList<>();
        private final FactList<Colour> colours = new FactList<>();
        private final FactList<End> from = new FactList<>();
        private final FactList<End> to = new FactList<>();
        private final FactList<Measure> measures = new FactList<>();
        private final List<Fact<String>> legends = new ArrayList<>(1);
        private final List<Fact<String>> reasons = new ArrayList<>(1);
        private boolean sizeStated;

        Wire build(org.loomwright.model.loom.Wire source) {
            Written written = of(source);
            Expression always = new Expression.Always();
            addSize(source.getSize(), always, written.span("size"));
            checkName(source.getColour(), written);
            addColour(source.getColour(), always, written.span("colour"), colours);
            addEnd(source.getFrom(), always, written.span("from"), from);
            addEnd(source.getTo(), always, written.span("to"), to);
            lengths.measure(source.getLength()).ifPresent(length -> measures.add(length, written.span("length")));
            written.ref("cable").ifPresent(cable -> cables.add(cable, cable.span()));
            source.getFacts().forEach(this::add);
            if (!sizeStated) {
                file.missing("size-missing", written.span("name"), "the wire has no size",
                        "write it after the name, such as 18 ga");
            }
            return new Wire(written.name("name"), sizes.facts(), cables.facts(), colours.facts(), from.facts(),
                    to.facts(), measures.facts(), legends.isEmpty() ? "" : legends.getFirst().value(),
                    reasons.stream().findFirst(), when(source.getWhen()), written.span());
        }

        private void add(WireFact fact) {
            Span span = of(fact).span();
            switch (fact) {
                case SizeFact each -> addSize(each.getSize(), when(each.getWhen()), span);
                case ColourFact each -> addColour(each.getColour(), when(each.getWhen()), span, colours);
                case CableFact each -> of(each).ref("cable")
                        .ifPresent(cable -> cables.add(cable, when(each.getWhen()), span));
                case EndFact each -> addEnd(each.getEnd(), when(each.getWhen()), span, each.isStart() ? from : to);
                case LengthFact each -> lengths.measure(each.getLength())
                        .ifPresent(length -> measures.add(length, when(each.getWhen()), span));
                case LegendFact each -> {
                    if (!legends.isEmpty()) {
                        file.again(span, "legend");
                    }
                    legends.add(new Fact<>(text(each.getText()), when(each.getWhen()), span));
                }
                case AsFactory each -> addReason(each, reasons);
                default -> { }
            }
        }

        /** {@code wire 16 awg} without a name reads as a wire 16 of a colour awg. */
        private void checkName(org.loomwright.model.loom.Colour colour, Written written) {
            if (colour != null && colour.getTracer() == null
                    && SizeSystem.ofSymbol(text(colour.getBase())).isPresent()) {
                file.problems().add("name-missing", written.span("colour"), "\"" + colour.getBase()
                        + "\" is no colour; a wire has a name, then a size: wire a 18 " + colour.getBase(), "");
                sizeStated = true;
            }
        }

        private void addSize(org.loomwright.model.loom.Quantity source, Expression when, Span span) {
            sizeStated |= source != null;
            quantities.size(source).ifPresent(size -> sizes.add(size, when, span));
        }

        private void addEnd(org.loomwright.model.loom.End source, Expression when, Span span, FactList<End> ends) {
            if (source != null) {
                Written written = of(source);
                written.ref("target")
                        .ifPresent(target -> ends.add(new End(target, written.name("cavity")), when, span));
            }
        }
    }
}
