// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Platforms of many options, each tied to the next, and conditions of many terms on them. */
final class Tangle {
    private Tangle() {
    }

    static Choices choices(int options) {
        Choices.Builder builder = Choices.builder().years(1964, 1971).group("body", "saloon", "coupe", "estate");
        for (int i = 0; i < options; i++) {
            builder.option("o" + i);
        }
        for (int i = 0; i + 2 < options; i += 3) {
            builder.require(Reader.expression("o" + (i + 1)), Reader.expression("o" + i + " and o" + (i + 2)));
            builder.never(Reader.expression("o" + i + " and coupe and year < 1966"));
        }
        return builder.build();
    }

    /** Returns a condition of some terms, each of a few options and perhaps a year or body. */
    static String text(long seed, int options, int terms) {
        Random random = new Random(seed);
        List<String> written = new ArrayList<>();
        for (int i = 0; i < terms; i++) {
            List<String> literals = new ArrayList<>();
            for (int j = 0; j < 3; j++) {
                literals.add((random.nextBoolean() ? "not " : "") + "o" + random.nextInt(options));
            }
            literals.add(random.nextBoolean() ? "year >= " + (1965 + random.nextInt(6)) : "saloon");
            written.add(String.join(" and ", literals));
        }
        return String.join(" or ", written);
    }
}
