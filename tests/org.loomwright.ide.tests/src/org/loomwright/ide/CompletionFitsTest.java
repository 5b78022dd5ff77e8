// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.ide.complete.Proposal;
import org.loomwright.quantity.Cancel;

/** Finer points of what fits: conditions while they are written, devices out of reach, words of parts. */
class CompletionFitsTest {

    private static final String FRONT = "front-1964.loom";
    private static final String DATUM = "    datum bulkhead\n";
    private static final String WIRE = "        wire a 14 ga from J1:1 to S12\n";

    private final Bench orrin = Bench.orrin();

    private List<String> after(String file, String piece, String typed) {
        return Bench.texts(orrin.completions(file, piece, typed));
    }

    private String detail(String typed, String text) {
        return orrin.completions(FRONT, DATUM, typed).stream().filter(each -> each.text().equals(text))
                .findFirst().map(Proposal::more).orElse("not there");
    }

    /** Whoever writes a condition anew is not held to the one that stands there. */
    @Test
    void aConditionIsNotJudgedByItself() {
        assertTrue(after(FRONT, DATUM, "    circuit 99 when coupe or ").containsAll(List.of("saloon", "estate")));
        assertFalse(after(FRONT, DATUM, "    circuit 99 when coupe or ").contains("coupe"));
        String text = orrin.text(FRONT)
                .replace("circuit 20 \"Side lamps\" RD {", "circuit 20 \"Side lamps\" RD when estate {")
                .replace("wire a 18 ga from J1:3 to S20", "wire a 18 ga from J1:3 to S20 when heater");
        Bench bench = orrin.copy().with(FRONT, text);
        for (String before : List.of("RD when ", "to S20 when ")) {
            List<String> choices = Bench.texts(Services.complete(bench.moment(), FRONT,
                    text.indexOf(before) + before.length(), Cancel.NEVER));
            assertTrue(choices.contains("halogen"), choices::toString);
            assertEquals(before.startsWith("RD"), choices.contains("saloon"), "a wire of an estate's circuit");
        }
        String head = "drawing other of orrin when saloon and ";
        Bench heads = orrin.copy().with("other.loom", head + "\n");
        List<String> ofHead = Bench.texts(Services.complete(heads.moment(), "other.loom", head.length(),
                Cancel.NEVER));
        assertTrue(ofHead.contains("heater") && !ofHead.contains("estate"), ofHead::toString);
    }

    /** A constraint rules vehicles out; while it is written, that must not rule out its own words. */
    @Test
    void aConstraintCanBeWrittenToItsEnd() {
        String after = "negative ground\n";
        assertTrue(after("orrin.loom", after, "    never estate and ").contains("heater"));
        assertTrue(after("orrin.loom", after, "    require heater when ").contains("estate"));
    }

    @Test
    void comparisonsBeforeItCount() {
        assertFalse(after(FRONT, DATUM, "    cable pvc85 when year <= 1965 and ").contains("late67"));
        assertFalse(after(FRONT, DATUM, "    cable pvc85 when body = saloon and ").contains("estate"));
        assertEquals("every vehicle that is meant here has it",
                detail("    cable pvc85 when body = saloon and ", "saloon"));
    }

    @Test
    void aMemberLeavesSomeVehicles() {
        List<String> equal = after(FRONT, DATUM, "    cable pvc85 when year = ");
        assertTrue(equal.containsAll(List.of("1964", "1967")) && !equal.contains("1968"), equal::toString);
        List<String> most = after(FRONT, DATUM, "    cable pvc85 when year <= ");
        assertTrue(most.indexOf("1966") < most.indexOf("1971"), "all are of 1971 at most: nothing would be said");
        assertFalse(after(FRONT, DATUM, "    cable pvc85 when year > ").contains("1969"));
        List<String> range = after(FRONT, DATUM, "    cable pvc85 when year 1966 .. ");
        assertTrue(range.contains("1967") && !range.contains("1964"), range::toString);
        assertFalse(after(FRONT, DATUM, "    cable pvc85 when body = ").contains("coupe"));
    }

    @Test
    void whatEveryVehicleHasCannotBeDenied() {
        assertFalse(after(FRONT, DATUM, "    cable pvc85 when saloon and not ").contains("saloon"));
        assertTrue(after(FRONT, DATUM, "    cable pvc85 when not ").contains("saloon"));
    }

    /** A connector's facts are about the vehicles that have the connector. */
    @Test
    void aFactOfAConnectorIsAboutItsVehicles() {
        String text = orrin.text(FRONT).replace("connector N1 \"Horn\" on bHorn is hornBlade mates horn",
                "connector N1 \"Horn\" on bHorn when estate {\n        is hornBlade when \n    }");
        List<String> choices = Bench.texts(Services.complete(orrin.copy().with(FRONT, text).moment(), FRONT,
                text.indexOf("is hornBlade when ") + "is hornBlade when ".length(), Cancel.NEVER));
        assertTrue(choices.contains("heater") && !choices.contains("saloon"), choices::toString);
    }

    @Test
    void aWireEndsWhereTheDrawingReaches() {
        List<String> ends = after(FRONT, WIRE, "        wire q 14 ga from ");
        assertTrue(ends.containsAll(List.of("battery", "horn")), ends::toString);
        assertFalse(ends.contains("fuelGauge"), "the gauge is on the dash, where no branch goes");
    }

    @Test
    void onlyABranchIsABranch() {
        for (String typed : List.of("    connector X on ", "    stud g via ")) {
            List<String> branches = after(FRONT, DATUM, typed);
            assertTrue(branches.contains("bHorn") && !branches.contains("main"), typed + branches);
        }
        List<String> capped = after("front-harness.loom", DATUM, "    cap ");
        assertTrue(capped.contains("bFog") && !capped.contains("main"), capped::toString);
        assertTrue(after(FRONT, DATUM, "    fit g is conduit13 on ").contains("main"), "a covering may be there");
    }

    @Test
    void aWaiverAsksThePlatformOfWhatItIsAbout() {
        String top = "// so the slack is in the figures.\n";
        List<String> choices = after(FRONT, top, "waive drop-too-high on front:12a because \"x\" when ");
        assertTrue(choices.contains("halogen") && !choices.contains("van"), choices::toString);
    }

    @Test
    void theEngineHasStates() {
        assertEquals(List.of("stopped", "crank", "idle", "cruise", "turning"),
                after("orrin.loom", "mode idleNight", " {\n        set engine to "));
    }

    @Test
    void aKitHoldsHarnessesFirst() {
        List<String> items = after("kit.loom", "kit frontKit", " {\n        contains ");
        assertEquals(List.of("engineLead", "front", "hazard", "rear"), items.subList(0, 4));
        assertFalse(items.contains("LG"), "a colour is no part of a kit");
    }

    @Test
    void wordsOfPartsAreThoseInUse() {
        String catalogue = "catalogue.loom";
        String first = orrin.text(catalogue).lines().filter(line -> line.startsWith("catalogue")).findFirst()
                .orElseThrow() + "\n";
        assertEquals(List.of("socket", "tab"), after(catalogue, first, "    housing x {\n        gender ").stream()
                .sorted().toList());
        assertEquals(List.of("blow", "continuous"), after(catalogue, first, "    fuse x {\n        basis ").stream()
                .sorted().toList());
        assertTrue(after(catalogue, first, "    fuse x {\n        family ").size() > 2);
        assertEquals(List.of("a", "b"), after(catalogue, first, "    lamp x {\n        pins a, b\n        polarity "));
    }
}
