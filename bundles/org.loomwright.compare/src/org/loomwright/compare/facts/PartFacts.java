// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;

/** What the catalogue states of a part. */
final class PartFacts {

    private static final Expression ALWAYS = new Expression.Always();
    private static final Set<FigureKind> ELECTRICAL = EnumSet.of(FigureKind.RATING, FigureKind.VOLTAGE,
            FigureKind.POWER, FigureKind.CURRENT, FigureKind.START, FigureKind.STALL, FigureKind.RESISTANCE,
            FigureKind.TEMPERATURE, FigureKind.SHORT_TIME, FigureKind.PULL_IN, FigureKind.DROP_OUT,
            FigureKind.BREAKING);
    private static final Set<WordKind> MATING = EnumSet.of(WordKind.GENDER, WordKind.KEYING, WordKind.FAMILY);

    private PartFacts() {
    }

    static ItemBuilder of(Part part) {
        ItemBuilder item = new ItemBuilder(Sort.PART, "", part.name().text(), part.span())
                .word(Property.KIND, words(part.kind())).word(Property.TITLE, part.title());
        part.base().filter(base -> !base.text().isEmpty()).ifPresent(base -> item.put(Property.BASE,
                new Value(List.of(new Value.Mention(new ItemId(Sort.PART, base.owner(), base.text()), true))),
                base.span()));
        for (Fact<Part.Figure> fact : part.figures()) {
            Part.Figure figure = fact.value();
            Property property = ELECTRICAL.contains(figure.kind()) ? Property.RATED : Property.FIGURE;
            Value value = Value.quantity(figure.from());
            if (figure.upTo().isPresent()) {
                value = value.and(" .. ").and(Value.quantity(figure.upTo().get()));
            }
            item.put(new Slot(property, Value.word(words(figure.kind()))),
                    figure.basis().isEmpty() ? value : value.and(" (" + figure.basis() + ")"), fact.when(),
                    fact.span());
        }
        for (Fact<Part.Word> fact : part.words()) {
            WordKind kind = fact.value().kind();
            Property property = kind == WordKind.BASIS ? Property.RATED
                    : MATING.contains(kind) ? Property.MATING_WORD : Property.WORD;
            item.put(new Slot(property, Value.word(words(kind))), Value.word(fact.value().text()), fact.when(),
                    fact.span());
        }
        part.sizes().forEach(size -> item.put(new Slot(Property.SIZE_MADE, Value.word(size.size().written())),
                made(size), ALWAYS, size.span()));
        part.pins().forEach(pin -> item.put(new Slot(Property.PIN, Value.word(pin.name().text())),
                Value.word(pin.title().isEmpty() ? "there" : pin.title()), ALWAYS, part.span()));
        part.joins().forEach(join -> item.put(new Slot(Property.JOIN, Value.word(join.from() + " to " + join.to())),
                closed(join), join.when(), join.span()));
        List<Name> states = part.states();
        states.forEach(state -> item.put(new Slot(Property.STATE, Value.word(state.text())), Value.word("there"),
                ALWAYS, part.span()));
        return states.isEmpty() ? item : item.word(Property.REST, states.getFirst().text());
    }

    private static Value made(Part.Size size) {
        Value value = size.diameter().map(each -> Value.word("diameter ").and(Value.quantity(each)))
                .orElse(Value.word("no diameter"));
        if (size.mass().isPresent()) {
            value = value.and(", mass ").and(Value.quantity(size.mass().get()));
        }
        return size.basis().isEmpty() ? value : value.and(" (" + size.basis() + ")");
    }

    private static Value closed(Part.Join join) {
        Value value = Value.word(join.protective() ? "protective" : "joined");
        if (join.through().isPresent()) {
            value = value.and(" through ").and(Value.quantity(join.through().get()));
        }
        return join.states().isEmpty() ? value
                : value.and(" while " + String.join(", ", join.states().stream().map(Name::text).sorted().toList()));
    }

    /** {@code short time} for {@code SHORT_TIME}. */
    private static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
