// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.electric.solve.Element;
import org.loomwright.harness.Limit;

/** Fusing currents, withstand times and lamps against printed figures. */
class PreeceTest {

    /** Diameters in inches of copper for a fusing current, as handbook tables after W. H. Preece print them. */
    @Tag("outside")
    @ParameterizedTest
    @CsvSource({"10, 0.0098", "30, 0.0205", "60, 0.0325", "100, 0.0457", "200, 0.0725", "300, 0.0950"})
    void theFusingCurrentsOfTheTable(double amps, double inches) {
        assertEquals(amps, Preece.amps(inches * 25.4), amps * 0.01);
    }

    /** A worked example: d = 0.0524 in melts at 123 A; AWG 18 and 16 by the formula. */
    @Tag("outside")
    @Test
    void theWorkedExample() {
        assertEquals(122.9, Preece.amps(0.0524 * 25.4), 0.1);
        assertEquals(82.9, Preece.ofSection(0.8230), 0.1);
        assertEquals(117.3, Preece.ofSection(1.3087), 0.1);
    }

    /** Published times of the adiabatic formula with k = 115: mm², A, s. */
    @Tag("outside")
    @ParameterizedTest
    @CsvSource({"0.5, 100, 0.3306", "1, 100, 1.3225", "1.5, 200, 0.7439", "2.5, 300, 0.9184"})
    void theAdiabaticTimes(double mm2, double amps, double seconds) {
        assertEquals(seconds, Math.pow(Withstand.k(70, 160) * mm2 / amps, 2), seconds * 2e-4);
    }

    /** Cal. Code Regs. title 13 s. 1249(c): 85 % at the socket, 10.88 V of 12.8 V; 0.9145 of the current. */
    @Tag("outside")
    @Test
    void theFloorOfTheLaw() {
        double floor = Limit.LAMP_AT_LEAST.usual().si();
        assertEquals(10.88, floor * 12.8, 1e-9);
        assertEquals(0.9145, new Element.Filament(12.8, 1).current(10.88), 1e-4);
        assertEquals(0.5755, Math.pow(floor, 3.4), 1e-4);
    }

    /** Slower at less current, never faster than nothing, and no end below what opens at all. */
    @Test
    void aFuseOpensTheSoonerTheMoreFlows() {
        double before = Double.POSITIVE_INFINITY;
        for (double multiple = 1; multiple < 10; multiple += 0.05) {
            double seconds = OpeningTimes.slowest(multiple);
            assertTrue(seconds <= before && seconds > 0);
            before = seconds;
        }
        assertTrue(Double.isInfinite(OpeningTimes.slowest(1.3)));
    }
}
