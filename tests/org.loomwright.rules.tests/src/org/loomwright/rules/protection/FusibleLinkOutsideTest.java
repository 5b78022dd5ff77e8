// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;

/**
 * The ratio between a fusible link and the wire that it spares, against the definition of the American Wire Gauge in
 * ASTM B258: 0.4600 in for 4/0 and 0.0050 in for 36, and between them 39 equal ratios. Four sizes are therefore
 * 92^(8/39) = 2.5283 in section; of the figures that the standard rounds to whole circular mils (from memory), 4,107 of 14
 * and 1,624 of 18 are 2.529. Nominal metric sections are those of IEC 60228.
 */
@Tag("outside")
class FusibleLinkOutsideTest {

    private static final double THICKEST_IN = 0.4600;
    private static final double THINNEST_IN = 0.0050;
    private static final double RATIO = Math.pow(92, 8.0 / 39);
    private static final double MM2 = 25.4 * 25.4 * Math.PI / 4;

    /** Section of a gauge number by the definition. */
    private static double section(int gauge) {
        double inches = THINNEST_IN * Math.pow(THICKEST_IN / THINNEST_IN, (36.0 - gauge) / 39);
        return inches * inches * MM2;
    }

    private static List<String> behind(String link, String wire) {
        return new Bench().ground("body", false).place("box", "").place("nose", "")
                .part(Part.Kind.SOURCE, "battery12", "pos", "neg").part(Part.Kind.LAMP, "lamp", "1")
                .part(Part.Kind.HOUSING, "way1", "1").part(Part.Kind.FUSIBLE_LINK, "fl")
                .device("battery", "battery12", "box", "body", "").device("lampL", "lamp", "nose", "body", "")
                .harness("front", wiring -> wiring.connector("J1", "way1", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "", each -> each.size(link, "").cable("fl")
                                .from("battery:pos", "").to("J1:1", "")))
                        .circuit("2", "", circuit -> circuit.wire("a", wire, "J1:1", "lampL:1", "")))
                .check("link-does-not-protect").stream().map(Finding::element).toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {20, 18, 16, 14, 12, 10, 8})
    void fourGaugeNumbersAreTheRatioOfTheStandardAndAreSpared(int link) {
        int spared = link - 4;
        assertEquals(RATIO, section(spared) / section(link), 1e-9);
        double ours = ConductorSize.awg(Integer.toString(spared)).areaMm2()
                / ConductorSize.awg(Integer.toString(link)).areaMm2();
        assertEquals(section(spared) / section(link), ours, 0.002 * ours);
        assertEquals(List.of(), behind(link + " awg", spared + " awg"));
        assertEquals(List.of("front:2a"), behind(link + " awg", link - 2 + " awg"));
        assertEquals(List.of("front:2a"), behind(link + " awg", link + " awg"));
    }

    /** The smallest metric section with the ratio, and the one below it. */
    @ParameterizedTest
    @CsvSource({"20, 1.5, 1", "18, 2.5, 1.5", "16, 4, 2.5", "14, 6, 4", "12, 10, 6", "10, 16, 10", "8, 25, 16"})
    void aMetricWireNeedsTheSameRatio(int link, String spared, String small) {
        assertTrue(Double.parseDouble(spared) / section(link) >= RATIO, spared + " mm2");
        assertTrue(Double.parseDouble(small) / section(link) < RATIO, small + " mm2");
        assertEquals(List.of(), behind(link + " awg", spared + " mm2"));
        assertEquals(List.of("front:2a"), behind(link + " awg", small + " mm2"));
    }

    /** The rule's own words state the ratio of the standard. */
    @Test
    void theRuleStatesTheRatio() {
        assertTrue(new LinkDoesNotProtect().info().basis().contains("four steps of ASTM B258 are 2.53"));
        assertEquals(2.53, RATIO, 0.005);
        assertEquals(2.529, 4_107.0 / 1_624, 0.0005);
        assertEquals(2.529, RATIO, 0.001);
    }
}
