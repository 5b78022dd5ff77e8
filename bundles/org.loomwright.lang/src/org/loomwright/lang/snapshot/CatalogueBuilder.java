// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.Figure;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.Pin;
import org.loomwright.harness.Part.Size;
import org.loomwright.harness.Part.Word;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.harness.Ref;
import org.loomwright.model.loom.FigureFact;
import org.loomwright.model.loom.Join;
import org.loomwright.model.loom.Note;
import org.loomwright.model.loom.PartFact;
import org.loomwright.model.loom.PinRow;
import org.loomwright.model.loom.SizeRow;
import org.loomwright.model.loom.StateRow;
import org.loomwright.model.loom.WordFact;

/** Builds one catalogue. */
final class CatalogueBuilder extends Builder {
    CatalogueBuilder(FileText file, Quantities quantities) {
        super(file, quantities);
    }

    Catalogue build(org.loomwright.model.loom.Catalogue source) {
        List<Part> parts = new ArrayList<>();
        source.getFacts().forEach(fact -> {
            if (fact instanceof org.loomwright.model.loom.Part part) {
                parts.add(new PartBuilder().build(part));
            }
        });
        Written written = of(source);
        return new Catalogue(written.name("name"), text(source.getTitle()), List.copyOf(parts), written.span());
    }

    /** Builds one part. */
    private final class PartBuilder {
        private final List<Fact<Figure>> figures = new ArrayList<>();
        private final List<Fact<Word>> words = new ArrayList<>();
        private final List<Size> sizes = new ArrayList<>();
        private final List<Pin> pins = new ArrayList<>();
        private final List<Part.Join> joins = new ArrayList<>();
        private final List<Name> states = new ArrayList<>();
        private final PinRanges ranges = new PinRanges(file);

        Part build(org.loomwright.model.loom.Part source) {
            source.getFacts().forEach(this::add);
            Written written = of(source);
            return new Part(Part.Kind.valueOf(source.getKind().name()), written.name("name"), text(source.getTitle()),
                    written.ref("base"), otherwiseByKind(figures, fact -> fact.value().kind()),
                    otherwiseByKind(words, fact -> fact.value().kind() == WordKind.NOTE ? fact : fact.value().kind()),
                    List.copyOf(sizes), List.copyOf(pins), List.copyOf(joins), List.copyOf(states), written.span());
        }

        private void add(PartFact fact) {
            Written written = of(fact);
            switch (fact) {
                case FigureFact each -> add(each, written);
                case WordFact each -> words.add(new Fact<>(new Word(WordKind.valueOf(each.getWord().name()),
                        text(each.getValue())), when(each.getWhen()), written.span()));
                case Note each -> words.add(new Fact<>(new Word(WordKind.NOTE, text(each.getText())),
                        new Expression.Always(), written.span()));
                case SizeRow each -> quantities.size(each.getSize()).ifPresent(size -> sizes.add(new Size(size,
                        quantities.read(each.getDiameter(), Kind.LENGTH), quantities.read(each.getMass(), Kind.MASS),
                        text(each.getBasis()), written.span())));
                case PinRow each -> each.getPins().forEach(range -> ranges.expand(of(range), range, pins));
                case Join each -> joins.add(new Part.Join(pin(written.name("from")), pin(written.name("to")),
                        quantities.read(each.getThrough(), Kind.THROUGH), written.names("states"), each.isProtective(),
                        when(each.getWhen()), written.span()));
                case StateRow each -> states.addAll(written.names("states"));
                default -> { }
            }
        }

        private void add(FigureFact fact, Written written) {
            FigureKind kind = FigureKind.valueOf(fact.getFigure().name());
            Kind measured = measured(kind);
            Optional<org.loomwright.quantity.Quantity> from = quantities.read(fact.getFrom(), measured);
            Optional<org.loomwright.quantity.Quantity> upTo = quantities.read(fact.getUpTo(), measured);
            if (from.isPresent() && upTo.isPresent() && from.get().unit().dimension() == upTo.get().unit().dimension()
                    && from.get().si() > upTo.get().si()) {
                file.problems().add("range-reversed", written.span("from"), from.get() + " is more than " + upTo.get(),
                        "write the smaller figure first");
            }
            from.ifPresent(least -> figures.add(new Fact<>(new Figure(kind, least, upTo, text(fact.getBasis())),
                    when(fact.getWhen()), written.span())));
        }
    }

    /** Gives each fact without a condition the condition that no other one of its kind holds. */
    private static <T> List<Fact<T>> otherwiseByKind(List<Fact<T>> facts,
            java.util.function.Function<Fact<T>, Object> kind) {
        if (facts.stream().allMatch(fact -> fact.when() instanceof Expression.Always)) {
            return List.copyOf(facts);
        }
        List<Fact<T>> result = new ArrayList<>(facts);
        for (Object each : facts.stream().map(kind).distinct().toList()) {
            List<Integer> places = new ArrayList<>();
            for (int i = 0; i < facts.size(); i++) {
                if (kind.apply(facts.get(i)).equals(each)) {
                    places.add(i);
                }
            }
            List<Fact<T>> changed = FactList.otherwise(places.stream().map(facts::get).toList());
            for (int i = 0; i < places.size(); i++) {
                result.set(places.get(i), changed.get(i));
            }
        }
        return List.copyOf(result);
    }

    private static Ref pin(Name name) {
        return Ref.of(name.text(), name.span());
    }

    private static Kind measured(FigureKind kind) {
        return switch (kind) {
            case RATING, CURRENT, START, STALL, BREAKING -> Kind.CURRENT;
            case VOLTAGE, PULL_IN, DROP_OUT -> Kind.VOLTAGE;
            case POWER -> Kind.POWER;
            case RESISTANCE -> Kind.RESISTANCE;
            case TEMPERATURE, SHORT_TIME -> Kind.TEMPERATURE;
            case MASS -> Kind.MASS;
            case TAKES -> Kind.AREA;
            case PULL -> Kind.FORCE;
            case DIAMETER, BORE, THICKNESS, FITS, STRIP, HEIGHT, LENGTH, RADIUS -> Kind.LENGTH;
        };
    }
}
