// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Labels;
import org.loomwright.harness.link.Project;

/** Whatever names a renamed element follows it: nobody wants to read of each place that names it. */
class FollowedNamesTest {

    private static final String TEXT = """
            platform car {
                years 1964 .. 1971
                break early66 in 1966
                break late66 in 1966
                group body of saloon, coupe, van "Closed back"
                option fan "Cooling fan"
                option heater "Heater"
                never heater and year < late66
                require fan when heater and year >= early66
                never heavy: van and heater
                place shelf
                place grille
                device pump at grille when fan
                mode hot {
                    set pump to on
                    set K1 to pulled
                    set engine to cruise
                }
            }
            platform truck {
                option fan "Cooling fan"
                place shelf
            }
            drawing works of car {
                connector J1 at shelf
                circuit 30 "Feed" RD {
                    wire a 18 ga from J1:1 to pump:1
                }
            }
            harness ours of car {
                device K1 at shelf
                connector J1 at shelf when heater or fan
                connector J2 at shelf when body = coupe and year >= late66
                circuit 7 "Feed" RD when fan and year >= late66 {
                    stands for 30 RD of works
                    wire a 18 ga from J1:1 to pump:1
                }
            }
            harness vans of truck {
                connector J1 at shelf when fan
            }
            waive orphan-wire on ours:7a because "one"
            waive orphan-wire on ours:J1 because "two"
            waive known: orphan-wire on car:pump because "three"
            """;

    private static final String[] BLOWER = {"option fan \"Cooling fan\"\n    option h",
        "option blower \"Cooling fan\"\n    option h", "require fan", "require blower", "grille when fan",
        "grille when blower", "heater or fan", "heater or blower", "when fan and", "when blower and"};

    private final Sides sides = new Sides();

    private List<String> changes(String... replacements) {
        String now = TEXT;
        for (int i = 0; i < replacements.length; i += 2) {
            assertTrue(now.contains(replacements[i]), replacements[i]);
            now = now.replace(replacements[i], replacements[i + 1]);
        }
        Project old = sides.project(Map.of("all.loom", TEXT));
        return new FactComparer().compare(old, sides.project(Map.of("all.loom", now))).changes().stream()
                .map(change -> change.sentence() + vehicles(change)).toList();
    }

    private static String vehicles(Change change) {
        return change.isFelt() ? "; " + change.felt().words() : "";
    }

    @Test
    void conditionsAndConstraintsFollowAnOption() {
        assertEquals(List.of("option heater of car renamed warmAir"), changes("heater", "warmAir"));
    }

    /** The truck has an option of that name too, which keeps it. */
    @Test
    void theyFollowTheOptionOfTheirOwnPlatform() {
        assertEquals(List.of("option fan of car renamed blower"), changes(BLOWER));
    }

    @Test
    void aChangeBesideTheRenameIsToldInTheNewWords() {
        String[] more = Arrays.copyOf(BLOWER, BLOWER.length + 2);
        more[BLOWER.length] = "RD of works\n        wire a 18";
        more[BLOWER.length + 1] = "RD of works\n        wire a 16";
        assertEquals(List.of("wire 7a of ours: size 18 ga -> 16 ga; year >= late66 and blower",
                "option fan of car renamed blower"), changes(more));
    }

    @Test
    void theOrderOfBreaksAndConditionsFollowABreak() {
        assertEquals(List.of("break late66 of car renamed facelift"), changes("late66", "facelift"));
    }

    @Test
    void modesAndWaiversFollowADevice() {
        assertEquals(List.of("device pump of car renamed lift"), changes("pump", "lift"));
        assertEquals(List.of("device K1 of ours renamed relay"), changes("K1", "relay"));
    }

