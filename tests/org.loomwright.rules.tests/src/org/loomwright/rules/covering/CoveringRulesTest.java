// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Laying;

class CoveringRulesTest {

    private final Laying lay = new Laying();

    private static Bench bench() {
        return new Bench().upgrade("fan").place("bulkhead", "").place("headlampLeft", "").place("horn", "")
                .place("batteryTray", "").part(Part.Kind.HOUSING, "way2", "1", "2");
    }

    /** Up to 1967: left wing at 38 1/2 in, headlamp 7 1/2 in, as made, all within 1/4 in. */
    private Bench front64(Bench bench, String headlamp) {
        return bench.drawing("front64", "", "year <= 1967", drawing -> drawing.tolerance(Laying.within("1/4 in"))
                .datum("bulkhead").add(lay.trunk("main", "leftWing 38 1/2 in"),
                        lay.branch("bHead", "leftWing", "headlampLeft", headlamp, "")));
    }

    /** From 1968: left wing at 1010 mm, headlamp on a path of 130 mm, all within 5 mm. */
    private Bench front68(Bench bench, Consumer<Bench.WiringBench> more) {
        return bench.drawing("front68", "", "year >= 1968", drawing -> {
            drawing.tolerance(Laying.within("5 mm")).datum("bulkhead").add(lay.trunk("main", "leftWing 1010 mm"),
                    lay.branch("bHead", "leftWing", "headlampLeft", "130 mm path", ""));
            more.accept(drawing);
        });
    }

    private Bench front68(Bench bench) {
        return front68(bench, drawing -> { });
    }

    private Bench ours(Bench bench, String length, Consumer<Bench.WiringBench> more) {
        return bench.harness("front", harness -> {
            harness.datum("bulkhead").add(lay.trunk("main", "leftWing 975 mm"),
                    lay.branch("bHead", "leftWing", "headlampLeft", length, ""));
            more.accept(harness);
        });
    }

    private static List<String> found(Bench bench, String rule) {
        return bench.check(rule).stream().map(finding -> finding.severity() + " " + finding.element() + ": "
                + finding.affected().map(Finding.Affected::words).orElse("")).toList();
    }

    private static String sentence(Bench bench, String rule) {
        List<Finding> findings = bench.check(rule);
        assertEquals(1, findings.size(), findings.toString());
        return findings.getFirst().sentence();
    }

    // ---- length-unknown

    @Test
    void aLengthOfADrawingThatTheFitNeeds() {
        Bench bench = ours(front64(bench(), "unknown"), "260 mm", harness -> harness.covers("front64"));
        assertEquals(List.of("WARNING front64:bHead: year <= 1967"), found(bench, "length-unknown"));
        assertEquals("the length of branch bHead is unknown: nobody can say whether front reaches headlampLeft",
                sentence(bench, "length-unknown"));
        assertFalse(bench.check("length-unknown").getFirst().inherited());
    }

    @Test
    void aLengthThatIsNotThereAtAll() {
        Bench bench = ours(front64(bench(), ""), "260 mm", harness -> harness.covers("front64"));
        assertEquals("the length of branch bHead is not stated: nobody can say whether front reaches headlampLeft",
                sentence(bench, "length-unknown"));
    }

    @Test
    void aLengthThatNothingNeeds() {
        assertEquals(List.of(), found(front64(bench(), "unknown"), "length-unknown"));
        Bench elsewhere = front68(front64(bench(), "unknown"));
        assertEquals(List.of(), found(ours(elsewhere, "260 mm", harness -> harness.covers("front68")),
                "length-unknown"));
    }

    @Test
    void aBranchThatTheHarnessCapsNeedNotReach() {
        Bench bench = ours(front64(bench(), "unknown"), "260 mm",
                harness -> harness.covers("front64").add(lay.cap("bHead", "", "")));
        assertEquals(List.of(), found(bench, "length-unknown"));
    }

    /** The station of the wing keeps both its places from being proved, in the vehicles that have them. */
    @Test
    void aStationKeepsEverythingBehindItFromBeingProved() {
        Bench bench = bench().drawing("front64", "", "year <= 1967", drawing -> drawing.datum("bulkhead")
                .add(lay.trunk("main", "leftWing unknown"),
                        lay.branch("bHead", "leftWing", "headlampLeft", "7 1/2 in", ""),
                        lay.branch("bHorn", "leftWing", "horn", "8 in", "fan")));
        ours(bench, "260 mm", harness -> harness.covers("front64")
                .add(lay.branch("bHorn", "leftWing", "horn", "300 mm", "")));
        assertEquals("the station of breakout leftWing is unknown: nobody can say whether front reaches headlampLeft,"
                + " horn", sentence(bench, "length-unknown"));
        assertEquals(List.of("WARNING front64:leftWing: year <= 1967"), found(bench, "length-unknown"));
    }

