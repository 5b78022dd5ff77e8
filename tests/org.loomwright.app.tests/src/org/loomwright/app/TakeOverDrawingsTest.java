// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.TakeOverDrawings.Taken;
import org.loomwright.app.print.Palette;
import org.loomwright.app.print.PlanPage;
import org.loomwright.app.print.PlanPages;
import org.loomwright.compare.draft.Choice;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** Drawings of the Orrin that gain something after its harness was written. */
class TakeOverDrawingsTest {

    private static final String CARS = "orrin.loom";
    private static final String FRONT = "front-1970.loom";
    private static final String OURS = "front-harness.loom";

    private static final TakeOverDrawings TAKE_OVER = new TakeOverDrawings(Repository.reader());

    private static Taken taken(Opened opened, String harness) {
        return TAKE_OVER.into(opened.project().wiring(harness).orElseThrow(),
                opened.project(), Cancel.NEVER);
    }

    /** The last year gets a driving lamp behind the grille, with a way of its own through the bulkhead. */
    private static EditedExample withDrivingLamp() {
        return new EditedExample("orrin").with(CARS, "    place fogBracket", "    place grille\n    place fogBracket")
                .with(CARS, "    device fogPair", "    device drivingLamp \"Driving lamp\" is fogLampPair at grille"
                        + " when year >= 1970\n    device fogPair")
                .with(FRONT, "    branch bFog from", "    branch bDrive from centre to grille 210 mm path\n"
                        + "    branch bFog from")
                .with(FRONT, "    connector P1", "    connector D1 \"Driving lamp\" on bDrive is fogPlug mates"
                        + " drivingLamp\n    connector P1")
                .with(FRONT, "    circuit 71 \"Horn\"", "    circuit 58 \"Driving lamp\" WH/BU {\n"
                        + "        wire a 1.5 mm2 from J1:11 to D1:1\n    }\n    circuit 71 \"Horn\"")
                .with(FRONT, "        wire d 2.5 mm2 from S31L to G1", "        wire d 2.5 mm2 from S31L to G1\n"
                        + "        wire e 1.5 mm2 from D1:2 to S31L");
    }

    /**
     * What the examples leave out or make otherwise, they do on purpose: nothing is taken over. Their 16 ga are thinner
     * than the 1.5 mm2 of some drawings, and may carry more in their cable.
     */
    @Test
    void aHarnessThatHasAllOfItStaysAsItIs() throws BadCall {
        for (String name : List.of("orrin", "trailer")) {
            Opened opened = new EditedExample(name).open();
            for (WiringView harness : opened.project().harnesses()) {
                Taken taken = taken(opened, harness.name());
                assertTrue(opened.project() == taken.project(), harness.name() + taken.choices());
                assertEquals(Set.of(), taken.choices().stream().map(Choice::kind).filter(each -> each != Choice.Kind
                        .LEFT).collect(Collectors.toSet()));
            }
        }
    }

