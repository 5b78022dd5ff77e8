// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;
import org.loomwright.quantity.Tolerance;
import org.loomwright.rules.Bench;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Laying;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** What the judge of the fit finds, besides places that are not reached. Limits by hand from docs/fit.md. */
class FitRulesTest {

    private final Laying lay = new Laying();

    /** From 1968: left wing at 1010 mm, headlamp 130 mm, horn 175 mm for those with a fan, all within 5 mm. */
    private Bench front68() {
        return new Bench().upgrade("fan").place("bulkhead", "").place("headlampLeft", "").place("horn", "")
                .drawing("front68", "", "year >= 1968", drawing -> drawing.tolerance(Laying.within("5 mm"))
                        .datum("bulkhead").add(lay.trunk("main", "leftWing 1010 mm"),
                                lay.branch("bHead", "leftWing", "headlampLeft", "130 mm", ""),
                                lay.branch("bHorn", "leftWing", "horn", "175 mm", "fan")));
    }

    /** Branches made 0 to 25 mm longer. */
    private Bench ours(String wing, String head, Consumer<Bench.WiringBench> more) {
        return front68().harness("front", harness -> {
            harness.covers("front68").datum("bulkhead").add(lay.trunk("main", "leftWing " + wing),
                    lay.branch("bHead", "leftWing", "headlampLeft", head, ""));
            harness.add(lay.made(SettingKind.BRANCH_TOLERANCE,
                    new Tolerance(Length.ZERO, Length.ofMillimetres(25))));
            more.accept(harness);
        });
    }

    private Consumer<Bench.WiringBench> horn(String length, String within, String capped) {
        return harness -> harness.add(lay.branch("bHorn", "leftWing", "horn", length, ""))
                .add(lay.cap("bHorn", within, capped));
    }

    private static List<String> found(Bench bench, String rule) {
        return bench.check(rule).stream().map(finding -> finding.severity() + " " + finding.element() + ": "
                + finding.affected().map(Finding.Affected::words).orElse("")).toList();
    }

    // ---- excess-too-great

    /** 360 + 25 - 20 - 130 + 15 = 250 mm. */
    @Test
    void aBranchThatIsJustShortEnoughAndOneThatIsNot() {
        assertEquals(List.of(), found(ours("990 mm", "360 mm", horn("300 mm", "", "not fan")), "excess-too-great"));
        Bench bench = ours("990 mm", "360.05 mm", horn("300 mm", "", "not fan"));
        assertEquals(List.of("ERROR front:bHead: year >= 1968"), found(bench, "excess-too-great"));
        Finding finding = bench.check("excess-too-great").getFirst();
        assertEquals("branch bHead is 0.1 mm too long for headlampLeft as front68 has it", finding.sentence());
        assertEquals(List.of("360.05 mm + 25 mm made longer - 20 mm along the trunk - 130 mm factory length - 0 mm"
                + " needed besides + 15 mm tolerances = 250.05 mm to dress back, more than 250 mm"),
                finding.derivation());
    }

    /** 406 + 25 - 20 - 175 + 15 = 251 mm, in the vehicles that have the branch. */
    @Test
    void aBranchThatIsTooLongInSomeVehiclesOnly() {
        assertEquals(List.of("ERROR front:bHorn: year >= 1968 and fan"),
                found(ours("990 mm", "300 mm", horn("406 mm", "", "not fan")), "excess-too-great"));
    }

    @Test
    void aLimitForThePlaceAllowsMore() {
        assertEquals(List.of(), found(ours("990 mm", "400 mm", harness -> harness
                .add(lay.limit(SettingKind.EXCESS, "290 mm", "headlampLeft"))), "excess-too-great"));
        assertEquals(1, found(ours("990 mm", "400 mm", harness -> harness
                .add(lay.limit(SettingKind.EXCESS, "290 mm", "horn"))), "excess-too-great").size());
    }

