// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.loomwright.quantity.Length;

/** How lengths stand in cells. */
final class Figures {

    private static final int DECIMALS_OF_A_METRE = 2;

    private Figures() {
    }

    /** A length in millimetres without the unit and without needless zeros. */
    static String millimetres(Length length) {
        return plain(BigDecimal.valueOf(length.nanometres(), 6));
    }

    /** A length in metres without the unit, rounded up to a centimetre, so that nobody orders too little. */
    static String metres(Length length) {
        return plain(BigDecimal.valueOf(length.nanometres(), 9)
                .setScale(DECIMALS_OF_A_METRE, RoundingMode.CEILING));
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