    @Test
    void aLengthOfOursThatFitAndCuttingNeed() {
        Bench bench = ours(front64(bench(), "7 1/2 in"), "unknown", harness -> harness.covers("front64")
                .connector("J1", "way2", "bulkhead", "", "").connector("H1", "way2", "headlampLeft", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "J1:1", "H1:1", "fan")
                        .wire("b", "", wire -> wire.from("J1:2", "").to("H1:2", "").length("1200 mm"))));
        assertEquals("the length of branch bHead is unknown: nobody can say whether front reaches headlampLeft; wire"
                + " 12a cannot be cut", sentence(bench, "length-unknown"));
    }

    /** Nothing is cut from a drawing. */
    @Test
    void theWiresOfADrawingAreNotCut() {
        Bench bench = bench().drawing("front64", "", "", drawing -> drawing.datum("bulkhead")
                .branch("bHead", "bulkhead", "headlampLeft", "").connector("J1", "way2", "bulkhead", "", "")
                .connector("H1", "way2", "headlampLeft", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "J1:1", "H1:1", "")));
        assertEquals(List.of(), found(bench, "length-unknown"));
    }

    @Test
    void aSpliceAndAWireOfUnknownLength() {
        Bench bench = ours(bench(), "260 mm", harness -> harness.connector("J1", "way2", "bulkhead", "", "")
                .connector("H1", "way2", "headlampLeft", "", "").circuit("12", "", circuit -> circuit
                        .splice("S12", lay.at("main unknown"), "")
                        .wire("a", "14 ga", "J1:1", "S12", "fan")
                        .wire("b", "", wire -> wire.from("J1:2", "").to("H1:2", "").length(lay.measure("unknown")))));
        assertEquals(List.of("WARNING front:12b: every vehicle", "WARNING front:S12: fan"),
                found(bench, "length-unknown").stream().sorted().toList());
    }

    // ---- place-not-reached

    /** From 1968: 35 mm back along the trunk + 130 path + 40 service loop + 15 tolerances = 220 mm. */
    @Test
    void aBranchThatIsJustLongEnoughAndOneThatIsNot() {
        Consumer<Bench.WiringBench> covers = harness -> harness.covers("front64", "front68");
        assertEquals(List.of(), found(ours(front68(front64(bench(), "7 1/2 in")), "220 mm", covers),
                "place-not-reached"));
        Bench bench = ours(front68(front64(bench(), "7 1/2 in")), "219 mm", covers);
        assertEquals(List.of("ERROR front:bHead: year >= 1968"), found(bench, "place-not-reached"));
        Finding finding = bench.check("place-not-reached").getFirst();
        assertEquals("branch bHead is 1 mm too short for headlampLeft as front68 has it", finding.sentence());
        assertEquals(List.of("219 mm - 0 mm made shorter - 35 mm along the trunk - 130 mm factory length - 40 mm needed"
                + " besides - 15 mm tolerances = -1 mm left"), finding.derivation());
    }

    @Test
    void aPlaceWithoutABranchOfOurs() {
        Bench bench = ours(front68(front64(bench(), "7 1/2 in"), drawing -> drawing
                .add(lay.branch("bHorn", "leftWing", "horn", "175 mm path", "fan"))), "260 mm",
                harness -> harness.covers("front64", "front68"));
        assertEquals(List.of("ERROR front: year >= 1968 and fan"), found(bench, "place-not-reached"));
        assertEquals("front68 has a branch to horn and harness front has none", sentence(bench, "place-not-reached"));
    }

    @Test
    void onlyWhatIsCoveredIsAsked() {
        assertEquals(List.of(), found(ours(front68(front64(bench(), "7 1/2 in")), "100 mm", harness -> { }),
                "place-not-reached"));
        assertEquals(List.of(), found(ours(front68(front64(bench(), "7 1/2 in")), "215 mm",
                harness -> harness.covers("front64")), "place-not-reached"));
    }

    @Test
    void aFindingCanBeWaived() {
        Bench bench = ours(front68(bench()), "219 mm", harness -> harness.covers("front68"))
                .waive("place-not-reached", "front", "bHead", "", "");
        assertTrue(bench.check("place-not-reached").getFirst().acceptance().isPresent());
        assertEquals(List.of(), bench.check("waiver-unused"));
    }

    // ---- routes-differ

    @Test
    void aDrawingThatIsPinnedElsewhere() {
        Bench bench = bench().drawing("front68", "", "year >= 1968", drawing -> drawing.datum("batteryTray")
                .add(lay.trunk("main", "leftWing 1010 mm"),
                        lay.branch("bHead", "leftWing", "headlampLeft", "130 mm path", "")));
        ours(front64(bench, "7 1/2 in"), "260 mm", harness -> harness.covers("front64", "front68"));
        assertEquals(List.of("WARNING front: year >= 1968"), found(bench, "routes-differ"));
        assertEquals("drawing front68 is pinned at batteryTray and harness front at bulkhead, so that their stations"
                + " cannot be compared", sentence(bench, "routes-differ"));
        assertEquals(List.of(), found(bench, "place-not-reached"));
        assertEquals(List.of(), found(bench, "length-unknown"));
    }

    /** Two trunks of the drawing, and neither has the name of ours. */
    @Test
    void aTrunkThatNobodyHasMapped() {
        Bench bench = bench().drawing("front68", "", "", drawing -> drawing.datum("bulkhead").add(
                lay.trunk("beforeRadiator", "leftWing 1010 mm"), lay.trunk("behindRadiator", "rightWing 800 mm"),
                lay.branch("bHead", "leftWing", "headlampLeft", "130 mm path", "")));
        ours(bench, "260 mm", harness -> harness.covers("front68"));
        assertEquals("no trunk of drawing front68 is known to take the way of trunk main of harness front",
                sentence(bench, "routes-differ"));
        assertEquals(List.of("nobody can say whether front reaches headlampLeft"),
                bench.check("routes-differ").getFirst().derivation());
    }

    /** One trunk on either side is the same way, whatever it is called. */
    @Test
    void oneTrunkOnEitherSide() {
        Bench bench = bench().drawing("front68", "", "", drawing -> drawing.tolerance(Laying.within("5 mm"))
                .datum("bulkhead").add(lay.trunk("loom", "leftWing 1010 mm"),
                        lay.branch("bHead", "leftWing", "headlampLeft", "130 mm path", "")));
        assertEquals(List.of(), found(ours(bench, "260 mm", harness -> harness.covers("front68")), "routes-differ"));
    }

    // ---- barrier-crossed

    private Bench tray(String theirs, String ours) {
        return bench().drawing("front68", "", "year >= 1968", drawing -> drawing.tolerance(Laying.within("5 mm"))
                .datum("bulkhead").add(theirs.isEmpty() ? lay.trunk("main", "tray 100 mm")
                                : lay.trunk("main", "| grommet " + theirs, "tray 100 mm"),
                        lay.branch("bBatt", "tray", "batteryTray", "190 mm path", "")))
                .harness("front", harness -> harness.covers("front68").datum("bulkhead")
                        .add(ours.isEmpty() ? lay.trunk("main", "tray 80 mm")
                                        : lay.trunk("main", "| grommet " + ours, "tray 80 mm"),
                                lay.branch("bBatt", "tray", "batteryTray", "290 mm", "")));
    }

    /** The drawing leaves at 100 mm, ours at 80 mm. */
    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # theirs, ours, crossed
            "", 90 mm, true
            90 mm, "", true
            "", 70 mm, false
            "", 110 mm, false
            "", 80 mm, false
            "", 100 mm, false
            95 mm, 75 mm, false
            105 mm, 75 mm, true
            """)
    void aBarrierBetweenTheBreakouts(String theirs, String ours, boolean crossed) {
        assertEquals(crossed ? List.of("ERROR front:tray: year >= 1968") : List.of(),
                found(tray(theirs, ours), "barrier-crossed"));
    }

    @Test
    void whichSideIsSaid() {
        Bench bench = tray("", "90 mm");
        assertEquals("breakout tray lies before barrier grommet, and front68 leaves the trunk for batteryTray beyond"
                + " it", sentence(bench, "barrier-crossed"));
        assertEquals(List.of("ours: 80 mm, barrier at 90 mm", "front68: 100 mm, barrier at 90 mm"),
                bench.check("barrier-crossed").getFirst().derivation());
    }

    // ---- excess-too-tight-to-make

    /** tm 0 + tp 25 + 2 x (T 5 + us 5 + ub 5) = 55 mm, and 5 mm of grid less 0.05 mm = 59.95 mm. */
    private Bench tight(String limit, String length) {
        return ours(front68(bench()), length, harness -> harness.covers("front68")
                .add(lay.made(SettingKind.BRANCH_TOLERANCE, new Tolerance(Length.ZERO, Length.ofMillimetres(25))),
                        lay.limit(SettingKind.EXCESS, limit, "")));
    }

    @Test
    void whereNoLengthSuits() {
        assertEquals(List.of("ERROR front:bHead: year >= 1968"), found(tight("54.9 mm", "220 mm"),
                "excess-too-tight-to-make"));
        Finding finding = tight("54.9 mm", "220 mm").check("excess-too-tight-to-make").getFirst();
        assertEquals("no length of branch bHead keeps within 54.9 mm of excess at headlampLeft as front68 has it",
                finding.sentence());
        assertEquals(List.of("0 mm made shorter + 25 mm made longer + 15 mm + 15 mm tolerances both ways = 55 mm",
                "55 mm + grid 5 mm - 0.05 mm = 59.95 mm, more than 54.9 mm"), finding.derivation());
    }

    /** With 220 mm the margin is 0 and the excess 55 mm: it fits, though no other length would. */
    @Test
    void theOneLengthThatSuitsIsLeftAlone() {
        assertEquals(List.of(), found(tight("55 mm", "220 mm"), "excess-too-tight-to-make"));
        assertEquals(List.of("WARNING front:bHead: year >= 1968"), found(tight("55 mm", "221 mm"),
                "excess-too-tight-to-make"));
        assertEquals(List.of("WARNING front:bHead: year >= 1968"), found(tight("59.9 mm", "240 mm"),
                "excess-too-tight-to-make"));
        assertEquals(List.of(), found(tight("59.95 mm", "240 mm"), "excess-too-tight-to-make"));
    }

    @Test
    void aLimitForThePlaceStandsBeforeThatOfTheHarness() {
        Bench bench = tight("40 mm", "220 mm");
        assertEquals(1, bench.check("excess-too-tight-to-make").size());
        Bench better = ours(front68(bench()), "220 mm", harness -> harness.covers("front68")
                .add(lay.limit(SettingKind.EXCESS, "40 mm", ""),
                        lay.limit(SettingKind.EXCESS, "150 mm", "headlampLeft")));
        assertEquals(List.of(), found(better, "excess-too-tight-to-make"));
    }

    // ---- add-on-needs-base

    private List<String> addOn(String needs, String revision, String... sold) {
        return found(bench().harness("front", wiring -> { }).harness("lead", wiring -> { })
                .add(lay.kit("frontKit", revision, "", "", "front", sold)).add(lay.kit("fogKit", "A", needs, "",
                        "lead")), "add-on-needs-base");
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # needs, revision, sold, there
            frontKit, C, B, true
            frontKit B, C, B, true
            frontKit B, C, A, false
            frontKit B or later, C, A, true
            frontKit D or later, C, B, false
            frontKit C or later, C, B, true
            frontKit B or later, AA, Z, true
            frontKit 9 or later, 10, 8, true
            frontKit 10, 9, 8, false
            frontKit A, "", "", false
            """)
    void theRevisionThatAnAddOnNeeds(String needs, String revision, String sold, boolean there) {
        assertEquals(there ? List.of() : List.of("ERROR fogKit: "), addOn(needs, revision, sold));
    }

    @Test
    void theVehiclesThatTheBaseKitIsNotFor() {
        Bench bench = bench().harness("front", wiring -> { }).harness("lead", wiring -> { })
                .add(lay.kit("frontKit", "B", "", "year >= 1967", "front"))
                .add(lay.kit("fogKit", "A", "frontKit B", "fan", "lead"));
        assertEquals(List.of("ERROR fogKit: year <= 1966 and fan"), found(bench, "add-on-needs-base"));
        Bench narrowed = bench().harness("front", wiring -> { }).harness("lead", wiring -> { })
                .add(lay.kit("frontKit", "B", "", "year >= 1967", "front"))
                .add(lay.kit("fogKit", "A", "frontKit B", "fan and year >= 1968", "lead"));
        assertEquals(List.of(), found(narrowed, "add-on-needs-base"));
    }

    @Test
    void aBaseKitThatIsNotThereIsAProblemOfTheText() {
        Bench bench = bench().harness("lead", wiring -> { }).add(lay.kit("fogKit", "A", "frontKit B", "", "lead"));
        assertEquals(List.of(), found(bench, "add-on-needs-base"));
        assertFalse(bench.project().problems().isEmpty());
    }
}
