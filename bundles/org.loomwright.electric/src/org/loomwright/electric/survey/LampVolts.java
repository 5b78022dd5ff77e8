// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import org.loomwright.condition.Condition;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Piece;

/**
 * The least voltage that a lamp gets while it is lit and the engine runs, over some vehicles and all such modes.
 *
 * @param lamp  the lamp
 * @param volts the voltage across it, in V
 * @param mode  the mode in which that is
 * @param when  the vehicles in which it is; with others the lamp gets more
 */
public record LampVolts(Piece lamp, double volts, Mode mode, Condition when) {

    /** In V; closer than this is the same. */
    private static final double SAME = 1e-6;

    LampVolts worse(LampVolts other) {
        if (other.volts < volts - SAME) {
            return other;
        }
        boolean alike = other.volts < volts + SAME && other.mode.name().equals(mode.name());
        return alike ? new LampVolts(lamp, volts, mode, when.or(other.when)) : this;
    }
}
