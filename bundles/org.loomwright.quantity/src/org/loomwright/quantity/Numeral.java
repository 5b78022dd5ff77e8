// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as a person writes it, and its exact value as a fraction.
 *
 * @param written canonical spelling
 * @param numerator with the sign; not always in lowest terms
 * @param denominator positive
 */
record Numeral(String written, BigInteger numerator, BigInteger denominator) {
    private static final int MOST_DIGITS = 15;
    private static final BigInteger LIMIT = BigInteger.valueOf(1_000_000_000);
    private static final Pattern DECIMAL = Pattern.compile("(-?)([0-9]*)(?:\\.([0-9]+))?");
    private static final Pattern FRACTION = Pattern.compile("(-?)(?:([0-9]+) +)?([0-9]+) ?/ ?([0-9]+)");

    static Parsed<Numeral> parse(String text) {
        String number = text.strip();
        Matcher decimal = DECIMAL.matcher(number);
        if (decimal.matches() && !(decimal.group(2).isEmpty() && decimal.group(3) == null)) {
            return decimal(decimal);
        }
        Matcher fraction = FRACTION.matcher(number);
        if (fraction.matches()) {
            return fraction(fraction);
        }
        return Parsed.fault(quoted(number) + " is no number; write it like 12, 12.5, 5/8 or 7 1/2");
    }

    private static Parsed<Numeral> decimal(Matcher parts) {
        String whole = withoutZeros(parts.group(2));
        String decimals = parts.group(3) == null ? "" : parts.group(3);
        String significant = whole.equals("0") ? withoutZeros(decimals) : whole + decimals;
        if (significant.length() > MOST_DIGITS || decimals.length() > MOST_DIGITS) {
            return tooLong(parts.group());
        }
        String written = parts.group(1) + whole + (decimals.isEmpty() ? "" : "." + decimals);
        BigInteger numerator = new BigInteger(parts.group(1) + whole + decimals);
        return bounded(written, numerator, BigInteger.TEN.pow(decimals.length()));
    }

    private static Parsed<Numeral> fraction(Matcher parts) {
        String whole = parts.group(2) == null ? "" : withoutZeros(parts.group(2));
        String over = withoutZeros(parts.group(3));
        String under = withoutZeros(parts.group(4));
        if (whole.length() + over.length() + under.length() > MOST_DIGITS) {
            return tooLong(parts.group());
        }
        BigInteger denominator = new BigInteger(under);
        if (denominator.signum() == 0) {
            return Parsed.fault(quoted(parts.group()) + " divides by zero");
        }
        BigInteger numerator = new BigInteger(over);
        if (!whole.isEmpty()) {
            numerator = numerator.add(new BigInteger(whole).multiply(denominator));
        }
        String written = parts.group(1) + (whole.isEmpty() ? "" : whole + " ") + over + "/" + under;
        return bounded(written, parts.group(1).isEmpty() ? numerator : numerator.negate(), denominator);
    }

    private static Parsed<Numeral> bounded(String written, BigInteger numerator, BigInteger denominator) {
        if (numerator.abs().compareTo(LIMIT.multiply(denominator)) >= 0) {
            return Parsed.fault(written + " is out of range; numbers stay below 1,000,000,000");
        }
        String unsigned = numerator.signum() == 0 && written.startsWith("-") ? written.substring(1) : written;
        return Parsed.of(new Numeral(unsigned, numerator, denominator));
    }

    private static Parsed<Numeral> tooLong(String number) {
        return Parsed.fault(quoted(number) + " has more than " + MOST_DIGITS + " digits");
    }

    /** Quotes what was written, shortened so that a message stays a line. */
    private static String quoted(String number) {
        return "'" + (number.length() > 40 ? number.substring(0, 37) + "..." : number) + "'";
    }

    private static String withoutZeros(String digits) {
        int first = 0;
        while (first < digits.length() - 1 && digits.charAt(first) == '0') {
            first++;
        }
        return digits.isEmpty() ? "0" : digits.substring(first);
    }

    int signum() {
        return numerator.signum();
    }

    /** Returns value * factor to a number of significant digits. */
    BigDecimal scaled(BigDecimal factor, int digits) {
        return new BigDecimal(numerator).multiply(factor).divide(new BigDecimal(denominator), new MathContext(digits));
    }

    /** Returns value * factor, rounded once from the exact value. */
    BigDecimal rounded(BigDecimal factor, int decimals, RoundingMode mode) {
        return new BigDecimal(numerator).multiply(factor).divide(new BigDecimal(denominator), decimals, mode);
    }

    /** Returns the value in another unit, rounded once, half up, from the exact value. */
    BigDecimal converted(Unit from, Unit to, int decimals) {
        BigDecimal divisor = new BigDecimal(denominator).multiply(to.factor());
        return new BigDecimal(numerator).multiply(from.factor()).divide(divisor, decimals, RoundingMode.HALF_UP);
    }

    /** Compares exact values in SI units. */
    int compare(Unit unit, Numeral other, Unit otherUnit) {
        BigDecimal left = new BigDecimal(numerator.multiply(other.denominator)).multiply(unit.factor());
        BigDecimal right = new BigDecimal(other.numerator.multiply(denominator)).multiply(otherUnit.factor());
        return left.compareTo(right);
    }
}
