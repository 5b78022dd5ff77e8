// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.print.Palette;
import org.loomwright.app.print.PlanPage;
import org.loomwright.app.print.PlanPages;
import org.loomwright.app.print.WhatIfText;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.plan.Conflict;
import org.loomwright.fit.plan.FewestHarnesses;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.Formatter;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;

/** Plans of whole projects, each looked at by the judge. */
class PlanHarnessTest {

    private static final int WIDTH = 100;

    private static Planned plan(Opened opened, String harness) throws BadCall {
        return new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(), FitDefaults.usual()).plan(
                opened.project().wiring(harness).orElseThrow(), opened.project(), Cancel.NEVER, Progress.NONE);
    }

    private static String open(String text) {
        return text.substring(0, text.indexOf("harness ours")) + text.substring(text.indexOf("harness ours"))
                .replace("breakout wing at 500 mm", "breakout wing at unknown").replace("to lamp 250 mm", "to lamp")
                .replace("to fog 330 mm", "to fog unknown");
    }

    private static Map<String, Double> millimetres(Map<String, Long> found) {
        return found.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey,
                each -> new Length(each.getValue()).toMillimetres()));
    }

    /**
     * By hand. a = 5 + 2 + 2 = 9. The lamp's branch needs max(|t - 500| + 200, |t - 510| + 215) + 9, the fog lamp's
     * |t - 510| + 300 + 9, both up to the next 5 mm; IPC/WHMA-A-620 adds 25 mm to the first and 50 to the second. At
     * t = 510: 224 and 309, so 225 and 310; excesses 225 + 25 - 210 + 9 = 49 and 310 + 50 - 300 + 9 = 69. Nowhere is
     * the second below 69. From 500 to 510 each millimetre of trunk saves one of both branches, and one of covering.
     */
    @Test
    void aHarnessOfTwoYearsIsThatOfTheSumsOnPaper() throws BadCall {
        Planned planned = plan(TextProject.open(open(TextProject.SMALL)), "ours");
        HarnessPlan.Solution found = planned.plan().found().orElseThrow();
        assertEquals(Map.of("wing", 510.0), millimetres(found.stations()));
        assertEquals(Map.of("b1", 225.0, "b2", 310.0), millimetres(found.lengths()));
        assertEquals(69_000_000, found.excess());
        assertTrue(planned.isWhole());
        String text = planned.text().orElseThrow().text();
        assertTrue(text.contains("        breakout wing at 510 mm\n    }\n    branch b1 from wing to lamp 225 mm\n"
                + "    branch b2 from wing to fog 310 mm\n"), text);
    }

    @Test
    void whatIsPinnedStays() throws BadCall {
        String pinned = open(TextProject.SMALL).replace("breakout wing at unknown", "breakout wing at 503 mm pinned");
        Planned planned = plan(TextProject.open(pinned), "ours");
        assertEquals(503_000_000, planned.plan().found().orElseThrow().stations().get("wing"));
        assertTrue(planned.text().orElseThrow().text().contains("breakout wing at 503 mm pinned\n"));
        assertTrue(PlanPages.text(List.of(planned), Palette.PLAIN, WIDTH).contains("station wing     503   pinned"));
    }

    @Test
    void twoYearsThatAreTooFarApartNeedTwoHarnesses() throws BadCall {
        Planned planned = plan(TextProject.open(open(TextProject.SMALL).replace("wing at 510 mm", "wing at 820 mm")),
                "ours");
        PlanHarness.Refusal refusal = planned.refusal().orElseThrow();
        assertEquals(List.of(List.of(0), List.of(1)), refusal.fewest().groups());
        assertEquals(List.of("b1"), refusal.conflict().branches());
        String text = PlanPages.text(List.of(planned), Palette.PLAIN, WIDTH);
        assertTrue(text.startsWith("""
                ours: no harness serves all its drawings
                  these cannot be served by one harness, and without any one of them they could:
                    lamp in front66 (year = 1966 and fogLamps): leaves the trunk at 500 mm, needs 200.0 mm, ± 9.0 mm \
                in all, 250 mm excess allowed
                    lamp in front67"""), text);
        assertTrue(text.contains("    so lamp of front66 can leave the trunk at 350 to 650 mm, and that of front67 can"
                + " leave the trunk at 670 to 970 mm: 20 mm apart\n"), text);
        assertTrue(text.contains("  the fewest that serve all: 2; no two of front66, front67 go together\n"), text);
    }

    /** What was not found out in time is called that, and counted. */
    @Test
    void aRefusalDoesNotClaimWhatWasNotFoundOut() throws BadCall {
        Planned planned = plan(TextProject.open(open(TextProject.SMALL).replace("wing at 510 mm", "wing at 820 mm")),
                "ours");
        PlanHarness.Refusal known = planned.refusal().orElseThrow();
        Planned open = new Planned(planned.model(), planned.plan(), planned.text(), planned.before(), planned
                .judged(), Optional.of(
                new PlanHarness.Refusal(known.drawings(), new Conflict(known.conflict().vehicles(), known.conflict()
                        .branches(), false), new FewestHarnesses.Answer(List.of(List.of(0)), List.of(), List.of(1),
                        List.of(0), 5, 2, true), known.jumpers(), List.of())), List.of());
        String text = PlanPages.text(List.of(open), Palette.PLAIN, WIDTH);
        assertTrue(text.contains("one harness; whether they could without one of them was not always found out:\n"));
        assertTrue(text.contains("  the fewest that serve the others: 1; no two of front66 go together\n"), text);
        assertTrue(text.contains("  whether a harness fits front67 alone was not found out\n"), text);
        assertTrue(text.contains("    front67 (year = 1967): not known, because"), text);
        Planned more = new Planned(planned.model(), planned.plan(), planned.text(), planned.before(), planned
                .judged(), Optional.of(
                new PlanHarness.Refusal(known.drawings(), known.conflict(), new FewestHarnesses.Answer(
                        known.fewest().groups(), List.of(), List.of(), List.of(0), 5, 2, true), known.jumpers(),
                        List.of())), List.of());
        assertTrue(PlanPages.text(List.of(more), Palette.PLAIN, WIDTH).contains("  found to serve all: 2; at least 1"
                + " are needed; of 2 of 5 sets that were tried it was not found out whether one harness fits them\n"));
        Planned givenUp = new Planned(planned.model(), planned.plan(), planned.text(), planned.before(), planned
                .judged(), Optional.of(
                new PlanHarness.Refusal(known.drawings(), known.conflict(), new FewestHarnesses.Answer(
                        known.fewest().groups(), List.of(), List.of(), List.of(0), 5, 0, false), known.jumpers(),
                        List.of())), List.of());
        assertTrue(PlanPages.text(List.of(givenUp), Palette.PLAIN, WIDTH).contains("  found to serve all: 2; at least 1"
                + " are needed; not every way to make do with fewer was tried\n"));
        assertTrue(PlanPages.json(List.of(more)).contains("\"isFewest\": false"));
        assertTrue(PlanPages.json(List.of(more)).contains("\"setsNotKnown\": 2"));
    }

    /**
     * The breakouts are 320 mm apart and a branch may run back 150 mm: no stiff trunk does, and one of which 20 mm can
     * be taken up does. At 670 mm, the nearest that serves the second car, the first one takes all 20 mm up: its branch
     * runs back 150 mm, and so does the second one's.
     */
    @Test
    void slackServesWhatAStiffTrunkCannot() throws BadCall {
        String apart = open(TextProject.SMALL).replace("wing at 510 mm", "wing at 820 mm")
                .replace("within 400 mm", "within 500 mm");
        assertTrue(plan(TextProject.open(apart), "ours").refusal().isPresent());
        Planned planned = plan(TextProject.open(apart.replace("breakout wing at unknown",
                "breakout wing at unknown\n        slack before wing at most 20 mm")), "ours");
        assertEquals(Map.of("wing", 670.0), millimetres(planned.plan().found().orElseThrow().stations()));
        assertEquals(FitReport.Verdict.FITS, planned.judged().orElseThrow().verdict());
        assertEquals(planned.plan().found().get().excess(),
                planned.judged().get().largestExcess().orElseThrow().nanometres());
        assertTrue(planned.plan().settled());
    }

    /** By hand: without the second year the harness is that of the first alone. */
    @Test
    void whatADrawingCosts() throws BadCall {
        Opened opened = TextProject.open(open(TextProject.SMALL));
        PlanHarness planner = new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(),
                FitDefaults.usual());
        PlanHarness.WhatIf whatIf = planner.whatIf(planner.plan(opened.project().wiring("ours").orElseThrow(),
                opened.project(), Cancel.NEVER, Progress.NONE), Cancel.NEVER);
        // 200 + 9 up to 210, and 25 more: 35 + 9 past what is needed; what the trunk has less the branch has more
        HarnessPlan.Solution first = whatIf.savings().without().get(1).orElseThrow();
        assertEquals(210_000_000, first.lengths().get("b1") - (500_000_000 - first.stations().get("wing")));
        assertEquals(44_000_000, first.excess());
        String text = WhatIfText.text(whatIf, Palette.PLAIN, WIDTH);
        assertTrue(text.contains("without front67       44.0"), text);
        assertTrue(text.contains("\n5.0 mm more to dress back would save "), text);
        assertTrue(text.contains("\n40.0 mm more to dress back"), text);
    }

    private static Planned again(Opened opened) throws BadCall {
        return new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(), FitDefaults.usual())
                .planAgain(opened.project().wiring("ours").orElseThrow(), opened.project(), Cancel.NEVER,
                        Progress.NONE);
    }

    private static String withoutFigures(String text) {
        return text.replaceAll("(at|branch \\w+ from \\w+ to \\w+) [0-9.]+ mm", "$1 # mm");
    }

    /**
     * A socket that an engineer has changed, and a plan of the same harness before it: nothing but stations and lengths
     * is written, whether the figures are kept or not, and kept figures are the same bytes.
     */
    @Test
    void planningAgainKeepsSocketsAndWhatStandsInThem() throws BadCall {
        String file = "front-harness.loom";
        Opened edited = new EditedExample("orrin")
                .with(file, "C1 \"Left corner lamp\" on bCornL is cornerPlug", "C1 \"Left corner lamp\" on bCornL is"
                        + " cornerBullets")
                .with(file, "bHeadL from leftWing to headlampLeft 280 mm", "bHeadL from leftWing to headlampLeft"
                        + " 285 mm").open();
        PlanHarness planner = new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(),
                FitDefaults.usual());
        Planned kept = planner.planAgain(edited.project().wiring("front").orElseThrow(), edited.project(),
                Cancel.NEVER, Progress.NONE);
        String source = kept.harness().wiring().span().file();
        String before = edited.project().text(source).orElseThrow();
        assertEquals(before, kept.text().orElseThrow().text());
        String anew = plan(edited, "front").text().orElseThrow().text();
        assertEquals(withoutFigures(before), withoutFigures(anew));
        assertTrue(anew.contains("on bCornL is cornerBullets") && !anew.contains("headlampLeft 285 mm"), anew);
    }

    /** What an engineer rounded up stays, pinned or not; a longer way to one lamp changes the branch to it alone. */
    @Test
    void planningAgainChangesOnlyWhatMust() throws BadCall {
        String planned = plan(TextProject.open(open(TextProject.SMALL)), "ours").text().orElseThrow().text();
        String edited = planned.replace("to lamp 225 mm", "to lamp 235 mm").replace("to fog 310 mm",
                "to fog 315 mm pinned");
        assertEquals(edited, again(TextProject.open(edited)).text().orElseThrow().text());
        String moved = edited.replace("branch b1 from wing to lamp 215 mm", "branch b1 from wing to lamp 240 mm");
        Planned after = again(TextProject.open(moved));
        assertTrue(after.isWhole());
        assertEquals(moved.replace("to lamp 235 mm", "to lamp 250 mm"), after.text().orElseThrow().text());
        String anew = plan(TextProject.open(moved), "ours").text().orElseThrow().text();
        assertTrue(anew.contains("to fog 315 mm pinned\n"), anew);
        String open = moved.replace("to fog 315 mm pinned", "to fog unknown");
        assertEquals(moved.replace("to lamp 235 mm", "to lamp 250 mm").replace("to fog 315 mm pinned", "to fog 310 mm"),
                again(TextProject.open(open)).text().orElseThrow().text());
    }

    @Test
    void theFitBeforeAndAfterIsShown() throws BadCall {
        Planned planned = plan(TextProject.open(TextProject.SMALL), "ours");
        String text = PlanPages.text(List.of(planned), Palette.PLAIN, WIDTH);
        assertTrue(text.contains("fit before\nmargin in mm  front66  front67  least  bound by\nlamp (b1)"), text);
        assertTrue(text.contains("fit as planned\nmargin in mm"), text);
        Planned open = plan(TextProject.open(open(TextProject.SMALL)), "ours");
        assertTrue(!PlanPages.text(List.of(open), Palette.PLAIN, WIDTH).contains("fit before"));
        String page = PlanPage.of("demo & more", List.of(planned), List.of());
        assertTrue(page.startsWith("<!DOCTYPE html>"), page);
        assertTrue(page.contains("<title>demo &amp; more: planned harnesses"), page);
        assertTrue(page.contains("Caution.") && page.contains("local codes"));
        assertTrue(page.contains("<caption>Fit before: margin in mm, and what has to be dressed back</caption>"));
        assertTrue(page.contains("<tr><th scope=\"row\">branch b1</th><td>250</td><td>225</td><td>front67</td></tr>"),
                page);
        assertTrue(page.contains("<tr><th scope=\"row\">front67</th><td>year = 1967</td><td>ours</td></tr>"), page);
        assertTrue(!page.contains("<script") && !page.contains("http"), "nothing from elsewhere");
    }

    /** One lead for the branch that two geometries need longer, with the cavities that these vehicles use. */
    @Test
    void aJumperIsALeadAsSource() throws BadCall {
        Opened opened = new EditedExample("orrin").open();
        PlanHarness.Refusal refusal = plan(opened, "rear").refusal().orElseThrow();
        assertEquals(List.of("rear-harness.loom", "rear_bTailL.loom"), refusal.texts().stream().map(Source::file)
                .toList());
        String lead = refusal.texts().get(1).text();
        assertEquals(Formatter.format(lead), lead);
        assertTrue(lead.contains("harness rear_bTailL of orrin when year <= 1969 and estate {\n"), lead);
        assertTrue(lead.contains("    branch lead from tailLeft to tailLeft 5 mm\n"), lead);
        assertTrue(lead.contains("    connector T1in \"Left tail lamp\" at tailLeft mates T1 of rear\n"), lead);
        assertTrue(lead.contains("    circuit 3 \"Left turn\" GN/RD {\n        wire a 18 ga from T1in:3 to T1:3\n"),
                lead);
        // reversing lamps are on this plug from 1970 on only
        assertTrue(!lead.contains("T1in:5"), lead);
        List<Source> sources = new ArrayList<>(opened.project().everySource());
        sources.add(refusal.texts().get(1));
        assertEquals(List.of(), Project.link(sources).problems().stream().filter(each -> each.span().file()
                .equals("rear_bTailL.loom")).toList());
        String page = PlanPage.of("orrin", List.of(plan(opened, "rear")), List.of());
        assertTrue(page.contains("<td>harness 2; or the one harness with a jumper to tailLeft</td>"), page);
        assertTrue(page.contains("<p>the fewest that serve all: 2; every way to make do with fewer was tried</p>"),
                page);
        assertTrue(page.contains("<td class=\"bad\">94.8 (155.2) too long</td>"), page);
    }

    @Test
    void aJumperInsteadOfASecondHarness() throws BadCall {
        Planned planned = plan(new EditedExample("orrin").open(), "rear");
        assertTrue(planned.refusal().orElseThrow().jumpers().orElseThrow().isFewest());
        String text = PlanPages.text(List.of(planned), Palette.PLAIN, WIDTH);
        assertTrue(text.contains("    rearEstate64 (year <= 1969 and estate): harness 2; or the one harness with a jumper to"
                + " tailLeft\n"), text);
        assertTrue(text.contains("    rear64 (year <= 1969 and saloon): harness 1; or the one harness as it is\n"), text);
    }

    @Test
    void aLengthThatNobodyKnowsIsNotAnsweredFor() throws BadCall {
        Planned planned = plan(TextProject.open(open(TextProject.SMALL).replace("to lamp 215 mm", "to lamp unknown")),
                "ours");
        assertTrue(!planned.isWhole());
        assertTrue(PlanPages.text(List.of(planned), Palette.PLAIN, WIDTH).contains("not answered for:\n"
                + "  b1 in front67"));
    }

    /** Byte for byte the same file, but for the line that names the drawings. */
    @Test
    void theOrderOfTheDrawingsDoesNotMatter() throws BadCall {
        EditedExample example = new EditedExample("orrin");
        String covers = "covers front64, front67, frontCoupe, front70";
        String turned = "covers front70, frontCoupe, front67, front64";
        Planned one = plan(example.open(), "front");
        Planned other = plan(example.with("front-harness.loom", covers, turned).open(), "front");
        assertEquals(one.text().orElseThrow().text(), other.text().orElseThrow().text().replace(turned, covers));
        assertEquals(one.plan().found(), other.plan().found());
    }

    /** What a person laid out by hand is a bound for the planner. */
    @Test
    void theFrontOfTheOrrinIsPlannedAtLeastAsWellAsByHand() throws BadCall {
        Opened opened = new EditedExample("orrin").open();
        FitReport byHand = new JudgeFit(new ChainJudge(), FitDefaults.usual()).judge(opened.project(), Cancel.NEVER,
                Progress.NONE).stream().filter(each -> each.harness().name().equals("front")).findFirst().orElseThrow()
                .report();
        Planned planned = plan(opened, "front");
        Optional<Length> excess = planned.judged().flatMap(FitReport::largestExcess);
        assertTrue(excess.orElseThrow().compareTo(byHand.largestExcess().orElseThrow()) <= 0);
        assertEquals(excess.get().nanometres(), planned.plan().found().orElseThrow().excess());
    }

    /** The excess that the project accepts with a reason could not have been planned away. */
    @Test
    void theAcceptedMisfitOfTheOrrinsRearIsNoMistakeOfTheHand() throws BadCall {
        PlanHarness.Refusal refusal = plan(new EditedExample("orrin").open(), "rear").refusal().orElseThrow();
        assertEquals(List.of("bTailL"), refusal.conflict().branches());
        assertEquals(2, refusal.fewest().groups().size());
    }
}
