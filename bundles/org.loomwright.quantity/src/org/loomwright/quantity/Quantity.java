// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * A number and its unit, exact, as its author wrote them: {@code 7 1/2 in} stays seven and a half inches.
 *
 * <p>Two quantities are equal when they are written alike ({@code 12.5 in} and {@code 12.50 in} differ, since the
 * second claims more); {@link #sameValue} compares what they measure. Every conversion starts from the exact fraction,
 * so no binary rounding happens before the last step.
 *
 * @param number the number in canonical spelling: {@code 12}, {@code 12.50}, {@code -40}, {@code 5/8}, {@code 7 1/2};
 *        no needless leading zeros, a digit before the point, single spaces
 * @param unit its unit
 */
public record Quantity(String number, Unit unit) {
    /** Takes any spelling that {@link #parse} accepts; throws {@link IllegalArgumentException} for another. */
    public Quantity {
        number = Numeral.parse(number) instanceof Parsed.Value<Numeral>(Numeral numeral)
                ? numeral.written()
                : illegal(number);
        Objects.requireNonNull(unit);
    }

    private static String illegal(String number) {
        throw new IllegalArgumentException(Numeral.parse(number).problem().orElseThrow());
    }

    /**
     * Reads a number that a person wrote: {@code 12}, {@code 12.5}, {@code .5}, {@code -40}, {@code 5/8}, {@code 7
     * 1/2}. Refused with a message: a malformed number, a zero denominator, more than 15 digits, 1,000,000,000 or more
     * either way.
     */
    public static Parsed<Quantity> parse(String number, Unit unit) {
        return switch (Numeral.parse(number)) {
            case Parsed.Value<Numeral>(Numeral numeral) -> Parsed.of(new Quantity(numeral.written(), unit));
            case Parsed.Fault<Numeral>(String message) -> Parsed.fault(message);
        };
    }

    /** Returns a quantity for a decimal made by code; the number is written without an exponent. */
    public static Quantity of(BigDecimal number, Unit unit) {
        return new Quantity(number.toPlainString(), unit);
    }

    /** Returns the value in the SI unit of its dimension (degrees Celsius for temperatures), to the nearest double. */
    public double si() {
        return isDecimal() ? decimal().multiply(unit.factor()).doubleValue()
                : numeral().scaled(unit.factor(), 40).doubleValue();
    }

    /**
     * Returns a length in nanometres; exact for every decimal of millimetres to six places and for 1/64 in = 396,875
     * nm. A length that is no whole number of nanometres is rounded half even.
     *
     * @throws IllegalStateException if this is no length
     */
    public long nanometres() {
        if (unit.dimension() != Dimension.LENGTH) {
            throw new IllegalStateException(written() + " is no length");
        }
        BigDecimal factor = unit.factor().scaleByPowerOfTen(9);
        return isDecimal() ? decimal().multiply(factor).setScale(0, RoundingMode.HALF_EVEN).longValueExact()
                : numeral().rounded(factor, 0, RoundingMode.HALF_EVEN).longValueExact();
    }

    /** Returns the canonical spelling: {@code 7 1/2 in}, {@code 0.8 mm2}, {@code 5 %}. */
    public String written() {
        return number + " " + unit.symbol();
    }

    /**
     * Returns the value in another unit of the same dimension with a fixed number of decimals, rounded half up from the
     * exact value: {@code 7 1/2 in} shown in millimetres with one decimal is {@code 190.5 mm}.
     *
     * @throws IllegalArgumentException if the other unit measures something else
     */
    public String show(Unit other, int decimals) {
        if (other.dimension() != unit.dimension()) {
            throw new IllegalArgumentException(written() + " cannot be shown in " + other.symbol());
        }
        return Figures.plain(numeral().converted(unit, other, decimals)) + " " + other.symbol();
    }

    /** Returns whether both measure exactly the same, however they are written: 1 ft and 12 in do. */
    public boolean sameValue(Quantity other) {
        return unit.dimension() == other.unit.dimension()
                && numeral().compare(unit, other.numeral(), other.unit) == 0;
    }

    /** Returns -1, 0 or 1 as the number is negative, zero or positive. */
    public int signum() {
        return isDecimal() ? decimal().signum() : numeral().signum();
    }

    /** Most numbers are no fractions; what they measure is then known without reading them piece by piece. */
    private boolean isDecimal() {
        return number.indexOf('/') < 0;
    }

    private BigDecimal decimal() {
        return new BigDecimal(number);
    }

    private Numeral numeral() {
        return Numeral.parse(number).optional().orElseThrow();
    }

    /** Returns {@link #written()}. */
    @Override
    public String toString() {
        return written();
    }
}
