// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeSold;
import org.loomwright.app.OpenProject;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.consequence.InterfaceConsequence;
import org.loomwright.compare.consequence.Revision;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Severity;

/** A sold revision stays what it is: the next one must fit, mate and take whatever it did. */
class SoldTest {

    private static final String ADD_ON = """
            harness fogLead "Fog lead" of orrin {
                datum bulkhead
                connector K1 "Feed" at bulkhead is fogPlug mates X9 of front
            }
            kit fogKit "Fog kit" revision "A" of orrin {
                needs frontKit revision "A" or later
                contains fogLead
            }
            """;

    private static final String HARNESS = "front-harness.loom";

    private final Sides sides = new Sides();
    private final Map<String, String> sold = sold();

    /** The example with an add-on that plugs into a connector of the harness. */
    private static Map<String, String> sold() {
        Map<String, String> files = Sides.edited(Sides.orrin(), HARNESS,
                "    stud G1 at wingStudLeft via bStudL on body\n",
                "    connector X9 \"For add-ons\" at bulkhead is fogPlug\n"
                        + "    stud G1 at wingStudLeft via bStudL on body\n");
        files.put("fog.loom", ADD_ON);
        return files;
    }

    /** The next revision, which says that A is sold. */
    private static Map<String, String> next(Map<String, String> files) {
        return Sides.edited(files, "revision \"A\" of orrin {\n    contains front\n",
                "revision \"B\" of orrin {\n    sold revision \"A\" at \"v1.0\"\n    contains front\n");
    }

    private Effect effect(Map<String, String> now) {
        Project old = sides.project(sold);
        Project after = sides.project(now);
        return new InterfaceConsequence(new ChainJudge(), FitDefaults.usual(), false).of(
                new Revision(old, after, new FactComparer().compare(old, after)), Cancel.NEVER, Progress.NONE);
    }

    private List<String> told(Map<String, String> now) {
        return effect(now).lines().stream().map(line -> line.subject() + ": " + line.what()
                + (line.vehicles().isEmpty() ? "" : "; " + line.vehicles())).toList();
    }

    @Test
    void theSameAgainIsCompatible() {
        assertEquals(List.of(), told(next(sold)));
    }

    @Test
    void whatFitsMoreVehiclesIsCompatible() {
        assertEquals(List.of(), told(Sides.edited(next(sold), "headlampLeft 280 mm", "headlampLeft 285 mm")));
    }

    @Test
    void aBranchThatDoesNotReachAnyMoreIsNot() {
        Map<String, String> shorter = Sides.edited(next(sold), "headlampLeft 280 mm", "headlampLeft 266 mm");
        assertEquals(List.of("harness front: error[interface-changed] no longer fits frontCoupe at headlampLeft: "
                + "too short; year <= 1969 and coupe"), told(shorter));
        assertTrue(effect(shorter).objects(Severity.ERROR));
        assertTrue(effect(shorter).headline().orElseThrow().contains("frontKit revision A"));
    }

    @Test
    void anotherCavityForACircuitIsNot() {
        Map<String, String> moved = new TreeMap<>(next(sold));
        moved.replaceAll((name, text) -> name.equals(HARNESS)
                ? text.replace("J1:4", "J1:0").replace("J1:5", "J1:4").replace("J1:0", "J1:5") : text);
        List<String> told = told(moved);
        assertEquals(2, told.size(), told.toString());
        assertTrue(told.getFirst().startsWith("connector J1 of front: error[interface-changed] cavity 4 no longer "
                + "holds circuit 25"), told.toString());
    }

    @Test
    void anAddOnMustStillFindItsConnector() {
        assertEquals(List.of("connector X9 of front: error[interface-changed] no longer has housing fogPlug; "
                + "every vehicle"), told(Sides.edited(next(sold), "\"For add-ons\" at bulkhead is fogPlug",
                "\"For add-ons\" at bulkhead is fanPlug")));
    }

    @Test
    void aHarnessForFewerVehiclesIsNot() {
        assertTrue(told(Sides.edited(next(sold), "covers front64, front67, frontCoupe, front70",
                "covers front67, frontCoupe, front70")).getFirst()
                .startsWith("harness front: error[interface-changed] is no longer for; "));
    }

    @Test
    void aRenamedConnectorMatesAsBefore() {
        Map<String, String> renamed = new TreeMap<>(next(sold));
        renamed.replaceAll((name, text) -> text.replaceAll("\\bX9\\b", "X10"));
        assertEquals(List.of(), told(renamed));
    }

    /** Conditions follow a renamed upgrade: what differs besides is found, and nothing else. */
    @Test
    void aRenamedUpgradeIsNoLossAndHidesNone() {
        Map<String, String> renamed = new TreeMap<>(next(sold));
        renamed.replaceAll((name, text) -> text.replaceAll("\\bhazardLights\\b", "warningLights"));
        assertEquals(List.of(), told(renamed));
        assertEquals(List.of("harness front: error[interface-changed] is no longer for; not warningLights"),
                told(Sides.edited(renamed, "    contains front\n", "    contains front when warningLights\n")));
    }

    @Test
    void aRevisionThatIsNotSoldIsOnlyTold() {
        Map<String, String> shorter = Sides.edited(sold, "headlampLeft 280 mm", "headlampLeft 266 mm");
        assertEquals(List.of("harness front: no longer fits frontCoupe at headlampLeft: too short; "
                + "year <= 1969 and coupe"), told(shorter));
        assertTrue(effect(shorter).headline().isEmpty());
    }

    /** Every revision that the kits list is opened under the name that the kit gives. */
    @Test
    void everySoldRevisionIsJudged() throws BadCall {
        Map<String, String> shorter = Sides.edited(next(sold), "headlampLeft 280 mm", "headlampLeft 266 mm");
        List<String> asked = new ArrayList<>();
        List<JudgeSold.Judged> judged = new JudgeSold(new FactComparer(),
                new InterfaceConsequence(new ChainJudge(), FitDefaults.usual(), false)).judge(opened(shorter), at -> {
                    asked.add(at);
                    return opened(sold);
                }, Cancel.NEVER, Progress.NONE);
        assertEquals(List.of("v1.0"), asked);
        assertEquals("A", judged.getFirst().sold().revision());
        assertTrue(judged.getFirst().compared().objects(Severity.ERROR));
    }

    private OpenProject.Opened opened(Map<String, String> files) {
        return new OpenProject.Opened(new ProjectPlace("orrin", Path.of(""), "", List.of()), sides.project(files));
    }
}
