// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.rules.Bench;

/** Which runs may stand without a fuse, and that both rules that ask for one know the same of them. */
class UnfusedRunsTest {

    private static Bench bench() {
        return new Bench().upgrade("fan", "module").ground("body", false).zone("bay", "80 C").place("box", "bay")
                .place("nose", "bay")
                .part(Part.Kind.SOURCE, "battery12", part -> part.pins("pos", "neg").word(WordKind.TYPE, "battery")
                        .word(WordKind.POLARITY, "pos"))
                .part(Part.Kind.MOTOR, "crank", part -> part.pins("30", "50").word(WordKind.TYPE, "cranking"))
                .part(Part.Kind.LOAD, "coil12", part -> part.pins("15", "1").word(WordKind.TYPE, "ignitionCoil"))
                .part(Part.Kind.LAMP, "lamp", "1")
                .part(Part.Kind.FUSIBLE_LINK, "link18", part -> part.pins("1", "2").size("18 ga"))
                .part(Part.Kind.SWITCH, "key", part -> part.pins("30", "15", "50")
                        .joins(false, "30", "15", "", "on").joins(false, "30", "50", "", "crank"))
                .part(Part.Kind.HOUSING, "way4", "1", "2", "3", "4")
                .device("battery", "battery12", "box", "body", "").device("starter", "crank", "nose", "body", "")
                .device("coil", "coil12", "nose", "", "").device("lampL", "lamp", "nose", "body", "")
                .device("ignition", "key", "box", "", "");
    }

    private static List<String> found(Bench bench, String rule) {
        return bench.check(rule).stream().map(each -> each.severity() + " " + each.element() + " "
                + each.affected().orElseThrow().words()).toList();
    }

    /** Battery, ignition switch and coil, with a plug on the way, and a link before them or none. */
    private static Bench ignition(String start, String lamp) {
        return bench().drawing("nose64", "nose", "", wiring -> wiring
                .connector("N1", "way4", "box", "", "")
                .circuit("3", "", circuit -> circuit.wire("b", "18 ga", "N1:1", "coil:15", "")))
                .harness("front", wiring -> wiring.device("L1", "link18", "box", "", "")
                        .connector("B1", "way4", "box", "N1 of nose64", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "", wire -> wire.size("6 ga", "").length("5 in")
                                .from("battery:pos", "").to("L1:1", "")))
                        .circuit("2", "", circuit -> circuit.wire("a", "10 ga", start, "ignition:30", ""))
                        .circuit("3", "", circuit -> circuit.splice("S3", "box", "")
                                .wire("a", "18 ga", "S3", "B1:1", "")
                                .wire("c", "18 ga", "ignition:15", "S3", "")
                                .wire("d", "18 ga", "S3", "lampL:1", lamp)));
    }

    @Test
    void theIgnitionPrimaryStandsBehindALinkAsItStandsWithoutOne() {
        assertEquals(List.of("NOTE front:1a every vehicle", "ERROR front:2a every vehicle",
                "NOTE front:3a every vehicle", "ERROR front:3c fan", "NOTE front:3c not fan", "ERROR front:3d fan"),
                found(ignition("battery:pos", "fan"), "no-protection"));
        assertEquals(List.of("NOTE front:3a every vehicle", "ERROR front:3c fan", "NOTE front:3c not fan",
                "ERROR front:3d fan"), found(ignition("L1:2", "fan"), "link-does-not-protect"));
    }

    @Test
    void whereTheFeedForksItIsTheIgnitionPrimaryNoLonger() {
        assertEquals(List.of("NOTE front:3a every vehicle", "ERROR front:3c every vehicle",
                "ERROR front:3d every vehicle"), found(ignition("L1:2", ""), "link-does-not-protect"));
    }

    @Test
    void whatLeavesTheStarterIsNoCrankingLead() {
        Bench bench = bench().harness("front", wiring -> wiring
                .circuit("40", "", circuit -> circuit.wire("a", "1/0 ga", "battery:pos", "starter:30", ""))
                .circuit("41", "", circuit -> circuit.wire("a", "10 ga", "starter:30", "lampL:1", ""))
                .circuit("4", "", circuit -> circuit.wire("a", "14 ga", "ignition:50", "starter:50", ""))
                .circuit("2", "", circuit -> circuit.wire("a", "10 ga", "battery:pos", "ignition:30", "")));
        assertEquals(List.of("NOTE front:40a every vehicle", "ERROR front:41a every vehicle",
                "ERROR front:4a every vehicle", "ERROR front:2a every vehicle"), found(bench, "no-protection"));
    }

    /** Terminal 50 takes the control current of the solenoid, terminal 30 that of the motor (DIN 72552, from memory). */
    @Test
    void aThinLeadToTheSolenoidIsNoCrankingLead() {
        Bench bench = bench().harness("front", wiring -> wiring
                .circuit("40", "", circuit -> circuit.wire("a", "1/0 ga", "battery:pos", "starter:30", ""))
                .circuit("4", "", circuit -> circuit.wire("a", "14 ga", "battery:pos", "starter:50", "")));
        assertEquals(List.of("NOTE front:40a every vehicle", "ERROR front:4a every vehicle"),
                found(bench, "no-protection"));
    }

    @Test
    void bothLeadsOfACoilAndItsModuleAreOfThePrimary() {
        Bench bench = bench().part(Part.Kind.LOAD, "pack", part -> part.pins("15").word(WordKind.TYPE, "ignitionCoil"))
                .device("amplifier", "pack", "nose", "body", "module")
                .harness("front", wiring -> wiring
                        .circuit("3", "", circuit -> circuit.splice("S3", "box", "")
                                .wire("a", "18 ga", "battery:pos", "S3", "")
                                .wire("b", "18 ga", "S3", "coil:15", "")
                                .wire("c", "18 ga", "S3", "amplifier:15", "module")));
        assertEquals(List.of("NOTE front:3a every vehicle", "NOTE front:3b every vehicle", "NOTE front:3c module"),
                found(bench, "no-protection"));
    }
}
