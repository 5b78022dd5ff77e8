// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.loomwright.condition.Reader.expression;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;

class WordingTest {
    private final Vehicles vehicles = Orrin.vehicles();

    private void words(String expected, String text) {
        assertEquals(expected, Orrin.condition(vehicles, text).words());
    }

    @Test
    void everythingAndNothing() {
        words("every vehicle", "fan or not fan");
        words("every vehicle", "not (coupe and year = 1964)");
        words("no vehicle", "fan and not fan");
        words("no vehicle", "ledTail and not electronicFlasher");
        assertEquals("always", vehicles.all().wording().expression().words());
        assertEquals(0, vehicles.none().wording().terms());
    }

    @Test
    void whatFollowsFromConstraintsIsNotSaid() {
        words("ledTail", "ledTail and electronicFlasher");
        words("coupe", "coupe and year >= 1966");
        words("year <= 1965 and saloon", "year < 1966 and (saloon or coupe)");
    }

    @Test
    void membersOfGroups() {
        words("saloon or coupe", "not estate");
        words("rhd", "not lhd");
        words("year 1966 .. 1968 and estate and lhd and not heater and fan",
                "not heater and fan and (year = 1966 or year = 1967 or year = 1968) and estate and not rhd");
        Vehicles many = Vehicles.of(Choices.builder().group("trim", "a", "b", "c", "d").option("fan").build());
        assertEquals("not d and fan", Orrin.condition(many, "(a or b or c) and fan").words());
        assertEquals("(a or b) and fan", Orrin.condition(many, "not (c or d) and fan").words());
    }

    @Test
    void severalTerms() {
        words("year <= 1966 and saloon or fan and halogen", "fan and halogen or saloon and year < 1967");
        words("year != 1967 and saloon", "saloon and (year <= 1966 or year >= 1968)");
        words("not year 1966 .. 1969 and saloon", "saloon and (year <= 1965 or year >= 1970)");
        words("(year = 1964 or year = 1966 or year = 1968) and rhd",
                "rhd and (year = 1964 or year = 1966 or year = 1968)");
    }

    @Test
    void shortestEvenWhereTheObviousIsNot() {
        words("not heater and halogen or heater and not fan or fan and not halogen",
                "fan and not halogen or not fan and halogen or halogen and not heater or not halogen and heater");
    }

    @Test
    void tallies() {
        assertEquals("all 1,056 vehicles", vehicles.all().tally());
        assertEquals("0 of 1,056 vehicles", vehicles.none().tally());
        assertEquals("144 of 1,056 vehicles", Orrin.condition(vehicles, "year = 1966").tally());
        assertEquals("1 vehicle", Tally.vehicles(BigInteger.ONE));
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("hi-IN-u-nu-deva"));
            assertEquals("1,234,567 vehicles", Tally.vehicles(BigInteger.valueOf(1_234_567)));
        } finally {
            Locale.setDefault(before);
        }
    }

    /** Past the exact search: no term can be left out, no axis of a term, and the vehicles are the same. */
    @Test
    void pastTheExactSearchNothingIsNeedless() {
        int checked = 0;
        for (int seed = 0; seed < 40; seed++) {
            Vehicles many = Vehicles.of(Tangle.choices(20));
            Condition condition = Orrin.condition(many, Tangle.text(seed, 20, 14));
            Wording wording = condition.wording();
            if (wording.proof() != Wording.Proof.IRREDUNDANT) {
                continue;
            }
            checked++;
            assertEquals(condition, many.resolve(wording.expression()).condition());
            List<Expression> terms = ((Expression.Or) wording.expression()).operands();
            assertEquals(wording.terms(), terms.size());
            for (int i = 0; i < terms.size(); i++) {
                List<Expression> fewer = new ArrayList<>(terms);
                Expression term = fewer.remove(i);
                Condition less = many.resolve(new Expression.Or(fewer)).condition();
                assertNotEquals(condition, less, "needless " + term.words());
                List<Expression> literals = ((Expression.And) term).operands();
                for (int j = 0; j < literals.size(); j++) {
                    List<Expression> shorter = new ArrayList<>(literals);
                    Expression literal = shorter.remove(j);
                    Condition wider = many.resolve(new Expression.And(shorter)).condition();
                    assertFalse(wider.implies(condition), "needless " + literal.words() + " in " + term.words());
                }
            }
        }
        assertTrue(checked >= 20, "only " + checked);
    }

    /** Too many terms for anybody to read: the first ones, and how many vehicles they leave out. */
    @Test
    void hopelessConditionsAreCutAndSaySo() {
        Vehicles many = Vehicles.of(Tangle.choices(20));
        Condition odd = many.none();
        for (int option = 0; option < 20; option++) {
            Condition next = Orrin.condition(many, "o" + option);
            odd = odd.minus(next).or(next.minus(odd));
        }
        Wording wording = odd.wording();
        assertEquals(Wording.Proof.PARTIAL, wording.proof());
        assertEquals(256, wording.terms());
        Condition told = many.resolve(wording.expression()).condition();
        assertTrue(told.implies(odd));
        assertEquals(odd.count(), told.count().add(wording.left()));
        assertTrue(wording.words().endsWith(" and " + Tally.vehicles(wording.left()) + " more"));
        assertFalse(wording.isWhole());
    }

    @Test
    void equalConditionsHaveEqualWordsHoweverTheyCameAbout() {
        Set<String> words = new HashSet<>();
        for (int run = 0; run < 3; run++) {
            Vehicles again = Orrin.withBreaks();
            if (run > 0) {
                Orrin.condition(again, "rhd or ledTail and not fan").words();
            }
            Condition one = Orrin.condition(again, "fan and (late66 or mid66 or ledTail) or saloon and year > 1968");
            Condition other = again.resolve(expression("year >= 1969 and saloon")).condition()
                    .or(Orrin.condition(again, "(ledTail or year mid66 .. 1966) and fan"));
            assertEquals(one, other);
            words.add(run == 1 ? other.words() : one.words());
        }
        assertEquals(Set.of("(mid66 or late66) and fan or year >= 1969 and saloon or fan and ledTail"), words);
    }
}
