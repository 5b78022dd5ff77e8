// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Conductor sizes against published wire tables; the sources stand in the data files. */
@Tag("outside")
class ConductorSizeOutsideTest {
    private static final double FOOT = 0.3048;
    private static final double CIRCULAR_MIL = 5.067075e-4;

    @TestFactory
    Stream<DynamicTest> everyAwgSizeHasItsPublishedFigures() throws IOException {
        List<String[]> rows = Table.rows("awg.csv");
        assertEquals(17, rows.size());
        return rows.stream().map(row -> dynamicTest(row[0] + " awg", () -> {
            ConductorSize size = ConductorSize.awg(row[0]);
            near(row[1], size.diameterMm(), 0.0002);
            near(row[2], size.diameterMm() / 25.4, 0.0003);
            near(row[3], size.areaMm2() / CIRCULAR_MIL, 0.0002);
            near(row[4], size.areaMm2() / CIRCULAR_MIL, 0.0005);
            near(row[5], size.areaMm2(), 0.0003);
            near(row[6], size.ohmPerMetre20() * 1e3, 0.0005);
            near(row[7], size.ohmPerMetre20() * 1e3 * FOOT, 0.0015);
        }));
    }

    @TestFactory
    Stream<DynamicTest> everySaeSizeHasItsPublishedFigures() throws IOException {
        List<String[]> rows = Table.rows("sae.csv");
        assertEquals(14, rows.size());
        return rows.stream().map(row -> dynamicTest(row[0] + " ga", () -> {
            ConductorSize size = ConductorSize.sae(row[0]);
            near(row[1], size.areaMm2() / CIRCULAR_MIL, 1e-6);
            near(row[2], size.areaMm2(), 0.0001);
            near(row[3], size.areaMm2() / ConductorSize.awg(row[0]).areaMm2(), 0.001);
            near(row[4], size.ohmPerMetre20() * 1e3, 0.0005);
        }));
    }

    @TestFactory
    Stream<DynamicTest> usualStrandingsReachTheSaeMinimumOfTheirSize() throws IOException {
        return Table.rows("strands.csv").stream().map(row -> dynamicTest(row[0] + " ga", () -> {
            double area = Integer.parseInt(row[1]) * ConductorSize.awg(row[2]).areaMm2();
            near(row[3], area / CIRCULAR_MIL, 0.001);
            assertTrue(area >= ConductorSize.sae(row[0]).areaMm2());
            String nextLarger = Integer.toString(Integer.parseInt(row[0]) - 2);
            assertTrue(area < ConductorSize.sae(nextLarger).areaMm2());
        }));
    }

    @Test
    void workedFigures() throws IOException {
        Map<String, Double> computed = new TreeMap<>();
        ConductorSize awg18 = ConductorSize.awg("18");
        ConductorSize awg10 = ConductorSize.awg("10");
        ConductorSize sae14 = ConductorSize.sae("14");
        computed.put("awg18-diameter-mm", awg18.diameterMm());
        computed.put("awg18-area-mm2", awg18.areaMm2());
        computed.put("awg18-circular-mils", awg18.areaMm2() / CIRCULAR_MIL);
        computed.put("awg4/0-diameter-in", ConductorSize.awg("4/0").diameterMm() / 25.4);
        computed.put("awg36-diameter-in", ConductorSize.awg("36").diameterMm() / 25.4);
        computed.put("awg10-mohm-per-m", awg10.ohmPerMetre20() * 1e3);
        computed.put("awg10-ohm-per-1000-ft", awg10.ohmPerMetre20() * 1e3 * FOOT);
        computed.put("factor-80-by-alpha", awg10.ohmPerMetre(80) / awg10.ohmPerMetre20());
        computed.put("factor-80-by-234.5", awg10.ohmPerMetre(80) / awg10.ohmPerMetre20());
        computed.put("sae14-over-awg14", sae14.areaMm2() / ConductorSize.awg("14").areaMm2());
        computed.put("sae14-area-mm2", sae14.areaMm2());
        computed.put("sae14-mohm-per-m", sae14.ohmPerMetre20() * 1e3);
        List<String[]> rows = Table.rows("worked.csv");
        assertEquals(computed.size(), rows.size());
        for (String[] row : rows) {
            near(row[1], computed.get(row[0]), Double.parseDouble(row[2]));
        }
    }

    /** Plain copper of the printed section: never above the printed maximum of tinned strands, and close below it. */
    @TestFactory
    Stream<DynamicTest> copperOfThePrintedSectionKeepsThePublishedResistance() throws IOException {
        List<String[]> rows = Table.rows("ac43-wire.csv");
        assertEquals(17, rows.size());
        return rows.stream().map(row -> dynamicTest(row[0] + " awg", () -> {
            double share = printedSection(row).ohmPerMetre20() * 1e3 * FOOT / Double.parseDouble(row[1]);
            assertTrue(share > 0.75 && share <= 1, "share of the printed maximum: " + share);
        }));
    }

    /** The chart rests on the table's maximum resistance, so copper of that section drops less, by the same share. */
    @TestFactory
    Stream<DynamicTest> workedVoltageDrops() throws IOException {
        Map<String, String[]> wires = new TreeMap<>();
        Table.rows("ac43-wire.csv").forEach(row -> wires.put(row[0], row));
        return Table.rows("ac43-drop.csv").stream().map(row -> dynamicTest(row[0] + " awg, " + row[1] + " ft", () -> {
            double ohms = printedSection(wires.get(row[0])).ohmPerMetre20() * FOOT * Double.parseDouble(row[1]);
            double share = ohms * Double.parseDouble(row[2]) / Double.parseDouble(row[3]);
            assertTrue(share > 0.84 && share < 0.90, "share of the printed drop: " + share);
        }));
    }

    private static ConductorSize printedSection(String[] row) {
        return ConductorSize.metric(BigDecimal.valueOf(Double.parseDouble(row[2]) * CIRCULAR_MIL)
                .setScale(4, RoundingMode.HALF_EVEN).toPlainString());
    }

    private static void near(String expected, double actual, double share) {
        double figure = Double.parseDouble(expected);
        assertEquals(figure, actual, figure * share);
    }
}
