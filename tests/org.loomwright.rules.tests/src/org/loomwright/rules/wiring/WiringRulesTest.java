// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

class WiringRulesTest {

    private static Bench bench() {
        return new Bench().upgrade("fan", "halogen").place("bulkhead", "").place("radiator", "")
                .part(Part.Kind.HOUSING, "way4", "1", "2", "3", "4").part(Part.Kind.HOUSING, "way1", "1");
    }

    private static void one(List<Finding> findings, String element, String words, Span span) {
        assertEquals(1, findings.size(), findings::toString);
        assertEquals(element, findings.getFirst().element());
        assertEquals(words, findings.getFirst().affected().orElseThrow().words());
        assertEquals(span, findings.getFirst().place().span());
    }

    @Test
    void circuitsWithOneNumberThatSomeVehicleHasBothOf() {
        Bench bench = bench().harness("front", wiring -> wiring
                .circuit("30", "fan", circuit -> { }).circuit("30", "halogen", circuit -> { }));
        one(bench.check("duplicate-circuit"), "front:30", "fan and halogen", bench.at("front:30#1"));
    }

    @Test
    void circuitsWithOneNumberThatNoVehicleHasBothOfAreStillTwo() {
        Bench bench = bench().harness("front", wiring -> wiring
                .circuit("30", "fan", circuit -> { }).circuit("30", "not fan", circuit -> { }));
        one(bench.check("duplicate-circuit"), "front:30", "not fan", bench.at("front:30#1"));
        assertTrue(bench.check("duplicate-circuit").getFirst().sentence().contains("nothing in common"));
    }

    @Test
    void oneNumberInTwoHarnessesIsNoDuplicate() {
        Bench bench = bench().harness("front", wiring -> wiring.circuit("30", "", circuit -> { }))
                .harness("rear", wiring -> wiring.circuit("30", "", circuit -> { }));
        assertEquals(List.of(), bench.check("duplicate-circuit"));
    }

