// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.merge.Merged;
import org.loomwright.compare.merge.MergeConflict;
import org.loomwright.harness.Problem;

/** Small merges, each with the answer that a person wants. */
class MergeTest {

    private static final String BASE = """
            // What the front needs.
            harness front "Front" of orrin {
                covers front64, front67
                serviceLoop 40 mm

                connector J1 "Plug" at bulkhead is plug12 {
                    terminal 1 is tab63
                }
                connector H1 at lampLeft

                // The main feed.
                circuit 30 "Main feed" BN {
                    wire a 18 ga from J1:1 to H1:1  // short
                    wire b 16 ga from J1:2 to H1:2
                }
                circuit 31 "Ground" BK {
                    wire a 18 ga from J1:3 to H1:3
                }
            }
            """;

    private final Merging merging = new Merging();

    private static String edited(String text, String... replacements) {
        String edited = text;
        for (int i = 0; i < replacements.length; i += 2) {
            assertTrue(edited.contains(replacements[i]), replacements[i]);
            edited = edited.replace(replacements[i], replacements[i + 1]);
        }
        return edited;
    }

    private void merges(String ours, String theirs, String expected) {
        Merged merged = merging.merge(BASE, ours, theirs);
        assertEquals(expected, merged.text());
        assertEquals(List.of(), merged.conflicts());
    }

    private static String sizes(String a, String colour) {
        return edited(BASE, "wire a 18 ga from J1:1", "wire a " + a + colour + " from J1:1");
    }

    @Test
    void twoFactsOfOneLineAreMerged() {
        merges(sizes("16 ga", ""), sizes("18 ga", " RD"), sizes("16 ga", " RD"));
        merges(sizes("18 ga", " RD"), sizes("16 ga", ""), sizes("16 ga", " RD"));
    }

    @Test
    void theSameChangeOnBothSidesIsOne() {
        merges(sizes("16 ga", ""), sizes("16 ga", ""), sizes("16 ga", ""));
    }

    @Test
    void oneFactThatBothChangedIsAConflictThatIsReadBack() {
        Merged merged = merging.merge(BASE, sizes("16 ga", ""), sizes("14 ga", " RD"));
        assertEquals(edited(BASE, "        wire a 18 ga from J1:1 to H1:1  // short\n", """
                <<<<<<< ours
                        wire a 16 ga RD from J1:1 to H1:1  // short
                =======
                        wire a 14 ga RD from J1:1 to H1:1  // short
                >>>>>>> theirs
                """), merged.text());
        assertEquals(List.of(new MergeConflict("wire a of circuit 30 of harness front", "size", "18 ga", "16 ga",
                "14 ga", 13)), merged.conflicts());
        List<Problem> problems = merging.source(merged.text()).problems();
        assertEquals(List.of("wire a of circuit 30 of harness front: size is 16 ga in ours and 14 ga in theirs"),
                problems.stream().map(Problem::message).toList());
        assertEquals(13, problems.getFirst().span().line());
        assertEquals(String.join("\n", merging.facts(sizes("16 ga", " RD")).content()),
                String.join("\n", merging.facts(merged.text()).content()));
    }

    @Test
    void aHeadInConflictKeepsItsBlock() {
        Merged merged = merging.merge(BASE, edited(BASE, "\"Main feed\"", "\"Feed\""),
                edited(BASE, "\"Main feed\"", "\"Battery\"", "wire b 16 ga", "wire b 14 ga"));
        assertEquals(1, merged.conflicts().size());
        assertEquals("title", merged.conflicts().getFirst().fact());
        assertEquals(List.of("circuit 30 of harness front: title is \"Feed\" in ours and \"Battery\" in theirs"),
                merging.source(merged.text()).problems().stream().map(Problem::message).toList());
        assertTrue(merging.facts(merged.text()).content().toString().contains("14 ga"));
    }

    @Test
    void linesThatBothAddedAreBothKept() {
        String ours = edited(BASE, "to H1:2\n", "to H1:2\n        wire c 18 ga from J1:4 to H1:4\n");
        String theirs = edited(BASE, "to H1:2\n", "to H1:2\n        wire d 18 ga from J1:5 to H1:5\n");
        merges(ours, theirs, edited(BASE, "to H1:2\n", "to H1:2\n        wire c 18 ga from J1:4 to H1:4\n"
                + "        wire d 18 ga from J1:5 to H1:5\n"));
    }

