// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import java.util.Objects;
import org.loomwright.quantity.Unit;

/**
 * How a person likes to see what is known. Nothing is judged by it.
 *
 * @param unit        of lengths: millimetres or inches
 * @param secondTable whether what a wire may carry is also told by the second published table, for comparison
 */
public record Shown(Unit unit, boolean secondTable) {

    /** Where nobody says otherwise: millimetres, and the table that the rules judge by. */
    public static final Shown USUAL = new Shown(Unit.MM, false);

    /** @throws IllegalArgumentException for a unit in which no length is shown */
    public Shown {
        Objects.requireNonNull(unit);
        if (unit != Unit.MM && unit != Unit.IN) {
            throw new IllegalArgumentException("lengths are shown in mm or in, not in " + unit.symbol());
        }
    }
}
