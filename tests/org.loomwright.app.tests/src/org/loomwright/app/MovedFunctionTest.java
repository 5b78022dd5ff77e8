// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitStatus;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** A function that is at another place in some years, served by one branch of ours in all of them. */
class MovedFunctionTest {

    private static final String CARS = """
            platform orrin {
                supply 12 V negative ground
                years 1966 .. 1968
                position front
                place bulkhead
                place hornSpot
                place panel
                ground body
                device horn is trumpet at hornSpot on body
                device bell is trumpet at panel on body
            }
            catalogue parts {
                housing plug2 {
                    cavities 1..2
                }
                load trumpet {
                    pins 1, 2
                    power 24 W
                    voltage 12 V
                    joins 1 to 2
                }
            }
            drawing front66 of orrin fills front when year <= 1967 {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout nose at 700 mm
                }
                branch b3 from nose to hornSpot 250 mm
                connector N1 on b3 is plug2 mates horn
            }
            drawing front68 of orrin fills front when year = 1968 {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout nose at 710 mm
                }
                branch b4 from nose to panel 220 mm
                connector N1 on b4 is plug2 mates horn
            }
            """;

    private static final String OURS = """
            harness ours of orrin fills front {
                covers front66, front68
                branches made -0 mm +25 mm
                datum bulkhead
                trunk main {
                    breakout nose at 700 mm
                }
                branch b3 from nose to hornSpot 260 mm
                connector N1 on b3 is plug2 mates horn
            }
            """;

    private static FitReport judge(String text) throws BadCall {
        Project project = TextProject.open(text).project();
        return new ChainJudge().judge(FitProblem.of(project.wiring("ours").orElseThrow(), project, FitDefaults.usual()),
                Cancel.NEVER);
    }

    private static Map<String, String> cells(FitReport report) {
        Map<String, String> cells = new TreeMap<>();
        report.cells().forEach(each -> cells.put(report.problem().columns().get(each.column()).drawing() + " "
                + report.problem().rows().get(each.row()).place(), each.status() + each.figures().map(figures -> " "
                        + figures.margin().toMillimetres() + " " + figures.excess().toMillimetres()).orElse("")));
        return cells;
    }

    /**
     * By hand. The allowance is 5 + 2 + 2 = 9 mm. In 1966 the branch has 260 - 250 - 9 = 1 mm to spare and 260 + 25 -
     * 250 + 9 = 44 mm to dress back; in 1968 260 - 10 - 220 - 9 = 21 mm and 260 + 25 - 10 - 220 + 9 = 64 mm.
     */
    @Test
    void aBranchGoesWhereTheDrawingHasWhatItsConnectorMates() throws BadCall {
        FitReport report = judge(CARS + OURS);
        assertEquals(Map.of("front66 hornSpot", "FITS 1.0 44.0", "front68 hornSpot", "FITS 21.0 64.0"), cells(report));
        assertEquals(FitReport.Verdict.FITS, report.verdict());
    }

    /** What the other drawing needs at its own place counts: with 20 mm less the branch is too short there alone. */
    @Test
    void aPlaceThatItDoesNotReachIsAFailure() throws BadCall {
        FitReport report = judge(CARS.replace("to panel 220 mm", "to panel 242 mm") + OURS);
        assertEquals(FitStatus.TOO_SHORT, report.worst(0, "front68").orElseThrow().status());
        assertEquals(FitStatus.FITS, report.worst(0, "front66").orElseThrow().status());
        Project project = TextProject.open(CARS.replace("to panel 220 mm", "to panel 242 mm") + OURS).project();
        assertEquals(List.of("branch b3 is 1 mm too short for panel as front68 has it"), StandardRules.engine()
                .check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE).of("place-not-reached").stream()
                .map(Finding::sentence).toList());
    }

    /** Capped, it goes nowhere; and a branch of ours to the other place is the one that serves it. */
    @Test
    void aCapOrABranchOfItsOwnDecides() throws BadCall {
        String capped = OURS.replace("    connector", "    cap b3 within 400 mm when year = 1968\n    connector");
        assertEquals(Map.of("front66 hornSpot", "FITS 1.0 44.0", "front68 hornSpot", "CAPPED", "front68 panel",
                "NOT_SERVED"), cells(judge(CARS + capped)));
        String two = OURS.replace("    connector", "    branch b4 from nose to panel 230 mm\n    connector");
        // 230 - 10 - 220 - 9
        assertTrue(cells(judge(CARS + two)).get("front68 panel").startsWith("TOO_SHORT -9.0 "));
        assertEquals("CAPPED", cells(judge(CARS + two)).get("front68 hornSpot"));
    }

    /** A connector that mates something else does not lead the branch anywhere. */
    @Test
    void onlyTheSameFunctionMoves() throws BadCall {
        Map<String, String> cells = cells(judge(CARS.replace("on b4 is plug2 mates horn", "on b4 is plug2 mates bell")
                + OURS));
        assertEquals("CAPPED", cells.get("front68 hornSpot"));
        assertEquals("NOT_SERVED", cells.get("front68 panel"));
    }

    /**
     * Limits of the place that it goes to hold there. Nowhere is the excess in 1968 below 64 mm: before 700 mm each
     * millimetre of trunk needs one of branch, and behind 700 mm the branch for 1966 grows besides.
     */
    @Test
    void theLimitsOfThePlaceHoldForTheJudgeAndForThePlanner() throws BadCall {
        String limited = CARS + OURS.replace("    datum", "    excessAtMost 63 mm at panel\n    datum");
        assertEquals(FitStatus.TOO_LONG, judge(limited).worst(0, "front68").orElseThrow().status());
        assertTrue(plan(limited).plan().isImpossible());
        PlanHarness.Planned planned = plan(limited.replace("63 mm", "64 mm"));
        assertTrue(planned.isWhole());
        assertEquals(64_000_000, planned.plan().found().orElseThrow().excess());
    }

    private static PlanHarness.Planned plan(String text) throws BadCall {
        Project project = TextProject.open(text).project();
        return new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(), FitDefaults.usual())
                .plan(project.wiring("ours").orElseThrow(), project, Cancel.NEVER, Progress.NONE);
    }
}