    @Test
    void waiversFollowWiresCircuitsConnectorsAndHarnesses() {
        assertEquals(List.of("wire 7a of ours renamed 7feed"), changes("wire a 18 ga from J1:1 to pump:1\n    }\n"
                + "}\nharness vans", "wire feed 18 ga from J1:1 to pump:1\n    }\n}\nharness vans", "7a", "7feed"));
        assertEquals(List.of("circuit 7 of ours renamed 8"), changes("circuit 7", "circuit 8", "7a", "8a"));
        assertEquals(List.of("harness ours renamed front"), changes("ours", "front"));
        assertEquals(List.of("drawing works renamed factory"), changes("works", "factory"));
    }

    @Test
    void whatACircuitStandsForFollowsTheDrawing() {
        assertEquals(List.of("circuit 30 of works renamed 31"), changes("circuit 30", "circuit 31",
                "for 30", "for 31"));
    }

    /** Where a platform is written is no matter: only other choices are told of. */
    @Test
    void aCommentAboveAPlatformChangesNoChoice() {
        Project old = sides.project(Map.of("all.loom", TEXT));
        for (boolean other : List.of(false, true)) {
            String text = "// A note.\n" + TEXT.replace("1971", other ? "1970" : "1971");
            Change change = new FactComparer().compare(old, sides.project(Map.of("all.loom", text.replace(
                    "works\n        wire a 18", "works\n        wire a 16")))).changes().stream()
                    .filter(each -> each.sentence().contains("size 18 ga")).findFirst().orElseThrow();
            assertEquals(other ? "the choices of the platform changed; told of the new platform" : "",
                    change.felt().caveat());
        }
    }

    @Test
    void conditionsAndConstraintsFollowAMemberOfAGroup() {
        assertEquals(List.of("member coupe of car renamed hardtop"), changes("coupe", "hardtop"));
        assertEquals(List.of("member van of car renamed lorry"), changes("van \"", "lorry \"", "heavy: van",
                "heavy: lorry"));
        assertEquals(List.of("choice body of car renamed shape"), changes("body", "shape"));
    }

    @Test
    void aMemberThatComesOrGoesIsToldWithItsVehicles() {
        assertEquals(List.of("member pickup of car added; pickup"), changes("saloon, coupe", "saloon, pickup, coupe"));
        assertEquals(List.of("member saloon of car removed; saloon"), changes("saloon, coupe", "coupe"));
        assertEquals(List.of("member van of car: title Closed back -> Box back"), changes("Closed back", "Box back"));
    }

    /** Under another name a choice is the same: nothing else is to be said of the other changes. */
    @Test
    void aRenamedChoiceIsNoOtherChoice() {
        String edited = TEXT.replace("RD of works\n        wire a 18", "RD of works\n        wire a 16");
        String another = edited.replace("heavy: van and", "heavy: (van or fan) and");
        for (String rename : List.of("heater", "coupe", "van", "body", "late66", "car")) {
            assertEquals(List.of("wire 7a of ours: "), caveats(edited, rename), rename);
            assertEquals(List.of("constraint heavy of car: vehicles that can exist on one side only, counted without "
                    + "constraints", "wire 7a of ours: the choices of the platform changed; told of the new platform"),
                    caveats(another, rename).stream().map(each -> each.replace("othercar", "car")).toList(), rename);
        }
    }

    /** What is said besides of changes but the rename itself. */
    private List<String> caveats(String edited, String rename) {
        String now = edited.replaceAll("\\b" + rename + "\\b", "other" + rename);
        return new FactComparer().compare(sides.project(Map.of("all.loom", TEXT)), sides.project(Map.of("all.loom",
                now))).changes().stream().filter(each -> each.kind() != Change.Kind.RENAMED)
                .map(each -> each.item().sort().word() + " " + Labels.of(each.item()) + ": "
                        + each.felt().caveat()).sorted().toList();
    }

    /** A condition that still names the old option is about another one now. */
    @Test
    void whatDoesNotFollowIsTold() {
        assertEquals(List.of("connector J1 of ours: for warmAir or fan -> heater or fan; as written: warmAir or fan; "
                + "heater or fan", "option heater of car renamed warmAir"), changes("heater", "warmAir",
                "at shelf when warmAir or fan", "at shelf when heater or fan"));
    }
}
