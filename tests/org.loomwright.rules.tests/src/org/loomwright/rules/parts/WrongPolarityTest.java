// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

class WrongPolarityTest {

    private static final String RULE = "wrong-polarity";

    private static WrittenBench bench(boolean negativeGround) {
        String live = negativeGround ? "plus" : "minus";
        return new WrittenBench().supply("12 V", negativeGround).upgrade("led").ground("body")
                .part(Part.Kind.SOURCE, "battery", "polarity " + live, "pins plus minus")
                .part(Part.Kind.HOUSING, "way2", "pins 1 2").part(Part.Kind.LAMP, "bulb", "pins a k")
                .part(Part.Kind.LAMP, "diode", "pins a k", "polarity a")
                .part(Part.Kind.SWITCH, "changeover", "pins c x y", "joins c to x", "joins c to y")
                .device("B", "is battery", "on body");
    }

    /** A lamp on a socket: cavity 1 is fed, cavity 2 leads to the stud. */
    private static List<String> socket(String lamp, String... maps) {
        String[] facts = new String[maps.length + 2];
        facts[0] = "is way2";
        facts[1] = "mates L";
        System.arraycopy(maps, 0, facts, 2, maps.length);
        return bench(true).device("L", lamp.split(","))
                .harness("front", wires -> wires.connector("H1", facts).stud("G1", "body")
                        .circuit("1", "", cut -> cut.wire("a", "from B:plus", "to H1:1"))
                        .circuit("2", "", cut -> cut.wire("a", "from H1:2", "to G1"))).check(RULE);
    }

    @Test
    void theRightWayRound() {
        assertEquals(List.of(), socket("is diode", "map 1 to a", "map 2 to k"));
    }

    @Test
    void theWrongWayRound() {
        assertEquals(List.of("error orrin:L: L is connected the wrong way round: its pin a must see the insulated pole"
                + " and leads to ground, and pin k is fed when every vehicle"),
                socket("is diode", "map 1 to k", "map 2 to a"));
    }

    @Test
    void inSomeVehiclesOnly() {
        List<String> found = socket("is diode when led,is bulb when not led", "map 1 to k", "map 2 to a");
        assertEquals(1, found.size());
        assertEquals(true, found.getFirst().endsWith("is fed when led"), found.getFirst());
        found = socket("is diode", "map 1 to k when year <= 1966", "map 2 to a when year <= 1966",
                "map 1 to a when year > 1966", "map 2 to k when year > 1966");
        assertEquals(true, found.getFirst().endsWith("is fed when year <= 1966"), found::toString);
    }

    @Test
    void aPartThatDoesNotMind() {
        assertEquals(List.of(), socket("is bulb", "map 1 to k", "map 2 to a"));
    }

    @Test
    void theWayIsShown() {
        assertEquals(List.of("from the ground: G1 - L:a", "from the insulated pole: B:plus - L:k"), bench(true)
                .device("L", "is diode").harness("front", wires -> wires.stud("G1", "body")
                        .circuit("1", "", cut -> cut.wire("a", "from B:plus", "to L:k").wire("b", "from L:a", "to G1")))
                .findings(RULE).getFirst().derivation());
    }

    @Test
    void positiveGroundFeedsFromTheOtherPole() {
        assertEquals(List.of(), bench(false).device("L", "is diode").harness("front", wires -> wires.stud("G1", "body")
                .circuit("1", "", cut -> cut.wire("a", "from B:minus", "to L:a").wire("b", "from L:k", "to G1")))
                .check(RULE));
        assertEquals(1, bench(false).device("L", "is diode").harness("front", wires -> wires.stud("G1", "body")
                .circuit("1", "", cut -> cut.wire("a", "from B:minus", "to L:k").wire("b", "from L:a", "to G1")))
                .check(RULE).size());
    }

    @Test
    void whatIsNotKnownIsNoEvidence() {
        assertEquals(List.of(), bench(true).device("L", "is diode").harness("front", wires -> wires
                .stud("G1", "body").connector("J1", "is way2")
                .circuit("1", "", cut -> cut.wire("a", "from J1:1", "to L:k").wire("b", "from L:a", "to G1")))
                .check(RULE));
        assertEquals(List.of(), bench(true).device("L", "is diode").check(RULE));
    }

    @Test
    void aPinThatASwitchTakesToBothIsNoEvidence() {
        assertEquals(List.of(), bench(true).device("L", "is diode").device("S", "is changeover")
                .harness("front", wires -> wires.stud("G1", "body").circuit("1", "", cut -> cut
                        .wire("a", "from B:plus", "to S:x").wire("b", "from S:y", "to G1")
                        .wire("c", "from S:c", "to L:a").wire("d", "from B:plus", "to L:k"))).check(RULE));
    }

    @Test
    void aPartForTheOtherGround() {
        assertEquals(List.of("error orrin:R: R is a part whose pin plus must see the insulated pole, and the platform"
                + " has its positive pole at ground when led"),
                bench(false).part(Part.Kind.LOAD, "radio", "pins plus minus", "polarity plus")
                        .device("R", "is radio", "when led").check(RULE));
        assertEquals(List.of(), bench(true).part(Part.Kind.LOAD, "radio", "pins plus minus", "polarity plus")
                .device("R", "is radio", "when led").check(RULE));
    }
}
