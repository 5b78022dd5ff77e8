// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

class FuseNotIdentifiedTest {

    private static final String RULE = "fuse-not-identified";

    private static List<String> fuse(Part.Kind kind, String... facts) {
        return new WrittenBench().upgrade("fan").part(kind, "F", facts).device("F1", "is F", "when fan").check(RULE);
    }

    @Test
    void aFuseThatSaysWhatItIs() {
        assertEquals(List.of(), fuse(Part.Kind.FUSE, "family blade", "basis continuous", "rating 10 A", "pins 1 2"));
        assertEquals(List.of(), fuse(Part.Kind.FUSE, "family glass", "basis blow", "rating 35 A", "pins 1 2"));
        assertEquals(List.of(), fuse(Part.Kind.BREAKER, "rating 30 A", "pins 1 2"));
        assertEquals(List.of(), fuse(Part.Kind.FUSIBLE_LINK, "size 16 ga", "pins 1 2", "protects 1 to 2"));
        assertEquals(List.of(), fuse(Part.Kind.ASSEMBLY, "family blade", "basis continuous", "pins a b c",
                "protects a to b through 10 A", "protects a to c through 5 A"));
        assertEquals(List.of(), fuse(Part.Kind.ASSEMBLY, "pins a b", "joins a to b"));
    }

    @Test
    void aFuseWithoutFamilyAndBasis() {
        assertEquals(List.of("warning orrin:F: fuse F states neither its family nor what its rating means when fan"),
                fuse(Part.Kind.FUSE, "rating 35 A", "pins 1 2"));
        assertEquals(List.of("warning orrin:F: part F states neither its family nor what its rating means when fan"),
                fuse(Part.Kind.ASSEMBLY, "pins a b", "protects a to b through 10 A"));
    }

    @Test
    void aBasisThatMeansNothing() {
        assertEquals(List.of("warning orrin:F: fuse F has the basis \"slow\", which is neither continuous nor blow"
                + " when fan"), fuse(Part.Kind.FUSE, "family glass", "basis slow", "rating 35 A", "pins 1 2"));
    }

    @Test
    void oneOfFamilyAndBasisIsWorthANote() {
        assertEquals(List.of("note orrin:F: fuse F does not state its family when fan"),
                fuse(Part.Kind.FUSE, "basis blow", "rating 35 A", "pins 1 2"));
        assertEquals(List.of("note orrin:F: fuse F does not state what its rating means; by its family it is taken for"
                + " what it carries when fan"), fuse(Part.Kind.FUSE, "family glass", "rating 35 A", "pins 1 2"));
    }

    @Test
    void aFuseWithoutRating() {
        assertEquals(List.of("warning orrin:F: fuse F states no rating when fan"),
                fuse(Part.Kind.FUSE, "family blade", "basis continuous", "pins 1 2"));
        assertEquals(List.of("warning orrin:F: breaker F states no rating when fan"),
                fuse(Part.Kind.BREAKER, "pins 1 2"));
        assertEquals(List.of("warning orrin:F: part F states no rating when fan"),
                fuse(Part.Kind.ASSEMBLY, "family blade", "basis continuous", "pins a b c",
                        "protects a to b through 10 A", "protects a to c"));
    }

    @Test
    void aRatingInSomeVehiclesOnly() {
        assertEquals(List.of("warning orrin:F: fuse F states no rating when year >= 1969 and fan"),
                fuse(Part.Kind.FUSE, "family blade", "basis continuous", "rating 10 A when year <= 1968", "pins 1 2"));
    }

    @Test
    void onePartOfManyDevicesIsOneFinding() {
        assertEquals(List.of("warning orrin:F: fuse F states neither its family nor what its rating means when"
                + " every vehicle"), new WrittenBench().upgrade("fan")
                .part(Part.Kind.FUSE, "F", "rating 8 A", "pins 1 2").device("F1", "is F", "when fan")
                .drawing("front", "", wires -> wires.device("F2", "is F", "when not fan")
                        .device("F3", "is F", "when not fan")).check(RULE));
    }

    @Test
    void aPartThatNoDeviceIsIsNotAsked() {
        assertEquals(List.of(), new WrittenBench().part(Part.Kind.FUSE, "F", "rating 8 A", "pins 1 2").check(RULE));
    }
}
