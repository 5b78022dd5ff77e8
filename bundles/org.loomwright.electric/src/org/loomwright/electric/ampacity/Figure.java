// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Prints figures for people: fixed decimals, half up, the same in every locale. */
public final class Figure {

    /** Decimals at which a product of printed figures is taken for exact: 35 x 0.85 x 0.6 is 17.85. */
    private static final int NOISE = 9;

    private Figure() {
    }

    /** Returns a figure with a fixed number of decimals. */
    public static String of(double value, int decimals) {
        if (Double.isInfinite(value) || Double.isNaN(value)) {
            return "no end";
        }
        return new BigDecimal(value).setScale(NOISE, RoundingMode.HALF_EVEN).setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** Returns a figure with one decimal, or none when it is whole. */
    public static String of(double value) {
        String text = of(value, 1);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
