// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.text;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.loomwright.quantity.Length;

/** Lengths in millimetres with one decimal, the same in every locale. */
public final class Figures {

    private static final int EXPONENT = 6;

    private Figures() {
    }

    /** Rounded down, so that what is left never looks like more. */
    public static String down(Length length) {
        return BigDecimal.valueOf(length.nanometres(), EXPONENT).setScale(1, RoundingMode.FLOOR).toPlainString();
    }
}
