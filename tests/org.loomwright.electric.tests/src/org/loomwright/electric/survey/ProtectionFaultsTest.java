// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.electric.Example;
import org.loomwright.electric.network.Schematic;
import org.loomwright.quantity.Cancel;

/** Dead shorts, devices in series, fields of machines, and the limits that a practice sets, from altered examples. */
class ProtectionFaultsTest {

    @TempDir
    Path folder;

    private List<Survey.Found> found(String rule, String example, String... changes) throws IOException, BadCall {
        String text = Files.readString(Path.of(System.getProperty("loomwright.root")).normalize()
                .resolve("docs/examples/broken").resolve(example + ".loom"));
        for (int i = 0; i < changes.length; i += 2) {
            assertTrue(text.contains(changes[i]), changes[i]);
            text = text.replace(changes[i], changes[i + 1]);
        }
        Path file = Files.writeString(folder.resolve("altered.loom"), text);
        Schematic schematic = Schematic.of(Example.at(file)).getFirst();
        return Survey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, Cancel.NEVER).of(rule);
    }

    private static final String SHORT = "short-not-cleared-in-time";

    @Test
    void aBatteryThatGivesMoreThanTheFuseBreaksIsFound() throws IOException, BadCall {
        List<Survey.Found> weak = found(SHORT, SHORT + "-mended", "basis continuous", "basis continuous\n"
                + "        breaking 200 A");
        assertEquals(1, weak.size());
        assertTrue(weak.getFirst().fault().words().startsWith("fuse F1 of 5 A breaks at most 200 A"),
                weak.getFirst().fault().words());
        assertEquals("", weak.getFirst().fault().memory());
        assertEquals(List.of(), found(SHORT, SHORT + "-mended", "basis continuous", "basis continuous\n"
                + "        breaking 2000 A"));
    }

    @Test
    void aBatteryOfUnknownResistanceJudgesNoBreakingCapacity() throws IOException, BadCall {
        List<Survey.Found> weak = found(SHORT, SHORT + "-mended", "basis continuous", "basis continuous\n"
                + "        breaking 200 A", "        resistance 8 mohm\n", "");
        assertTrue(weak.getFirst().fault().memory().contains("from memory"));
    }

    /** 13 V / 60 A of the motor as it stands, and the ohms of its way worked out by hand at 30 C. */
    @Test
    void theCurrentAtStartIsThatOfTheMotorAtRestAndItsWay() throws IOException, BadCall {
        Survey.Found found = found("fuse-opens-at-start", "fuse-opens-at-start").getFirst();
        double warm = 1 + 0.00393 * 10;
        double wires = (0.1 / 2.9556 + 0.1 / 1.8758 + 2.1 / 1.8758 + 0.1 / 2.9556) / 58 * warm;
        double parts = 0.1 / 10 + 0.010 + 6 * 0.002 + 3 * 0.0005;
        double amps = 12.6 / (13.0 / 60 + wires + parts);
        String step = found.fault().steps().getFirst();
        assertEquals(amps, Double.parseDouble(step.substring(0, step.indexOf(' '))), 0.02 * amps, step);
        assertTrue(found.fault().memory().contains("from memory"));
        assertEquals(List.of(), found("fuse-opens-at-start", "fuse-opens-at-start-mended"));
    }

    /** Eight cold lamps on one fuse may open it though each alone, and all of them warm, do not. */
    @Test
    void coldLampsOfOneFuseAreSwitchedOnTogether() throws IOException, BadCall {
        String rule = "fuse-opens-at-start";
        assertEquals(List.of(), found(rule, "lamp-too-dim-mended"));
        Survey.Found cold = found(rule, "currents-not-known-mended", "rating 10 A\n        pins line, load\n"
                + "        protects", "rating 5 A\n        pins line, load\n        protects").getFirst();
        assertTrue(cold.fault().words().startsWith("with Lamp switched on about "), cold.fault().words());
    }

    /** A breaker that closes again by itself clears nothing: the wire bears 1.35 times its rating for ever, or not. */
    @Test
    void aBreakerThatClosesAgainIsHeldAgainstWhatItCyclesAt() throws IOException, BadCall {
        String fuse = "fuse blade \"Blade fuse\" {\n        family bladeC\n        basis continuous\n"
                + "        rating 5 A";
        List<Survey.Found> cycling = found(SHORT, SHORT + "-mended", fuse, "breaker blade \"Breaker\" {\n"
                + "        type selfResetting\n        family bladeC\n        basis continuous\n        rating 20 A",
                "to lampSpot 24 m", "to lampSpot 5 m");
        assertTrue(cycling.stream().anyMatch(each -> each.fault().words().contains("closes again by itself and cycles,"
                + " with about 27.0 A for ever") && each.fault().memory().isEmpty()), cycling.toString());
        assertEquals(List.of(), found(SHORT, SHORT + "-mended", fuse, "breaker blade \"Breaker\" {\n"
                + "        type selfResetting\n        family bladeC\n        basis continuous\n        rating 5 A",
                "to lampSpot 24 m", "to lampSpot 5 m"));
    }

    /** A ground of its own for the lamp that woke, or a declared return, and nothing wakes. */
    @Test
    void whatWakesWhenAGroundOpensHasItsWayInWords() throws IOException, BadCall {
        String rule = "wakes-when-opened";
        List<Survey.Found> wakes = found(rule, rule);
        assertEquals(1, wakes.stream().filter(each -> each.fault().piece().subject().label().equals("ground joint G1"))
                .count());
        assertEquals(List.of("the way: wire 1a - wire 2a - wire 2b - wire 12a - Parking lamp - wire 90a - wire 90b -"
                + " Front turn lamp - wire 13b - wire 13c - Rear turn lamp - wire 90c"),
                wakes.getFirst().fault().steps());
        assertEquals(List.of(), found(rule, rule + "-mended"));
        assertEquals(List.of(), found(rule, rule, "is turnLamp at lampSpot", "is turnLamp at lampSpot returns"));
    }

    /** (11.6 V - what the lamp loses) / (16 + 20 + ...) mohm: the figures of a loop worked out by hand. */
    @Test
    void theLeastCurrentIsThatOfTheLoop() throws IOException, BadCall {
        Survey.Found found = found(SHORT, SHORT).getFirst();
        double wire = 24.0 * (1.0 / 58 / 0.508) * (1 + 0.00393 * 60);
        double others = 0.1 / 58 / 2.9556 * (1 + 0.00393 * 60) + 0.1 / 58 / 1.8758 * (1 + 0.00393 * 60);
        double way = 2 * 0.008 + wire + others + 0.1 / 12 + 0.010 + 5 * 0.005;
        double lamp = 5 / 12.8 * Math.pow(12.2 / 12.8, 0.55);
        assertEquals((11.6 - lamp * way) / (way + 0.02 + 0.0035), 12 / found.fault().weight(), 0.05);
    }

    @Test
    void aSlowFuseBeforeAThinWireIsShownAndNotJudged() throws IOException, BadCall {
        List<Survey.Found> slow = found(SHORT, SHORT, "rating 12 A", "rating 30 A", "to lampSpot 24 m",
                "to lampSpot 5 m");
        assertEquals(1, slow.size());
        assertTrue(slow.getFirst().fault().memory().contains("from memory"));
        assertTrue(slow.getFirst().fault().words().contains("times what fuse F1"), slow.getFirst().fault().words());
    }

    @Test
    void aFuseOfHalfTheRatingNearerToTheLoadIsSelective() throws IOException, BadCall {
        String rule = "not-selective";
        assertEquals("", found(rule, rule).getFirst().fault().memory());
        assertTrue(found(rule, rule, "rating 15 A", "rating 8 A").getFirst().fault().memory()
                .contains("from memory"));
        assertEquals(List.of(), found(rule, rule, "rating 15 A", "rating 6 A"));
    }

    /** Where nothing but the second lamp hangs on the first fuse, the order does not matter. */
    @Test
    void devicesOfOneLoadAloneNeedNoOrder() throws IOException, BadCall {
        assertEquals(List.of(), found("not-selective", "not-selective",
                "        wire b 12 ga from S12 to lampL:feed\n", ""));
    }

    @Test
    void aMachineWithoutItsChargeLampIsFound() throws IOException, BadCall {
        List<Survey.Found> cut = found("no-excitation", "no-excitation-mended",
                "        wire a 18 ga from chargeLamp:return to machine:lamp\n", "");
        assertTrue(cut.getFirst().fault().words().contains("gets 0 mA"), cut.getFirst().fault().words());
        assertEquals(List.of(), found("no-excitation", "no-excitation-mended"));
    }

    @Test
    void aFieldThatNothingFeedsIsFound() throws IOException, BadCall {
        List<Survey.Found> dead = found("no-excitation", "no-excitation-mended", "pins out, lamp \"charge lamp\", case",
                "pins out, lamp \"charge lamp\", field, case", "joins lamp to case through 2 ohm while standing",
                "joins lamp to case through 2 ohm while standing\n        joins field to case through 6 ohm");
        assertTrue(dead.getFirst().fault().words().contains("while the machine turns"),
                dead.getFirst().fault().words());
    }

    /** A practice sets the limits of currents and voltages, and is cited where it decides. */
    @Test
    void aPracticeSetsTheLimit() throws IOException, BadCall {
        String practice = "\npractice shop of demo {\n    limit excitationAtLeast 30 mA source \"our regulator\"\n}\n";
        assertEquals(List.of(), found("no-excitation", "no-excitation", "\ncatalogue parts", practice
                + "\ncatalogue parts"));
        List<Survey.Found> strict = found("lamp-too-dim", "lamp-too-dim-mended", "\ncatalogue parts",
                practice.replace("excitationAtLeast 30 mA", "lampAtLeast 99 %") + "\ncatalogue parts");
        assertEquals(1, strict.size());
        List<Survey.Found> drain = found("drain-with-key-off", "drain-with-key-off", "\ncatalogue parts",
                practice.replace("excitationAtLeast 30 mA", "drainAtMost 5000 mA") + "\ncatalogue parts");
        assertEquals(List.of(), drain);
    }
}
