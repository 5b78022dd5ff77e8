// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A unit of measure with its written symbol, its dimension and its exact factor to the SI unit of that dimension.
 *
 * <p>All factors are exact decimals: the inch is 25.4 mm and the foot 304.8 mm by the international agreement of 1959.
 * Temperatures are degrees Celsius throughout: the "SI value" of 80 C is 80, by convention, because every formula that
 * uses one works with degrees Celsius or with differences.
 *
 * <p>The wire sizes {@code ga} and {@code awg} are no units: they are systems of sizes, see {@link SizeSystem}.
 */
public enum Unit {
    MM("mm", Dimension.LENGTH, "0.001", "millimetre", "millimetres", "millimeter", "millimeters"),
    CM("cm", Dimension.LENGTH, "0.01", "centimetre", "centimetres", "centimeter", "centimeters"),
    M("m", Dimension.LENGTH, "1", "metre", "metres", "meter", "meters"),
    IN("in", Dimension.LENGTH, "0.0254", "inch", "inches", "ins", "\"", "''"),
    FT("ft", Dimension.LENGTH, "0.3048", "foot", "feet", "'"),
    MM2("mm2", Dimension.AREA, "0.000001", "mm\u00b2", "mm^2", "sqmm", "qmm"),
    A("A", Dimension.CURRENT, "1", "amp", "amps", "ampere", "amperes"),
    MA("mA", Dimension.CURRENT, "0.001", "milliamp", "milliamps", "milliampere", "milliamperes"),
    V("V", Dimension.VOLTAGE, "1", "volt", "volts"),
    MV("mV", Dimension.VOLTAGE, "0.001", "millivolt", "millivolts"),
    W("W", Dimension.POWER, "1", "watt", "watts"),
    KW("kW", Dimension.POWER, "1000", "kilowatt", "kilowatts"),
    OHM("ohm", Dimension.RESISTANCE, "1", "ohms", "\u03a9", "\u2126"),
    MOHM("mohm", Dimension.RESISTANCE, "0.001", "milliohm", "milliohms", "m\u03a9", "m\u2126"),
    KOHM("kohm", Dimension.RESISTANCE, "1000", "kiloohm", "kilohm", "kilohms", "k\u03a9", "k\u2126"),
    /** Degrees Celsius. The SI value is the number of degrees Celsius, not kelvin. */
    C("C", Dimension.TEMPERATURE, "1", "\u00b0C", "degC", "deg", "celsius", "centigrade"),
    S("s", Dimension.TIME, "1", "sec", "secs", "second", "seconds"),
    MIN("min", Dimension.TIME, "60", "mins", "minute", "minutes"),
    H("h", Dimension.TIME, "3600", "hr", "hrs", "hour", "hours"),
    G("g", Dimension.MASS, "0.001", "gram", "grams", "gm"),
    KG("kg", Dimension.MASS, "1", "kilo", "kilos", "kilogram", "kilograms", "kgs"),
    N("N", Dimension.FORCE, "1", "newton", "newtons"),
    PERCENT("%", Dimension.RATIO, "0.01", "percent", "pct", "per cent");

    private final String symbol;
    private final Dimension dimension;
    private final BigDecimal factor;
    private final List<String> otherSpellings;

    Unit(String symbol, Dimension dimension, String factor, String... otherSpellings) {
        this.symbol = symbol;
        this.dimension = dimension;
        this.factor = new BigDecimal(factor);
        this.otherSpellings = List.of(otherSpellings);
    }

    /** Returns the one spelling that the language accepts: {@code mm2}, {@code ohm}, {@code %}. */
    public String symbol() {
        return symbol;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Returns how many SI units one of this unit is, exactly; 1 for degrees Celsius. */
    public BigDecimal factor() {
        return factor;
    }

    /** Returns spellings that people use for this unit and that the language does not accept. */
    public List<String> otherSpellings() {
        return otherSpellings;
    }

    /**
     * Returns the unit whose symbol is exactly this text; upper and lower case differ ({@code mA} is not {@code MA}).
     */
    public static Optional<Unit> ofSymbol(String text) {
        for (Unit unit : values()) {
            if (unit.symbol.equals(text)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the unit that was most likely meant by a text that is no symbol: another spelling of it ({@code inch}),
     * the wrong case ({@code MM}), or one slip of the finger ({@code im} for {@code in}, {@code mn} for {@code mm}).
     * A slip to a neighbouring key weighs less than any other; equal weights go to the unit declared first.
     */
    public static Optional<Unit> nearest(String text) {
        return UnitGuess.nearest(text);
    }
}
