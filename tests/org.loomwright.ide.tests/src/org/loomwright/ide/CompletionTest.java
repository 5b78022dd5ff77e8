// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.ide.complete.Proposal;
import org.loomwright.quantity.Cancel;

/** What is proposed fits: each test names the thing that must be there and the one that must not. */
class CompletionTest {

    private static final String FRONT = "front-1964.loom";
    private static final String HARNESS = "front-harness.loom";
    private static final String WIRE = "        wire a 14 ga from J1:1 to S12\n";
    private static final String DATUM = "    datum bulkhead\n";

    private final Bench orrin = Bench.orrin();

    private List<String> after(String file, String piece, String typed) {
        return Bench.texts(orrin.completions(file, piece, typed));
    }

    @Test
    void aLineStartsWithTheKeywordsOfItsBlock() {
        assertEquals(List.of("as", "colour", "note", "splice", "stands", "wire"), after(FRONT, WIRE, "        "));
        List<String> drawing = after(FRONT, DATUM, "    ");
        assertTrue(drawing.containsAll(List.of("branch", "connector", "circuit", "trunk")));
        assertFalse(drawing.contains("covers"), "only a harness covers");
        assertTrue(after(HARNESS, DATUM, "    ").contains("covers"));
        assertEquals(List.of("catalogue", "drawing", "harness", "kit", "platform", "practice", "waive"),
                Bench.texts(Services.complete(Bench.of("a.loom", "").moment(), "a.loom", 0, Cancel.NEVER)));
    }

    /** Whoever does not know the language yet reads there what a line looks like and what it says. */
    @Test
    void theFirstWordOfALineComesWithItsForm() {
        String text = "platform p {\n    mode m {\n    }\n    device d {\n    }\n}\ncatalogue c {\n    lamp l {\n"
                + "    }\n}\ndrawing d of p {\n    trunk t {\n    }\n    connector A {\n    }\n    circuit 1 {\n"
                + "        wire a {\n        }\n    }\n}\nharness h of p {\n}\nkit k {\n}\npractice q {\n}\n";
        Bench bench = Bench.of("a.loom", text);
        int asked = 0;
        for (int at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) {
            for (Proposal each : Services.complete(bench.moment(), "a.loom", at + 1, Cancel.NEVER)) {
                assertFalse(each.detail().isEmpty() || each.more().isEmpty(), each::toString);
                asked++;
            }
        }
        assertTrue(asked > 100, "" + asked);
    }

    @Test
    void aCavityIsProposedWhenNoWireIsInIt() {
        assertEquals(List.of("7", "9", "10", "11", "12"), after(FRONT, WIRE, "        wire q 14 ga from J1:"));
        assertEquals(List.of("10", "11", "12"), after(FRONT, WIRE, "        wire q 14 ga from J1:1").subList(0, 3),
                "the prefix is matched where the name begins");
    }

    @Test
    void aConnectorIsProposedWhileItHasRoom() {
        List<Proposal> ends = orrin.completions(FRONT, WIRE, "        wire q 14 ga from ");
        List<String> texts = Bench.texts(ends);
        assertEquals("S12", texts.getFirst(), "the splice of the circuit comes first");
        assertTrue(texts.contains("J1") && texts.contains("G1") && texts.contains("battery"));
        assertFalse(texts.contains("H1"), "all three cavities of the headlamp are taken");
        assertEquals("5 of 12 cavities free", ends.stream().filter(each -> each.text().equals("J1")).findFirst()
                .orElseThrow().more());
    }

    @Test
    void aConnectorStandsWhereTheDrawingReaches() {
        List<String> places = after(FRONT, DATUM, "    connector X1 at ");
        assertTrue(places.containsAll(List.of("bulkhead", "headlampLeft", "frontPanel")));
        assertFalse(places.contains("tailLeft"), "no branch goes to the tail");
        assertTrue(after(FRONT, DATUM, "    branch b9 from tray to ").contains("tailLeft"), "a branch may go there");
    }

    @Test
    void aPlaceThatTheVehiclesDoNotHaveIsLeftOut() {
        List<String> places = after(FRONT, DATUM, "    branch b9 from tray to ");
        assertTrue(places.contains("column"));
        assertFalse(places.contains("gearTunnel"), "the gear lever came in 1970, the drawing ends in 1967");
    }

