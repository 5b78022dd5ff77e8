// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

/**
 * A factor on an allowable current.
 *
 * @param value      the factor, from 0 to 1
 * @param reason     why, for people: {@code 80 C ambient, formula}
 * @param fromMemory true when nobody has compared the figure with its source
 * @param sure       the greatest value that the factor can have if the figure from memory is wrong; otherwise the value
 */
public record Factor(double value, String reason, boolean fromMemory, double sure) {

    /** Returns a factor that was compared with its source, or follows from a formula. */
    static Factor of(double value, String reason) {
        return new Factor(value, reason, false, value);
    }

    /** Returns a factor from memory. */
    static Factor fromMemory(double value, String reason, double sure) {
        return new Factor(value, reason + ", from memory", true, Math.max(value, sure));
    }
}
