// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.electric.Example;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.solve.Netlist;
import org.loomwright.electric.solve.Spice;
import org.loomwright.harness.link.Project;

/** A harness that is looked at without the other half of its connectors. */
class BoundaryTest {

    private static final String PLATFORM = """
            platform alone "Alone" {
                supply 12 V negative ground
                years 1966 .. 1967
                zone bay "Bay" ambient 20 C dry
                place board in bay
                place front in bay
                ground body
                device heater "Heater" is heater at front
                device lamp "Lamp" is lamp at front
                BATTERY
                mode keyOff "Key off" {
                    set engine to stopped
                }
                mode standing "Key on" {
                    set engine to stopped
                }
            }
            catalogue parts {
                load heater "Heater" {
                    voltage 12 V
                    resistance 2.4 ohm
                    pins 1, 2
                }
                lamp lamp "Lamp" {
                    voltage 12 V
                    current 2 A
                    pins 1, 2
                }
                source battery "Battery" {
                    type battery
                    voltage 12.4 V
                    resistance 10 mohm
                    polarity plus
                    pins plus, minus
                }
                housing plug4 "Plug" {
                    cavities 1 .. 4
                }
            }
            """;

    private static final String FRONT = """
            drawing sheet of alone {
                datum board
                connector X at board is plug4 MATES
                circuit 1 "Heater" RD {
                    wire a 2.5 mm2 from X:1 to heater:1 length 3 m
                }
                circuit 2 "Lamp" GN {
                    wire a 1 mm2 from X:2 to lamp:1 length 2 m
                }
                circuit 9 "Ground" BK {
                    splice S at board
                    wire a 2.5 mm2 from heater:2 to S length 3 m
                    wire b 1 mm2 from lamp:2 to S length 2 m
                    wire c 4 mm2 from S to X:3 length 500 mm
                }
            }
            """;

    private static Project project(Path folder, String text) throws IOException, BadCall {
        Files.writeString(folder.resolve("alone.loom"), text);
        return Example.at(folder);
    }

    private static String front(String battery, String mates, String more) {
        return PLATFORM.replace("BATTERY", battery) + FRONT.replace("MATES", mates) + more;
    }

    private static List<String> words(Schematic schematic) {
        return schematic.boundaries().stream().map(each -> each.kind() + " at " + each.point() + " in "
                + each.when().words()).toList();
    }

    private static OperatingPoint solved(Schematic schematic, String mode) {
        Mode wanted = schematic.mode(mode).orElseThrow();
        return new PointSolver(schematic, Optional.empty(), 20).solve(schematic.fitment().domain(), wanted);
    }

    private static Piece load(Schematic schematic, String device) {
        return schematic.pieces().stream().filter(each -> each.role() == Role.LOAD
                && each.subject().element().equals(device)).findFirst().orElseThrow();
    }

    @Test
    void whatFeedsLoadsIsASupplyAndWhatLeadsBackIsGround(@TempDir Path folder) throws IOException, BadCall {
        Schematic schematic = Schematic.of(project(folder, front("", "", ""))).getFirst();
        assertEquals(List.of("FEED at X:1 in every vehicle", "FEED at X:2 in every vehicle",
                "GROUND at X:3 in every vehicle"), words(schematic));
    }

    @Test
    void nothingFlowsWithTheKeyOff(@TempDir Path folder) throws IOException, BadCall {
        Schematic schematic = Schematic.of(project(folder, front("", "", ""))).getFirst();
        OperatingPoint off = solved(schematic, "keyOff");
        assertTrue(off.solved());
        assertEquals(0, off.amps(load(schematic, "heater")));
        assertTrue(solved(schematic, "standing").amps(load(schematic, "heater")) > 4);
    }

    /**
     * The same network written down by hand from what is documented, and solved by ngspice: 12.6 V behind 20 mohm, 2
     * mohm for each cavity and each terminal on a pin, copper of 1/58 ohm mm²/m (IEC 60028).
     */
    @Tag("outside")
    @Test
    void itsVoltagesAreThoseOfTheNetworkWrittenDownByHand(@TempDir Path folder)
            throws IOException, BadCall, InterruptedException {
        assumeTrue(Spice.isThere(), "ngspice is not installed");
        Schematic schematic = Schematic.of(project(folder, front("", "", ""))).getFirst();
        OperatingPoint point = solved(schematic, "standing");
        Netlist byHand = Netlist.builder().hold(0, 0).add(1, 0, new Element.Cell(12.6, 0.020))
                .resistor(1, 2, 0.002 + 3 / 58.0 / 2.5 + 0.002).resistor(2, 3, 2.4)
                .resistor(3, 6, 0.002 + 3 / 58.0 / 2.5)
                .resistor(1, 4, 0.002 + 2 / 58.0 + 0.002).add(4, 5, new Element.Filament(12, 2))
                .resistor(5, 6, 0.002 + 2 / 58.0)
                .resistor(6, 0, 0.5 / 58.0 / 4 + 0.002).build();
        double[] wanted = Spice.potentials(List.of(byHand), List.of(), folder).getFirst();
        assertEquals(wanted[2] - wanted[3], point.volts(load(schematic, "heater")), 1e-6 * 12);
        assertEquals(wanted[4] - wanted[5], point.volts(load(schematic, "lamp")), 1e-6 * 12);
    }

