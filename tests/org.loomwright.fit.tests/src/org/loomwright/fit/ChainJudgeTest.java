// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Expression;
import org.loomwright.fit.FitReport.Verdict;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.Problem;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** A harness laid into drawings, with the figures worked out by hand. */
class ChainJudgeTest {

    private final Sketch sketch = new Sketch();

    private FitReport judge() {
        Project project = sketch.project();
        return new ChainJudge().judge(FitProblem.of(project.wiring("ours").orElseThrow(), project, FitDefaults.usual()),
                Cancel.NEVER);
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    /** {@code headlampLeft/bHeadL @ front64: fits 60 mm 105 mm}. */
    private static List<String> lines(FitReport report) {
        return report.cells().stream().map(cell -> {
            FitRow row = report.problem().rows().get(cell.row());
            return row.place() + "/" + row.branch() + " @ " + report.problem().columns().get(cell.column()).label()
                    + ": "
                    + cell.status().words() + cell.figures().map(each -> " " + each.margin() + " " + each.excess())
                    .orElse("") + cell.reason().map(each -> " " + each).orElse("");
        }).toList();
    }

    private WiringSketch harness() {
        return sketch.harness("ours").datum("bulkhead").made(SettingKind.BRANCH_TOLERANCE, "0 mm / 20 mm")
                .made(SettingKind.BREAKOUT_TOLERANCE, "5 mm").set(SettingKind.SERVICE_LOOP, "40 mm");
    }

    private WiringSketch drawing(String name) {
        return sketch.drawing(name).datum("bulkhead");
    }

    /**
     * Breakout at 330 ± 5, branch 260 -0/+20. Year 64: the lamp leaves at 320 ± 2 with 180 ± 3 as made; a = 5 + 2 + 3 =
     * 10. margin = 260 - 0 - 10 - 180 - 10 = 60; excess = 260 + 20 - 10 - 180 + 10 = 100. Year 67: it leaves at 300 ± 3
     * with a path of 190 ± 3, so K = 190 + 40 = 230; a = 11. margin = 260 - 30 - 230 - 11 = -11; excess = 260 + 20 - 30
     * - 230 + 11 = 31.
     */
    @Test
    void rigidTrunkLiesAsItIsMade() {
        drawing("front64").when(Sketch.upTo(1966)).tolerance("3 mm").trunk("main").breakout("leftWing", "320 mm ± 2 mm")
                .branch("bHeadL", "leftWing", "headlampLeft", "180 mm");
        drawing("front67").when(Sketch.from(1967)).tolerance("3 mm").trunk("main")
                .breakout("leftWing", "300 mm, sample")
                .branch("bHeadL", "leftWing", "headlampLeft", "190 mm, path");
        harness().covers("front64", "front67").trunk("main").breakout("left", "330 mm")
                .branch("b1", "left", "headlampLeft", "260 mm");
        FitReport report = judge();
        assertEquals(List.of("headlampLeft/b1 @ front64: fits 60 mm 100 mm",
                "headlampLeft/b1 @ front67: too short -11 mm 31 mm"), lines(report));
        assertEquals(Verdict.DOES_NOT_FIT, report.verdict());
        assertEquals("does not fit: 3 lengths from sheets, 1 from samples", report.words());
        assertEquals(List.of("b1 BRANCH 1 -11 mm", "left BREAKOUT 1 -11 mm"), report.bindings().stream()
                .map(each -> each.name() + " " + each.kind() + " " + each.column() + " " + each.margin()).toList());
        FitCell.Figures figures = report.cell(0, 1).orElseThrow().figures().orElseThrow();
        assertEquals(mm(30), figures.along());
        assertEquals(mm(330), figures.position());
        assertEquals(Length.ZERO, figures.tuck());
        assertEquals(mm(40), figures.demand().extra());
        assertEquals(mm(11), figures.demand().reachAllowance());
        assertEquals(mm(100), report.largestExcess().orElseThrow());
    }

    /**
     * Two breakouts at 300 and 600, branches 100 made exactly. The vehicle has them at 290 and 570 with 95 and 90.
     * Rigid: margins 100 - 10 - 95 = -5 and 100 - 30 - 90 = -20. With up to 20 before the first and 15 before the
     * second the first may lie at 280 to 300, the second up to 35 nearer. Taking up 10 and 15 puts them at 290 and 575:
     * excess 5 and 5. Any tuck that reaches has |x1 - 290| <= 5 and |x2 - 570| <= 10; excess 5 - |x1 - 290| and 10 -
     * |x2 - 570|. The largest excess is least where both are 0: x1 = 285 or 295 and x2 = 580 or 560, that is tucks of
     * (5 or 15) and (20 or 40, 40 is out of reach). From 5 to 20 is 15, so both (5, 20) and (15, 20) can be laid; the
     * lesser one is taken.
     */
    @Test
    void slackIsTakenUpForTheLeastLargestExcess() {
        drawing("front64").trunk("main").breakout("a", "290 mm").breakout("b", "570 mm")
                .branch("bA", "a", "lamp", "95 mm").branch("bB", "b", "horn", "90 mm");
        sketch.harness("ours").datum("bulkhead").made(SettingKind.BRANCH_TOLERANCE, "0 mm")
                .made(SettingKind.BREAKOUT_TOLERANCE, "0 mm").covers("front64").trunk("main").breakout("p", "300 mm")
                .breakout("q", "600 mm").slack("p", "20 mm").slack("q", "15 mm")
                .branch("b1", "p", "lamp", "100 mm").branch("b2", "q", "horn", "100 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front64: fits 0 mm 0 mm", "horn/b2 @ front64: fits 0 mm 0 mm"), lines(report));
        assertEquals(List.of("5 mm", "20 mm"), report.cells().stream()
                .map(each -> each.figures().orElseThrow().tuck().toString()).toList());
    }

