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
            }
            catalogue parts {
                cable hot {
                    temperature 125 C
                }
                cable cool {
                    temperature 60 C
                }
                seal small
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
                .map(each -> each.element() + " when " + each.affected().orElseThrow().words()).toList();
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
}