    /** With a battery in the vehicle it is that one which feeds, by 20 mohm of what nobody describes. */
    @Tag("outside")
    @Test
    void theVehiclesOwnBatteryFeedsItWhereThereIsOne(@TempDir Path folder)
            throws IOException, BadCall, InterruptedException {
        assumeTrue(Spice.isThere(), "ngspice is not installed");
        Schematic schematic = Schematic.of(project(folder, front(
                "device battery \"Battery\" is battery at board on body", "", ""))).getFirst();
        assertTrue(schematic.boundaries().stream().anyMatch(each -> each.kind() == Boundary.Kind.FEED));
        OperatingPoint point = solved(schematic, "standing");
        Netlist byHand = Netlist.builder().hold(0, 0).add(1, 7, new Element.Cell(12.4, 0.010)).resistor(7, 0, 0.0005)
                .resistor(1, 2, 0.020 + 3 / 58.0 / 2.5 + 0.002).resistor(2, 3, 2.4)
                .resistor(3, 6, 0.002 + 3 / 58.0 / 2.5)
                .resistor(1, 4, 0.020 + 2 / 58.0 + 0.002).add(4, 5, new Element.Filament(12, 2))
                .resistor(5, 6, 0.002 + 2 / 58.0)
                .resistor(6, 0, 0.5 / 58.0 / 4 + 0.002).build();
        double[] wanted = Spice.potentials(List.of(byHand), List.of(), folder).getFirst();
        assertEquals(wanted[2] - wanted[3], point.volts(load(schematic, "heater")), 1e-6 * 12);
        assertEquals(wanted[4] - wanted[5], point.volts(load(schematic, "lamp")), 1e-6 * 12);
    }

    @Test
    void nothingIsAssumedInVehiclesInWhichTheOtherHalfIsDescribed(@TempDir Path folder) throws IOException, BadCall {
        String rear = """
                drawing rear of alone when year >= 1967 {
                    datum board
                    connector R at board is plug4
                    stud G at board on body
                    circuit 1 "Feed" RD {
                        wire a 4 mm2 from battery:plus to R:1 length 100 mm
                    }
                    circuit 9 "Ground" BK {
                        wire a 4 mm2 from R:3 to G length 100 mm
                    }
                }
                """;
        Schematic schematic = Schematic.of(project(folder, front(
                "device battery \"Battery\" is battery at board on body", "{\n mates R of rear when year >= 1967\n }",
                rear))).getFirst();
        assertEquals(List.of("FEED at X:1 in year = 1966", "FEED at X:2 in year = 1966", "GROUND at X:3 in year = 1966"),
                words(schematic));
    }

    /** Two loads back to back: the cavity feeds one and takes back what the other had. */
    @Test
    void aCavityOnBothSidesOfLoadsStaysOpen(@TempDir Path folder) throws IOException, BadCall {
        String text = PLATFORM.replace("BATTERY", "") + """
                drawing sheet of alone {
                    datum board
                    connector X at board is plug4
                    circuit 1 "Chain" RD {
                        splice S at board
                        wire a 2.5 mm2 from X:1 to heater:1 length 3 m
                        wire b 2.5 mm2 from heater:2 to S length 3 m
                        wire c 2.5 mm2 from S to lamp:1 length 3 m
                        wire d 2.5 mm2 from S to X:2 length 3 m
                        wire e 2.5 mm2 from lamp:2 to X:3 length 3 m
                    }
                }
                """;
        Schematic schematic = Schematic.of(project(folder, text)).getFirst();
        assertEquals(List.of("FEED at X:1 in every vehicle", "GROUND at X:3 in every vehicle"), words(schematic));
    }

    @Test
    void whatASourceLeadsToIsTakenToDrawNothing(@TempDir Path folder) throws IOException, BadCall {
        String text = PLATFORM.replace("BATTERY", "device battery \"Battery\" is battery at board on body") + """
                drawing sheet of alone {
                    datum board
                    connector X at board is plug4
                    circuit 1 "Feed" RD {
                        wire a 4 mm2 from battery:plus to X:1 length 100 mm
                    }
                }
                """;
        Schematic schematic = Schematic.of(project(folder, text)).getFirst();
        assertEquals(List.of("NOTHING at X:1 in every vehicle"), words(schematic));
        assertFalse(schematic.pieces().stream().anyMatch(each -> each.gate() instanceof Gate.Keyed));
    }
}
