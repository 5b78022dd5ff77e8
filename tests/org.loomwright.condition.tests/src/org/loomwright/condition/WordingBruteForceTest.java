// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Words against {@link LeastWords}, which tries everything: no wording has fewer terms, or as many and fewer words. */
@Tag("outside")
class WordingBruteForceTest {
    private static final int MOST_VEHICLES = 11;
    private static final int TERM = 10_000;

    private static boolean check(Vehicles vehicles, Enumeration enumeration, Expression expression) {
        List<Map<String, String>> wanted = enumeration.with(expression);
        List<Map<String, String>> unwanted = enumeration.with(new Expression.Not(expression));
        if (wanted.isEmpty() || unwanted.isEmpty() || wanted.size() > MOST_VEHICLES) {
            return false;
        }
        Wording wording = vehicles.resolve(expression).condition().wording();
        assertEquals(Wording.Proof.LEAST, wording.proof());
        int least = new LeastWords(vehicles.choices(), wanted, unwanted).find();
        assertEquals(least, wording.terms() * TERM + words(wording.words()), wording.words());
        assertEquals(wanted, enumeration.with(Reader.expression(wording.words())), wording.words());
        return true;
    }

    /** Returns the number of printed words but {@code and} and {@code or}. */
    private static int words(String text) {
        List<String> words = Arrays.asList(text.split(" "));
        return (int) words.stream().filter(word -> !word.equals("and") && !word.equals("or")).count();
    }

    @Test
    void noWordingOfARandomConditionIsShorter() {
        int checked = 0;
        int severalTerms = 0;
        for (int seed = 0; seed < 700; seed++) {
            RandomPlatform platform = new RandomPlatform(seed, 3, 5);
            Enumeration enumeration = new Enumeration(platform.choices());
            if (enumeration.possible().size() > 120) {
                continue;
            }
            Vehicles vehicles = Vehicles.of(platform.choices());
            for (int i = 0; i < 4; i++) {
                Expression expression = platform.expression(3);
                for (Expression each : List.of(expression, new Expression.Not(expression))) {
                    if (check(vehicles, enumeration, each)) {
                        checked++;
                        severalTerms += vehicles.resolve(each).condition().wording().terms() > 1 ? 1 : 0;
                    }
                }
            }
        }
        assertTrue(checked > 500, "only " + checked);
        assertTrue(severalTerms > 100, "only " + severalTerms);
    }

    /**
     * Ten options, of which constraints leave a dozen vehicles or two: mostly impossible vehicles, so great freedom.
     */
    @Test
    void noWordingAmongTenOptionsIsShorter() {
        int checked = 0;
        for (int seed = 0; seed < 12; seed++) {
            Random random = new Random(seed);
            Choices.Builder builder = Choices.builder();
            for (int option = 0; option < 10; option++) {
                builder.option("o" + option);
            }
            List<Expression> existing = new ArrayList<>();
            for (int i = 8 + random.nextInt(12); i > 0; i--) {
                List<Expression> literals = new ArrayList<>();
                for (int option = 0; option < 10; option++) {
                    Expression name = new Expression.Choice("o" + option);
                    literals.add(random.nextBoolean() ? name : new Expression.Not(name));
                }
                existing.add(new Expression.And(literals));
            }
            Choices choices = builder.never(new Expression.Not(new Expression.Or(existing))).build();
            List<Expression> some = existing.subList(0, existing.size() / 2);
            checked += check(Vehicles.of(choices), new Enumeration(choices), new Expression.Or(some)) ? 1 : 0;
        }
        assertEquals(12, checked);
    }
}