    /**
     * By hand: a branch with a cap, a socket, the wire to it, its ground at the splice of the left wing, and no plug in
     * the way of the bulkhead plug. The path is 210 mm + 40 mm of loop + 5 mm of drawing + 2 x 5 mm of stations = 265
     * at the factory's breakout, 25 mm behind ours: 290 mm. All other figures stay.
     */
    @Test
    void aLampThatADrawingGainsIsTakenOverAndNothingElseChanges() throws BadCall {
        Opened opened = withDrivingLamp().open();
        Taken taken = taken(opened, "front");
        PlanHarness planner = new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(),
                FitDefaults.usual());
        Planned planned = planner.planAgain(taken.harness(), taken.project(), Cancel.NEVER, Progress.NONE)
                .taking(taken.choices());
        assertTrue(planned.isWhole());
        String before = opened.project().text(OURS).orElseThrow();
        String expected = before
                .replace("205 mm  // 1970: 40 + 100 + 40 + 15 = 195\n", "205 mm  // 1970: 40 + 100 + 40 + 15 = 195\n"
                        + "    // Taken over: bDrive goes to grille, which no branch served.\n"
                        + "    branch bDrive from centre to grille 290 mm\n"
                        + "    // Not in every vehicle. Say where it is parked, and how long it may be for that.\n"
                        + "    cap bDrive when year <= 1969\n")
                .replace("        plug 11 is blank63\n", "        plug 11 is blank63 when year <= 1969\n")
                .replace("    stud G1 at wingStudLeft", "    // Taken over from front70.\n    connector D1 \"Driving"
                        + " lamp\" on bDrive is fogPlug mates drivingLamp when year >= 1970\n    stud G1 at"
                        + " wingStudLeft")
                .replace("        wire e 12 ga from S90 to G1\n", "        wire e 12 ga from S90 to G1\n"
                        + "        // Taken over from front70.\n"
                        + "        wire f 1.5 mm2 from D1:2 to S90 when year >= 1970\n");
        expected = expected.substring(0, expected.length() - 2) + "    // Taken over from front70.\n"
                + "    circuit 58 \"Driving lamp\" WH/BU when year >= 1970 {\n"
                + "        wire a 1.5 mm2 from J1:11 to D1:1\n    }\n}\n";
        assertEquals(expected, planned.text().orElseThrow().text());
        String text = PlanPages.text(List.of(planned), Palette.PLAIN, 100);
        assertTrue(text.contains("\nwhat front lacks of its drawings:\n"), text);
        assertTrue(text.contains("    bDrive: goes to grille, which no branch served\n"), text);
        assertTrue(PlanPages.json(List.of(planned)).contains("\"element\": \"J1:11\""));
        assertTrue(PlanPage.of("orrin", List.of(planned), List.of()).contains("What it lacks of its drawings"));
        // terminals are left to the engineer, as in a draft
        Set<String> errors = errors(taken.project());
        errors.removeAll(errors(opened.project()));
        assertEquals(Set.of("cavity J1:11 holds a wire, and no terminal is stated for it"), errors);
    }

    private static Set<String> errors(Project project) {
        return StandardRules.engine().check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE).findings().stream()
                .filter(each -> each.severity() == Severity.ERROR && each.place().span().file().equals(OURS))
                .map(Finding::sentence).collect(Collectors.toSet());
    }

    /**
     * 6 mm2 in the factory's 85 C cable against 16 ga in ours of 125 C. 33 CFR 183.425 Table 5, 80 C column: 10 AWG
     * (5.26 mm2) 50 A, 8 AWG (8.37 mm2) 70 A, so 6 mm2 has 70 x 6 / 8.37 = 50.2 A; 125 C column: 12 AWG 45 A, 10 AWG
     * 70 A, of which 10 SAE gauge has 63 A. The thinnest that will do is 10 ga.
     */
    @Test
    @Tag("outside")
    void aThickerWireIsTakenOverByWhatItMayCarry() throws BadCall {
        Opened opened = new EditedExample("orrin").with(FRONT, "wire a 1.5 mm2 from J1:9", "wire a 6 mm2 from J1:9")
                .open();
        Taken taken = taken(opened, "front");
        assertEquals(opened.project().text(OURS).orElseThrow().replace("        wire a 16 ga from J1:6 to N1:1 {\n",
                "        // 10 ga for the 6 mm2 of front70; it was 16 ga.\n        wire a 10 ga from J1:6 to N1:1 {\n"),
                taken.project().text(OURS).orElseThrow());
    }

    @Test
    void theOtherHalfOfAYearIsTakenOver() throws BadCall {
        String mates = "        mates J7 of dash70 when year >= 1970\n";
        Opened opened = new EditedExample("orrin").with(OURS, mates, "").open();
        String text = taken(opened, "front").project().text(OURS).orElseThrow();
        assertTrue(text.contains("        // Taken over: it mates J7 of dash70 in front70.\n" + mates), text);
    }

    /** A socket that an engineer changed stays, and it is said that a drawing has another. */
    @Test
    void aSocketThatIsWrittenStays() throws BadCall {
        Opened opened = new EditedExample("orrin").with(OURS, "C1 \"Left corner lamp\" on bCornL is cornerPlug",
                "C1 \"Left corner lamp\" on bCornL is cornerBullets").open();
        Taken taken = taken(opened, "front");
        assertTrue(opened.project() == taken.project());
        assertEquals(List.of(new Choice(Choice.Kind.LEFT, "C1", "is cornerPlug in front67, frontCoupe, front70, and"
                + " something else here")), taken.choices());
    }

    /** A way that the bulkhead plug has already: its wire stays, and a second one is crimped or spliced to it. */
    @Test
    void aSecondLampOnAFeedSharesItsEnd() throws BadCall {
        Opened opened = withDrivingLamp().with(FRONT, "        wire a 1.5 mm2 from J1:11 to D1:1\n",
                "        wire b 0.75 mm2 from D1:1 to C1:2\n").open();
        Taken taken = taken(opened, "front");
        assertTrue(taken.choices().contains(new Choice(Choice.Kind.LEFT, "C1:2", "holds one wire more; crimp both into"
                + " one terminal, or splice them")), taken.choices().toString());
        String text = taken.project().text(OURS).orElseThrow();
        assertTrue(text.contains("        wire a 16 ga from J1:4 to C1:2\n        // Taken over from front70.\n"
                + "        wire b 0.75 mm2 from D1:1 to C1:2 when year >= 1970\n"), text);
    }
}
