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
import org.loomwright.rules.Finding;
import org.loomwright.rules.WrittenBench;

class WrongSystemVoltageTest {

    private static final String RULE = "wrong-system-voltage";

    private static WrittenBench bench(String supply) {
        return new WrittenBench().supply(supply, true).upgrade("fan").ground("body")
                .part(Part.Kind.SOURCE, "battery", "voltage " + supply, "polarity plus", "pins plus minus")
                .part(Part.Kind.CABLE, "pvc").part(Part.Kind.RESISTOR_CABLE, "ballast", "resistance 1.5 ohm")
                .part(Part.Kind.HOUSING, "way1", "pins 1").device("B", "is battery", "on body");
    }

    /** Design voltages of published lamps suit the system that they are published for, and no other. */
    @ParameterizedTest
    @CsvFileSource(resources = "lamp-design-voltages.csv")
    void publishedLampsSuitTheirSystem(String lamp, String system, String voltage) {
        for (String supply : List.of("6", "12", "24")) {
            int found = bench(supply + " V").part(Part.Kind.LAMP, "lamp", "voltage " + voltage + " V", "pins 1")
                    .device("L", "is lamp").check(RULE).size();
            assertEquals(supply.equals(system) ? 0 : 1, found, lamp + " on " + supply + " V");
        }
    }

    @ParameterizedTest
    @CsvSource({"9 V,0", "8.9 V,1", "16.2 V,0", "16.3 V,1", "6 V .. 12 V,0", "24 V .. 28 V,1", "6 V .. 8 V,1"})
    void theBandOfTwelveVolts(String voltage, int findings) {
        assertEquals(findings, bench("12 V").part(Part.Kind.LOAD, "load", "voltage " + voltage, "pins 1")
                .device("L", "is load").check(RULE).size());
    }

    @Test
    void inSomeVehiclesOnlyWithTheSum() {
        List<Finding> found = bench("12 V").part(Part.Kind.MOTOR, "blower6", "voltage 6 V", "pins 1")
                .part(Part.Kind.MOTOR, "blower12", "voltage 12 V", "pins 1")
                .device("M", "is blower6 when fan", "is blower12 when not fan").findings(RULE);
        assertEquals(List.of("M is made for 6 V, and the platform's supply has 12 V"),
                found.stream().map(Finding::sentence).toList());
        assertEquals("fan", found.getFirst().affected().orElseThrow().words());
        assertTrue(found.getFirst().derivation().getFirst().startsWith("6 V / 12 V = 0.50, outside 0.75 to 1.35"));
    }

    @Test
    void aRatedVoltageIsNoDesignVoltage() {
        assertEquals(List.of(), bench("12 V").part(Part.Kind.FUSE, "blade", "voltage 32 V", "pins 1 2")
                .device("F", "is blade").check(RULE));
    }

    @Test
    void withoutASupplyNothingIsAsked() {
        assertEquals(List.of(), new WrittenBench().part(Part.Kind.LOAD, "load", "voltage 6 V", "pins 1")
                .device("L", "is load").check(RULE));
    }

    @Test
    void aSourceOfAnotherVoltage() {
        assertEquals(1, bench("12 V").part(Part.Kind.SOURCE, "dynamo", "voltage 7 V", "pins 1").device("D", "is dynamo")
                .check(RULE).size());
    }

    private static List<String> coil(String... facts) {
        return bench("12 V").part(Part.Kind.LOAD, "coil7", "voltage 7.5 V", "pins 1").device("C", "is coil7", "on body")
                .harness("front", wires -> wires.circuit("15", "", cut -> cut.wire("a", facts))).check(RULE);
    }

    @Test
    void aCoilBehindItsBallastCable() {
        assertEquals(List.of(), coil("from B:plus", "to C:1", "cable ballast"));
        assertEquals(List.of("error orrin:C: C is made for 7.5 V, and the platform's supply has 12 V when"
                + " every vehicle"), coil("from B:plus", "to C:1", "cable pvc"));
        assertEquals(List.of("error orrin:C: C is made for 7.5 V, and the platform's supply has 12 V when"
                + " year <= 1966"), coil("from B:plus", "to C:1", "cable ballast when year > 1966",
                        "cable pvc when year <= 1966"));
    }

    @Test
    void aBallastWithABypassWhileCranking() {
        assertEquals(List.of(), bench("12 V").part(Part.Kind.LOAD, "coil7", "voltage 7.5 V", "pins 1")
                .part(Part.Kind.SWITCH, "key", "pins 30 15 50", "joins 30 to 15", "joins 30 to 50")
                .device("C", "is coil7", "on body").device("K", "is key")
                .harness("front", wires -> wires.circuit("15", "", cut -> cut.splice("S1", "pvc")
                        .wire("a", "from B:plus", "to K:30").wire("b", "from K:15", "to S1", "cable ballast")
                        .wire("c", "from K:50", "to S1").wire("d", "from S1", "to C:1"))).check(RULE));
    }

    @Test
    void aBallastOfItsOwnAndOneInsideAPart() {
        for (String part : List.of("resistance 1.5 ohm", "joins 1 to 2 through 1.5 ohm")) {
            assertEquals(List.of(), bench("12 V").part(Part.Kind.LOAD, "coil7", "voltage 7.5 V", "pins 1")
                    .part(Part.Kind.ASSEMBLY, "block", "pins 1 2", part)
                    .device("C", "is coil7", "on body").device("R", "is block")
                    .harness("front", wires -> wires.circuit("15", "", cut -> cut.wire("a", "from B:plus", "to R:1")
                            .wire("b", "from R:2", "to C:1"))).check(RULE), part);
        }
    }

    @Test
    void aSwitchContactIsNoBallast() {
        assertEquals(1, bench("12 V").part(Part.Kind.LOAD, "coil7", "voltage 7.5 V", "pins 1")
                .part(Part.Kind.SWITCH, "key", "pins 1 2", "joins 1 to 2 through 20 mohm")
                .device("C", "is coil7", "on body").device("K", "is key")
                .harness("front", wires -> wires.circuit("15", "", cut -> cut.wire("a", "from B:plus", "to K:1")
                        .wire("b", "from K:2", "to C:1"))).check(RULE).size());
    }

    @Test
    void aLampOfAnotherVoltageBesideABulbIsStillWrong() {
        assertEquals(1, bench("12 V").part(Part.Kind.LAMP, "lamp6", "voltage 6 V", "pins 1 2")
                .part(Part.Kind.LAMP, "lamp12", "voltage 12 V", "pins 1 2", "joins 1 to 2 through 4 ohm")
                .device("L", "is lamp6").device("M", "is lamp12")
                .harness("front", wires -> wires.stud("G", "body").circuit("15", "", cut -> cut.splice("S1", "pvc")
                        .wire("a", "from B:plus", "to S1").wire("b", "from S1", "to L:1").wire("c", "from S1", "to M:1")
                        .wire("d", "from L:2", "to G").wire("e", "from M:2", "to G"))).check(RULE).size());
    }
}
