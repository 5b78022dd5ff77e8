// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.loomwright.quantity.Length;

/** Lengths for people, in millimetres with one decimal, never rounded to the pleasant side. */
final class Millimetres {

    private static final int EXPONENT = 6;

    private Millimetres() {
    }

    /** What is left: rounded down, so that -0.04 mm does not read as 0. */
    static String margin(Length length) {
        return rounded(length, RoundingMode.FLOOR);
    }

    /** What is too much: rounded up. */
    static String excess(Length length) {
        return rounded(length, RoundingMode.CEILING);
    }

    /** A length as it is, to the last nanometre, without needless zeros. */
    static String exact(Length length) {
        BigDecimal number = BigDecimal.valueOf(length.nanometres(), EXPONENT);
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    private static String rounded(Length length, RoundingMode mode) {
        return BigDecimal.valueOf(length.nanometres(), EXPONENT).setScale(1, mode).toPlainString();
    }
}