    @Test
    void anElementThatBothAddedUnderOneNameIsOneElement() {
        String ours = edited(BASE, "to H1:2\n", "to H1:2\n        wire c 18 ga from J1:4 to H1:4\n");
        String theirs = edited(BASE, "to H1:2\n", "to H1:2\n        wire c 16 ga from J1:4 to H1:4\n");
        Merged merged = merging.merge(BASE, ours, theirs);
        assertEquals("wire c of circuit 30 of harness front: size 18 ga in ours, 16 ga in theirs; was nothing",
                merged.conflicts().getFirst().words());
    }

    @Test
    void whatOneSideRenamedIsNamedSoByWhatTheOtherAdded() {
        String ours = edited(BASE, "J1", "K7");
        String theirs = edited(BASE, "to H1:2\n", "to H1:2\n        wire c 18 ga from J1:4 to H1:4\n");
        String both = edited(theirs, "J1", "K7");
        merges(ours, theirs, both);
        merges(theirs, ours, both);
    }

    @Test
    void twoNewNamesAreOneConflict() {
        Merged merged = merging.merge(BASE, edited(BASE, "J1", "K7"), edited(BASE, "J1", "L8"));
        assertEquals(List.of("connector K7 of harness front: name K7 in ours, L8 in theirs; was J1"),
                merged.conflicts().stream().map(MergeConflict::words).toList());
    }

    @Test
    void aRemovedLineStaysRemovedUnlessTheOtherSideChangedIt() {
        String gone = edited(BASE, "        wire b 16 ga from J1:2 to H1:2\n", "");
        merges(gone, sizes("16 ga", ""), edited(gone, "wire a 18 ga from J1:1", "wire a 16 ga from J1:1"));
        Merged merged = merging.merge(BASE, gone, edited(BASE, "wire b 16 ga", "wire b 14 ga"));
        assertEquals("wire b of circuit 30 of harness front: as a whole removed in ours, changed in theirs; was there",
                merged.conflicts().getFirst().words());
        assertEquals(List.of("wire b of circuit 30 of harness front: removed in ours and changed in theirs"),
                merging.source(merged.text()).problems().stream().map(Problem::message).toList());
        Merged other = merging.merge(BASE, edited(BASE, "wire b 16 ga", "wire b 14 ga"), gone);
        assertEquals(1, other.conflicts().size());
        assertTrue(merging.facts(other.text()).content().toString().contains("14 ga"), other.text());
    }

    @Test
    void aWireThatOneSideMovedHasWhatTheOtherChanged() {
        String moved = edited(BASE, "        wire b 16 ga from J1:2 to H1:2\n", "", "to H1:3\n",
                "to H1:3\n        wire b 16 ga from J1:2 to H1:2\n");
        merges(moved, edited(BASE, "wire b 16 ga", "wire b 14 ga"), edited(moved, "wire b 16 ga", "wire b 14 ga"));
    }

    @Test
    void membersOfAListAreFactsOfTheirOwn() {
        merges(edited(BASE, "front64, front67", "front64, front67, front70"),
                edited(BASE, "front64, front67", "frontCoupe, front67"),
                edited(BASE, "front64, front67", "frontCoupe, front67, front70"));
    }

    @Test
    void commentsGoWithWhatTheyStandAbove() {
        String ours = edited(BASE, "    // The main feed.\n", "    // The main feed, as measured.\n");
        String theirs = edited(BASE, "circuit 30 \"Main feed\" BN", "circuit 30 \"Main feed\" RD");
        merges(ours, theirs, edited(ours, "circuit 30 \"Main feed\" BN", "circuit 30 \"Main feed\" RD"));
    }

    @Test
    void aBlockThatOneSideOpenedTakesWhatTheOtherSaysOfItsHead() {
        String ours = edited(BASE, "connector H1 at lampLeft\n", "connector H1 at lampLeft {\n"
                + "        terminal 1 is tab63\n    }\n");
        String theirs = edited(BASE, "connector H1 at lampLeft", "connector H1 \"Lamp\" at lampLeft");
        merges(ours, theirs, edited(ours, "connector H1 at", "connector H1 \"Lamp\" at"));
        merges(theirs, ours, edited(ours, "connector H1 at", "connector H1 \"Lamp\" at"));
    }

    @Test
    void lineEndsOfOneSideAreThoseOfTheResult() {
        String ours = BASE.replace("\n", "\r\n");
        String theirs = sizes("16 ga", "");
        String more = edited(theirs, "to H1:2\n", "to H1:2\n        wire c 18 ga from J1:4 to H1:4\n");
        merges(ours, more, more.replace("\n", "\r\n"));
        merges(more, ours, more.replace("\n", "\r\n"));
        merges("\ufeff" + ours, more, "\ufeff" + more.replace("\n", "\r\n"));
    }

