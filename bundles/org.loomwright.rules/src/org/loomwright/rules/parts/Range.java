// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.PartFacts;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.Dimension;

/**
 * What a part takes: at least and at most. A figure without a second one is the most that it takes.
 *
 * @param least in SI units, 0 where none is stated
 * @param most  in SI units
 * @param words as the catalogue states it
 * @param basis where the figures come from, as the catalogue states it; one from memory before any other
 */
record Range(double least, double most, String words, String basis) {

    /** The ranges of a kind that a part states, by vehicles. Two that hold at once widen each other. */
    static List<Case<Range>> of(Part part, Part.FigureKind kind, Dimension dimension, Condition within) {
        List<Case<Part.Figure>> figures = PartFacts.figures(part, kind, within).stream()
                .filter(each -> each.value().from().unit().dimension() == dimension
                        && each.value().upTo().filter(upTo -> upTo.unit().dimension() != dimension).isEmpty())
                .toList();
        return figures.stream().map(each -> new Case<>(figures.stream()
                .filter(other -> !other.when().excludes(each.when())).map(other -> of(other.value()))
                .reduce(Range::and).orElseThrow(), each.when(), each.span())).toList();
    }

    private static Range of(Part.Figure figure) {
        double from = figure.from().si();
        return figure.upTo().map(upTo -> new Range(Math.min(from, upTo.si()), Math.max(from, upTo.si()),
                figure.from() + " .. " + upTo, figure.basis()))
                .orElse(new Range(0, from, "up to " + figure.from(), figure.basis()));
    }

    private Range and(Range other) {
        return new Range(Math.min(least, other.least), Math.max(most, other.most),
                words.equals(other.words) ? words : words + " and " + other.words,
                Part.fromMemory(other.basis) ? other.basis : basis);
    }
}
