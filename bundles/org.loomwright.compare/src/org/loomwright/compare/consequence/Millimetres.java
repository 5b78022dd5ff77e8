// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.loomwright.quantity.Length;

/** Lengths for people, in millimetres, never rounded to the pleasant side. */
final class Millimetres {

    private Millimetres() {
    }

    /** What is left: rounded down to a decimal. */
    static String margin(Length length) {
        return BigDecimal.valueOf(length.nanometres(), 6).setScale(1, RoundingMode.FLOOR).toPlainString();
    }

    /** What is too much: rounded up to a decimal. */
    static String excess(Length length) {
        return BigDecimal.valueOf(length.nanometres(), 6).setScale(1, RoundingMode.CEILING).toPlainString();
    }
}
