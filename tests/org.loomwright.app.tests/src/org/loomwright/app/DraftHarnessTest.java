// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.app.DraftHarness.Drafted;
import org.loomwright.app.print.DraftText;
import org.loomwright.app.print.Palette;
import org.loomwright.app.print.PlanPages;
import org.loomwright.compare.draft.Choice;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.Formatter;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** Harnesses drafted from drawings, each judged by the rules. */
class DraftHarnessTest {

    private static final String CARS = """
            platform orrin "Orrin 1200" {
                supply 12 V negative ground
                years 1966 .. 1968
                position front
                position facia
                zone bay ambient 50 C dry
                place bulkhead in bay
                place tray in bay
                place lampSpot in bay
                place fogSpot in bay
                place hornSpot in bay
                place panel in bay
                ground body
                device battery is accumulator at tray on body
                device lamp is bulb at lampSpot on body
                device fog is bulb at fogSpot on body when year >= 1967
                device horn is trumpet at hornSpot on body
                mode driving {
                    set engine to cruise
                }
            }
            catalogue parts {
                cable pvc {
                    temperature 85 C
                    size 1 mm2 diameter 2.1 mm
                    size 1.5 mm2 diameter 2.4 mm
                    size 2.5 mm2 diameter 3 mm
                }
                housing plug6 {
                    cavities 1..6
                }
                housing plug8 {
                    cavities 1..8
                }
                housing socket6 {
                    cavities 1..6
                }
                source accumulator {
                    pins plus, minus
                    voltage 12.6 V
                }
                lamp bulb {
                    pins 1, 2
                    power 21 W
                    voltage 12 V
                    joins 1 to 2
                }
                load trumpet {
                    pins 1, 2
                    power 24 W
                    voltage 12 V
                    joins 1 to 2
                }
            }
            drawing dash66 of orrin fills facia when year = 1966 {
                datum bulkhead
                connector J7 at bulkhead is socket6
            }
            drawing dash67 of orrin fills facia when year >= 1967 {
                datum bulkhead
                connector J9 at bulkhead is socket6
            }
            drawing front66 "Front 1966" of orrin fills front when year = 1966 {
                tolerance ± 2 mm
                cable pvc
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                    breakout nose at 700 mm
                }
                branch b1 from wing to lampSpot 200 mm
                branch b3 from nose to hornSpot 250 mm
                connector J1 "Bulkhead plug" at bulkhead is plug6 mates J7 of dash66
                connector H1 "Lamp" on b1 is plug6 mates lamp
                connector N1 "Horn" on b3 is plug6 mates horn
                circuit 12 "Lamp" BU {
                    wire a 1 mm2 from J1:1 to H1:1
                }
                circuit 30 "Horn" BN {
                    wire a 1.5 mm2 from J1:2 to N1:1
                }
            }
            drawing front67 "Front 1967" of orrin fills front when year = 1967 {
                tolerance ± 2 mm
                cable pvc
                datum bulkhead
                trunk main {
                    breakout wing at 510 mm
                    breakout nose at 690 mm
                }
                branch b1 from wing to lampSpot 215 mm
                branch b2 from wing to fogSpot 300 mm
                branch b3 from nose to hornSpot 255 mm
                connector J1 "Bulkhead plug" at bulkhead is plug6 mates J9 of dash67
                connector H1 "Lamp" on b1 is plug6 mates lamp
                connector F1 "Fog lamp" on b2 is plug6 mates fog
                connector N1 "Horn" on b3 is plug6 mates horn
                circuit 56 "Lamp" YE {
                    wire a 2.5 mm2 from J1:1 to H1:1
                }
                circuit 30 "Fog lamp" GN {
                    wire a 1 mm2 from J1:3 to F1:1
                }
                circuit 71 "Horn" BK/YE {
                    wire a 1.5 mm2 from J1:4 to N1:1
                }
            }
            drawing front68 "Front 1968" of orrin fills front when year = 1968 {
                tolerance ± 2 mm
                cable pvc
                datum bulkhead
                trunk main {
                    breakout wing at 505 mm
                    breakout nose at 710 mm
                }
                branch b1 from wing to lampSpot 210 mm
                branch b2 from wing to fogSpot 290 mm
                branch b4 from nose to panel 120 mm
                connector J1 "Bulkhead plug" at bulkhead is plug8 mates J9 of dash67
                connector H1 "Lamp" on b1 is plug6 mates lamp
                connector F1 "Fog lamp" on b2 is plug6 mates fog
                connector N1 "Horn" on b4 is plug6 mates horn
                circuit 56 "Lamp" YE {
                    wire a 2.5 mm2 from J1:1 to H1:1
                }
                circuit 30 "Fog lamp" GN {
                    wire a 1 mm2 from J1:3 to F1:1
                }
                circuit 71 "Horn" BK/YE {
                    wire a 1.5 mm2 from J1:4 to N1:1
                }
            }
            """;

