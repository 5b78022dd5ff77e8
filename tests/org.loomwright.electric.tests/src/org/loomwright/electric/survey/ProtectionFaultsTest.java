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
