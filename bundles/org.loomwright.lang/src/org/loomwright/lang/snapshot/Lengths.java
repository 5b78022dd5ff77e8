// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.Optional;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Measure.MeasuredTo;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;

/** Lengths with what is said of them, tolerances, stations, and whole numbers. */
final class Lengths {
    private static final int MOST_SAMPLES = 10_000;

    private final FileText file;
    private final Quantities quantities;

    Lengths(FileText file, Quantities quantities) {
        this.file = file;
        this.quantities = quantities;
    }

    Optional<Measure> measure(org.loomwright.model.loom.Measure source) {
        return source == null ? Optional.empty() : Optional.of(read(source));
    }

    /** Returns the length, or one of which nothing is known when the source has none. */
    Measure needed(org.loomwright.model.loom.Measure source, Span around) {
        return measure(source).orElseGet(() -> new Measure(Optional.empty(), Optional.empty(), Provenance.UNKNOWN, 0,
                MeasuredTo.UNSTATED, false, false, around));
    }

    private Measure read(org.loomwright.model.loom.Measure source) {
        Written written = file.of(source);
        Provenance provenance = source.isUnknown() ? Provenance.UNKNOWN : source.isSample() ? Provenance.SAMPLE
                : source.isScaled() ? Provenance.SCALED : Provenance.SHEET;
        int samples = source.getSamples() == null ? 0
                : number(source.getSamples(), 1, MOST_SAMPLES, written.span("samples"), "a number of samples")
                        .orElse(0);
        MeasuredTo end = !written.has("measuredTo") ? MeasuredTo.UNSTATED : switch (source.getMeasuredTo()) {
            case TIP -> MeasuredTo.TIP;
            case HOUSING -> MeasuredTo.HOUSING;
            case FACE -> MeasuredTo.FACE;
        };
        return new Measure(quantities.read(source.getValue(), Kind.LENGTH), tolerance(source.getTolerance()),
                provenance, samples, end, source.isPath(), source.isPinned(), written.span());
    }

    /** Reads a tolerance; empty when there is none, or when it has been reported as unusable. */
    Optional<Tolerance> tolerance(org.loomwright.model.loom.Tolerance source) {
        if (source == null || source.getPlus() == null) {
            return Optional.empty();
        }
        Optional<Length> plus = length(source.getPlus());
        Optional<Length> minus = source.getMinus() == null ? plus
                : isBareZero(source.getMinus()) ? Optional.of(Length.ZERO) : length(source.getMinus());
        return plus.isPresent() && minus.isPresent() ? Optional.of(new Tolerance(minus.get(), plus.get()))
                : Optional.empty();
    }

    /** Nothing is nothing in any unit: {@code -0 +25 mm}. */
    private static boolean isBareZero(org.loomwright.model.loom.Quantity quantity) {
        return "0".equals(quantity.getNumber()) && quantity.getFraction() == null && quantity.getUnit() == null;
    }

    private Optional<Length> length(org.loomwright.model.loom.Quantity source) {
        return quantities.read(source, Kind.LENGTH).map(Length::of);
    }

    Optional<Quantity> quantity(org.loomwright.model.loom.Quantity source) {
        return quantities.read(source, Kind.LENGTH);
    }

    Optional<Location> location(org.loomwright.model.loom.Location source) {
        if (source == null) {
            return Optional.empty();
        }
        Written written = file.of(source);
        return Optional.of(new Location(written.ref("point"), written.ref("run"), measure(source.getStation())));
    }

    /** Reads a whole number within bounds; empty when it has been reported. */
    Optional<Integer> number(String digits, int least, int most, Span span, String what) {
        if (digits == null || digits.isEmpty()) {
            return Optional.empty();
        }
        long value = digits.length() > 9 ? Long.MAX_VALUE : Long.parseLong(digits);
        if (value < least || value > most) {
            file.problems().add("number-absurd", span, what + " lies between " + least + " and " + most, "");
            return Optional.empty();
        }
        return Optional.of((int) value);
    }
}
