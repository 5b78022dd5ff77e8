// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Unit;

/** What is measured where a quantity stands, which units it may have, and within which bounds it makes sense. */
enum Kind {
    LENGTH("a length", "12 mm", Dimension.LENGTH),
    VOLTAGE("a voltage", "12 V", Dimension.VOLTAGE),
    CURRENT("a current", "10 A", Dimension.CURRENT),
    POWER("a power", "55 W", Dimension.POWER),
    RESISTANCE("a resistance", "5 mohm", Dimension.RESISTANCE),
    TEMPERATURE("a temperature", "80 C", Dimension.TEMPERATURE),
    MASS("a mass", "12 g", Dimension.MASS),
    AREA("a cross-section", "0.5 mm2", Dimension.AREA),
    THROUGH("a resistance, a rating or a power", "10 A", Dimension.RESISTANCE, Dimension.CURRENT, Dimension.POWER),
    FORCE("a force", "50 N", Dimension.FORCE),
    SHARE("a share", "10 %", Dimension.RATIO);

    /** Absolute zero in degrees Celsius, by definition of the unit. */
    private static final double COLDEST = -273.15;
    /** Beyond every part of a vehicle: common practice. */
    private static final double HOTTEST = 1_500;
    private static final double LONGEST_METRES = 100;
    private static final double MOST_VOLTS = 1_000;
    private static final double MOST_AMPERES = 10_000;

    private final String words;
    private final String example;
    private final Set<Dimension> dimensions;

    Kind(String words, String example, Dimension... dimensions) {
        this.words = words;
        this.example = example;
        this.dimensions = EnumSet.of(dimensions[0], dimensions);
    }

    String words() {
        return words;
    }

    String example() {
        return example;
    }

    Set<Dimension> dimensions() {
        return dimensions;
    }

    boolean allows(Unit unit) {
        return dimensions.contains(unit.dimension());
    }

    /** Returns what is absurd about a value, without a place; empty if nothing is. */
    Optional<String> absurdity(Quantity quantity) {
        Dimension dimension = quantity.unit().dimension();
        double value = quantity.si();
        if (dimension == Dimension.TEMPERATURE) {
            return value < COLDEST || value > HOTTEST ? Optional.of("nothing has a temperature of " + quantity)
                    : Optional.empty();
        }
        if (value < 0) {
            return Optional.of("a " + dimension.words() + " is never negative");
        }
        boolean beyond = switch (dimension) {
            case LENGTH -> value > LONGEST_METRES;
            case VOLTAGE -> value > MOST_VOLTS;
            case CURRENT -> value > MOST_AMPERES;
            default -> false;
        };
        return beyond ? Optional.of("no vehicle has a " + dimension.words() + " of " + quantity) : Optional.empty();
    }

    /** Returns the unit that alone is usual for this kind, if there is one. */
    Optional<Unit> usual() {
        return switch (this) {
            case VOLTAGE -> Optional.of(Unit.V);
            case CURRENT -> Optional.of(Unit.A);
            case POWER -> Optional.of(Unit.W);
            case TEMPERATURE -> Optional.of(Unit.C);
            case AREA -> Optional.of(Unit.MM2);
            case FORCE -> Optional.of(Unit.N);
            case SHARE -> Optional.of(Unit.PERCENT);
            default -> Optional.empty();
        };
    }
}
