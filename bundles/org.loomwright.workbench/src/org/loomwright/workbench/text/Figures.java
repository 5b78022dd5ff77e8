// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.text;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;
import org.loomwright.workbench.preference.Preferences;

/** Lengths in the unit that the user has chosen, the same in every locale. */
public final class Figures {

    private static final int MM_EXPONENT = 6;
    private static final BigDecimal NM_PER_INCH = BigDecimal.valueOf(25_400_000);

    private Figures() {
    }

    /** The number alone, rounded down, so that what is left never looks like more: 0.1 mm, or 0.01 in. */
    public static String down(Length length) {
        return down(length, Preferences.unit());
    }

    /** The number with its unit. */
    public static String written(Length length) {
        return written(length, Preferences.unit());
    }

    /** The number in millimetres or inches. */
    public static String down(Length length, Unit unit) {
        return unit == Unit.IN
                ? BigDecimal.valueOf(length.nanometres()).divide(NM_PER_INCH, 2, RoundingMode.FLOOR).toPlainString()
                : BigDecimal.valueOf(length.nanometres(), MM_EXPONENT).setScale(1, RoundingMode.FLOOR).toPlainString();
    }

    /** The number with that unit, millimetres or inches. */
    public static String written(Length length, Unit unit) {
        return down(length, unit) + " " + unit.symbol();
    }
}
