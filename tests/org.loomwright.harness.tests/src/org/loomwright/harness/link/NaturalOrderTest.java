// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NaturalOrderTest {

    private final NaturalOrder order = new NaturalOrder();

    @Test
    void numbersInNamesCountByValue() {
        List<String> sorted = List.of("J10", "J2", "J1", "12b", "12a", "9", "110").stream().sorted(order).toList();
        assertEquals(List.of("9", "12a", "12b", "110", "J1", "J2", "J10"), sorted);
    }

    @Test
    void namesOfDifferentTextNeverCompareEqual() {
        assertTrue(order.compare("J01", "J1") != 0);
        assertTrue(order.compare("J1", "J01") != 0);
    }

    @Test
    void itIsAnOrder() {
        Random random = new Random(20_260);
        String letters = "0129aJ";
        for (int i = 0; i < 20_000; i++) {
            String a = word(random, letters);
            String b = word(random, letters);
            String c = word(random, letters);
            assertEquals(Integer.signum(order.compare(a, b)), -Integer.signum(order.compare(b, a)), a + " " + b);
            assertEquals(a.equals(b), order.compare(a, b) == 0, a + " " + b);
            if (order.compare(a, b) <= 0 && order.compare(b, c) <= 0) {
                assertTrue(order.compare(a, c) <= 0, a + " " + b + " " + c);
            }
        }
    }

    private static String word(Random random, String letters) {
        StringBuilder word = new StringBuilder();
        for (int i = random.nextInt(5); i > 0; i--) {
            word.append(letters.charAt(random.nextInt(letters.length())));
        }
        return word.toString();
    }
}