    private static Drafted draft(Project project, String... drawings) throws BadCall {
        PlanHarness planner = new PlanHarness(Repository.reader(), new HarnessPlanner(), new ChainJudge(),
                FitDefaults.usual());
        return new DraftHarness(Repository.reader(), planner).draft(project, List.of(drawings), "ours", Cancel.NEVER,
                Progress.NONE);
    }

    private static Drafted years() throws BadCall {
        return draft(TextProject.open(CARS).project(), "front66", "front67", "front68");
    }

    private static String text(Drafted drafted) {
        return drafted.planned().text().orElseThrow().text();
    }

    private static void has(Drafted drafted, String lines) {
        assertTrue(text(drafted).contains(lines), text(drafted));
    }

    private static List<String> choices(Drafted drafted, Choice.Kind kind) {
        return drafted.draft().choices().stream().filter(each -> each.kind() == kind)
                .map(each -> each.element() + ": " + each.words()).toList();
    }

    private static Project with(Project project, Source... more) {
        List<Source> sources = new ArrayList<>(project.everySource());
        sources.addAll(List.of(more));
        return Project.link(sources);
    }

    /** The errors of a project with a harness added, by rule and file. */
    private static Map<String, Set<String>> errors(Project project, Source... more) {
        Map<String, Set<String>> rules = new TreeMap<>();
        for (Finding each : StandardRules.engine().check(with(project, more), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE).findings()) {
            if (each.severity() == Severity.ERROR) {
                rules.computeIfAbsent(each.place().span().file(), key -> new TreeSet<>()).add(each.rule() + " "
                        + each.sentence());
            }
        }
        return rules;
    }

    @Test
    void aDraftIsFormattedSourceThatTheRulesDoNotObjectTo() throws BadCall {
        Project project = TextProject.open(CARS).project();
        Drafted drafted = draft(project, "front66", "front67", "front68");
        assertEquals(Formatter.format(text(drafted)), text(drafted));
        assertTrue(drafted.planned().isWhole());
        assertEquals(FitReport.Verdict.FITS, drafted.planned().judged().orElseThrow().verdict());
        assertEquals(Set.of(), errors(project, drafted.planned().text().orElseThrow())
                .getOrDefault("ours.loom", Set.of()));
    }

    @Test
    void aWireIsAsThickAsAnyVehicleNeedsIt() throws BadCall {
        has(years(), "wire a 2.5 mm2 from J1:1 to H1:1\n");
        assertEquals(List.of("wire 56a: 2.5 mm2 as in front67; 1 mm2 in front66"), choices(years(), Choice.Kind.GAUGE));
    }

    @Test
    void anInterfaceMatesEachYearsOwnOtherHalf() throws BadCall {
        has(years(), "mates J7 of dash66 {\n        is plug8 when year = 1968\n"
                + "        mates J9 of dash67 when year >= 1967\n");
        assertEquals(List.of("J1: mates J7 of dash66 for year = 1966 (front66); J9 of dash67 for year >= 1967"
                + " (front67, front68)"), choices(years(), Choice.Kind.MATE));
    }

