// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.loomwright.condition.Reader.expression;

/** The fictional Orrin 1200, which the tests share. */
final class Orrin {
    private Orrin() {
    }

    static Choices.Builder builder() {
        return Choices.builder()
                .years(1964, 1971)
                .group("body", "saloon", "coupe", "estate")
                .group("steering", "lhd", "rhd")
                .option("heater")
                .upgrade("fan")
                .upgrade("ledTail")
                .upgrade("halogen")
                .upgrade("electronicFlasher")
                .never(expression("coupe and year < 1966"))
                .require(expression("electronicFlasher"), expression("ledTail"));
    }

    static Vehicles vehicles() {
        return Vehicles.of(builder().build());
    }

    /** The same with two breaks in 1966 and one in the last year. */
    static Vehicles withBreaks() {
        return Vehicles.of(builder()
                .yearBreak("mid66", 1966, "from car 12345")
                .yearBreak("late66", 1966, "from car 20000")
                .yearBreak("last", 1971, "from car 90000")
                .build());
    }

    static Condition condition(Vehicles vehicles, String text) {
        Resolution resolution = vehicles.resolve(expression(text));
        if (!resolution.isGood()) {
            throw new IllegalArgumentException(resolution.problems().toString());
        }
        return resolution.condition();
    }
}
