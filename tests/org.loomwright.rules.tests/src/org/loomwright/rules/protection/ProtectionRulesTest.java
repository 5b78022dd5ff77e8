// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

class ProtectionRulesTest {

    private static Bench bench() {
        return new Bench().upgrade("fan", "halogen").ground("body", false)
                .zone("engineBay", "80 C").zone("cabin", "30 C").place("box", "cabin").place("nose", "engineBay")
                .part(Part.Kind.SOURCE, "battery12", part -> part.pins("pos", "neg").word(WordKind.TYPE, "battery")
                        .word(WordKind.POLARITY, "pos"))
                .part(Part.Kind.CABLE, "xlpe", part -> part.figure(FigureKind.TEMPERATURE, "125 C", ""))
                .part(Part.Kind.LAMP, "lamp45", "1")
                .part(Part.Kind.LAMP, "lamp2", "1", "2")
                .part(Part.Kind.SWITCH, "pull", "1", "2")
                .part(Part.Kind.HOUSING, "way4", "1", "2", "3", "4")
                .device("battery", "battery12", "box", "body", "").device("lampL", "lamp45", "nose", "body", "");
    }

    private static Bench fused(String rating, String basis) {
        return bench().part(Part.Kind.FUSE, "f", part -> {
            part.pins("1", "2").figure(FigureKind.RATING, rating, "");
            if (!basis.isEmpty()) {
                part.word(WordKind.BASIS, basis);
            }
        });
    }

