// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.print.Palette;
import org.loomwright.app.print.PlanPages;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Drawings and harnesses that nobody can plan as they stand: what is said, and that nothing wrong is planned. */
class PlanBadInputTest {

    private static final String CARS = """
            platform orrin {
                years 1966 .. 1967
                position front
                place bulkhead
                place lamp
                place fog
            }
            drawing front66 of orrin fills front when year = 1966 {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                    breakout nose at 700 mm
                }
                branch b1 from wing to lamp 200 mm
                branch b2 from nose to fog 300 mm
            }
            drawing front67 of orrin fills front when year = 1967 {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 510 mm
                    breakout nose at 710 mm
                }
                branch b1 from wing to lamp 210 mm
                branch b2 from nose to fog 310 mm
            }
            harness ours of orrin fills front {
                covers front66, front67
                datum bulkhead
                trunk main {
                    breakout wing at unknown
                    breakout nose at unknown
                }
                branch b1 from wing to lamp
                branch b2 from nose to fog
            }
            """;

    private static Planned plan(String text) throws BadCall {
        OpenProject.Opened opened = TextProject.open(text);
        Planned planned = new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(),
                FitDefaults.usual()).plan(opened.project().wiring("ours").orElseThrow(), opened.project(), Cancel.NEVER,
                        Progress.NONE);
        // whatever came out, the judge never calls it a harness that fits when it does not
        planned.judged().ifPresent(report -> assertFalse(planned.isWhole()
                && report.verdict() != FitReport.Verdict.FITS));
        return planned;
    }

    private static String edited(String text, String... pairs) {
        String edited = text;
        for (int i = 0; i < pairs.length; i += 2) {
            assertTrue(edited.contains(pairs[i]), pairs[i]);
            edited = edited.replace(pairs[i], pairs[i + 1]);
        }
        return edited;
    }

    /** The text of front67 alone is changed. */
    private static String later(String... pairs) {
        int from = CARS.indexOf("drawing front67");
        int to = CARS.indexOf("harness ours");
        return CARS.substring(0, from) + edited(CARS.substring(from, to), pairs) + CARS.substring(to);
    }

    private static String words(Planned planned) {
        return PlanPages.text(List.of(planned), Palette.PLAIN, 120);
    }

    private static void says(Planned planned, String words) {
        assertFalse(planned.isWhole());
        assertTrue(words(planned).contains(words), words(planned));
    }

    @Test
    void asItStandsItIsPlanned() throws BadCall {
        assertTrue(plan(CARS).isWhole());
    }

    @Test
    void withoutACommonDatumNothingIsConcluded() throws BadCall {
        says(plan(later("datum bulkhead", "datum lamp")), "not answered for:\n"
                + "  b1 in front67: drawing and harness are not counted from the same datum\n");
        says(plan(later("    datum bulkhead\n", "")), "b1 in front67: drawing and harness are not counted from"
                + " the same");
    }

    @Test
    void onAnotherRouteNothingIsConcluded() throws BadCall {
        says(plan(later("trunk main {\n        breakout wing at 510 mm\n", "trunk before {\n        breakout wing at"
                + " 510 mm\n    }\n    trunk behind {\n")), "b1 in front67: no trunk of the drawing is known to"
                + " take the way"
                + " of the harness's trunk\n");
    }

    @Test
    void aPlaceAtTwoStationsIsServedAtBothOrSaidNotToBe() throws BadCall {
        String twice = later("branch b2", "branch b9 from nose to lamp 205 mm\n    branch b2");
        says(plan(twice), "  b9 in front67: it serves lamp besides branch b1, and the harness has one branch to"
                + " the place"
                + " only\n");
        assertTrue(plan(twice.replace("    branch b2 from nose to fog\n}", "    branch b9 from nose to lamp\n"
                + "    branch b2 from nose to fog\n}")).isWhole());
        // of another name, ours has to reach from 510 and from 710 mm
        Planned both = plan(twice.replace("branch b1 from wing to lamp\n", "branch b3 from wing to lamp\n"));
        assertTrue(both.isWhole());
        long station = both.plan().found().orElseThrow().stations().get("wing");
        assertTrue(station >= 560_000_000 && station <= 650_000_000, "within 150 mm of all: " + station);
    }

    /** With 250 mm between them the two breakouts move apart; the first one not through the grommet. */
    @Test
    void aBreakoutStaysOnItsSideOfABarrier() throws BadCall {
        String wide = CARS.replace("    covers front66, front67\n", "    covers front66, front67\n"
                + "    spacingAtLeast 250 mm\n");
        assertTrue(station(wide, "wing") < 498_000_000, "it would be before the grommet");
        String barred = wide.replace("        breakout wing at unknown\n", "        barrier grommet at 498 mm\n"
                + "        breakout wing at unknown\n");
        assertTrue(station(barred, "wing") >= 498_000_000);
        assertTrue(station(barred, "nose") >= station(barred, "wing") + 250_000_000);
        says(plan(barred.replace("498 mm", "505 mm")), "wing: vehicles have it on both sides of barrier grommet");
    }

    private static long station(String text, String breakout) throws BadCall {
        Planned planned = plan(text);
        assertTrue(planned.isWhole());
        return planned.plan().found().orElseThrow().stations().get(breakout);
    }

    @Test
    void anUnknownLengthIsNotProved() throws BadCall {
        says(plan(later("to lamp 210 mm", "to lamp unknown")), "b1 in front67: the drawing does not state the length of"
                + " its branch\n");
        says(plan(later("nose at 710 mm", "nose at unknown")), "b2 in front67: the drawing does not state where its"
                + " branch leaves the trunk\n");
    }

    @Test
    void pinsThatContradictEachOtherAreNamed() throws BadCall {
        says(plan(edited(CARS, "wing at unknown", "wing at 700 mm pinned", "nose at unknown", "nose at 600 mm pinned")),
                "  these cannot be served by one harness, and without any one of them they could:\n    lamp in"
                        + " front67");
        says(plan(edited(CARS, "wing at unknown", "wing at 500 mm pinned", "nose at unknown", "nose at 510 mm pinned",
                "covers front66, front67", "covers front66, front67\n    spacingAtLeast 50 mm")),
                "  breakout wing and breakout nose are pinned too near each other");
        Planned tooShort = plan(edited(CARS, "from wing to lamp\n", "from wing to lamp 150 mm pinned\n"));
        says(tooShort, "ours: no harness serves all its drawings\n");
        assertEquals(List.of("b1"), tooShort.refusal().orElseThrow().conflict().branches());
    }

    @Test
    void aToleranceLargerThanTheExcessIsNamed() throws BadCall {
        Planned planned = plan(edited(CARS, "covers front66, front67", "covers front66, front67\n    excessAtMost"
                + " 20 mm\n"
                + "    branches made -0 mm +25 mm"));
        says(planned, "  no harness fits front66, front67 even alone\n");
        assertEquals(1, planned.refusal().orElseThrow().conflict().branches().size());
    }

    /** One drawing has the breakouts the other way round, too far apart for one order to serve both. */
    @Test
    void breakoutsThatChangePlacesAreNamed() throws BadCall {
        String turned = later("breakout wing at 510 mm\n        breakout nose at 710 mm",
                "breakout nose at 300 mm\n        breakout wing at 710 mm");
        Planned planned = plan(turned);
        says(planned, "ours: no harness serves all its drawings\n");
        says(planned, "  front67 has nose before wing; turn them round in the harness, or leave it to a harness of its"
                + " own\n");
    }

    @Test
    void aLimitThatNoVehicleMeetsIsSaidToBeThat() throws BadCall {
        Planned planned = plan(edited(CARS, "covers front66, front67", "covers front66, front67\n    excessAtMost"
                + " 1 mm"));
        says(planned, "  no harness fits front66, front67 even alone\n");
        assertTrue(planned.refusal().orElseThrow().jumpers().isEmpty());
    }

    @Test
    void aBranchThatHangsInTheAirIsNamed() throws BadCall {
        says(plan(edited(CARS, "branch b2 from nose to fog\n", "branch b2 from elsewhere to fog\n")), "elsewhere");
        says(plan(later("branch b2 from nose", "branch b2 from elsewhere")), "elsewhere");
        says(plan(edited(CARS, "branch b2 from nose to fog\n", "branch b2 from loop to fog {\n        breakout loop at"
                + " unknown\n    }\n")), "not answered for:\n");
    }

    @Test
    void aDrawingOfOtherVehiclesIsNamed() throws BadCall {
        says(plan(edited(CARS, "harness ours of orrin fills front {", "harness ours of orrin fills front when year ="
                + " 1966 {")), "covers drawing \"front67\", but is for none of its vehicles");
    }

    /** 2 to the 7 shapes of one drawing are judged as one with every branch, and that is said. */
    @Test
    void tooManyShapesOfOneDrawingAreSaidToBeJudgedTogether() throws BadCall {
        StringBuilder options = new StringBuilder();
        StringBuilder places = new StringBuilder();
        StringBuilder branches = new StringBuilder();
        for (int i = 0; i < 7; i++) {
            options.append("    option o").append(i).append("\n    place p").append(i).append('\n');
            branches.append("    branch x").append(i).append(" from wing to p").append(i).append(" 100 mm when"
                    + " o").append(i)
                    .append('\n');
            places.append("    branch y").append(i).append(" from wing to p").append(i).append('\n');
        }
        String text = later("    branch b1", branches + "    branch b1").replace("    position front\n", "   "
                + " position front\n"
                + options).replace("    branch b1 from wing to lamp\n", "    branch b1 from wing to lamp\n" + places);
        says(plan(text), "drawing \"front67\" has more than 64 different shapes with harness \"ours\"; they are judged"
                + " together, with every branch in them\n");
    }

    /** 160 drawings with 64 shapes each. */
    @Test
    void moreThanTenThousandGeometriesAreRefusedInOneLine() {
        StringBuilder text = new StringBuilder("platform orrin {\n    years 1801 .. 1960\n    place bulkhead\n");
        StringBuilder ours = new StringBuilder();
        for (int i = 0; i < 6; i++) {
            text.append("    option o").append(i).append("\n    place p").append(i).append('\n');
            ours.append("    branch y").append(i).append(" from wing to p").append(i).append('\n');
        }
        text.append("}\n");
        StringBuilder covers = new StringBuilder();
        for (int year = 1801; year <= 1960; year++) {
            text.append("drawing d").append(year).append(" of orrin when year = ").append(year)
                    .append(" {\n    datum bulkhead\n    trunk main {\n        breakout wing at 500 mm\n    }\n");
            for (int i = 0; i < 6; i++) {
                text.append("    branch x").append(i).append(" from wing to p").append(i).append(" 100 mm when o")
                        .append(i).append('\n');
            }
            text.append("}\n");
            covers.append(covers.isEmpty() ? "" : ", ").append('d').append(year);
        }
        text.append("harness ours of orrin {\n    covers ").append(covers).append("\n    datum bulkhead\n   "
                + " trunk main {\n"
                + "        breakout wing at unknown\n    }\n").append(ours).append("}\n");
        assertEquals("harness ours covers 10240 different vehicle geometries, more than 10000; cover fewer drawings",
                assertThrows(BadCall.class, () -> plan(text.toString())).getMessage());
    }
}
