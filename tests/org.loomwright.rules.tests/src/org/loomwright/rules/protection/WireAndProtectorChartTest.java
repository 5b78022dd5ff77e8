// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

/**
 * Fuses and breakers against the chart that the FAA prints for aircraft: what it allows for a size of wire passes, twice
 * as much does not.
 */
class WireAndProtectorChartTest {

    private static List<Finding> behind(Part.Kind kind, double amps, String awg) {
        return new Bench().ground("body", false).zone("bay", "57 C").place("box", "bay").place("nose", "bay")
                .part(Part.Kind.SOURCE, "battery24", part -> part.pins("pos", "neg").word(WordKind.TYPE, "battery")
                        .word(WordKind.POLARITY, "pos"))
                .part(Part.Kind.CABLE, "wire105", part -> part.figure(FigureKind.TEMPERATURE, "105 C", ""))
                .part(Part.Kind.LAMP, "lamp", "1")
                .part(kind, "protector", part -> part.pins("1", "2").figure(FigureKind.RATING, amps + " A", "")
                        .word(WordKind.BASIS, "continuous"))
                .device("battery", "battery24", "box", "body", "").device("lampL", "lamp", "nose", "body", "")
                .harness("front", wiring -> wiring.datum("box").branch("b", "box", "nose", "600 mm")
                        .device("F1", "protector", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "4/0 awg", "battery:pos", "F1:1", ""))
                        .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.size(awg + " awg", "")
                                .from("F1:2", "").to("lampL:1", "").cable("wire105"))))
                .check("fuse-exceeds-wire");
    }

    private static void held(Part.Kind kind, double amps, String awg) {
        assertEquals(List.of(), behind(kind, amps, awg).stream().filter(each -> each.severity() != Severity.NOTE)
                .map(Finding::sentence).toList());
        assertTrue(behind(kind, 2 * amps, awg).stream().anyMatch(each -> each.element().equals("front:12a")
                && each.severity().atLeast(Severity.WARNING)), awg + " awg behind " + 2 * amps + " A");
    }

    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "wire-and-protector-chart.csv")
    void whatTheChartAllowsPassesAndTwiceAsMuchDoesNot(String awg, double breaker, double fuse) {
        held(Part.Kind.FUSE, fuse, awg);
        if (breaker > 0) {
            held(Part.Kind.BREAKER, breaker, awg);
        }
    }
}