    /** The horn lamp's number means the fog lamp from 1967 on: one number is kept, the other function gets another. */
    @Test
    void numbersAndColoursThatConflictAreMapped() throws BadCall {
        Drafted drafted = years();
        has(drafted, "    circuit 71 \"Horn\" BK/YE {\n        stands for 30 BN of front66\n"
                + "        stands for 71 BK/YE of front67\n        stands for 71 BK/YE of front68\n");
        has(drafted, "    circuit 30 \"Fog lamp\" GN when year >= 1967 {\n");
        assertTrue(choices(drafted, Choice.Kind.NAME).contains("circuit 56: 56 YE stands for 12 BU of front66, 56 YE of"
                + " front67, 56 YE of front68"), choices(drafted, Choice.Kind.NAME).toString());
    }

    @Test
    void whatOnlySomeVehiclesUseIsCappedAndNeverLiveElsewhere() throws BadCall {
        Drafted drafted = years();
        has(drafted, "    cap b2 when year = 1966\n");
        has(drafted, "connector F1 \"Fog lamp\" on b2 is plug6 mates fog when year >= 1967\n");
        assertTrue(choices(drafted, Choice.Kind.PARTIAL).contains("circuit 30: for year >= 1967; elsewhere its"
                + " wires are left out, so that nothing is live"));
    }

    /** The horn is at another place in 1968, and on another pin from 1967: a branch to each, a way from each pin. */
    @Test
    void aFunctionThatMovedGetsABranchToEachPlace() throws BadCall {
        Drafted drafted = years();
        has(drafted, "connector N1 \"Horn\" on b3 is plug6 mates horn when year <= 1967\n");
        has(drafted, "connector N1_2 \"Horn\" on b4 is plug6 mates horn when year = 1968\n");
        has(drafted, "        wire a 1.5 mm2 from J1:2 to N1:1 {\n            from J1:4 when year >= 1967\n"
                + "            to N1_2:1 when year = 1968\n        }\n");
        has(drafted, "    cap b3 when year = 1968\n");
        has(drafted, "    cap b4 when year <= 1967\n");
        String words = "N1 on b3 (front66, front67); N1_2 on b4 (front68): one branch to each place; both were planned:"
                + " one with 164.0 mm of excess, 38 g of copper and covering, one to each with 74.0 mm of excess,"
                + " 40 g of copper and covering";
        assertEquals(List.of("Horn: " + words), choices(drafted, Choice.Kind.MOVED));
        has(drafted, "    // It moved: " + words + ".\n");
    }

    /** The panel is as far as the horn's first spot: one branch serves both, with less copper and no more excess. */
    @Test
    void aFunctionThatHardlyMovedGetsOneBranch() throws BadCall {
        Project project = TextProject.open(CARS.replace("to panel 120 mm", "to panel 250 mm")).project();
        Drafted drafted = draft(project, "front66", "front67", "front68");
        has(drafted, "connector N1 \"Horn\" on b3 is plug6 mates horn\n");
        assertFalse(text(drafted).contains("b4"), text(drafted));
        assertFalse(text(drafted).contains("cap b3"), text(drafted));
        String words = choices(drafted, Choice.Kind.MOVED).getFirst();
        assertTrue(words.startsWith("Horn: N1 on b3 to hornSpot (front66, front67), panel (front68): one branch that"
                + " reaches each place; both were planned: one with 74.0 mm of excess, "), words);
        assertTrue(drafted.planned().isWhole());
        assertEquals(Set.of(), errors(project, drafted.planned().text().orElseThrow())
                .getOrDefault("ours.loom", Set.of()));
    }

    @Test
    void theOrderOfTheDrawingsDoesNotMatter() throws BadCall {
        Project project = new EditedExample("orrin").open().project();
        String text = text(draft(project, "front64", "front67", "frontCoupe", "front70"));
        assertEquals(text, text(draft(project, "front70", "frontCoupe", "front64", "front67")));
        assertEquals(text, text(draft(project, "frontCoupe", "front67", "front70", "front64")));
    }

