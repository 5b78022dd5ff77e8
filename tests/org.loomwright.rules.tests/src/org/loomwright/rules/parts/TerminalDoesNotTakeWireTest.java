// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

class TerminalDoesNotTakeWireTest {

    private static final String RULE = "terminal-does-not-take-wire";

    private static WrittenBench bench() {
        return new WrittenBench().upgrade("fan").upgrade("halogen")
                .part(Part.Kind.TERMINAL, "tab63", "takes 0.75 mm2 .. 2.5 mm2")
                .part(Part.Kind.TERMINAL, "plain").part(Part.Kind.SEAL, "grey", "fits 2 mm .. 3 mm")
                .part(Part.Kind.CABLE, "pvc", "size 16 ga 2.9 mm", "size 14 ga 3.2 mm", "size 2.5 mm2 3 mm",
                        "size 0.5 mm2 1.6 mm")
                .part(Part.Kind.HOUSING, "way4", "pins 1 2 3 4").part(Part.Kind.HOUSING, "way1", "pins 1");
    }

    private static List<String> oneWire(String size) {
        return bench().harness("front", wires -> wires.connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut.wire("a", "size " + size, "from J1:1", "to J1:2"))).check(RULE);
    }

    @ParameterizedTest
    @CsvSource({"0.75 mm2", "2.5 mm2", "18 ga", "14 ga", "14 awg", "18 awg", "1 mm2"})
    void aWireInTheRangeIsTaken(String size) {
        assertEquals(List.of(), oneWire(size));
    }

    @ParameterizedTest
    @CsvSource({"0.5 mm2,0.50", "20 ga,0.51", "3 mm2,3.00", "12 ga,2.96", "10 awg,5.26"})
    void aWireOutsideOfTheRangeIsNot(String size, String section) {
        assertEquals(List.of("error front:J1: terminal tab63 of J1:1 takes 0.75 mm2 .. 2.5 mm2, and its wire has "
                + section + " mm2 when every vehicle"), oneWire(size));
    }

    /** A terminal that is made for the nominal section printed for an SAE size takes a wire of that size. */
    @ParameterizedTest
    @CsvFileSource(resources = "sae-nominal-sections.csv")
    void aTerminalForTheNominalSectionTakesTheSize(String gauge, String nominal, boolean taken) {
        List<String> found = new WrittenBench().part(Part.Kind.HOUSING, "way2", "pins 1 2")
                .part(Part.Kind.TERMINAL, "made", "takes " + nominal + " mm2 .. " + nominal + " mm2")
                .harness("front", wires -> wires.connector("J1", "is way2", "terminal 1 is made")
                        .circuit("12", "", cut -> cut.wire("a", "size " + gauge + " ga", "from J1:1", "to J1:2")))
                .check(RULE);
        assertEquals(taken, found.isEmpty(), found::toString);
    }

    @Test
    void wiresOfOneCavityAreSummedWhereTheyMeet() {
        WrittenBench bench = bench().harness("front", wires -> wires.connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut
                        .wire("a", "size 16 ga when not halogen", "size 14 ga when halogen", "from J1:1", "to J1:2")
                        .wire("b", "size 14 ga", "from J1:1", "to J1:3", "when fan")));
        // 14 ga + 14 ga = 3.75 mm2 is more; 16 ga + 14 ga = 3.06 mm2, counted 10 % lower 2.75 mm2, is more, too.
        assertEquals(List.of("error front:J1: terminal tab63 of J1:1 takes 0.75 mm2 .. 2.5 mm2, and its wires together"
                + " have 3.75 mm2 when fan"), bench.check(RULE));
        assertTrue(bench.findings(RULE).getFirst().derivation().getFirst()
                .equals("14 ga (1.88 mm2) + 14 ga (1.88 mm2) = 3.75 mm2"));
    }

    @Test
    void wiresThatNeverMeetAreNotSummed() {
        assertEquals(List.of(), bench().harness("front", wires -> wires
                .connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut.wire("a", "size 2.5 mm2", "from J1:1", "to J1:2", "when fan")
                        .wire("b", "size 2.5 mm2", "from J1:1", "to J1:3", "when not fan"))).check(RULE));
    }

    @Test
    void metricSectionsCountAsTheyAreWritten() {
        assertEquals(List.of("error front:J1: terminal tab63 of J1:1 takes 0.75 mm2 .. 2.5 mm2, and its wires together"
                + " have 2.60 mm2 when every vehicle"), bench().harness("front", wires -> wires
                .connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut.wire("a", "size 1.6 mm2", "from J1:1", "to J1:2")
                        .wire("b", "size 1 mm2", "from J1:1", "to J1:3"))).check(RULE));
    }

    @Test
    void eachTerminalIsAskedInItsVehicles() {
        assertEquals(List.of("error front:J1: terminal tab63 of J1:1 takes 0.75 mm2 .. 2.5 mm2, and its wire has 4.00"
                + " mm2 when fan"), bench().harness("front", wires -> wires
                .connector("J1", "is way4", "terminal 1 is tab63 when fan", "terminal 1 is plain when not fan")
                .circuit("12", "", cut -> cut.wire("a", "size 4 mm2", "from J1:1", "to J1:2"))).check(RULE));
    }

    @Test
    void aWireOfUnknownSizeCountsForTheUpperEndOnly() {
        assertEquals(List.of(), bench().harness("front", wires -> wires
                .connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut.wire("a", "from J1:1", "to J1:2")
                        .wire("b", "size 0.5 mm2", "from J1:1", "to J1:3"))).check(RULE));
    }

    @Test
    void aHousingOfOneCavityNeedsNoNumber() {
        assertEquals(1, bench().harness("front", wires -> wires.connector("N1", "is way1", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut.wire("a", "size 4 mm2", "from N1", "to N1:1"))).check(RULE).size());
    }

    @Test
    void onADrawingItIsInherited() {
        WrittenBench bench = bench().drawing("front64", "", wires -> wires
                .connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> cut.wire("a", "size 4 mm2", "from J1:1", "to J1:2")));
        assertTrue(bench.findings(RULE).getFirst().inherited());
    }

    private static List<String> sealed(String cable, String size) {
        return bench().harness("front", wires -> wires.connector("J1", "is way4", "seal 1 is grey")
                .circuit("12", "", cut -> cut.wire("a", "size " + size, cable, "from J1:1", "to J1:2"))).check(RULE);
    }

    @Test
    void aSealFitsTheInsulationOrNot() {
        assertEquals(List.of(), sealed("cable pvc", "16 ga"));
        assertEquals(List.of(), sealed("cable pvc", "2.5 mm2"));
        assertEquals(List.of("error front:J1: seal grey of J1:1 fits 2 mm .. 3 mm, and wire 12a of 14 ga has 3.20 mm"
                + " when every vehicle"), sealed("cable pvc", "14 ga"));
        assertEquals(List.of("error front:J1: seal grey of J1:1 fits 2 mm .. 3 mm, and wire 12a of 0.5 mm2 has 1.60 mm"
                + " when every vehicle"), sealed("cable pvc", "0.5 mm2"));
    }

    @Test
    void anEstimatedDiameterIsNoEvidence() {
        List<String> found = sealed("cable pvc", "10 ga");
        assertEquals(1, found.size());
        assertTrue(found.getFirst().startsWith("note front:J1: not judged: "), found.getFirst());
    }

    @Test
    void aSealHasOneBore() {
        assertEquals(List.of("warning front:J1: seal grey of J1:1 stands round several wires when fan"),
                bench().harness("front", wires -> wires.cable("pvc").connector("J1", "is way4", "seal 1 is grey")
                        .circuit("12", "", cut -> cut.wire("a", "size 16 ga", "from J1:1", "to J1:2")
                                .wire("b", "size 16 ga", "from J1:1", "to J1:3", "when fan"))).check(RULE));
    }

    @Test
    void manyWiresOfFewSizesTakeFewSteps() {
        WrittenBench bench = bench();
        for (int i = 0; i < 24; i++) {
            bench.upgrade("u" + i);
        }
        bench.harness("front", wires -> wires.connector("J1", "is way4", "terminal 1 is tab63")
                .circuit("12", "", cut -> {
                    for (int i = 0; i < 24; i++) {
                        cut.wire("w" + i, "size 1 mm2", "from J1:1", "to J1:2", "when u" + i);
                    }
                }));
        assertEquals(1, bench.findings(RULE).size());
        assertTrue(bench.check(RULE).getFirst().contains("have 24.00 mm2"));
    }
}
