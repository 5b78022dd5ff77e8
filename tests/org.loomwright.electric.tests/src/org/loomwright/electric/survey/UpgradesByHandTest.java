// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Vehicles;
import org.loomwright.electric.Example;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.thermal.Ratings;

/**
 * Upgrades before and after on a small vehicle, with every figure worked out by hand: one loop, whose ohms are added up
 * here, with the law of the lamp, of the battery and of the machine solved by halving an interval.
 */
class UpgradesByHandTest {

    private static final String TEXT = """
            platform mini "Mini" {
                supply 12 V negative ground
                years 1970 .. 1970
                upgrade halogen "Brighter lamp"
                upgrade relayed "Relay for it"
                upgrade fan "Fan"
                upgrade inside "Fan on the machine's side of the ammeter"
                upgrade conversion "Alternator"
                upgrade led "LED turn lamps"
                ground body "Body"
                place box "Box"
                device battery "Battery" is battery at box on body
                device generator "Generator" is generator at box on body when not conversion
                device alternator "Alternator" is alternator at box on body when conversion
                device meter "Ammeter" is meter at box
                device lightSwitch "Light switch" is onOff at box
                device fanSwitch "Fan switch" is onOff at box
                device turnSwitch "Turn switch" is onOff at box
                device K1 "Relay" is relay at box when relayed
                device lampOld "Lamp" is lamp45 at box on body when not halogen
                device lampNew "Halogen lamp" is lamp100 at box on body when halogen
                device fan "Fan" is motor at box on body when fan
                device unit "Flasher" is thermal at box
                device turnOld "Turn lamps" is lamps42 at box on body when not led
                device turnNew "LED turn lamps" is leds at box on body when led
                mode night "Night" {
                    set engine to cruise
                    set lightSwitch to on
                    set fanSwitch to off
                    set turnSwitch to off
                }
                mode cooling "Cooling" {
                    set engine to cruise
                    set lightSwitch to off
                    set fanSwitch to on
                    set turnSwitch to off
                }
                mode idling "Idling at night" {
                    set engine to idle
                    set lightSwitch to on
                    set fanSwitch to off
                    set turnSwitch to off
                }
                mode turning "Turning" {
                    set engine to stopped
                    set lightSwitch to off
                    set fanSwitch to off
                    set turnSwitch to on
                }
            }
            harness front "Front" of mini {
                datum box
                stud G1 at box on body
                circuit 1 "Battery" RD {
                    splice S1 at box
                    splice S2 at box
                    wire a 6 mm2 from battery:plus to S1 length 1 m
                    wire b 6 mm2 from S1 to meter:in length 1 m
                    wire c 6 mm2 from meter:out to S2 length 1 m
                    wire d 6 mm2 from generator:D to S2 length 1 m when not conversion
                    wire e 6 mm2 from alternator:B to S2 length 1 m when conversion
                }
                circuit 2 "Lamp" BU {
                    splice S3 at box when relayed
                    wire a 1 mm2 from S2 to lightSwitch:line length 2 m
                    wire b 1 mm2 from lightSwitch:load to lampOld:1 length 3 m when not halogen and not relayed
                    wire c 1 mm2 from lightSwitch:load to lampNew:1 length 3 m when halogen and not relayed
                    wire d 1 mm2 from lightSwitch:load to K1:86 length 1 m when relayed
                    wire e 4 mm2 from S2 to K1:30 length 1 m when relayed
                    wire f 4 mm2 from K1:87 to lampOld:1 length 2 m when not halogen and relayed
                    wire h 1 mm2 from K1:85 to G1 length 1 m when relayed
                    wire g 4 mm2 from K1:87 to lampNew:1 length 2 m when halogen and relayed
                }
                circuit 3 "Fan" GN {
                    wire a 2.5 mm2 from S2 to fanSwitch:line length 1 m when inside
                    wire b 2.5 mm2 from S1 to fanSwitch:line length 1 m when not inside
                    wire c 2.5 mm2 from fanSwitch:load to fan:1 length 2 m when fan
                }
                circuit 4 "Turn" YE {
                    wire a 1 mm2 from S2 to unit:49 length 1 m
                    wire b 1 mm2 from unit:49a to turnSwitch:line length 1 m
                    wire c 1 mm2 from turnSwitch:load to turnOld:1 length 4 m when not led
                    wire d 1 mm2 from turnSwitch:load to turnNew:1 length 4 m when led
                }
            }
            catalogue parts "Parts" {
                source battery "Battery" {
                    type battery
                    voltage 12.6 V
                    resistance 10 mohm
                    polarity plus
                    pins plus, minus
                }
                source generator "Generator" {
                    type generator
                    voltage 14 V
                    current 22 A
                    polarity D
                    pins D, case
                }
                source alternator "Alternator" {
                    type alternator
                    voltage 14 V
                    current 55 A
                    polarity B
                    pins B, case
                }
                assembly meter "Ammeter" {
                    type ammeter
                    pins in, out
                    joins in to out through 3 mohm
                }
                switch onOff "Switch" {
                    rating 20 A
                    pins line, load
                    states off, on
                    joins line to load through 20 mohm while on
                }
                relay relay "Relay" {
                    rating 30 A
                    pullIn 8 V
                    dropOut 2 V
                    pins 30, 85, 86, 87
                    states rest, pulled
                    joins 86 to 85 through 85 ohm
                    joins 30 to 87 through 5 mohm while pulled
                }
                lamp lamp45 "Lamp, 45 W" {
                    voltage 12.8 V
                    power 45 W
                    pins 1
                }
                lamp lamp100 "Lamp, 100 W" {
                    voltage 12.8 V
                    power 100 W
                    pins 1
                }
                motor motor "Fan" {
                    voltage 13 V
                    current 9 A
                    pins 1
                }
                flasher thermal "Flasher" {
                    type thermal
                    current 3 A .. 4.2 A
                    pins 49, 49a
                    joins 49 to 49a
                }
                lamp lamps42 "Turn lamps, 42 W" {
                    voltage 12.8 V
                    power 42 W
                    pins 1
                }
                load leds "LED turn lamps" {
                    type led
                    voltage 9 V .. 16 V
                    power 6 W
                    pins 1
                }
            }
            """;

