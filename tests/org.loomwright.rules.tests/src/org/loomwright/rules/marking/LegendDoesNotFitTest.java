// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

class LegendDoesNotFitTest {

    private static final String RULE = "legend-does-not-fit";

    private static WrittenBench bench() {
        return new WrittenBench().upgrade("fan").part(Part.Kind.HOUSING, "way2", "pins 1 2");
    }

    private static WrittenBench harness(String... facts) {
        return bench().harness("front", wires -> wires.connector("J1", "is way2")
                .circuit("12", "", cut -> cut.wire("a", facts)));
    }

    /** 2 mm a character against the cut length less 30 mm; a stated length is cut 2 mm longer, in steps of 5 mm. */
    @ParameterizedTest
    @CsvSource({"58 mm,123456789012345,0", "58 mm,1234567890123456,1", "53 mm,123456789012,0", "53 mm,1234567890123,1",
        "10 mm,1,1", "900 mm,12 DIPPED BEAM LEFT HEADLAMP,0"})
    void aLegendAgainstItsWire(String length, String legend, int findings) {
        assertEquals(findings, harness("from J1:1", "to J1:2", "length " + length, "legend " + legend).check(RULE)
                .size());
    }

    @Test
    void inSomeVehiclesOnly() {
        assertEquals(List.of("warning front:12a: the legend \"12 DIP LEFT HEADLAMP\" is 40 mm long, and 35 mm of wire"
                + " 12a can be seen when fan"), harness("from J1:1", "to J1:2", "length 60 mm when fan",
                        "length 900 mm when not fan", "legend 12 DIP LEFT HEADLAMP").check(RULE));
    }

    @Test
    void theSumIsShown() {
        assertEquals(List.of("20 characters x 2 mm = 40 mm (common practice)",
                "cut length 65 mm - 2 x 15 mm at the ends (common practice) = 35 mm"),
                harness("from J1:1", "to J1:2", "length 60 mm", "legend 12 DIP LEFT HEADLAMP").findings(RULE)
                        .getFirst().derivation());
    }

    @Test
    void withoutLegendOrLengthNothingIsAsked() {
        assertEquals(List.of(), harness("from J1:1", "to J1:2", "length 10 mm").check(RULE));
        assertEquals(List.of(), harness("from J1:1", "to J1:2", "legend 12 DIP LEFT HEADLAMP").check(RULE));
    }

    @Test
    void drawingsAreNotPrinted() {
        assertEquals(List.of(), bench().drawing("front", "", wires -> wires.connector("J1", "is way2")
                .circuit("12", "", cut -> cut.wire("a", "from J1:1", "to J1:2", "length 10 mm", "legend 12 DIP")))
                .check(RULE));
    }
}