    /** Tolerances alone take 25 + 15 + 15 = 55 mm. */
    @Test
    void whereNoLengthSuitsAnotherRuleSaysSo() {
        Bench never = ours("990 mm", "300 mm", harness -> harness.add(lay.limit(SettingKind.EXCESS, "54.9 mm", "")));
        assertEquals(List.of(), found(never, "excess-too-great"));
        assertEquals(List.of("ERROR front:bHead: year >= 1968"), found(never, "excess-too-tight-to-make"));
        Bench hardly = ours("990 mm", "300 mm", harness -> harness.add(lay.limit(SettingKind.EXCESS, "55 mm", "")));
        assertEquals(List.of("ERROR front:bHead: year >= 1968"), found(hardly, "excess-too-great"));
    }

    // ---- runs-back-too-far

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # wing, limit, along
            860 mm, "", ""
            859.95 mm, "", 150.05 mm
            1160 mm, "", ""
            1161 mm, "", 151 mm
            820 mm, 190 mm, ""
            950 mm, 50 mm, 60 mm
            """)
    void howFarABranchRunsAlongTheTrunk(String wing, String limit, String along) {
        Bench bench = ours(wing, "360 mm", harness -> {
            if (!limit.isEmpty()) {
                harness.add(lay.limit(SettingKind.DOUBLING_BACK, limit, "headlampLeft"));
            }
        });
        assertEquals(along.isEmpty() ? List.of() : List.of("ERROR front:bHead: year >= 1968"),
                found(bench, "runs-back-too-far"));
        assertEquals(along.isEmpty() ? List.of() : List.of(List.of(along + " along the trunk, more than "
                + (limit.isEmpty() ? "150 mm" : limit))),
                bench.check("runs-back-too-far").stream().map(Finding::derivation).toList());
    }

    @Test
    void aBranchThatDoesNotReachIsToldOnce() {
        Bench bench = ours("800 mm", "300 mm", harness -> { });
        assertEquals(List.of(), found(bench, "runs-back-too-far"));
        assertTrue(found(bench, "place-not-reached").contains("ERROR front:bHead: year >= 1968"));
    }

    // ---- too-long-to-park

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # made, within, over
            300 mm, 300 mm, ""
            300 mm, 299.9 mm, 0.1 mm
            300 mm, 150 mm, 150 mm
            900 mm, "", ""
            unknown, 150 mm, ""
            """)
    void howLongABranchMayBeToBeParked(String made, String within, String over) {
        Bench bench = ours("990 mm", "300 mm", horn(made, within, "not fan"));
        assertEquals(over.isEmpty() ? List.of() : List.of("ERROR front:bHorn: year >= 1968 and not fan"),
                found(bench, "too-long-to-park"));
        assertEquals(over.isEmpty() ? List.of() : List.of("branch bHorn is " + over
                + " too long to be parked where these vehicles do not use it"),
                bench.check("too-long-to-park").stream().map(Finding::sentence).toList());
    }

    // ---- fit-not-proved

    /** The horn hangs on the branch to a place that only some vehicles have, or on one that is always there. */
    private Bench hanging(String from) {
        Run fog = lay.branch("bFog", "leftWing", "horn", "300 mm", "");
        Run head = lay.branch("bHead", "leftWing", "headlampLeft", "300 mm", "");
        Run parent = from.equals("bFog") ? fog : head;
        Run opened = new Run(Run.Kind.BRANCH, parent.name(), parent.from(), parent.to(), parent.length(),
                lay.trunk("stops", "lead 60 mm").breakouts(), List.of(), List.of(), List.of(), parent.when(),
                parent.span());
        Run child = from.equals("bFog") ? lay.branch("bHead", "lead", "headlampLeft", "300 mm", "")
                : lay.branch("bFog", "lead", "horn", "300 mm", "");
        return front68().harness("front", harness -> harness.covers("front68").datum("bulkhead")
                .add(lay.trunk("main", "leftWing 990 mm"), opened, child));
    }

    @Test
    void aBranchOnABranchThatTheseVehiclesDoNotUse() {
        Bench bench = hanging("bFog");
        assertEquals(List.of("WARNING front:bHead: year >= 1968 and not fan"), found(bench, "fit-not-proved"));
        assertEquals("nobody can say whether branch bHead fits headlampLeft as front68 has it: it leaves a branch whose"
                + " way in these vehicles is not known", bench.check("fit-not-proved").getFirst().sentence());
        assertEquals(List.of(), found(hanging("bHead"), "fit-not-proved"));
    }

    @Test
    void lengthsAndAxesAreToldByOtherRules() {
        Bench bench = ours("unknown", "300 mm", harness -> { });
        assertEquals(List.of(), found(bench, "fit-not-proved"));
        assertEquals(List.of("WARNING front:leftWing: year >= 1968"), found(bench, "length-unknown"));
        Bench elsewhere = front68().harness("front", harness -> harness.covers("front68").datum("horn")
                .add(lay.trunk("main", "leftWing 990 mm"), lay.branch("bHead", "leftWing", "headlampLeft", "1 m", "")));
        assertEquals(List.of(), found(elsewhere, "fit-not-proved"));
        assertEquals(List.of("WARNING front: year >= 1968"), found(elsewhere, "routes-differ"));
    }

    @Test
    void aDrawingOfOtherVehicles() {
        Bench bench = front68().wiring(Wiring.Kind.HARNESS, "front", "", "year <= 1967",
                harness -> harness.covers("front68").datum("bulkhead").add(lay.trunk("main", "leftWing 990 mm")));
        assertEquals(List.of("WARNING front: year >= 1968"), found(bench, "fit-not-proved"));
        bench.waive("fit-not-proved", "front", "", "", "");
        assertTrue(bench.check("fit-not-proved").getFirst().acceptance().isPresent());
        assertEquals(List.of(), bench.check("waiver-unused"));
    }

    /** Seven upgrades, each with a branch of its own: 2^7 shapes. */
    @Test
    void aDrawingWithTooManyShapes() {
        for (int count : List.of(6, 7)) {
            Bench bench = new Bench().place("bulkhead", "");
            Run[] branches = new Run[count];
            for (int i = 0; i < count; i++) {
                String name = "x" + (char) ('a' + i);
                bench.upgrade(name).place(name + "Place", "");
                branches[i] = lay.branch("b" + name, "bulkhead", name + "Place", "200 mm", name);
            }
            bench.drawing("full", "", "year = 1970", drawing -> drawing.datum("bulkhead").add(branches))
                    .harness("front", harness -> harness.covers("full").datum("bulkhead").add(branches));
            assertEquals(count == 6 ? List.of() : List.of("WARNING front: year = 1970"),
                    found(bench, "fit-not-proved"));
        }
    }

    // ---- the rules about fit alone

    private static Report fit(Bench bench) {
        return new BookRuleEngine(StandardRules.fitBook()).check(bench.project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE);
    }

    @Test
    void theBookOfFitIsAPartOfTheBook() {
        List<String> all = StandardRules.book().infos().stream().map(RuleInfo::id).toList();
        List<String> some = StandardRules.fitBook().infos().stream().map(RuleInfo::id).toList();
        assertEquals(all.stream().filter(some::contains).toList(), some);
        assertEquals(all.size() - some.size(), StandardRules.fitBook().aside().size());
        assertThrows(IllegalArgumentException.class, () -> StandardRules.book().part(Set.of("no-such-rule")));
    }

    @Test
    void waiversOfRulesThatAreNotAskedAreLeftAlone() {
        Bench bench = ours("800 mm", "300 mm", harness -> { }).waive("orphan-wire", "front", "", "", "")
                .waive("place-not-reached", "front", "bHead", "", "").waive("runs-back-too-far", "front", "", "", "");
        Report report = fit(bench);
        assertEquals(List.of("the waiver of runs-back-too-far on front accepts nothing"),
                report.of("waiver-unused").stream().map(Finding::sentence).toList());
        assertEquals(Optional.of("front:bHead"), report.of("place-not-reached").stream()
                .filter(each -> each.acceptance().isPresent()).map(Finding::element).findFirst());
        assertEquals(2, bench.check("waiver-unused").size());
    }
}
