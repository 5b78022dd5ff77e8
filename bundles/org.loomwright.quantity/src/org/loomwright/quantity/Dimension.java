// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

/** What a unit measures. Quantities of different dimensions are never converted into each other. */
public enum Dimension {
    /** SI unit metre. */
    LENGTH("length"),
    /** SI unit square metre; conductor cross-sections are written in square millimetres. */
    AREA("cross-section"),
    /** SI unit ampere. */
    CURRENT("current"),
    /** SI unit volt. */
    VOLTAGE("voltage"),
    /** SI unit watt. */
    POWER("power"),
    /** SI unit ohm. */
    RESISTANCE("resistance"),
    /** Degrees Celsius, by the convention of {@link Unit#C}; never kelvin. */
    TEMPERATURE("temperature"),
    /** SI unit second. */
    TIME("time"),
    /** SI unit kilogram. */
    MASS("mass"),
    /** SI unit newton. */
    FORCE("force"),
    /** A plain number; 1 is the whole. */
    RATIO("ratio");

    private final String words;

    Dimension(String words) {
        this.words = words;
    }

    /** Returns the name for people, in lower case: {@code length}, {@code cross-section}. */
    public String words() {
        return words;
    }
}