    @Test
    void aWireWithoutEndInSomeVehicles() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.from("J1:1", "").to("J1:2", "fan"))));
        one(bench.check("orphan-wire"), "front:12a", "not fan", bench.at("front:12a"));
    }

    @Test
    void aWireThatEndsWhereItStartsInSomeVehicles() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.from("J1:1", "")
                        .to("J1:1", "fan").to("J1:2", "not fan"))));
        one(bench.check("wire-to-itself"), "front:12a", "fan", bench.at("front:12a to J1:1"));
    }

    @Test
    void aWireBetweenTwoCavitiesOfOneConnectorIsNoWireToItself() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "J1:2", "")));
        assertEquals(List.of(), bench.check("wire-to-itself"));
    }

    @Test
    void aWireToNothingAtAllOffersTheNearestName() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J12", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J12:1", "J21:2", "")));
        List<Finding> findings = bench.check("orphan-wire");
        Span end = bench.at("front:12a to J21:2");
        one(findings, "front:12a", "every vehicle", new Span(end.file(), end.offset(), 3, end.line(), end.column()));
        assertEquals("J12", findings.getFirst().fixes().getFirst().edits().getFirst().text());
    }

    @Test
    void aWireToWhatSomeOfItsVehiclesDoNotHave() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "").connector("R1", "way1", "radiator", "", "fan")
                .circuit("12", "halogen", circuit -> circuit.wire("a", "18 ga", "J1:1", "R1:1", "year <= 1966")));
        one(bench.check("orphan-wire"), "front:12a", "year <= 1966 and not fan and halogen",
                bench.at("front:12a to R1:1"));
    }

    @Test
    void aConnectorThatMatesNothingIsSomewhereToEnd() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "").connector("R1", "way1", "radiator", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "R1:1", "")));
        assertEquals(List.of(), bench.check("orphan-wire"));
    }

    @Test
    void twoCircuitsInOneCavity() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "").connector("R1", "way4", "radiator", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "R1:1", "fan"))
                .circuit("13", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "R1:2", "halogen")
                        .wire("b", "18 ga", "J1:1", "R1:3", "not fan")));
        one(bench.check("cavity-taken-twice"), "front:13a", "fan and halogen", bench.at("front:13a from J1:1"));
    }

    @Test
    void wiresOfOneCircuitShareATerminal() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "").connector("R1", "way4", "radiator", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "R1:1", "")
                        .wire("b", "18 ga", "J1:1", "R1:2", "")));
        assertEquals(List.of(), bench.check("cavity-taken-twice"));
    }

    @Test
    void aCavityThatTheHousingDoesNotHave() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "").connector("R1", "way1", "radiator", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:04", "R1", "")
                        .wire("b", "18 ga", "J1", "R1:1", "fan")));
        List<Finding> findings = bench.check("unknown-cavity");
        assertEquals(2, findings.size());
        one(List.of(findings.get(0)), "front:12a", "every vehicle", bench.at("front:12a from J1:04 cavity"));
        assertEquals("4", findings.get(0).fixes().getFirst().edits().getFirst().text());
        one(List.of(findings.get(1)), "front:12b", "fan", bench.at("front:12b from J1"));
    }

    @Test
    void aFactOfACavityThatTheHousingDoesNotHave() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "fan", wiring.map("5", "1")));
        List<Finding> findings = bench.check("unknown-cavity");
        assertEquals(List.of("front:J1"), findings.stream().map(Finding::element).toList());
        assertEquals("fan", findings.getFirst().affected().orElseThrow().words());
    }

    @Test
    void aPinThatTheDeviceDoesNotHave() {
        Bench bench = bench().part(Part.Kind.LAMP, "lamp", "left", "right").device("L1", "lamp", "", "", "")
                .harness("front", wiring -> wiring.connector("J1", "way4", "bulkhead", "", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "18 ga", "J1:1", "L1:lefft", "")));
        List<Finding> findings = bench.check("unknown-cavity");
        one(findings, "front:12a", "every vehicle", bench.at("front:12a to L1:lefft cavity"));
        assertEquals("left", findings.getFirst().fixes().getFirst().edits().getFirst().text());
    }

    @Test
    void aSpliceThatLosesAWireInSomeVehicles() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.splice("S4", "bulkhead", "")
                        .wire("a", "18 ga", "J1:1", "S4", "").wire("b", "18 ga", "J1:2", "S4", "")
                        .wire("c", "18 ga", "J1:3", "S4", "fan").wire("d", "18 ga", "J1:4", "S4", "halogen")));
        one(bench.check("splice-with-too-few-wires"), "front:S4", "not fan and not halogen", bench.at("front:S4"));
        assertEquals(Severity.WARNING, bench.check("splice-with-too-few-wires").getFirst().severity());
    }

    @Test
    void aSpliceSaysHowManyWiresItJoinsWhere() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.splice("S4", "bulkhead", "")
                        .wire("a", "18 ga", "J1:1", "S4", "fan").wire("b", "18 ga", "J1:2", "S4", "fan and halogen")));
        List<String> found = bench.check("splice-with-too-few-wires").stream()
                .map(each -> each.sentence() + " when " + each.affected().orElseThrow().words()).toList();
        assertEquals(List.of("splice S4 joins 2 wires only when fan and halogen",
                "splice S4 joins no wire when not fan", "splice S4 joins one wire only when fan and not halogen"),
                found);
    }

    @Test
    void whatNoVehicleHas() {
        Bench bench = bench().never("fan and halogen").harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "fan", circuit -> circuit.wire("a", "18 ga", "J1:1", "J1:2", "")
                        .wire("b", "18 ga", "J1:1", "J1:2", "halogen")));
        one(bench.check("never-exists"), "front:12b", "fan", bench.at("front:12b"));
    }

    @Test
    void onlyTheOutermostThingThatNoVehicleHas() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "year < 1964", circuit -> circuit.wire("a", "18 ga", "J1:1", "J1:2", "fan")));
        assertEquals(List.of("front:12"), bench.check("never-exists").stream().map(Finding::element).toList());
    }

    @Test
    void aSizeThatNoVehicleHas() {
        Bench bench = bench().harness("front", wiring -> wiring
                .connector("J1", "way4", "bulkhead", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "fan", wire -> wire.from("J1:1", "").to("J1:2", "")
                        .size("18 ga", "fan").size("14 ga", "not fan"))));
        one(bench.check("never-exists"), "front:12a", "fan", bench.at("front:12a size 14 ga"));
    }
}
