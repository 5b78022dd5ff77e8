// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

class ColourRulesTest {

    private static final String ALIKE = "colours-alike-in-housing";
    private static final String ANOTHER = "colour-means-another-circuit";

    private static WrittenBench bench() {
        return new WrittenBench().upgrade("fan").upgrade("fog").ground("body")
                .part(Part.Kind.HOUSING, "way4", "pins 1 2 3 4");
    }

    @Test
    void twoCircuitsOfOneColourInAHousing() {
        assertEquals(List.of("warning front:13a: wire 13a in J1:2 and wire 12a in J1:1 are both BU/WH when"
                + " fan and fog"),
                bench().harness("front", wires -> wires.connector("J1", "is way4").connector("J2", "is way4")
                        .connector("J3", "is way4")
                        .circuit("12", "BU/WH", cut -> cut.wire("a", "from J1:1", "to J2:1", "when fan"))
                        .circuit("13", "BU/WH", cut -> cut.wire("a", "from J1:2", "to J3:1", "when fog")))
                        .check(ALIKE));
    }

    @Test
    void coloursThatDifferOrNeverMeet() {
        assertEquals(List.of(), bench().harness("front", wires -> wires.connector("J1", "is way4")
                .connector("J2", "is way4").connector("J3", "is way4").connector("J4", "is way4")
                .circuit("12", "BU/WH", cut -> cut.wire("a", "from J1:1", "to J2:1", "when fan"))
                .circuit("13", "BU/RD", cut -> cut.wire("a", "from J1:2", "to J3:1"))
                .circuit("14", "BU", cut -> cut.wire("a", "from J1:3", "to J3:2"))
                .circuit("15", "BU/WH", cut -> cut.wire("a", "from J1:4", "to J4:1", "when not fan"))).check(ALIKE));
    }

    @Test
    void wiresOfOneCircuitAndWiresOfOneCavity() {
        assertEquals(List.of(), bench().harness("front", wires -> wires.connector("J1", "is way4")
                .connector("J2", "is way4").connector("J3", "is way4")
                .circuit("12", "BU", cut -> cut.wire("a", "from J1:1", "to J2:1").wire("b", "from J1:2", "to J3:1"))
                .circuit("13", "RD", cut -> cut.wire("a", "from J1:3", "to J2:2"))
                .circuit("14", "RD", cut -> cut.wire("a", "from J1:3", "to J3:2"))).check(ALIKE));
    }

    @Test
    void aWireOfItsOwnColourInSomeVehicles() {
        assertEquals(List.of("warning front:13a: wire 13a in J1:2 and wire 12a in J1:1 are both BU when year >= 1970"),
                bench().harness("front", wires -> wires.connector("J1", "is way4").connector("J2", "is way4")
                        .connector("J3", "is way4").circuit("12", "BU", cut -> cut.wire("a", "from J1:1", "to J2:1"))
                        .circuit("13", "RD", cut -> cut.wire("a", "from J1:2", "to J3:1",
                                "colour BU when year >= 1970", "colour RD when year < 1970"))).check(ALIKE));
    }

    @Test
    void groundsMayBeChangedOver() {
        assertEquals(List.of(), bench().harness("front", wires -> wires.connector("J1", "is way4").stud("G1", "body")
                .stud("G2", "body").circuit("90", "BK", cut -> cut.wire("a", "from J1:1", "to G1"))
                .circuit("91", "BK", cut -> cut.wire("a", "from J1:2", "to G2"))).check(ALIKE));
    }

    @Test
    void theFactorysColoursAreInherited() {
        assertTrue(bench().drawing("front", "", wires -> wires.connector("J1", "is way4").connector("J2", "is way4")
                .connector("J3", "is way4").circuit("12", "BU", cut -> cut.wire("a", "from J1:1", "to J2:1"))
                .circuit("13", "BU", cut -> cut.wire("a", "from J1:2", "to J3:1"))).findings(ALIKE).getFirst()
                .inherited());
    }

    /** Two drawings: side lamps and horn, RD and VT to 1969, GY and RD from 1970. */
    private static WrittenBench years() {
        return bench().drawing("front64", "year < 1970", wires -> wires.connector("J1", "is way4")
                .circuit("20", "RD", cut -> cut.wire("a", "from J1:1", "to J1:3"))
                .circuit("30", "VT", cut -> cut.wire("a", "from J1:2", "to J1:4")))
                .drawing("front70", "year >= 1970", wires -> wires.connector("J1", "is way4")
                        .circuit("57", "GY", cut -> cut.wire("a", "from J1:1", "to J1:3"))
                        .circuit("71", "RD", cut -> cut.wire("a", "from J1:2", "to J1:4", "when not fog")));
    }

    @Test
    void aColourThatTheFactoryGaveToAnotherCircuit() {
        assertEquals(List.of("warning front:20: circuit 20 is RD, which in front70 is the colour of circuit 71; it"
                + " stands for circuit 57 there when year >= 1970 and not fog"),
                years().harness("front", wires -> wires.covers("front64", "front70").connector("J1", "is way4")
                        .circuit("20", "RD", cut -> cut.standsFor("20", "front64").standsFor("57", "front70")
                                .wire("a", "from J1:1", "to J1:3"))).check(ANOTHER));
    }

    @Test
    void theFactorysColourInEachYear() {
        assertEquals(List.of(), years().harness("front", wires -> wires.covers("front64", "front70")
                .connector("J1", "is way4").circuit("20", "", cut -> cut.colour("RD when year < 1970")
                        .colour("GY when year >= 1970").standsFor("20", "front64").standsFor("57", "front70")
                        .wire("a", "from J1:1", "to J1:3"))).check(ANOTHER));
    }

    @Test
    void aCircuitThatStandsForBothOrForNothing() {
        assertEquals(List.of(), years().harness("front", wires -> wires.covers("front64", "front70")
                .connector("J1", "is way4")
                .circuit("20", "RD", cut -> cut.standsFor("57", "front70").standsFor("71", "front70")
                        .wire("a", "from J1:1", "to J1:3"))
                .circuit("21", "RD", cut -> cut.wire("a", "from J1:2", "to J1:4"))).check(ANOTHER));
    }

    @Test
    void aColourThatTheFactoryGaveToBothIsNoNews() {
        assertEquals(List.of(), bench().drawing("front64", "", wires -> wires.connector("J1", "is way4")
                .circuit("90", "BK", cut -> cut.wire("a", "from J1:1", "to J1:3"))
                .circuit("91", "BK", cut -> cut.wire("a", "from J1:2", "to J1:4")))
                .harness("front", wires -> wires.covers("front64").connector("J1", "is way4")
                        .circuit("90", "BK", cut -> cut.standsFor("90", "front64").wire("a", "from J1:1", "to J1:3")))
                .check(ANOTHER));
    }
}
