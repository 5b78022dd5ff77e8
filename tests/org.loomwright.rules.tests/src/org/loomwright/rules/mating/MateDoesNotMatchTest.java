// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.mating;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

class MateDoesNotMatchTest {

    private static final String RULE = "mate-does-not-match";

    private static WrittenBench bench() {
        return new WrittenBench().upgrade("fan")
                .part(Part.Kind.HOUSING, "plug4", "gender tab", "family bulk", "pins 1 2 3 4")
                .part(Part.Kind.HOUSING, "socket4", "gender socket", "family bulk", "pins 1 2 3 4")
                .part(Part.Kind.HOUSING, "socket2", "gender socket", "family bulk", "pins 1 2")
                .part(Part.Kind.LAMP, "lamp2", "family bulk", "pins 1 2");
    }

    private static List<String> halves(String one, String other) {
        return new WrittenBench().part(Part.Kind.HOUSING, "one", one.split(","))
                .part(Part.Kind.HOUSING, "other", other.split(","))
                .drawing("dash", "", wires -> wires.connector("J7", "is other"))
                .drawing("front", "", wires -> wires.connector("J1", "is one", "mates J7 of dash")).check(RULE);
    }

    @Test
    void halvesThatGoTogether() {
        assertEquals(List.of(), halves("gender tab,keying A,family f", "gender socket,keying a,family F"));
        assertEquals(List.of(), halves("gender tab,keying A", "family f"));
        assertEquals(List.of(), halves("gender both", "gender both"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "gender tab;gender Tab;error;and connector J7 of dash both have the gender tab",
        "keying A;keying B;error;has the keying A, and connector J7 of dash has B",
        "family f;family g;warning;has the family f, and connector J7 of dash has g"})
    void halvesThatDoNot(String one, String other, String severity, String words) {
        assertEquals(List.of(severity + " front:J1: connector J1 " + words + " when every vehicle"),
                halves(one, other));
    }

    @Test
    void aMateThatIsNotThereInSomeVehicles() {
        assertEquals(List.of("error front:J1: connector J1 mates connector J7 of dash, which these vehicles do not have"
                + " when year >= 1968"), bench().drawing("dash", "year < 1968", wires -> wires
                        .connector("J7", "is socket4"))
                .drawing("front", "", wires -> wires.connector("J1", "is plug4", "mates J7 of dash")).check(RULE));
        assertEquals(List.of("error front:J1: connector J1 mates device L, which these vehicles do not have when"
                + " not fan"), bench().device("L", "is lamp2", "when fan")
                .drawing("front", "", wires -> wires.connector("J1", "is socket2", "mates L")).check(RULE));
    }

    @Test
    void eachMateIsAskedInItsVehicles() {
        assertEquals(List.of(), bench().drawing("dash64", "year < 1968", wires -> wires.connector("J7", "is socket4"))
                .drawing("dash68", "year >= 1968", wires -> wires.connector("J7", "is socket2"))
                .drawing("front", "", wires -> wires.connector("J1", "is plug4", "mates J7 of dash64 when year < 1968",
                        "mates J7 of dash68 when year >= 1968").circuit("12", "", cut -> cut
                                .wire("a", "from J1:4", "to J1:1", "when year < 1968"))).check(RULE));
    }

    @Test
    void aWiredCavityThatMeetsNothing() {
        assertEquals(List.of("error front:12a: wire 12a ends in cavity J1:4, and connector J7 of dash has no cavity"
                + " that meets it when year >= 1970"), bench().drawing("dash", "", wires -> wires
                        .connector("J7", "is socket4 when year < 1970", "is socket2 when year >= 1970"))
                .drawing("front", "", wires -> wires.connector("J1", "is plug4", "mates J7 of dash")
                        .circuit("12", "", cut -> cut.wire("a", "from J1:4", "to J1:1"))).check(RULE));
    }

    @Test
    void aWiredCavityOfTheOtherHalf() {
        assertEquals(List.of("error dash:12a: wire 12a ends in cavity J7:4, and connector J1 of front has no cavity"
                + " that meets it when fan"), bench().drawing("dash", "", wires -> wires.connector("J7", "is plug4")
                        .circuit("12", "", cut -> cut.wire("a", "from J7:4", "to J7:1", "when fan")))
                .drawing("front", "", wires -> wires.connector("J1", "is socket2", "mates J7 of dash")).check(RULE));
    }

    @Test
    void halvesThatNameEachOtherSayItOnce() {
        assertEquals(1, bench().drawing("dash", "", wires -> wires.connector("J7", "is plug4", "mates J1 of front")
                .circuit("12", "", cut -> cut.wire("a", "from J7:4", "to J7:1")))
                .drawing("front", "", wires -> wires.connector("J1", "is socket2", "mates J7 of dash")).check(RULE)
                .size());
    }

    @Test
    void mappedCavitiesMeet() {
        assertEquals(List.of(), bench().drawing("dash", "", wires -> wires.connector("J7", "is socket2"))
                .drawing("front", "", wires -> wires.connector("J1", "is plug4", "mates J7 of dash", "map 4 to 2",
                        "map 3 to 1").circuit("12", "", cut -> cut.wire("a", "from J1:4", "to J1:3"))).check(RULE));
    }

    @Test
    void aMapToACavityThatTheMateDoesNotHave() {
        assertEquals(List.of("error front:J1: cavity 1 of J1 is mapped to cavity 3, which connector J7 of dash does not"
                + " have when fan"), bench().drawing("dash", "", wires -> wires.connector("J7", "is socket2"))
                .drawing("front", "", wires -> wires.connector("J1", "is plug4", "mates J7 of dash",
                        "map 1 to 3 when fan").circuit("12", "", cut -> cut.wire("a", "from J1:1", "to J1:2")))
                .check(RULE));
    }

    @Test
    void pinsOfADevice() {
        WrittenBench bench = bench().device("L", "is lamp2").drawing("front", "", wires -> wires
                .connector("H1", "is plug4", "mates L")
                .circuit("12", "", cut -> cut.wire("a", "from H1:1", "to H1:3").wire("b", "from H1:2", "to H1:2")));
        assertEquals(List.of("error front:12a: wire 12a ends in cavity H1:3, and device L has no cavity that meets it"
                + " when every vehicle"), bench.check(RULE));
    }

    @Test
    void familiesOfFusesAndRelaysAreSomethingElse() {
        assertEquals(List.of(), bench().part(Part.Kind.RELAY, "relay", "family mini", "pins 1 2")
                .device("K", "is relay").drawing("front", "", wires -> wires
                        .connector("H1", "is socket2", "mates K")).check(RULE));
    }

    @Test
    void aHalfThatListsNoCavitiesMeetsEverything() {
        assertEquals(List.of(), bench().part(Part.Kind.HOUSING, "plain").drawing("dash", "", wires -> wires
                .connector("J7", "is plain"))
                .drawing("front", "", wires -> wires.connector("J1", "is plug4", "mates J7 of dash")
                        .circuit("12", "", cut -> cut.wire("a", "from J1:4", "to J1:1"))).check(RULE));
    }
}
