// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.quantity.Spelling;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Parsed;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Unit;

/**
 * Reads quantities and wire sizes, and reports unknown and wrong units. Which units the file uses and which numbers
 * have none goes to its {@link Units}.
 */
final class Quantities {
    private static final Pattern GLUED = Pattern.compile("(-?[0-9]+(?:\\.[0-9]+)?)([A-Za-z_].*)");
    /** What people write for the systems of wire sizes. */
    private static final Map<String, String> SIZE_NAMES = Map.of("gauge", "ga", "gage", "ga", "sae", "ga");
    private static final List<String> SIZE_WORDS = List.of("ga", "awg", "mm2");

    private final FileText file;
    private final Units units = new Units();

    /** A quantity as it stands in the text. */
    private record Figure(String number, String unit, Span span, Span unitSpan, int end) {
    }

    Quantities(FileText file) {
        this.file = file;
    }

    /** The units of what was read so far. */
    Units units() {
        return units;
    }

    /** Returns null when there is nothing, or when what there is has been reported as no number. */
    private Figure figure(org.loomwright.model.loom.Quantity quantity) {
        if (quantity == null || quantity.getNumber() == null && quantity.getFraction() == null) {
            return null;
        }
        Written written = file.of(quantity);
        String number = FileText.withoutGaps(quantity.getNumber());
        String unit = FileText.orEmpty(quantity.getUnit());
        Span unitSpan = written.span("unit");
        Matcher glued = GLUED.matcher(number);
        if (glued.matches()) {
            int end = written.endOf("number");
            unitSpan = file.lines().span(end - glued.group(2).length(), glued.group(2).length());
            if (!unit.isEmpty() || quantity.getFraction() != null) {
                file.problems().add("number-absurd", written.span("number"), "\"" + number + "\" is no number", "");
                return null;
            }
            number = glued.group(1);
            unit = glued.group(2);
            if (Unit.ofSymbol(unit).isPresent() || SizeSystem.ofSymbol(unit).isPresent()) {
                file.problems().add("unit-spacing", unitSpan, "write a space between " + number + " and its unit", "",
                        file.problems().insert(unitSpan.offset(), " "));
            }
        }
        String fraction = " " + FileText.withoutGaps(quantity.getFraction());
        return new Figure((number + fraction).strip(), unit, written.span(), unitSpan, written.end());
    }

    /** Reads a quantity of a kind; empty when there is none, or when it has been reported as unusable. */
    Optional<Quantity> read(org.loomwright.model.loom.Quantity source, Kind kind) {
        Figure figure = figure(source);
        if (figure == null) {
            return Optional.empty();
        }
        if (figure.unit.isEmpty()) {
            units.bare(figure.span, figure.end, kind);
            return Optional.empty();
        }
        Optional<Unit> unit = Unit.ofSymbol(figure.unit);
        if (unit.isEmpty() || !kind.allows(unit.get())) {
            wrongUnit(figure, unit, kind);
            return Optional.empty();
        }
        units.use(figure.span.offset(), unit.get());
        return switch (Quantity.parse(figure.number, unit.get())) {
            case Parsed.Fault<Quantity>(String message) -> absurd(figure.span, message);
            case Parsed.Value<Quantity>(Quantity quantity) -> kind.absurdity(quantity)
                    .map(message -> this.<Quantity>absurd(figure.span, message)).orElse(Optional.of(quantity));
        };
    }

    private <T> Optional<T> absurd(Span span, String message) {
        file.problems().add("number-absurd", span, message, "");
        return Optional.empty();
    }

    private void wrongUnit(Figure figure, Optional<Unit> unit, Kind kind) {
        boolean size = figure.unit.equals("ga") || figure.unit.equals("awg");
        if (unit.isPresent() || size) {
            String is = size ? "a wire size" : "a unit of " + unit.get().dimension().words();
            file.problems().add("unit-wrong", figure.unitSpan, "\"" + figure.unit + "\" is " + is + "; needed here is "
                    + kind.words() + " such as " + kind.example(), "");
            return;
        }
        Optional<Unit> nearest = Unit.nearest(figure.unit).filter(kind::allows)
                .or(() -> Spelling.nearest(figure.unit, symbols(kind)).flatMap(Unit::ofSymbol));
        unknownUnit(figure, nearest.map(Unit::symbol), symbols(kind));
    }

    private void unknownUnit(Figure figure, Optional<String> nearest, List<String> possible) {
        boolean glued = Character.isDigit(file.text().charAt(Math.max(0, figure.unitSpan.offset() - 1)));
        TextEdit[] edits = nearest.map(symbol -> new TextEdit[] {new TextEdit(figure.unitSpan,
                (glued ? " " : "") + symbol)}).orElse(new TextEdit[0]);
        String message = "\"" + figure.unit + "\" is no unit"
                + nearest.map(symbol -> "; did you mean \"" + symbol + "\"?").orElse("");
        String advice = "units here: " + String.join(", ", possible);
        if (nearest.filter(symbol -> isSpelledSo(symbol, figure.unit)).isPresent()) {
            file.problems().add("unit-unknown", figure.unitSpan, message, advice, edits);
        } else {
            file.problems().guess("unit-unknown", figure.unitSpan, message, advice, edits);
        }
    }

    /** Whether people write a unit so; a slip of the finger could have hit any of them. */
    private static boolean isSpelledSo(String symbol, String given) {
        return symbol.equalsIgnoreCase(given) || Unit.ofSymbol(symbol)
                .filter(unit -> unit.otherSpellings().stream().anyMatch(given::equalsIgnoreCase)).isPresent();
    }

    private static List<String> symbols(Kind kind) {
        return Arrays.stream(Unit.values()).filter(kind::allows).map(Unit::symbol).toList();
    }

    /** Reads a wire size; empty when there is none, or when it has been reported as unusable. */
    Optional<ConductorSize> size(org.loomwright.model.loom.Quantity source) {
        Figure figure = figure(source);
        if (figure == null) {
            return Optional.empty();
        }
        if (figure.unit.isEmpty()) {
            units.bare(figure.span, figure.end, null);
            return Optional.empty();
        }
        Optional<SizeSystem> system = SizeSystem.ofSymbol(figure.unit);
        if (system.isEmpty()) {
            wrongSystem(figure);
            return Optional.empty();
        }
        units.use(figure.span.offset(), system.get());
        return switch (ConductorSize.parse(figure.number, system.get())) {
            case Parsed.Value<ConductorSize>(ConductorSize size) -> Optional.of(size);
            case Parsed.Fault<ConductorSize>(String message) -> {
                file.problems().add("size-unknown", figure.span, message, "");
                yield Optional.empty();
            }
        };
    }

    private void wrongSystem(Figure figure) {
        Optional<Unit> unit = Unit.ofSymbol(figure.unit);
        if (unit.isPresent() && unit.get() != Unit.MM) {
            file.problems().add("unit-wrong", figure.unitSpan, "\"" + figure.unit + "\" is a unit of "
                    + unit.get().dimension().words()
                    + "; needed here is a wire size such as 18 ga, 18 awg or 0.8 mm2", "");
            return;
        }
        Optional<String> nearest = unit.isPresent() || Unit.nearest(figure.unit).equals(Optional.of(Unit.MM2))
                ? Optional.of("mm2")
                : Optional.ofNullable(SIZE_NAMES.get(figure.unit.toLowerCase(Locale.ROOT)))
                        .or(() -> Spelling.nearest(figure.unit, SIZE_WORDS));
        unknownUnit(figure, nearest, SIZE_WORDS);
    }
}