    /** As above, but the first branch is 90: it is 5 short wherever it lies, least where x1 = 290. */
    @Test
    void whereNothingReachesTheLeastMarginIsGreatest() {
        drawing("front64").trunk("main").breakout("a", "290 mm").branch("bA", "a", "lamp", "95 mm");
        sketch.harness("ours").datum("bulkhead").made(SettingKind.BRANCH_TOLERANCE, "0 mm")
                .made(SettingKind.BREAKOUT_TOLERANCE, "0 mm").covers("front64").trunk("main").breakout("p", "300 mm")
                .slack("p", "20 mm").branch("b1", "p", "lamp", "90 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front64: too short -5 mm -5 mm"), lines(report));
        assertEquals(mm(10), report.cells().getFirst().figures().orElseThrow().tuck());
    }

    @Test
    void tooLongAndDoublingBackAreTold() {
        drawing("front64").trunk("main").breakout("a", "300 mm").breakout("b", "500 mm")
                .branch("bA", "a", "lamp", "100 mm").branch("bB", "b", "horn", "100 mm");
        harness().covers("front64").set(SettingKind.DOUBLING_BACK, "150 mm").setAt("lamp", SettingKind.EXCESS, "214 mm")
                .trunk("main").breakout("p", "300 mm").branch("b1", "p", "lamp", "290 mm")
                        .branch("b2", "p", "horn", "310 mm");
        // lamp: 290 + 20 - 100 + 5 = 215; horn runs 200 along the trunk: margin 310 - 200 - 100 - 5 = 5
        assertEquals(List.of("lamp/b1 @ front64: too long 185 mm 215 mm", "horn/b2 @ front64: doubles back 5 mm 35 mm"),
                lines(judge()));
    }

    @Test
    @Tag("outside") // IPC/WHMA-A-620 as restated in inches by a harness maker: up to 1 ft -0 / +1 in, up to 5 ft +2 in
    void branchesAreMadeToTheWorkmanshipStandardUnlessStated() {
        drawing("front64").trunk("main").breakout("a", "300 mm").branch("bA", "a", "lamp", "100 mm")
                .branch("bB", "a", "horn", "100 mm").branch("bC", "a", "fan", "100 mm")
                        .branch("bD", "a", "sensor", "100 mm");
        sketch.harness("ours").datum("bulkhead").covers("front64").trunk("main").breakout("p", "300 mm")
                .branch("b1", "p", "lamp", "12 in").branch("b2", "p", "horn", "12.5 in")
                        .branch("b3", "p", "fan", "0.3 m")
                .branch("b4", "p", "sensor", "300 mm ± 4 mm / 6 mm");
        Map<String, Tolerance> made = judge().cells().stream().map(each -> each.figures().orElseThrow().demand())
                .collect(Collectors.toMap(each -> each.factoryBranch(), each -> each.madeTolerance()));
        assertEquals(new Tolerance(Length.ZERO, Length.ofInches(1)), made.get("bA"));
        assertEquals(new Tolerance(Length.ZERO, Length.ofInches(2)), made.get("bB"));
        assertEquals(new Tolerance(Length.ZERO, mm(25)), made.get("bC"));
        assertEquals(new Tolerance(mm(4), mm(6)), made.get("bD"));
    }

    @Test
    void unknownLengthsAreNotProved() {
        drawing("front64").trunk("main").breakout("a", "300 mm").breakout("x", "unknown").breakout("b", "500 mm")
                .branch("b1", "a", "lamp", "unknown").branch("b2", "x", "horn", "10 mm")
                        .branch("b3", "b", "fan", "10 mm")
                .branch("b4", "b", "sensor", "10 mm").branch("b5", "b", "fog", "10 mm, scaled");
        harness().covers("front64").trunk("main").breakout("p", "300 mm").breakout("q", "unknown")
                .breakout("r", "500 mm")
                .branch("b1", "p", "lamp", "100 mm").branch("b2", "p", "horn", "100 mm")
                        .branch("b3", "q", "fan", "100 mm")
                .branch("b4", "r", "sensor", "unknown").branch("b5", "r", "fog", "100 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front64: not proved FACTORY_LENGTH",
                "horn/b2 @ front64: not proved FACTORY_STATION",
                "fan/b3 @ front64: not proved HARNESS_STATION", "sensor/b4 @ front64: not proved HARNESS_LENGTH",
                "fog/b5 @ front64: fits 85 mm 115 mm"), lines(report));
        assertEquals(Verdict.NOT_PROVED, report.verdict());
        // a, b, b2, b3 and b4 from the sheet, b5 scaled; x and b1 missing
        assertEquals(new Evidence(5, 0, 1, 2), report.problem().evidence());
        assertEquals(Map.of(FitStatus.NOT_PROVED, 4, FitStatus.FITS, 1), report.counts());
    }

    @Test
    void placeOnTheOtherTrunkHasANegativeStation() {
        drawing("front64").trunk("main").breakout("a", "100 mm").trunk("rear").breakout("b", "30 mm")
                .branch("bB", "b", "lamp", "50 mm").branch("bD", "bulkhead", "horn", "60 mm")
                .branch("bE", "a", "fuseBox", "20 mm");
        harness().covers("front64").trunk("main").breakout("p", "40 mm").branch("b1", "p", "lamp", "200 mm")
                .branch("b2", "p", "horn", "200 mm").branch("b3", "bulkhead", "fuseBox", "200 mm");
        FitReport report = judge();
        // lamp: 40 + 30 along; horn: 40 along; fuse box from the datum itself: 100 along, no tolerance of a breakout
        assertEquals(List.of("lamp/b1 @ front64: fits 75 mm 105 mm", "horn/b2 @ front64: fits 95 mm 125 mm",
                "fuseBox/b3 @ front64: fits 80 mm 100 mm"), lines(report));
        assertEquals(new Way.Direct(-30_000_000), report.cell(0, 0).orElseThrow().figures().orElseThrow().demand()
                .way());
    }

    @Test
    void drawingPinnedElsewhereIsNotOnTheAxis() {
        sketch.drawing("front64").datum("firewall").trunk("main").breakout("a", "100 mm")
                .branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front64: not proved DATUM"), lines(report));
        assertEquals(List.of("fit-datum"), report.problem().problems().stream().map(Problem::code).toList());
    }

    @Test
    void trunksCorrespondByNameElseOneToOne() {
        drawing("front64").trunk("long").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64", "front67").trunk("main").breakout("p", "100 mm")
                .branch("b1", "p", "lamp", "100 mm");
        drawing("front67").trunk("long").breakout("a", "100 mm").trunk("short").breakout("b", "10 mm")
                .branch("bA", "a", "lamp", "50 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front64: fits 45 mm 75 mm", "lamp/b1 @ front67: not proved TRUNK"),
                lines(report));
        assertEquals(List.of("fit-trunk"), report.problem().problems().stream().map(Problem::code).toList());
    }

    @Test
    void absentPlaceIsCappedAndMayBeTooLongToPark() {
        drawing("front64").when(Sketch.upTo(1966)).trunk("main").breakout("a", "100 mm")
                .branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "fogLeft", "100 mm")
                .branch("b2", "p", "fogRight", "101 mm").branch("b3", "p", "horn", "unknown")
                        .branch("b4", "p", "fan", "1 mm")
                .branch("b5", "p", "lamp", "100 mm")
                .cap("b1", "100 mm", Sketch.upTo(1970)).cap("b2", "100 mm", Sketch.upTo(1970))
                .cap("b3", "100 mm", Sketch.upTo(1970)).cap("b4", "", Sketch.from(1967));
        FitReport report = judge();
        assertEquals(List.of("fogLeft/b1 @ front64: capped", "fogRight/b2 @ front64: too long to park",
                "horn/b3 @ front64: not proved", "fan/b4 @ front64: capped", "lamp/b5 @ front64: fits 45 mm 75 mm"),
                lines(report));
        assertTrue(((Requirement.Parked) report.cell(0, 0).orElseThrow().requirement()).stated());
        assertTrue(!((Requirement.Parked) report.cell(3, 0).orElseThrow().requirement()).stated());
    }

    @Test
    void capInVehiclesThatHaveThePlaceWins() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm")
                .cap("b1", "", Sketch.is("fan"));
        assertEquals(List.of("lamp/b1 @ front64 (not fan): fits 45 mm 75 mm", "lamp/b1 @ front64 (fan): capped"),
                lines(judge()).stream().sorted((one, other) -> one.contains("not fan") ? -1 : 1).toList());
    }

    @Test
    void placeTheHarnessLacksIsNotServed() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm")
                .branch("bH", "a", "horn", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front64: fits 45 mm 75 mm", "horn/ @ front64: place not served"),
                lines(report));
        assertEquals(Verdict.DOES_NOT_FIT, report.verdict());
    }

    @Test
    void differentShapesOfOneDrawingAreColumnsOfTheirOwn() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm")
                .branch("bF", "a", "fog", "60 mm", Sketch.is("fogLamps"));
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm")
                .branch("b2", "p", "fog", "100 mm");
        List<String> lines = lines(judge());
        assertEquals(4, lines.size());
        assertTrue(lines.contains("fog/b2 @ front64 (fogLamps): fits 35 mm 65 mm"), lines::toString);
        assertTrue(lines.contains("fog/b2 @ front64 (not fogLamps): capped"), lines::toString);
        assertEquals(FitStatus.CAPPED, judge().worst(1, "front64").orElseThrow().status());
    }

    @Test
    void branchOnlySomeVehiclesHaveIsNeededOnlyThere() {
        drawing("front64").when(Sketch.upTo(1966)).trunk("main").breakout("a", "100 mm")
                .branch("bA", "a", "lamp", "50 mm");
        drawing("front67").when(Sketch.from(1967)).trunk("main").breakout("a", "140 mm")
                .branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64", "front67").trunk("main").breakout("p", "100 mm")
                .branch("early", "p", "lamp", "100 mm", Sketch.upTo(1966))
                        .branch("late", "p", "lamp", "150 mm", Sketch.from(1967));
        assertEquals(List.of("lamp/early @ front64: fits 45 mm 75 mm", "lamp/late @ front67: fits 55 mm 85 mm"),
                lines(judge()));
    }

    @Test
    void placeOnAnotherDrawingOfTheSameVehiclesIsNotCapped() {
        drawing("front").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        drawing("extra").trunk("main").breakout("a", "100 mm").branch("bH", "a", "horn", "50 mm");
        harness().covers("front", "extra").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm")
                .branch("b2", "p", "horn", "100 mm");
        assertEquals(List.of("lamp/b1 @ front: fits 45 mm 75 mm", "lamp/b1 @ extra: on another drawing",
                "horn/b2 @ front: on another drawing", "horn/b2 @ extra: fits 45 mm 75 mm"), lines(judge()));
    }

    /**
     * One vehicle, two drawings: the lamp wants its breakout at 100, the horn, 20 further out on the same breakout, at
     * 120; each alone could be laid without excess 10 away. Together the breakout must stay within 10 of both: at 110.
     */
    @Test
    void layingSuitsAllDrawingsOfAVehicle() {
        drawing("front").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        drawing("extra").trunk("main").breakout("a", "120 mm").branch("bH", "a", "horn", "50 mm");
        sketch.harness("ours").datum("bulkhead").made(SettingKind.BRANCH_TOLERANCE, "0 mm")
                .made(SettingKind.BREAKOUT_TOLERANCE, "0 mm").covers("front", "extra").trunk("main")
                        .breakout("p", "130 mm")
                .slack("p", "100 mm").branch("b1", "p", "lamp", "60 mm").branch("b2", "p", "horn", "60 mm");
        FitReport report = judge();
        assertEquals(List.of("lamp/b1 @ front: fits 0 mm 0 mm", "horn/b2 @ extra: fits 0 mm 0 mm"),
                lines(report).stream().filter(line -> line.contains("fits")).toList());
        report.cells().forEach(cell -> cell.figures()
                .ifPresent(each -> assertEquals(mm(110), each.position())));
    }

    /** Of several branches of a drawing to one place the one of the same name counts, else the worst of all. */
    @Test
    void severalFactoryBranchesToOnePlace() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("park", "a", "lamp", "50 mm")
                .branch("head", "a", "lamp", "70 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("park", "p", "lamp", "100 mm")
                .branch("both", "p", "lamp", "100 mm");
        assertEquals(List.of("lamp/park @ front64: fits 45 mm 75 mm", "lamp/both @ front64: fits 25 mm 55 mm"),
                lines(judge()));
    }

    @Test
    void chainOfStatedTolerancesCountsForABreakout() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "60 mm ± 2 mm").breakoutAfter("q", "p", "40 mm ± 1 mm")
                .breakoutAfter("r", "q", "0 mm").branch("b1", "q", "lamp", "100 mm")
                        .branch("b2", "r", "lamp", "100 mm");
        // 2 + 1, and with the setting for the last dimension 2 + 1 + 5
        assertEquals(List.of("lamp/b1 @ front64: fits 47 mm 73 mm", "lamp/b2 @ front64: fits 42 mm 78 mm"),
                lines(judge()));
    }

    @Test
    void slackIsNeverMoreThanItsStretch() {
        drawing("front64").trunk("main").breakout("a", "10 mm").branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").breakout("q", "130 mm").slack("q", "500 mm")
                .branch("b1", "q", "lamp", "300 mm");
        assertEquals(mm(30), judge().problem().columns().getFirst().trunks().getFirst().slack());
    }

    @Test
    void harnessForNoneOfTheDrawingsVehiclesIsNotProved() {
        drawing("front64").when(Sketch.upTo(1966)).trunk("main").breakout("a", "10 mm")
                .branch("bA", "a", "lamp", "5 mm");
        harness().when(Sketch.from(1968)).covers("front64", "lost").trunk("main").breakout("p", "10 mm");
        FitReport report = judge();
        assertEquals(Verdict.NOT_PROVED, report.verdict());
        assertEquals(List.of("front64", "lost"), report.problem().unjudged());
        assertEquals(List.of("fit-vehicles"), report.problem().problems().stream().map(Problem::code).toList());
    }

    @Test
    void tooManyShapesAreTakenTogether() {
        WiringSketch front = drawing("front64").trunk("main").breakout("a", "100 mm");
        for (int year = 1964; year <= 1971; year++) {
            for (String body : List.of("saloon", "coupe", "estate")) {
                for (String option : List.of("fan", "fogLamps")) {
                    front.branch("b" + year + body + option, "a", "lamp" + year + body + option, "50 mm",
                            new Expression.And(
                                    List.of(Sketch.upTo(year), Sketch.from(year), Sketch.is(body), Sketch.is(option))));
                }
            }
        }
        harness().covers("front64").trunk("main").breakout("p", "100 mm")
                .branch("b1", "p", "lamp1964saloonfan", "100 mm");
        FitReport report = judge();
        assertEquals(1, report.problem().columns().size());
        assertEquals("fit-bounded", report.problem().problems().getFirst().code());
        assertEquals(FitStatus.FITS, report.cell(0, 0).orElseThrow().status());
    }

    @Test
    void differentEndsOfMeasurementAreTold() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm, tip");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm, housing");
        assertTrue(judge().cells().getFirst().figures().orElseThrow().demand().endsDiffer());
    }

    @Test
    void drawingsDatumCanBeThePlace() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "bulkhead", "120 mm")
                .branch("b2", "p", "lamp", "100 mm");
        assertEquals("bulkhead/b1 @ front64: fits 15 mm 45 mm", lines(judge()).getFirst());
    }

    @Test
    void judgingCanBeStopped() {
        drawing("front64").trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "50 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "lamp", "100 mm");
        Project project = sketch.project();
        FitProblem problem = FitProblem.of(project.wiring("ours").orElseThrow(), project, FitDefaults.usual());
        assertThrows(Cancelled.class, () -> new ChainJudge().judge(problem, () -> true));
    }
}
