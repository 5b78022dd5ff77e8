// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;

class AmpacityTest {

    private final Ampacity ampacity = Ampacity.cfr();

    private static ConductorSize size(String text) {
        int space = text.indexOf(' ');
        return new ConductorSize(SizeSystem.ofSymbol(text.substring(space + 1)).orElseThrow(),
                text.substring(0, space));
    }

    private Allowance allowed(String size, double classC, double ambientC, int wires) {
        return ampacity.allowed(size(size), classC, ambientC, wires).orElseThrow();
    }

    private static List<String[]> rows(String resource) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                AmpacityTest.class.getResourceAsStream(resource), StandardCharsets.UTF_8))) {
            return reader.lines().filter(line -> !line.startsWith("#")).map(line -> line.split(",")).toList();
        }
    }

    /** 33 CFR 183.425 Table 5: all 105 cells. */
    @Tag("outside")
    @TestFactory
    Stream<DynamicTest> everyCellOfTheTable() throws IOException {
        List<String[]> rows = rows("cfr-183-425-table-5.csv");
        List<DynamicTest> tests = new ArrayList<>();
        for (String[] row : rows.subList(1, rows.size())) {
            for (int i = 1; i < row.length; i++) {
                double rating = Double.parseDouble(rows.getFirst()[i]);
                double amps = Double.parseDouble(row[i]);
                tests.add(DynamicTest.dynamicTest(row[0] + " awg at " + rating + " C",
                        () -> assertEquals(amps, allowed(row[0] + " awg", rating, 30, 1).amps())));
            }
        }
        assertEquals(105, tests.size());
        return tests.stream();
    }

    /** A cable maker's derating grid for 105 C cable: 56 cells, each outside and inside engine spaces. */
    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "derating-grid-105-c.csv")
    void theDeratingGrid(String awg, String wires, double outside, double inside) {
        for (String count : wires.split("-")) {
            assertEquals(outside, allowed(awg + " awg", 105, 30, Integer.parseInt(count)).amps(), 0.051);
            assertEquals(inside, allowed(awg + " awg", 105, 50, Integer.parseInt(count)).amps(), 0.051);
        }
    }

    /** Figures of the law and of a cable maker's grid. */
    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "anchor-figures.csv")
    void anchorFigures(String size, double classC, double ambientC, int wires, double amps, double tolerance) {
        assertEquals(amps, allowed(size, classC, ambientC, wires).amps(), Math.max(tolerance, 1e-9));
    }

    /** The law's factors, the formula behind them, and those of another code, at 50 C. */
    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "ambient-factors.csv")
    void ambientFactors(int rating, double formula, double law, double canadian) {
        assertEquals(formula, Ampacity.formula(rating, 50), 0.0005);
        assertEquals(law, ampacity.ambient(rating, 50).value(), 1e-9);
        assertEquals(formula, ampacity.ambient(rating, 50).value(), 0.01);
        assertEquals(canadian, ampacity.ambient(rating, 50).value(), 0.01);
    }

    /** 33 CFR 183.425 Table 5 rises with size and with temperature rating, as every such table must. */
    @Tag("outside")
    @Test
    void theTableRisesWithSizeAndRating() {
        List<ConductorSize> sizes = ConductorSize.awgRows();
        List<Integer> ratings = List.copyOf(ampacity.table().ratings());
        for (int i = 0; i < sizes.size(); i++) {
            for (int j = 0; j < ratings.size(); j++) {
                double here = ampacity.table().amps(sizes.get(i), ratings.get(j)).orElseThrow();
                assertTrue(i == 0 || ampacity.table().amps(sizes.get(i - 1), ratings.get(j)).orElseThrow() < here);
                assertTrue(j == 0 || ampacity.table().amps(sizes.get(i), ratings.get(j - 1)).orElseThrow() <= here);
            }
        }
    }

    @Test
    void neverRisesWithAmbientOrBundleNorAboveTheNextLargerRow() {
        List<String> sizes = List.of("0.35 mm2", "20 awg", "0.75 mm2", "18 ga", "18 awg", "16 ga", "16 awg", "1.5 mm2",
                "14 ga", "14 awg", "2.5 mm2", "6 mm2", "8 awg", "50 mm2", "4/0 awg");
        for (double classC : new double[] {60, 75, 80, 85, 90, 100, 105, 125, 150, 200}) {
            for (int wires : new int[] {1, 2, 3, 4, 6, 7, 24, 25, 60}) {
                for (ConductorSize size : sizes.stream().map(AmpacityTest::size).sorted().toList()) {
                    double last = Double.MAX_VALUE;
                    for (double ambient = -40; ambient <= 210; ambient += ambient < 48 || ambient >= 52 ? 4 : 0.125) {
                        double amps = ampacity.allowed(size, classC, ambient, wires).orElseThrow().amps();
                        assertTrue(amps <= last, size + " at " + ambient);
                        last = amps;
                    }
                    ConductorSize row = size.nextLargerAwg().orElseThrow();
                    assertTrue(ampacity.allowed(size, classC, 40, wires).orElseThrow().amps()
                            <= ampacity.allowed(row, classC, 40, wires).orElseThrow().amps(), size + " against " + row);
                }
            }
        }
        for (int wires = 1; wires < 40; wires++) {
            assertTrue(ampacity.bundle(wires + 1).value() <= ampacity.bundle(wires).value());
        }
    }

    @Test
    void theDerivationNamesEveryFactorAndItsSource() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals("25 A (18 AWG, 125 C) x 0.69 (80 C ambient, formula) x 0.60 (4-6 wires) = 10.3 A;"
                    + " 33 CFR 183.425 Table 5", allowed("18 awg", 125, 80, 5).derivation());
        } finally {
            Locale.setDefault(before);
        }
        assertEquals("18.9 A (18 ga: 20 A for 18 AWG, 105 C, x 0.946 by cross-section) x 0.85 (45 C ambient, factor"
                + " for 50 C) x 0.70 (3 wires) = 11.3 A; 33 CFR 183.425 Table 5",
                allowed("18 ga", 105, 45, 3).derivation());
    }

    @Test
    void sizesWithoutARowScaleFromTheNextLargerOne() {
        assertEquals(35 * 3702 / 4106.7, allowed("14 ga", 105, 30, 1).amps(), 0.01);
        assertEquals(35 * 2.0 / 2.0809, allowed("2 mm2", 105, 30, 1).amps(), 0.01);
        assertFalse(allowed("18 ga", 105, 30, 1).extrapolated());
    }

    @Test
    void belowTheTableIsExtrapolatedAndSaysSo() {
        Allowance small = allowed("20 awg", 105, 30, 1);
        assertTrue(small.extrapolated());
        assertTrue(small.derivation().contains("below the table, extrapolated"), small.derivation());
        assertEquals(20 * 0.5176 / 0.8230, small.amps(), 0.01);
    }

    @Test
    void aboveTheTableAndBelowItsClassesThereIsNoFigure() {
        assertTrue(ampacity.allowed(size("120 mm2"), 105, 30, 1).isEmpty());
        assertTrue(ampacity.allowed(size("18 awg"), 55, 30, 1).isEmpty());
    }

    @Test
    void aClassBetweenTwoColumnsCountsAsTheLowerOne() {
        assertEquals(80, allowed("18 awg", 85, 30, 1).rating());
        assertEquals(125, allowed("18 awg", 150, 30, 1).rating());
    }

    @Test
    void nothingIsAllowedAtTheRating() {
        assertEquals(0, allowed("18 awg", 105, 105, 1).amps());
        assertEquals(Double.POSITIVE_INFINITY, allowed("18 awg", 105, 105, 1).temperature(1));
    }

    @Test
    void temperatureRisesWithTheSquareOfTheCurrent() {
        Allowance allowance = allowed("14 awg", 105, 30, 1);
        assertEquals(30, allowance.temperature(0));
        assertEquals(105, allowance.temperature(35), 1e-9);
        assertEquals(30 + 75 * 0.25, allowance.temperature(17.5), 1e-9);
    }

    @Test
    void figuresFromMemoryAreMarkedAndBounded() {
        Allowance many = allowed("14 awg", 105, 30, 25);
        assertTrue(many.derivation().contains("0.40 (25 or more wires, from memory)"), many.derivation());
        assertEquals(35 * 0.50, many.sureAmps(), 1e-9);
        assertEquals(35 * 0.40, many.amps(), 1e-9);
    }
}