    private static Bench oneWire(String rating, String basis, String size, String cable) {
        return fused(rating, basis).harness("front", wiring -> wiring.datum("box").branch("b", "box", "nose", "600 mm")
                .device("F1", "f", "box", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "6 ga", "battery:pos", "F1:1", ""))
                .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.size(size, "").from("F1:2", "")
                        .to("lampL:1", "").cable(cable))));
    }

    private static List<String> weighed(List<Finding> findings) {
        return findings.stream().map(each -> each.severity() + " " + each.element()).toList();
    }

    /** 18 AWG of 125 C at 80 C in the open bears 25 x sqrt(45/95) = 17.2 A, and 17.2 / 1.1 = 15.6 A of rating. */
    @Test
    void aFuseAboveWhatTheWireBears() {
        assertEquals(List.of(), oneWire("15 A", "continuous", "18 awg", "xlpe").check("fuse-exceeds-wire"));
        assertEquals(List.of("WARNING front:12a"),
                weighed(oneWire("16 A", "continuous", "18 awg", "xlpe").check("fuse-exceeds-wire")));
        Bench bench = oneWire("20 A", "continuous", "18 awg", "xlpe");
        List<Finding> findings = bench.check("fuse-exceeds-wire");
        assertEquals(List.of("ERROR front:12a"), weighed(findings));
        assertEquals("25 A (18 AWG, 125 C) x 0.69 (80 C ambient, formula) x 1.00 (1 wire) = 17.2 A;"
                + " 33 CFR 183.425 Table 5", findings.getFirst().derivation().getFirst());
        assertEquals(bench.at("front:12a size 18 awg"), findings.getFirst().place().span());
        assertTrue(findings.getFirst().advice()
                .startsWith("fit a fuse of at most 15.6 A, or a wire of at least 14 awg"),
                findings.getFirst().advice());
    }

    @Test
    void aBlowRatingCountsHalf() {
        assertEquals(List.of(), oneWire("30 A", "blow", "18 awg", "xlpe").check("fuse-exceeds-wire"));
        List<Finding> findings = oneWire("40 A", "blow", "18 awg", "xlpe").check("fuse-exceeds-wire");
        assertEquals(List.of("ERROR front:12a"), weighed(findings));
        assertTrue(findings.getFirst().advice().startsWith("fit a fuse of at most 31.2 A"),
                findings.getFirst().advice());
    }

    @Test
    void aFuseWithoutFamilyAndBasisIsNotJudged() {
        List<Finding> findings = oneWire("20 A", "", "18 awg", "xlpe").check("fuse-exceeds-wire");
        assertEquals(List.of("NOTE front:F1"), weighed(findings));
        assertTrue(findings.getFirst().sentence().contains("neither family nor basis"));
    }

    @Test
    void whatIsNotKnownIsTakenAtItsBestOrNotJudged() {
        List<Finding> mild = oneWire("15 A", "continuous", "18 awg", "").check("fuse-exceeds-wire");
        assertEquals(List.of("NOTE front:F1"), weighed(mild));
        assertTrue(mild.getFirst().sentence().endsWith("not known: temperature class of the cable"),
                mild.getFirst().sentence());
        List<Finding> gross = oneWire("40 A", "continuous", "18 awg", "").check("fuse-exceeds-wire");
        assertEquals(List.of("ERROR front:12a"), weighed(gross));
        assertTrue(gross.getFirst().derivation().contains(
                "temperature class of the cable is not known and is taken at its best"));
    }

    /** In a bundle of three the same wire bears 17.2 x 0.7 = 12.0 A; the third wire is there only with the fan. */
    @Test
    void theBundleCountsWhereItsWiresAre() {
        Bench bench = fused("15 A", "continuous").harness("front", wiring -> wiring.cable("xlpe").datum("box")
                .branch("b", "box", "nose", "600 mm").device("F1", "f", "box", "", "")
                .connector("N1", "way4", "nose", "", "").connector("B1", "way4", "box", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 awg", "F1:2", "lampL:1", ""))
                .circuit("13", "", circuit -> circuit.wire("a", "18 awg", "B1:1", "N1:1", "halogen")
                        .wire("b", "18 awg", "B1:2", "N1:2", "fan").wire("c", "18 awg", "B1:3", "N1:3", "fan")));
        List<Finding> findings = bench.check("fuse-exceeds-wire");
        assertEquals(List.of("ERROR front:12a"), weighed(findings));
        assertEquals("fan", findings.getFirst().affected().orElseThrow().words());
        assertTrue(findings.getFirst().derivation().getFirst().contains("x 0.60 (4-6 wires)"),
                findings.getFirst().derivation().toString());
        assertTrue(findings.getFirst().derivation().contains("up to 4 wires lie together in box - b; each of them"
                + " counts, since currents are not computed"), findings.getFirst().derivation().toString());
    }

    private static List<Finding> hot(String shortTime) {
        return fused("22 A", "continuous").part(Part.Kind.CABLE, "glass", part -> {
            part.figure(FigureKind.TEMPERATURE, "200 C", "");
            if (!shortTime.isEmpty()) {
                part.figure(FigureKind.SHORT_TIME, shortTime, "");
            }
        }).harness("front", wiring -> wiring.cable("glass").datum("box").branch("b", "box", "nose", "1 m")
                .device("F1", "f", "box", "", "").connector("C1", "way4", "box", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 awg", "F1:2", "C1:1", "")))
                .check("fuse-exceeds-wire");
    }

    /**
     * 18 AWG of 200 C at 30 C bears 25 A, more than 1.1 x 22 A; 1.35 x 22 A heats it to 30 + 170 (29.7 / 25)² = 270 C.
     * Only a limit that the cable states makes that a verdict, since class + 50 C is from memory.
     */
    @Test
    void theShortTimeLimitIsAVerdictOnlyWhereTheCableStatesIt() {
        assertEquals(List.of("NOTE front:12a"), weighed(hot("")));
        assertTrue(hot("").getFirst().sentence().startsWith("not judged"));
        assertTrue(hot("").getFirst().derivation().getLast().contains("to 270 C, above its short-time limit of 250 C"),
                hot("").getFirst().derivation().toString());
        assertEquals(List.of("WARNING front:12a"), weighed(hot("260 C")));
        assertEquals(List.of(), weighed(hot("280 C")));
    }

    /** 14 AWG of 125 C in a bundle of 25: 40 x 0.40 = 16.0 A from memory, 40 x 0.50 = 20.0 A at least. */
    @Test
    void aFactorFromMemoryIsNeverTheOnlyReason() {
        Bench bench = fused("15 A", "continuous").harness("front", wiring -> wiring.cable("xlpe").datum("box")
                .branch("b", "box", "cool", "1 m").device("F1", "f", "box", "", "")
                .connector("C1", "way4", "cool", "", "").connector("B1", "way4", "box", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "14 awg", "F1:2", "C1:1", ""))
                .circuit("13", "", circuit -> {
                    for (int i = 0; i < 24; i++) {
                        circuit.wire("n" + i, "18 awg", "B1:1", "C1:2", "");
                    }
                })).place("cool", "cabin");
        List<Finding> findings = bench.check("fuse-exceeds-wire");
        assertEquals(List.of("NOTE front:12a"), weighed(findings));
        assertTrue(findings.getFirst().derivation().getFirst()
                .contains("0.40 (25 or more wires, from memory) = 16.0 A"),
                findings.getFirst().derivation().toString());
    }

    @Test
    void whereTheAmbientReachesTheClassNoFuseHelps() {
        Bench bench = oneWire("5 A", "continuous", "18 awg", "pvc")
                .part(Part.Kind.CABLE, "pvc", part -> part.figure(FigureKind.TEMPERATURE, "80 C", ""));
        List<Finding> findings = bench.check("fuse-exceeds-wire");
        assertEquals(List.of("ERROR front:12a"), weighed(findings));
        assertTrue(findings.getFirst().advice().startsWith("no fuse spares this wire where it is"));
        assertTrue(findings.getFirst().derivation().getFirst()
                .contains("0.00 (80 C ambient, at or above the 80 C of the insulation)"));
    }

    @Test
    void theSearchEndsAtTheNextFuse() {
        Bench bench = fused("20 A", "continuous").part(Part.Kind.FUSE, "small", part -> part.pins("1", "2")
                        .figure(FigureKind.RATING, "5 A", "").word(WordKind.BASIS, "continuous"))
                .harness("front", wiring -> wiring.cable("xlpe").datum("box").branch("b", "box", "nose", "600 mm")
                        .device("F1", "f", "box", "", "").device("F2", "small", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "6 ga", "battery:pos", "F1:1", "")
                                .wire("b", "10 awg", "F1:2", "F2:1", ""))
                        .circuit("12", "", circuit -> circuit.wire("a", "18 awg", "F2:2", "lampL:1", "")));
        assertEquals(List.of(), bench.check("fuse-exceeds-wire"));
    }

    @Test
    void aFusibleLinkDoesNotEndTheSearch() {
        Bench bench = fused("40 A", "continuous").part(Part.Kind.FUSIBLE_LINK, "fl", "1", "2")
                .harness("front", wiring -> wiring.cable("xlpe").datum("box").branch("b", "box", "nose", "600 mm")
                        .device("F1", "f", "box", "", "").device("L1", "fl", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "6 ga", "battery:pos", "F1:1", "")
                                .wire("b", "6 awg", "F1:2", "L1:1", ""))
                        .circuit("12", "", circuit -> circuit.wire("a", "18 awg", "L1:2", "lampL:1", "")));
        assertEquals(List.of("ERROR front:12a"), weighed(bench.check("fuse-exceeds-wire")));
    }

    @Test
    void whatTheFactoryDidIsInherited() {
        Bench bench = fused("20 A", "continuous").drawing("front64", "front", "", wiring -> wiring.cable("xlpe")
                .datum("box").branch("b", "box", "nose", "600 mm").device("F1", "f", "box", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 awg", "F1:2", "lampL:1", "")));
        Finding finding = bench.check("fuse-exceeds-wire").getFirst();
        assertTrue(finding.inherited());
        assertFalse(finding.counts());
        assertEquals(Severity.ERROR, finding.severity());
    }

    @Test
    void aFuseOfOursAboveAWireOfTheFactorysIsOurs() {
        Bench bench = fused("20 A", "continuous")
                .drawing("nose64", "nose", "", wiring -> wiring.cable("xlpe").datum("box")
                        .branch("b", "box", "nose", "1 m").connector("J2", "way4", "box", "", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "18 awg", "J2:1", "lampL:1", "")))
                .harness("ours", wiring -> wiring.cable("xlpe").device("F1", "f", "box", "", "")
                        .connector("J1", "way4", "box", "J2 of nose64", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "6 ga", "battery:pos", "F1:1", ""))
                        .circuit("2", "", circuit -> circuit.wire("a", "6 awg", "F1:2", "J1:1", "")));
        List<Finding> findings = bench.check("fuse-exceeds-wire").stream().filter(Finding::counts).toList();
        assertEquals(List.of("ERROR nose64:12a"), weighed(findings).stream()
                .filter(each -> !each.startsWith("NOTE")).toList());
    }

    @Test
    void aWireThatNothingProtects() {
        Bench bench = fused("10 A", "continuous").device("knob", "pull", "box", "", "")
                .harness("front", wiring -> wiring.device("F1", "f", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "", wire -> wire.size("6 ga", "")
                                .from("battery:pos", "").to("F1:1", "").length("6 in")))
                        .circuit("2", "", circuit -> circuit.wire("a", "", wire -> wire.size("14 ga", "")
                                .from("F1:2", "fan").from("F1:1", "not fan").to("knob:1", "")))
                        .circuit("3", "", circuit -> circuit.wire("a", "14 ga", "knob:2", "lampL:1", "halogen")));
        List<String> found = bench.check("no-protection").stream().map(each -> each.severity() + " " + each.element()
                + " when " + each.affected().orElseThrow().words()).toList();
        assertEquals(List.of("NOTE front:1a when every vehicle", "ERROR front:2a when not fan",
                "ERROR front:3a when not fan and halogen"), found);
        assertEquals(List.of("fed by way of battery:pos - F1:1 - knob:1 - knob:2"),
                bench.check("no-protection").get(2).derivation());
    }

    private static List<Finding> batteryLead(String length) {
        return fused("10 A", "continuous").harness("front", wiring -> wiring.device("F1", "f", "box", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "", wire -> {
                    wire.size("6 ga", "").from("battery:pos", "").to("F1:1", "");
                    if (!length.isEmpty()) {
                        wire.length(length);
                    }
                }))).check("no-protection");
    }

    /** 33 CFR 183.455(b): 7 in, or 40 in when enclosed. */
    @Test
    void theBatteryLeadMayBeSevenInchesLong() {
        assertEquals(List.of("NOTE front:1a"), weighed(batteryLead("7 in")));
        assertEquals(List.of("WARNING front:1a"), weighed(batteryLead("178 mm")));
        assertEquals(List.of("WARNING front:1a"), weighed(batteryLead("40 in")));
        assertEquals(List.of("ERROR front:1a"), weighed(batteryLead("1020 mm")));
        assertEquals(List.of("WARNING front:1a"), weighed(batteryLead("")));
    }

    private static List<Finding> behindLink(String link, String wire) {
        return bench().part(Part.Kind.FUSIBLE_LINK, "fl").harness("front", wiring -> wiring
                .connector("J1", "way4", "box", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "", each -> each.size(link, "").cable("fl")
                        .from("battery:pos", "").to("J1:1", "")))
                .circuit("2", "", circuit -> circuit.wire("a", wire, "J1:1", "lampL:1", "")))
                .check("link-does-not-protect");
    }

    /** Four gauge numbers; between systems four AWG steps of cross-section, 92^(8/39) = 2.53 (common practice). */
    @Test
    void aLinkSparesWiresFourGaugeNumbersLarger() {
        assertEquals(List.of(), behindLink("18 ga", "14 ga"));
        assertEquals(List.of("ERROR front:2a"), weighed(behindLink("18 ga", "16 ga")));
        assertEquals(List.of(), behindLink("18 ga", "2.5 mm2"));
        assertEquals(List.of("ERROR front:2a"), weighed(behindLink("18 ga", "1.5 mm2")));
    }

    @Test
    void aLinkWithoutSizeLeavesANote() {
        Bench bench = bench().part(Part.Kind.FUSIBLE_LINK, "fl", "1", "2").harness("front", wiring -> wiring
                .device("L1", "fl", "box", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "", wire -> wire.size("6 ga", "").length("5 in")
                        .from("battery:pos", "").to("L1:1", "")))
                .circuit("2", "", circuit -> circuit.wire("a", "14 ga", "L1:2", "lampL:1", "")));
        assertEquals(List.of("NOTE front:1a"), weighed(bench.check("no-protection")));
        assertEquals(List.of("NOTE front:2a"), weighed(bench.check("link-does-not-protect")));
    }

    @Test
    void runsThatMayStandUnfused() {
        Bench bench = bench().part(Part.Kind.MOTOR, "crank", part -> part.pins("1").word(WordKind.TYPE, "cranking"))
                .part(Part.Kind.RESISTOR_CABLE, "ballast")
                .part(Part.Kind.SOURCE, "alt", part -> part.pins("B", "E").word(WordKind.TYPE, "alternator"))
                .device("starter", "crank", "nose", "body", "").device("alternator", "alt", "nose", "body", "")
                .harness("front", wiring -> wiring.connector("J1", "way4", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "1/0 ga", "battery:pos", "starter:1", "")
                                .wire("b", "", wire -> wire.size("18 ga", "").from("battery:pos", "").to("J1:1", "")
                                        .cable("ballast"))
                                .wire("c", "8 ga", "alternator:B", "J1:2", "")));
        assertEquals(List.of("NOTE front:1a", "NOTE front:1b"), weighed(bench.check("no-protection")));
    }

    @Test
    void aLoadWhoseReturnIsMissingInSomeVehicles() {
        Bench bench = bench().device("lampR", "lamp2", "nose", "", "").harness("front", wiring -> wiring
                .connector("H1", "way4", "nose", "lampR", "").connector("J1", "way4", "box", "", "")
                .stud("G1", "nose", "body", "not fan")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "H1:1", "halogen"))
                .circuit("2", "", circuit -> circuit.wire("a", "18 ga", "H1:2", "G1", "not fan")));
        Finding finding = bench.check("no-return-path").getFirst();
        assertEquals("orrin:lampR", finding.element());
        assertEquals("fan and halogen", finding.affected().orElseThrow().words());
        assertEquals(bench.at("orrin:lampR"), finding.place().span());
    }

    @Test
    void aReturnThatLeavesThroughAnUndescribedMateMayLeadBack() {
        Bench bench = bench().device("lampR", "lamp2", "nose", "", "").harness("front", wiring -> wiring
                .connector("H1", "way4", "nose", "lampR", "").connector("J1", "way4", "box", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "H1:1", "")
                        .wire("b", "18 ga", "J1:2", "H1:2", "not fan")));
        List<Finding> findings = bench.check("no-return-path");
        assertEquals(List.of("fan"), findings.stream().map(each -> each.affected().orElseThrow().words()).toList());
    }

    @Test
    void aShellThatDoesNotConductReturnsNothing() {
        Bench bench = bench().ground("shell", true).device("lampP", "lamp45", "nose", "shell", "")
                .harness("front", wiring -> wiring.connector("J1", "way4", "box", "", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "lampP:1", "")
                                .wire("b", "18 ga", "J1:2", "lampL:1", "")));
        assertEquals(List.of("orrin:lampP"), bench.check("no-return-path").stream().map(Finding::element).toList());
    }

    @Test
    void theFeedPinIsNoReturn() {
        Bench bench = bench().part(Part.Kind.LOAD, "led", part -> part.pins("1", "2").word(WordKind.POLARITY, "1"))
                .device("tail", "led", "nose", "", "")
                .harness("front", wiring -> wiring.stud("G1", "nose", "body", "")
                        .connector("J1", "way4", "box", "", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "tail:1", "G1", "fan")
                                .wire("b", "18 ga", "tail:2", "J1:1", "fan")
                                .wire("c", "18 ga", "tail:2", "G1", "not fan")));
        assertEquals(List.of(), bench.check("no-return-path").stream()
                .map(each -> each.affected().orElseThrow().words()).filter(words -> !words.equals("fan")).toList());
        assertEquals(1, bench.check("no-return-path").size());
    }

    @Test
    void ourHarnessIsBlamedForAReturnThatTheFactoryHad() {
        Bench bench = bench().device("lampR", "lamp2", "nose", "", "")
                .drawing("nose64", "nose", "", wiring -> wiring.connector("J2", "way4", "box", "J1 of front64", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J2:1", "lampR:1", "")
                                .wire("b", "18 ga", "J2:2", "lampR:2", "")))
                .drawing("front64", "front", "", wiring -> wiring.connector("J1", "way4", "box", "", "")
                        .stud("G1", "box", "body", "")
                        .circuit("2", "", circuit -> circuit.wire("a", "18 ga", "J1:2", "G1", "")
                                .wire("b", "18 ga", "J1:1", "battery:pos", "")))
                .harness("front", wiring -> wiring.covers("front64").connector("J1", "way4", "box", "J2 of nose64", "")
                        .circuit("2", "", circuit -> circuit.wire("b", "18 ga", "J1:1", "battery:pos", "")));
        assertEquals(List.of("lampR has no way back to ground with harness front"),
                bench.check("no-return-path").stream().map(Finding::sentence).toList());
    }
}
