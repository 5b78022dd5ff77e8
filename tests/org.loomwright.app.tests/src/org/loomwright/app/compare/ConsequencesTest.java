// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.loomwright.app.PartsConsequence;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.consequence.Consequence;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.FindingsConsequence;
import org.loomwright.compare.consequence.FitConsequence;
import org.loomwright.compare.consequence.InterfaceConsequence;
import org.loomwright.compare.consequence.LengthsConsequence;
import org.loomwright.compare.consequence.Revision;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.geometry.Copper;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** What follows from revisions of the largest example. */
class ConsequencesTest {

    private static final FindingsConsequence FINDINGS = new FindingsConsequence(StandardRules.engine(),
            Settings.TIMELESS);
    private static final FitConsequence FIT = new FitConsequence(new ChainJudge(), FitDefaults.usual());
    private static final LengthsConsequence LENGTHS = new LengthsConsequence(Copper.HANDBOOK);

    private final Sides sides = new Sides();
    private final Map<String, String> orrin = Sides.orrin();
    private final Project before = sides.project(orrin);

    private Effect effect(Consequence consequence, Map<String, String> after) {
        Project now = sides.project(after);
        return consequence.of(new Revision(before, now, new FactComparer().compare(before, now)), Cancel.NEVER,
                Progress.NONE);
    }

    private Map<String, String> edited(String from, String to) {
        return Sides.edited(orrin, from, to);
    }

    private static Effect.Line line(Effect effect, String subject) {
        List<Effect.Line> lines = effect.lines().stream().filter(line -> line.subject().equals(subject)).toList();
        assertEquals(1, lines.size(), subject + " in " + effect.lines());
        return lines.getFirst();
    }

    @Test
    void aRevisionThatChangesNothingHasNoEffect() {
        for (Consequence each : List.of(FINDINGS, FIT, LENGTHS, new PartsConsequence(),
                new InterfaceConsequence(new ChainJudge(), FitDefaults.usual(), true))) {
            assertEquals(List.of(), effect(each, orrin).lines());
        }
    }

    /** 14 mm off a branch are 14 mm off its reach: the margins of docs/fit.md are linear in the branch's length. */
    @Test
    void aShorterBranchLosesReachByAsMuch() {
        Effect effect = effect(FIT, edited("headlampLeft 280 mm", "headlampLeft 266 mm"));
        Effect.Line line = line(effect, "front64 at headlampLeft");
        assertEquals("68.9 mm", line.before());
        assertEquals("54.9 mm", line.after());
        assertEquals(Direction.WORSE, line.direction());
        assertTrue(effect.headline().orElseThrow().contains(
                "no longer fits at headlampLeft (11.2 -> -2.8 mm)"), effect.headline().orElseThrow());
        assertEquals("year <= 1969 and coupe", line(effect, "frontCoupe at headlampLeft").vehicles(),
                "a drawing that is the same for all of its vehicles: those that it is for");
    }

    /** Where a drawing has several geometries, the vehicles are those of the geometries that are as told. */
    @Test
    void aLineOfFitNamesTheVehiclesInWhichItIsSo() {
        Map<String, String> cars = Map.of("all.loom", """
                platform cars "Cars" {
                    years 1964 .. 1965
                    option fan
                    option heater
                    position front
                    place bulkhead
                    place lamp
                }
                drawing front64 of cars fills front {
                    datum bulkhead
                    trunk main {
                        breakout wing at 500 mm
                    }
                    branch b1 from wing to lamp 200 mm when not fan
                    branch b2 from wing to lamp 230 mm when fan
                }
                harness ours of cars fills front {
                    covers front64
                    datum bulkhead
                    trunk main {
                        breakout wing at 500 mm
                    }
                    branch b1 from wing to lamp 300 mm
                }
                kit box "Front kit" revision "A" of cars {
                    contains ours
                }
                """);
        Project old = sides.project(cars);
        for (String length : List.of("220 mm", "190 mm")) {
            Project now = sides.project(Sides.edited(cars, "lamp 300 mm", "lamp " + length));
            Revision revision = new Revision(old, now, new FactComparer().compare(old, now));
            String vehicles = length.equals("220 mm") ? "fan" : "every vehicle";
            Effect.Line line = line(FIT.of(revision, Cancel.NEVER, Progress.NONE), "front64 at lamp");
            assertTrue(line.what().startsWith("now too short"), line.toString());
            assertEquals(vehicles, line.vehicles(), length);
            Effect.Line loss = line(new InterfaceConsequence(new ChainJudge(), FitDefaults.usual(), false)
                    .of(revision, Cancel.NEVER, Progress.NONE), "harness ours");
            assertEquals(vehicles, loss.vehicles(), length);
        }
    }

    @Test
    void aBranchThatIsTooShortIsAFindingGained() {
        Effect effect = effect(FINDINGS, edited("headlampLeft 280 mm", "headlampLeft 266 mm"));
        assertTrue(effect.lines().stream().anyMatch(line -> line.direction() == Direction.WORSE
                && line.what().contains("error[place-not-reached]") && line.objects(Severity.ERROR)));
        assertEquals(Optional.of("1 error gained"), effect.headline());
    }

    @Test
    void aLongerBranchHasMoreToDressBack() {
        Effect.Line line = line(effect(FIT, edited("headlampLeft 280 mm", "headlampLeft 290 mm")),
                "front64 at headlampLeft");
        assertEquals("to dress back", line.what());
        assertEquals(Direction.OTHER, line.direction());
    }

    /** A renamed branch and connector bring no finding and lose none. */
    @Test
    void findingsFollowARename() {
        Map<String, String> renamed = new TreeMap<>(orrin);
        renamed.replaceAll((name, text) -> name.equals("front-harness.loom")
                ? text.replaceAll("\\bcircuit 2 ", "circuit 202 ").replaceAll("\\bbHeadL\\b", "bLampL") : text);
        assertFalse(renamed.equals(orrin));
        Effect effect = effect(FINDINGS, renamed);
        assertEquals(List.of(), effect.lines());
    }

    @Test
    void wiresOnALongerBranchAreCutLonger() {
        Effect effect = effect(LENGTHS, edited("headlampLeft 280 mm", "headlampLeft 300 mm"));
        assertTrue(effect.lines().stream().anyMatch(line -> line.what().startsWith("copper")));
        Effect.Line wire = line(effect, "wire 16a of front");
        long difference = Math.round(10 * (Double.parseDouble(wire.after().replace(" mm", ""))
                - Double.parseDouble(wire.before().replace(" mm", ""))));
        assertEquals(200, difference, wire.toString());
    }

    @Test
    void thePartsListTellsWhatToOrder() {
        Effect effect = effect(new PartsConsequence(), Sides.edited(orrin, "front-harness.loom",
                "        plug 11 is blank63\n", ""));
        assertTrue(effect.lines().stream().anyMatch(line -> line.what().equals("plug blank63")), effect.toString());
    }
}
