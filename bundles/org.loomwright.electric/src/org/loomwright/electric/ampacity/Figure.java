// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Prints figures for people: fixed decimals, half up, the same in every locale. */
public final class Figure {

    /** Decimals at which a product of printed figures is taken for exact: 35 x 0.85 x 0.6 is 17.85. */
    private static final int NOISE = 9;
    /** Below this a figure with so many decimals is a whole number that a double holds exactly. */
    private static final double PLAIN = 1e6;

    private Figure() {
    }

    /** Returns a figure with a fixed number of decimals. */
    public static String of(double value, int decimals) {
        if (Double.isInfinite(value) || Double.isNaN(value)) {
            return "no end";
        }
        if (Math.abs(value) >= PLAIN || decimals > NOISE) {
            return new BigDecimal(value).setScale(NOISE, RoundingMode.HALF_EVEN)
                    .setScale(decimals, RoundingMode.HALF_UP).toPlainString();
        }
        long part = power(NOISE - decimals);
        long exact = (long) Math.rint(Math.abs(value) * power(NOISE));
        long rounded = exact / part + (2 * (exact % part) >= part && part > 1 ? 1 : 0);
        String sign = value < 0 && rounded != 0 ? "-" : "";
        if (decimals == 0) {
            return sign + rounded;
        }
        String digits = Long.toString(rounded % power(decimals));
        return sign + rounded / power(decimals) + "." + "0".repeat(decimals - digits.length()) + digits;
    }

    private static long power(int of) {
        long power = 1;
        for (int i = 0; i < of; i++) {
            power *= 10;
        }
        return power;
    }

    /** Returns a figure with one decimal, or none when it is whole. */
    public static String of(double value) {
        String text = of(value, 1);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