    @TempDir
    Path folder;

    private OperatingPoint point(String mode, String... with) throws IOException, BadCall {
        Path file = folder.resolve("mini.loom");
        if (!Files.exists(file)) {
            Files.writeString(file, TEXT);
        }
        Schematic schematic = Schematic.of(Example.at(file)).getFirst();
        Vehicles vehicles = schematic.fitment().platform().vehicles();
        Condition all = vehicles.all();
        for (String choice : List.of("halogen", "relayed", "fan", "inside", "conversion", "led")) {
            Condition has = vehicles.resolve(new Expression.Choice(choice)).condition();
            all = List.of(with).contains(choice) ? all.and(has) : all.minus(has);
        }
        OperatingPoint point = new PointSolver(schematic, Optional.empty(), 20).solve(all,
                schematic.mode(mode).orElseThrow());
        assertTrue(point.solved(), () -> point.troubles().toString());
        return point;
    }

    private static Piece piece(OperatingPoint point, Role role, String element) {
        List<Piece> found = new ArrayList<>();
        for (Piece each : point.schematic().pieces()) {
            if (each.role() == role && each.subject().element().equals(element) && point.conducts(each)) {
                found.add(each);
            }
        }
        assertEquals(1, found.size(), found.toString());
        return found.getFirst();
    }

