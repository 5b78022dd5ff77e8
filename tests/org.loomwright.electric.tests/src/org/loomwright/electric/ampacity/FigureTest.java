// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FigureTest {

    private static String exactly(double value, int decimals) {
        return new BigDecimal(value).setScale(9, RoundingMode.HALF_EVEN).setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    @Test
    void theShortWayRoundsAsDecimalArithmeticDoes() {
        Random random = new Random(7);
        for (int i = 0; i < 20_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(9) - 1);
            double rounded = Math.round(value * 1000) / 1000.0;
            for (int decimals = 0; decimals <= 3; decimals++) {
                assertEquals(exactly(value, decimals), Figure.of(value, decimals));
                assertEquals(exactly(rounded, decimals), Figure.of(rounded, decimals));
            }
        }
    }

    @Test
    void productsOfPrintedFiguresAreHalvedUp() {
        assertEquals("17.9", Figure.of(35 * 0.85 * 0.6, 1));
        assertEquals("0.1", Figure.of(0.05, 1));
        assertEquals("-0.1", Figure.of(-0.05, 1));
        assertEquals("0.0", Figure.of(-0.04, 1));
        assertEquals("3", Figure.of(2.5, 0));
        assertEquals("12", Figure.of(12.0));
        assertEquals("1000000.5", Figure.of(1_000_000.5));
        assertEquals("no end", Figure.of(Double.POSITIVE_INFINITY));
    }
}