    @Test
    void aReformattedSideTakesTheFactsOfTheOther() {
        String ours = edited(BASE, "        wire a 18 ga from", "\twire  a   18 ga  from");
        merges(ours, edited(BASE, "wire a 18 ga from J1:1", "wire a 16 ga from J1:1"),
                edited(ours, "18 ga  from J1:1", "16 ga  from J1:1"));
    }

    /** A line that the other side added or changed names a renamed option by its new name, in its condition too. */
    @Test
    void conditionsOfTheOtherSideFollowARenamedOption() {
        String base = """
                platform car {
                    years 1964 .. 1971
                    break late66 in 1966
                    option heater "Heater"
                    option fan "Fan"
                    never fan and year < 1966
                    place shelf
                }
                harness ours of car {
                    connector J1 at shelf when heater
                    connector J2 at shelf when fan
                }
                """;
        String renamed = base.replace("heater", "warmAir").replace("late66", "facelift");
        String more = edited(base, "J1 at shelf when heater\n", "J1 at shelf when heater\n"
                + "    connector J3 at shelf when heater and year >= late66\n", "when fan\n", "when fan or heater\n",
                "    place shelf\n", "    never heater and not fan\n    place shelf\n");
        String both = more.replace("heater", "warmAir").replace("late66", "facelift");
        assertEquals(both, merging.merge(base, renamed, more).text());
        assertEquals(both, merging.merge(base, more, renamed).text());
    }

    @Test
    void conditionsOfTheOtherSideFollowARenamedMemberOfAGroup() {
        String base = """
                platform car {
                    group body of saloon, coupe
                    option fan "Fan"
                    never tall: coupe and fan
                    place shelf
                }
                harness ours of car {
                    connector J1 at shelf when coupe
                }
                """;
        String renamed = base.replace("coupe", "hardtop");
        String more = edited(base, "saloon, coupe", "saloon, coupe, van", "when coupe\n", "when coupe or fan\n"
                + "    connector J3 at shelf when body = coupe\n");
        String both = more.replace("coupe", "hardtop");
        assertEquals(both, merging.merge(base, renamed, more).text());
        assertEquals(both, merging.merge(base, more, renamed).text());
        Merged torn = merging.merge(base, renamed, base.replace("coupe", "fastback"));
        assertEquals(List.of("never tall of platform car: says : hardtop and fan in ours, : fastback and fan in "
                + "theirs; was : coupe and fan", "connector J1 of harness ours: when hardtop in ours, fastback in "
                + "theirs; was coupe"), torn.conflicts().stream().map(MergeConflict::words).toList());
    }

    private static final String WAIVED = """
            platform car {
                place shelf
            }
            harness front of car {
                connector J1 at shelf
                circuit 7 "Feed" RD {
                    wire a 18 ga from J1:1 to J1:2
                    wire b 18 ga from J1:3 to J1:4
                }
            }
            waive orphan-wire on front:7a because "one"
            waive known: orphan-wire on front:7b because "two"
            """;

    /** A wire's label is made of two names; a line that the other side changed or added has the new one. */
    @Test
    void waiversOfTheOtherSideFollowARenamedWire() {
        String more = edited(WAIVED, "7a because \"one\"", "7a because \"one as well\"",
                "because \"two\"\n", "because \"two\" until 2031-01-01\n"
                        + "waive excess-slack on front:7a because \"x\"\n");
        for (String[] rename : new String[][] {{"wire a", "wire feed", "7a", "7feed"},
            {"circuit 7", "circuit 8", "7a", "8a", "7b", "8b"}, {"circuit 7", "circuit F", "7a", "F_a", "7b", "F_b"},
            {"circuit 7 \"Feed\"", "circuit F \"Feed\"", "wire a", "wire feed", "7a", "F_feed", "7b", "F_b"},
            {"J1", "J2"}, {"front", "bow"}}) {
            String renamed = edited(WAIVED, rename);
            String both = edited(more, rename);
            assertEquals(both, merging.merge(WAIVED, renamed, more).text());
            assertEquals(both, merging.merge(WAIVED, more, renamed).text());
        }
    }

    @Test
    void aFileWithoutALastLineEndIsMerged() {
        String base = "platform p {\n    years 1964 .. 1971\n}";
        assertEquals("platform p {\n    years 1964 .. 1972\n}\nzone z\n", merging.merge(base, base + "\nzone z\n",
                "platform p {\n    years 1964 .. 1972\n}").text());
    }
}
