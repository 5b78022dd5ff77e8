// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Part;
import org.loomwright.rules.Finding;
import org.loomwright.rules.WrittenBench;

class PartOfWrongKindTest {

    private static final String RULE = "part-of-wrong-kind";

    /** One part of each kind, named after it. */
    private static WrittenBench bench() {
        WrittenBench bench = new WrittenBench().upgrade("fan");
        for (Part.Kind kind : Part.Kind.values()) {
            bench.part(kind, kind.name(), "pins 1 2");
        }
        return bench;
    }

    @ParameterizedTest
    @CsvSource({"CABLE,CABLE|FUSIBLE_LINK|RESISTOR_CABLE", "HOUSING,HOUSING|ASSEMBLY", "TERMINAL,TERMINAL",
        "SEAL,SEAL", "PLUG,PLUG", "SPLICE,SPLICE_METHOD",
        "PLACED,COVERING|OPENING|CLIP|SPLICE_METHOD|SEAL|PLUG|HOUSING|ASSEMBLY",
        "DEVICE,FUSE|BREAKER|RELAY|FLASHER|LAMP|MOTOR|LOAD|SWITCH|SOURCE|ASSEMBLY|FUSIBLE_LINK|RESISTOR_CABLE"})
    void eachPlaceTakesItsKinds(String place, String kinds) {
        List<String> serving = List.of(kinds.split("\\|"));
        for (Part.Kind kind : Part.Kind.values()) {
            String part = kind.name();
            WrittenBench bench = bench().harness("front", wires -> {
                switch (place) {
                    case "CABLE" -> wires.cable(part);
                    case "HOUSING" -> wires.connector("J1", "is " + part);
                    case "SPLICE" -> wires.circuit("12", "", cut -> cut.splice("S1", part));
                    case "PLACED" -> wires.fit("P1", part);
                    case "DEVICE" -> wires.device("D1", "is " + part);
                    default -> wires.connector("J1", "is HOUSING", place.toLowerCase(Locale.ROOT) + " 1 is "
                            + part);
                }
            });
            assertEquals(serving.contains(part) ? 0 : 1, bench.findings(RULE).size(), place + " " + part);
        }
    }

    @Test
    void aCableThatIsNone() {
        List<Finding> found = bench().harness("front", wires -> wires.connector("J1", "is HOUSING")
                .circuit("12", "", cut -> cut.wire("a", "from J1:1", "to J1:2", "cable SEAL when fan",
                        "cable CABLE when not fan"))).findings(RULE);
        assertEquals(List.of("seal SEAL cannot serve as the cable of a wire"),
                found.stream().map(Finding::sentence).toList());
        assertEquals("front:12a", found.getFirst().element());
        assertEquals("fan", found.getFirst().affected().orElseThrow().words());
        assertEquals("name a part of kind cable, fusibleLink, resistorCable", found.getFirst().advice());
    }

    @Test
    void aNameOneSlipAwayIsOffered() {
        Finding found = new WrittenBench().part(Part.Kind.CABLE, "pvc85red").part(Part.Kind.SEAL, "pvc85rad")
                .harness("front", wires -> wires.cable("pvc85rad")).findings(RULE).getFirst();
        assertEquals("pvc85red", found.fixes().getFirst().edits().getFirst().text());
        assertEquals(found.place().span(), found.fixes().getFirst().edits().getFirst().span());
    }

    @Test
    void aDeviceOfThePlatformAndOfADrawing() {
        assertEquals(List.of("error front:D2: housing HOUSING cannot serve as a device when every vehicle",
                "error orrin:D1: cable CABLE cannot serve as a device when fan"),
                bench().device("D1", "is CABLE when fan", "is LAMP when not fan")
                        .drawing("front", "", wires -> wires.device("D2", "is HOUSING")).check(RULE).stream().sorted()
                        .toList());
    }

    @Test
    void aColourInABox() {
        List<String> found = bench().harness("front", wires -> { }).kit("box", "front", "LAMP", "COLOUR").check(RULE);
        assertEquals(List.of("error box:COLOUR: colour COLOUR cannot serve as content of a kit"), found);
    }

    @Test
    void whatHasNoPartIsNotAsked() {
        assertEquals(List.of(), bench().harness("front", wires -> wires.cable("nothing")).check(RULE));
    }
}