    /** The volts at which a falling function is 0. */
    private static double zero(DoubleUnaryOperator falling) {
        double low = 0;
        double high = 20;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            low = falling.applyAsDouble(middle) > 0 ? middle : low;
            high = falling.applyAsDouble(middle) > 0 ? high : middle;
        }
        return low;
    }

    /** The current of a filament lamp of some W and 12.8 V (Fink and Beaty, Standard Handbook, p. 22-8). */
    private static double lamp(double watts, double volts) {
        return watts / 12.8 * Math.pow(volts / 12.8, 0.55);
    }

    private static double wire(double metres, double mm2) {
        return metres / 58 / mm2;
    }

    /** What a load gets of a junction with some volts. */
    private static double behind(double volts, double ohms, DoubleUnaryOperator load) {
        return zero(v -> (volts - v) / ohms - load.applyAsDouble(v));
    }

    /** A lamp through the switch and 5 m of 1 mm2, against the same on a relay with 3 m of 4 mm2. */
    @Test
    void aBrighterLampWithAndWithoutItsRelay() throws IOException, BadCall {
        double[] got = new double[4];
        String[][] vehicles = {{}, {"halogen"}, {"relayed"}, {"halogen", "relayed"}};
        for (int i = 0; i < vehicles.length; i++) {
            OperatingPoint point = point("night", vehicles[i]);
            boolean halogen = i % 2 == 1;
            Piece lamp = piece(point, Role.LOAD, halogen ? "lampNew" : "lampOld");
            double feed = point.potential(point.schematic().from(piece(point, Role.WIRE, i < 2 ? "2a" : "2e")));
            double way = i < 2 ? wire(5, 1) + 0.020 : wire(3, 4) + 0.005;
            double expected = behind(feed, way + 3 * 0.002, // a terminal on each pin
                     v -> lamp(halogen ? 100 : 45, v));
            got[i] = point.volts(lamp);
            assertEquals(expected, got[i], 2e-3 * expected, Arrays.toString(vehicles[i]));
        }
        assertTrue(got[1] < got[0] - 0.3 && got[3] > got[1] + 0.5 && got[3] > got[0], Arrays.toString(got));
    }

    /** The machine holds its voltage: what the ammeter shows is the charge, and with the fan before it the fan too. */
    @Test
    void aFanOnEitherSideOfTheAmmeter() throws IOException, BadCall {
        OperatingPoint none = point("cooling");
        OperatingPoint within = point("cooling", "fan", "inside");
        OperatingPoint before = point("cooling", "fan");
        double charge = amps(none, Role.BATTERY, "battery");
        double fanWithin = amps(within, Role.LOAD, "fan");
        double fanBefore = amps(before, Role.LOAD, "fan");
        assertEquals(9 * volts(before, Role.LOAD, "fan") / 13, fanBefore, 1e-9);
        assertEquals(charge, amps(none, Role.INSIDE, "meter"), 1e-6);
        assertEquals(amps(within, Role.BATTERY, "battery"), amps(within, Role.INSIDE, "meter"), 1e-6);
        assertEquals(fanBefore + amps(before, Role.BATTERY, "battery"), amps(before, Role.INSIDE, "meter"), 1e-6);
        assertTrue(amps(before, Role.INSIDE, "meter") > amps(within, Role.INSIDE, "meter") + 0.9 * fanWithin);
    }

    /** A generator gives nothing at idle, an alternator 45 % of 55 A: more than the lamp takes. */
    @Test
    void anAlternatorInPlaceOfTheGeneratorAtIdle() throws IOException, BadCall {
        OperatingPoint generator = point("idling", "halogen");
        OperatingPoint alternator = point("idling", "conversion", "halogen");
        double way = 0.010 + wire(3, 6) + 0.003 + wire(5, 1) + 0.020 + 0.002 * 5 + 0.0005;
        double expected = behind(12.6, way, v -> lamp(100, v));
        assertEquals(expected, volts(generator, Role.LOAD, "lampNew"), 2e-3 * expected);
        assertEquals(lamp(100, expected), -signed(generator, Role.BATTERY, "battery"), 0.02);
        assertTrue(signed(alternator, Role.BATTERY, "battery") > 0, "the battery is charged");
        double gives = -signed(alternator, Role.MACHINE, "alternator");
        assertEquals(amps(alternator, Role.LOAD, "lampNew") + amps(alternator, Role.BATTERY, "battery"), gives, 1e-6);
        assertTrue(gives < 0.45 * 55, gives + " A");
        // regulated to 14 V, less 1 % at full output
        assertEquals(14 - 0.14 * gives / 55, volts(alternator, Role.MACHINE, "alternator"), 1e-6);
    }

    /** 42 W keep a thermal flasher going, an LED of 6 W does not: its current is its power over its voltage. */
    @Test
    void ledLampsOnAThermalFlasher() throws IOException, BadCall {
        OperatingPoint filament = point("turning");
        OperatingPoint led = point("turning", "led");
        double way = 0.010 + wire(3, 6) + 0.003 + wire(6, 1) + 0.030 + 0.020 + 0.002 * 7 + 0.0005;
        double expected = lamp(42, behind(12.6, way, v -> lamp(42, v)));
        assertEquals(expected, amps(filament, Role.SWITCH, "unit"), 3e-3 * expected);
        double watts = behind(12.6, way, v -> 6 / Math.max(v, 1));
        assertEquals(6 / watts, amps(led, Role.SWITCH, "unit"), 3e-3 * 6 / watts);
        assertEquals(List.of(), faults(filament));
        List<Fault> faults = faults(led);
        assertEquals(1, faults.size());
        assertTrue(faults.getFirst().words().equals("flasher unit has 0.48 A to flash, it works with 3.0 to 4.2 A"),
                faults.getFirst().words());
    }

    private static List<Fault> faults(OperatingPoint point) {
        return new ConductorFaults().inspect(point, new Fed(point), new Ratings(point.schematic(),
                Ampacity.cfr())).stream()
                .filter(each -> each.rule().equals("flasher-load-out-of-range")).toList();
    }

    private static double amps(OperatingPoint point, Role role, String element) {
        return Math.abs(signed(point, role, element));
    }

    private static double signed(OperatingPoint point, Role role, String element) {
        return point.amps(piece(point, role, element));
    }

    private static double volts(OperatingPoint point, Role role, String element) {
        return Math.abs(point.volts(piece(point, role, element)));
    }

    /** What each piece from the source to ground loses adds up to the voltage of the source, for every load. */
    @Test
    void theWayOfEachLoadAddsUpToTheWhole() throws BadCall {
        int ways = 0;
        for (Schematic schematic : Schematic.of(Example.of("orrin"))) {
            if (!schematic.fitment().platform().name().equals("orrin")) {
                continue;
            }
            var vehicle = Example.vehicle(schematic.fitment().platform(), "1967 coupe deluxe heater halogen");
            for (String mode : List.of("dippedBeam", "turnLeft", "braking")) {
                OperatingPoint point = vehicle.implies(schematic.fitment().domain()) ? new PointSolver(schematic,
                        Optional.empty(), 20).solve(vehicle, schematic.mode(mode).orElseThrow()) : null;
                for (Piece load : point == null ? List.<Piece>of() : schematic.pieces()) {
                    if (load.role() == Role.LOAD && point.conducts(load) && new Fed(point).works(load)
                            && Math.abs(point.amps(load)) > 0.01) {
                        Trail trail = Trail.of(point, load);
                        double sum = trail.steps().stream().mapToDouble(Trail.Step::drop).sum();
                        double whole = trail.steps().getFirst().before() - trail.steps().getLast().after();
                        assertEquals(whole, sum, 1e-9, load.subject().label());
                        assertTrue(whole > 10, load.subject().label() + " " + whole + " V");
                        assertEquals(sum, trail.feed() + Math.abs(point.volts(load)) + trail.back(), 1e-9);
                        ways++;
                    }
                }
            }
        }
        assertTrue(ways > 50, ways + " ways");
    }
}