    @Test
    void aChoiceThatCannotBeIsLeftOut() {
        List<String> choices = after(FRONT, DATUM, "    cable pvc85 when ");
        assertTrue(choices.containsAll(List.of("saloon", "estate", "heater", "year")));
        assertFalse(choices.contains("coupe"), "the drawing is not for coupes");
        List<String> second = after(FRONT, DATUM, "    cable pvc85 when saloon and ");
        assertFalse(second.contains("estate"), "no saloon is an estate");
        assertTrue(after(FRONT, DATUM, "    cable pvc85 when saloon or ").contains("estate"));
        assertTrue(after(FRONT, DATUM, "    cable pvc85 when year ").containsAll(List.of("<=", ">=", "!=")));
        assertTrue(after(FRONT, DATUM, "    cable pvc85 when year <= ").containsAll(List.of("1964", "1967", "1971")));
    }

    @Test
    void aTerminalTakesTheWireOfItsCavity() {
        String text = """
                platform p {
                    years 1964 .. 1965
                    place box
                }
                catalogue c {
                    housing two {
                        cavities 1 .. 2
                    }
                    terminal small {
                        takes 0.5 mm2 .. 1 mm2
                    }
                    terminal large {
                        takes 4 mm2 .. 6 mm2
                    }
                    terminal any
                    cable thin {
                        size 18 ga
                    }
                    cable thick {
                        size 10 ga
                    }
                }
                drawing d of p {
                    datum box
                    connector A at box is two {
                        map 1 to 1
                    }
                    circuit 1 BK {
                        wire a 18 ga from A:1 to A:2
                    }
                }
                """;
        Bench bench = Bench.of("a.loom", text);
        List<String> terminals = Bench.texts(bench.completions("a.loom", "        map 1 to 1\n",
                "        terminal 1 is "));
        assertTrue(terminals.contains("small") && terminals.contains("any"), terminals.toString());
        assertFalse(terminals.contains("large"), "an 18 ga wire has less than 1 mm2");
        assertFalse(terminals.contains("two"), "a housing is no terminal");
        List<String> cables = Bench.texts(bench.completions("a.loom", "wire a 18 ga from A:1 to A:2", " cable "));
        assertTrue(cables.contains("thin") && cables.contains("linkLead18"), cables.toString());
        assertFalse(cables.contains("thick"), "it is not made in 18 ga");
    }

    @Test
    void aUnitMeasuresWhatStandsThere() {
        assertTrue(after(FRONT, WIRE, "        wire q 14 ").containsAll(List.of("ga", "awg", "mm2")));
        List<String> lengths = after(FRONT, DATUM, "    branch b9 from tray to column 7 ");
        assertTrue(lengths.containsAll(List.of("mm", "in")));
        assertFalse(lengths.contains("V"));
        assertTrue(after("orrin.loom", "negative ground\n", "    zone z ambient 80 ").contains("C"));
    }

    @Test
    void aMateIsFreeAndAtTheSamePlaceFirst() {
        List<String> mates = after(FRONT, DATUM, "    connector X1 on bHorn mates ");
        assertFalse(mates.contains("horn"), "N1 is plugged into the horn");
        assertEquals("fan", mates.getFirst(), "the fan sits at the front panel too");
    }

    @Test
    void stockPartsAreProposedBesideThoseOfTheProject() {
        List<String> parts = after(HARNESS, DATUM, "    fit x is ");
        assertTrue(parts.contains("conduit13") && parts.contains("conduit19"), parts.toString());
        assertTrue(parts.indexOf("conduit13") < parts.indexOf("conduit19"), "the project's own come first");
        assertFalse(parts.contains("crossLinked125"), "a cable is not fitted");
    }

    @Test
    void nothingIsProposedInACommentOrAText() {
        assertEquals(List.of(), after(FRONT, DATUM, "    // connector "));
        assertEquals(List.of(), after(FRONT, DATUM, "    note \"connec"));
    }

    @Test
    void aWaiverNamesARuleAndWhatItObjectsTo() {
        String top = "// so the slack is in the figures.\n";
        assertTrue(after(FRONT, top, "waive cavity-").contains("cavity-taken-twice"));
        assertTrue(after(FRONT, top, "waive no-protection on ").contains("front64"));
        assertTrue(after(FRONT, top, "waive no-protection on front64:").contains("1a"));
    }
}