    /** One drawing has the two breakouts the other way round. Both orders are planned, and the better one is told. */
    @Test
    void breakoutsThatChangePlacesArePlannedBothWays() throws BadCall {
        String turned = CARS.replace("breakout wing at 505 mm\n        breakout nose at 710 mm",
                "breakout nose at 480 mm\n        breakout wing at 505 mm");
        Drafted drafted = draft(TextProject.open(turned).project(), "front66", "front67", "front68");
        assertEquals(2, drafted.orders());
        assertEquals(List.of("wing: front68 has wing behind nose, all others before it; planned with wing first"),
                choices(drafted, Choice.Kind.ORDER));
        assertTrue(DraftText.text(drafted).contains("2 orders of breakouts were planned"));
    }

    /** What the rules object to in the draft, they object to in the drawings, with the same rule. */
    @Test
    void theDraftOfTheOrrinHasNoErrorThatItsDrawingsDoNotHave() throws BadCall {
        Project project = new EditedExample("orrin").open().project();
        for (String[] drawings : List.of(new String[] {"front64", "front67", "frontCoupe", "front70"},
                new String[] {"dash64", "dash67", "dash70"}, new String[] {"engine64", "engine67", "engine70"})) {
            Drafted drafted = draft(project, drawings);
            Source source = drafted.planned().text().orElse(null);
            assertTrue(source != null, drawings[0] + PlanPages.text(List.of(drafted.planned()), Palette.PLAIN, 120));
            assertEquals(List.of(), StandardRules.engine().check(with(project, source), Settings.TIMELESS, Cancel.NEVER,
                    Progress.NONE).of("capped-branch-is-live").stream().filter(each -> each.place().span().file()
                            .equals("ours.loom")).toList());
            Set<String> theirs = rules(errors(project), List.of(drawings).stream().map(name -> project.wiring(name)
                    .orElseThrow().wiring().span().file()).toList());
            Set<String> ours = rules(errors(project, source), List.of("ours.loom"));
            ours.removeAll(theirs);
            assertEquals(Set.of(), ours, drawings[0]);
        }
    }

    private static Set<String> rules(Map<String, Set<String>> errors, List<String> files) {
        return files.stream().flatMap(file -> errors.getOrDefault(file, Set.of()).stream())
                .map(each -> each.substring(0, each.indexOf(' '))).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void drawingsThatCannotBeCoveredByOneHarnessAreNamed() throws BadCall {
        Project project = TextProject.open(CARS + """
                drawing back of orrin fills front when year = 1968 {
                    datum tray
                }
                drawing loose of orrin fills front when year = 1968 {
                    trunk main {
                        breakout wing at 500 mm
                    }
                }
                """).project();
        refused(project, "drawing front66 counts from bulkhead and drawing back from tray", "front66", "back");
        refused(project, "drawing loose has no datum", "front66", "loose");
        refused(project, "the project has no drawing front99", "front66", "front99");
        refused(project, "--covers names no drawing");
    }

    private static void refused(Project project, String words, String... drawings) {
        BadCall refused = assertThrows(BadCall.class, () -> draft(project, drawings));
        assertTrue(refused.getMessage().startsWith(words), refused.getMessage());
        assertTrue(refused.getMessage().lines().count() == 1);
    }

    /** The order of the drawings settles names only: what is planned is the same. */
    @Test
    void theSameDrawingsInAnotherOrderArePlannedTheSame() throws BadCall {
        Project project = TextProject.open(CARS).project();
        assertEquals(draft(project, "front66", "front67", "front68").planned().plan().found().orElseThrow().excess(),
                draft(project, "front68", "front66", "front67").planned().plan().found().orElseThrow().excess());
        String twice = text(draft(project, "front66", "front67"));
        assertEquals(twice, text(draft(project, "front66", "front67")));
        assertEquals(twice, new String(twice.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
    }
}
