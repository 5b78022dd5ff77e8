// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.clause;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ClauseLineTest {

    private static String keys(String line) {
        return ClauseLine.of(line).clauses().stream().map(each -> each.key() + "=" + each.value())
                .collect(Collectors.joining("; "));
    }

    @Test
    void aWireStatesSizeColourAndEnds() {
        assertEquals("kind=wire; name=a; size=18 ga; colour=RD / BK; from=J1 : 1; to=H1 : in; length=7 1 / 2 in; "
                + "cable=x; when=fan and year > = 1970", keys("    wire a 18 ga RD/BK from J1:1 to H1:in length"
                + " 7 1/2 in cable x when fan and year >= 1970  // note\n"));
    }

    @Test
    void aBranchStatesItsLengthBehindItsPlace() {
        assertEquals("kind=branch; name=b1; from=wing; to=lamp; length=250 mm ± 2 mm from sheet",
                keys("branch b1 from wing to lamp 250 mm ± 2 mm from sheet"));
    }

    @Test
    void aFactHasNoName() {
        assertTrue(ClauseLine.of("size 16 ga when fan\n").isFact());
        assertTrue(ClauseLine.of("never coupe and year < 1966\n").isFact());
        assertFalse(ClauseLine.of("never start: coupe and year < 1966\n").isFact());
        assertFalse(ClauseLine.of("cable thin \"Thin\" {\n").isFact());
        assertTrue(ClauseLine.of("cable thin\n").isFact());
        assertEquals("terminal 7", ClauseLine.of("terminal 7 is tab63 when fan\n").subject());
        assertEquals("slack before wing", ClauseLine.of("slack before wing at most 20 mm\n").subject());
    }

    @Test
    void membersOfListsAreClauses() {
        assertEquals("covers=covers; covers front64=front64; covers front67=front67",
                keys("covers front64, front67").replace("covers front64=covers front64", "covers front64=front64"));
    }

    @Test
    void namesAreChangedWhereTheyAreNames() {
        assertEquals("wire J1 18 ga from K9:J1 to H1:1 legend \"J1\"  // J1\n", ClauseLine.renamed(
                "wire J1 18 ga from J1:J1 to H1:1 legend \"J1\"  // J1\n", Map.of("J1", "K9"), Map.of("J1", "J1"),
                Map.of("J1", "X")));
    }

    @Test
    void whatWaiversAcceptAndConstraintsSayBehindTheirNamesIsChanged() {
        assertEquals("never J1: K9 and fan\n", ClauseLine.renamed("never J1: J1 and fan\n", Map.of("J1", "K9"),
                Map.of("J1", "J1"), Map.of()));
        assertEquals("waive J1: J1 on front:7b because \"J1\"\n", ClauseLine.renamed(
                "waive J1: J1 on front:J1 because \"J1\"\n", Map.of("J1", "K9"), Map.of("J1", "J1"),
                Map.of("J1", "7b")));
        assertEquals("waive J1 on bow:7b because \"J1\"\n", ClauseLine.renamed(
                "waive J1 on front:J1 because \"J1\"\n", Map.of("front", "bow"), Map.of("x", "x"),
                Map.of("J1", "7b")));
    }

    /** Whatever stands in a line, taking it apart and putting it together changes nothing. */
    @Test
    void nothingIsLost() {
        String[] pieces = {"wire", "a", "18", " ", "  ", "\t", "ga", "\"x y\"", "\"open", "{", "}", ",", ":", "/", "..",
            "// c", "/* m */", "/* n", "from", "to", "on", "covers", "for", "\u00b0", "-", "\u00b1", "when", "never"};
        Random random = new Random(5);
        for (int i = 0; i < 20_000; i++) {
            StringBuilder line = new StringBuilder();
            for (int size = random.nextInt(12); size > 0; size--) {
                line.append(pieces[random.nextInt(pieces.length)]);
            }
            line.append(new String[] {"", "\n", "\r\n"}[random.nextInt(3)]);
            assertEquals(line.toString(), ClauseLine.of(line.toString()).text());
        }
    }
}
