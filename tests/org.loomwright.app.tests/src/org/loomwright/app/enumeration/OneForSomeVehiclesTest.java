// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Slips that the enumeration of vehicles has found, each reduced to a few lines. */
class OneForSomeVehiclesTest {

    private static final String HEAD = """
            platform orrin {
                option fan
                zone bay ambient 80 C wet
                place bulkhead
                place wing in bay
                place lamp in bay
                device flash is unit at bulkhead
                device battery is battery12 at lamp
            }
            catalogue parts {
                cable hot {
                    temperature 125 C
                }
                cable cool {
                    temperature 60 C
                }
                seal small
                terminal tab63 {
                    takes 0.75 mm2 .. 1.5 mm2
                }
                source battery12 {
                    type battery
                    polarity plus
                    pins plus, minus
                }
                fuse f10 {
                    pins 1, 2
                    protects 1 to 2
                }
                housing plug2 {
                    cavities 1 .. 2
                }
                housing plug1 {
                    cavities 1
                }
                flasher unit {
                    pins 1, 3
                }
            }
            harness ours of orrin {
            """;

    private final SourceReader reader = LoomReader.create();

    /** The findings of one rule: element and vehicles. */
    private List<String> findings(String rule, String lines) {
        byte[] text = (HEAD + lines + "}\n").getBytes(StandardCharsets.UTF_8);
        return StandardRules.engine().check(Project.link(List.of(reader.read("orrin.loom", text))), Settings.TIMELESS,
                Cancel.NEVER, Progress.NONE).findings().stream().filter(each -> each.rule().equals(rule))
                .map(each -> each.element() + each.affected().map(some -> " when " + some.words()).orElse(""))
                .toList();
    }

    @Test
    void theCableOfTheHarnessHoldsWhereAWireStatesNoneOfItsOwn() {
        assertEquals(List.of("ours:1a when not fan"), findings("zone-too-hot-for-insulation", """
                cable cool
                connector J1 at wing is plug2
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 14 ga from J1:1 to J2:1 {
                        cable hot when fan
                    }
                }
                """));
    }

    @Test
    void theColourOfTheCircuitHoldsWhereAWireStatesNoneOfItsOwn() {
        assertEquals(List.of("ours:2a when not fan"), findings("colours-alike-in-housing", """
                connector J1 at wing is plug2
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 14 ga from J1:1 to J2:1 {
                        colour BU when fan
                    }
                }
                circuit 2 RD {
                    wire a 14 ga from J1:2 to J2:2 {
                        colour BK when fan
                    }
                }
                """).stream().distinct().toList());
    }

    @Test
    void aCavityOfAConnectorThatIsNotThereIsNotTakenTwice() {
        assertEquals(List.of("ours:2a when fan"), findings("cavity-taken-twice", """
                connector J1 at wing is plug2 when fan
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 14 ga from J1:1 to J2:1
                }
                circuit 2 BU {
                    wire a 14 ga from J1:1 to J2:2
                }
                """));
    }

    @Test
    void aWireToASpotThatIsNotThereEndsNowhereAndNotAtItself() {
        String lines = """
                connector J1 at wing is plug2 when fan
                circuit 1 RD {
                    wire a 14 ga from J1:1 to J1:1
                }
                """;
        assertEquals(List.of("ours:1a when fan"), findings("wire-to-itself", lines));
        assertEquals(List.of("ours:1a when not fan", "ours:1a when not fan"), findings("orphan-wire", lines));
    }

    @Test
    void aMapForSomeVehiclesLeavesTheWireUnmetInTheOthers() {
        assertEquals(List.of("ours:1a when not fan"), findings("mate-does-not-match", """
                connector J1 at bulkhead is plug2 mates flash {
                    map 2 to 3 when fan
                }
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 14 ga from J1:2 to J2:1
                }
                """));
    }

    @Test
    void aCavityThatTheHousingOfTheVehicleLacksIsNotOpenToTheWet() {
        assertEquals(List.of("ours:J1 when not fan"), findings("unsealed-in-wet-zone", """
                connector J1 at wing {
                    is plug1 when fan
                    is plug2 when not fan
                    seal 1 is small
                }
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 14 ga from J1:2 to J2:1
                }
                """));
    }

    @Test
    void circuitsThatAreGroundsInSomeVehiclesAreTakenForGroundsInTheseOnly() {
        assertEquals(List.of("ours:2a when not fan"), findings("colours-alike-in-housing", """
                connector J1 at wing is plug2
                connector J2 at lamp is plug1
                stud G1 at bulkhead
                circuit 1 BK {
                    wire a 14 ga from J1:1 to G1
                }
                circuit 2 BK {
                    wire a 14 ga from J1:2 {
                        to G1 when fan
                        to J2:1 when not fan
                    }
                }
                """));
    }

    @Test
    void anEndThatNamesNoCavityIsInTheOnlyOneOnlyWhereThereIsOnlyOne() {
        String lines = """
                connector J1 at wing {
                    is plug1 when fan
                    is plug2 when not fan
                    terminal 1 is tab63
                }
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 10 ga from J1 to J2:1
                }
                """;
        assertEquals(List.of("ours:J1 when fan"), findings("terminal-does-not-take-wire", lines));
        assertEquals(List.of("ours:J1 when not fan", "ours:J2 when every vehicle"), findings("cavity-without-terminal",
                lines.replace("J2 at lamp is plug2", "J2 at lamp {\nis plug2\nterminal 2 is tab63\n}")));
    }

    @Test
    void theOnlyCavityIsTheSameWhetherItIsNamedOrNot() {
        assertEquals(List.of("ours:2a when fan"), findings("cavity-taken-twice", """
                connector J1 at wing {
                    is plug1 when fan
                    is plug2 when not fan
                }
                connector J2 at lamp is plug2
                circuit 1 RD {
                    wire a 14 ga from J1:1 to J2:1
                }
                circuit 2 BU {
                    wire a 14 ga from J1 to J2:2
                }
                """));
    }

    @Test
    void aWireOnABranchWhoseBreakoutIsNotThereHasNoLength() {
        String lines = """
                datum bulkhead
                trunk main {
                    breakout left at 400 mm
                    breakout right at 1500 mm when fan
                }
                branch bLamp from left to lamp 150 mm
                branch bWing from right to wing 300 mm
                device F1 is f10 at wing
                circuit 1 RD {
                    wire a 14 ga from battery:plus to F1:1
                }
                """;
        assertEquals(List.of("ours:1a when fan", "ours:1a when not fan"), findings("no-protection", lines));
        assertEquals(List.of(""), findings("branch-start-missing", lines).stream()
                .map(each -> each.replaceAll(" when.*", "")).toList());
    }
}
