// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.solve.Netlist;
import org.loomwright.electric.solve.NewtonSolver;
import org.loomwright.electric.solve.Outcome;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Metal;

/** FAA AC 43.13-1B CHG 1, chapter 11: its worked drops, lengths and selections, and its second table of currents. */
@Tag("outside")
class AircraftCircularTest {

    private final AircraftTable table = new AircraftTable();

    private double drop(String size, double feet, double amps) {
        double ohms = table.ohmsPerFoot().get(ConductorSize.awg(size)) * feet;
        Outcome.Solution solution = (Outcome.Solution) new NewtonSolver().solve(Netlist.builder().hold(0, 0).hold(1, 28)
                .resistor(1, 2, ohms).add(2, 0, new Element.Draw(amps)).build());
        return 28 - solution.potentials()[2];
    }

    /** Table 11-7, worked checks: size, run in feet, printed drop at 20 A; the third is printed rounded up. */
    @ParameterizedTest
    @CsvSource({"6, 107, 0.942, 0.0005", "4, 90, 0.504, 0.0005", "12, 88, 3.60, 0.05", "14, 100, 6.12, 0.0005"})
    void theWorkedDropsOfTable7(String size, double feet, double printed, double within) {
        assertEquals(printed, drop(size, feet, 20), within);
    }

    /** Table 11-8, No. 10 at 20 A: greatest length for a drop of 1, 4 and 7 V. */
    @ParameterizedTest
    @CsvSource({"39, 0.98", "156, 3.93", "273, 6.88"})
    void theWorkedDropsOfTable8(double feet, double printed) {
        assertEquals(printed, drop("10", feet, 20), 0.005);
    }

    /** Row 2 of Table 11-8 prints .366 V for .00126 x 19.5 x 20; the product is 0.4914: a misprint of the circular. */
    @Test
    void theMisprintOfTable8IsNoOracle() {
        assertEquals(0.4914, drop("10", 19.5, 20), 1e-9);
        assertNotEquals(0.366, drop("10", 19.5, 20), 0.1);
    }

    /** Example 1: 50 ft with the ground, 20 A, 1 V at 28 V: No. 8, since No. 10 loses more. */
    @Test
    void theSelectionOfExample1() {
        Optional<String> least = table.ohmsPerFoot().keySet().stream()
                .sorted(Comparator.comparingDouble(ConductorSize::areaMm2))
                .filter(size -> drop(size.size(), 50, 20) <= 1).map(ConductorSize::size).findFirst();
        assertEquals(Optional.of("8"), least);
    }

    /** 11-66d(4): a hot copper run of L1 feet loses as much as one of L1 (234.5 + T) / 254.5 at 20 C. */
    @ParameterizedTest
    @CsvSource({"80", "105", "182"})
    void theLengthOfAHotWire(double celsius) {
        assertEquals((234.5 + celsius) / 254.5, Metal.COPPER.factor(celsius), 2e-4);
    }

    /** Table 11-9, corners and middle, as printed. */
    @ParameterizedTest
    @CsvSource({"24, 105, 2.5", "18, 105, 6", "14, 150, 14", "10, 200, 32", "8, 105, 38", "4/0, 200, 395"})
    void theTableAsPrinted(String size, double classC, double amps) {
        assertEquals(amps, table.allowed(ConductorSize.awg(size), classC, 70).orElseThrow().amps());
    }

    @Test
    void neverFallsWithSizeNorWithClassNorRisesWithAmbient() {
        for (double classC : new double[] {105, 125, 150, 200}) {
            double before = 0;
            for (ConductorSize size : table.ohmsPerFoot().keySet().stream()
                    .sorted(Comparator.comparingDouble(ConductorSize::areaMm2)).toList()) {
                double amps = table.allowed(size, classC, 70).orElseThrow().amps();
                assertTrue(amps > before, size + " at " + classC);
                assertTrue(table.allowed(size, classC, 90).orElseThrow().amps() < amps);
                assertEquals(amps, table.allowed(size, classC, 30).orElseThrow().amps());
                before = amps;
            }
        }
    }

    @Test
    void saysHowAFigureCameAboutAndNothingBelowItsLowestClass() {
        assertEquals("6 A (18 awg, 105 C) x 0.946 by cross-section x 0.85 (80 C ambient) = 4.8 A in a large bundle;"
                + " FAA AC 43.13-1B Table 11-9",
                table.allowed(ConductorSize.sae("18"), 125, 80).orElseThrow().derivation());
        assertEquals(List.of(), table.allowed(ConductorSize.sae("18"), 85, 80).stream().toList());
        assertEquals(0, table.allowed(ConductorSize.awg("18"), 105, 120).orElseThrow().amps());
    }
}
