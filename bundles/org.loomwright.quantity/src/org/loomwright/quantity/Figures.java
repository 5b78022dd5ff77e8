// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;

/** How decimals are printed: no exponent, no locale, and never a minus before a zero. */
final class Figures {
    private Figures() {
    }

    /** Returns all decimals that the number has: 1.50 is {@code 1.50}. */
    static String plain(BigDecimal number) {
        return number.toPlainString();
    }

    /** Returns the number without trailing zeros after the point: 1.50 is {@code 1.5}. */
    static String stripped(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
