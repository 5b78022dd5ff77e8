// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

/**
 * How far a length may stray from its nominal value, shorter and longer.
 *
 * @param minus how much shorter it may be; not negative
 * @param plus how much longer it may be; not negative
 */
public record Tolerance(Length minus, Length plus) {
    public static final Tolerance NONE = new Tolerance(Length.ZERO, Length.ZERO);

    public Tolerance {
        if (minus.isNegative() || plus.isNegative()) {
            throw new IllegalArgumentException("a tolerance is never negative: -" + minus + " / +" + plus);
        }
    }

    /** Returns the tolerance {@code ± deviation}. */
    public static Tolerance symmetric(Length deviation) {
        return new Tolerance(deviation, deviation);
    }

    /** Returns the worst case of a chain of two dimensions: both deviations add up. */
    public Tolerance plus(Tolerance other) {
        if (other.isNone()) {
            return this;
        }
        if (isSymmetric() && other.isSymmetric()) {
            return symmetric(minus.plus(other.minus));
        }
        return new Tolerance(minus.plus(other.minus), plus.plus(other.plus));
    }

    /** Returns the worst case of a difference of two dimensions: what is longer in the second makes it shorter. */
    public Tolerance flipped() {
        return isSymmetric() ? this : new Tolerance(plus, minus);
    }

    /** Returns the least length that is still within tolerance. */
    public Length least(Length nominal) {
        return nominal.minus(minus);
    }

    /** Returns the greatest length that is still within tolerance. */
    public Length greatest(Length nominal) {
        return nominal.plus(plus);
    }

    /** True when it may be as much shorter as longer. */
    public boolean isSymmetric() {
        return minus.equals(plus);
    }

    public boolean isNone() {
        return minus.isZero() && plus.isZero();
    }

    /** Returns {@code ± 10 mm} when both sides are alike, {@code -0 mm / +25 mm} otherwise. */
    @Override
    public String toString() {
        return minus.equals(plus) ? "\u00b1 " + plus : "-" + minus + " / +" + plus;
    }
}
