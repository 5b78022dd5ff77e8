// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A length, or a difference of lengths, in whole nanometres. Sums and comparisons are exact; a result beyond the range
 * of {@code long} (nine million kilometres) throws {@link ArithmeticException}.
 *
 * @param nanometres the length; may be negative
 */
public record Length(long nanometres) implements Comparable<Length> {
    public static final Length ZERO = new Length(0);

    private static final double NANOMETRES_PER_MILLIMETRE = 1e6;
    private static final double NANOMETRES_PER_METRE = 1e9;

    /** Returns the length that was written; see {@link Quantity#nanometres} for its rounding. */
    public static Length of(Quantity quantity) {
        return new Length(quantity.nanometres());
    }

    /** Returns a length in millimetres, rounded half even to a whole nanometre. */
    public static Length ofMillimetres(double millimetres) {
        return ofDouble(millimetres * NANOMETRES_PER_MILLIMETRE);
    }

    /** Returns a length in metres, rounded half even to a whole nanometre. */
    public static Length ofMetres(double metres) {
        return ofDouble(metres * NANOMETRES_PER_METRE);
    }

    /** Returns a length in inches, rounded half even to a whole nanometre. */
    public static Length ofInches(double inches) {
        return ofDouble(inches * 25.4 * NANOMETRES_PER_MILLIMETRE);
    }

    private static Length ofDouble(double nanometres) {
        double rounded = Math.rint(nanometres);
        if (!(Math.abs(rounded) < 0x1p63)) {
            throw new ArithmeticException("no length: " + nanometres + " nm");
        }
        return new Length((long) rounded);
    }

    public Length plus(Length other) {
        return new Length(Math.addExact(nanometres, other.nanometres));
    }

    public Length minus(Length other) {
        return new Length(Math.subtractExact(nanometres, other.nanometres));
    }

    public Length times(int factor) {
        return new Length(Math.multiplyExact(nanometres, (long) factor));
    }

    public Length negated() {
        return new Length(Math.negateExact(nanometres));
    }

    public Length abs() {
        return nanometres < 0 ? negated() : this;
    }

    public Length max(Length other) {
        return nanometres >= other.nanometres ? this : other;
    }

    public Length min(Length other) {
        return nanometres <= other.nanometres ? this : other;
    }

    public boolean isZero() {
        return nanometres == 0;
    }

    public boolean isNegative() {
        return nanometres < 0;
    }

    /** Returns the next multiple of a positive grid at or above this length (cutting grid). */
    public Length roundedUpTo(Length grid) {
        long steps = Math.ceilDiv(nanometres, grid.nanometres);
        return new Length(Math.multiplyExact(steps, grid.nanometres));
    }

    public double toMillimetres() {
        return nanometres / NANOMETRES_PER_MILLIMETRE;
    }

    public double toMetres() {
        return nanometres / NANOMETRES_PER_METRE;
    }

    /**
     * Returns the length in a unit with a fixed number of decimals, rounded half up from the exact value, with the
     * symbol: {@code 317.5 mm}.
     *
     * @throws IllegalArgumentException if the unit measures something else
     */
    public String show(Unit unit, int decimals) {
        if (unit.dimension() != Dimension.LENGTH) {
            throw new IllegalArgumentException("a length cannot be shown in " + unit.symbol());
        }
        BigDecimal value = BigDecimal.valueOf(nanometres, 9).divide(unit.factor(), decimals, RoundingMode.HALF_UP);
        return Figures.plain(value) + " " + unit.symbol();
    }

    @Override
    public int compareTo(Length other) {
        return Long.compare(nanometres, other.nanometres);
    }

    /** Returns the length in millimetres, to the last nanometre and without needless zeros: {@code 317.5 mm}. */
    @Override
    public String toString() {
        return Figures.stripped(BigDecimal.valueOf(nanometres, 6)) + " mm";
    }
}
