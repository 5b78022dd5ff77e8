// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.EditedExample;
import org.loomwright.app.Repository;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.LampsConsequence;
import org.loomwright.compare.consequence.Revision;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** What a revision does to the voltage of lamps. */
class LampsConsequenceTest {

    /** Of size 14 and 18 at the least section that SAE allows, in ohm per m at 20 C (as marine cable makers reprint). */
    private static final double OHM_14 = 9.191e-3;
    private static final double OHM_18 = 22.138e-3;
    private static final double METRES = 2.04;
    private static final double WATTS = 55;
    private static final double DESIGN_VOLTS = 12.8;

    private final Sides sides = new Sides();

    private Effect effect(Map<String, String> old, Map<String, String> now) {
        return effect(sides.project(old), sides.project(now));
    }

    private static Effect effect(Project before, Project after) {
        return new LampsConsequence().of(new Revision(before, after, new FactComparer().compare(before, after)),
                Cancel.NEVER, Progress.NONE);
    }

    private static Map<String, String> lamp(String from, String to) throws IOException {
        String text = Files.readString(Repository.root().resolve("docs/examples/broken/lamp-too-dim-mended.loom"));
        assertTrue(text.contains(from));
        return Map.of("lamp.loom", text.replace(from, to));
    }

    /** The current of a filament changes with the square root of its voltage (lamp handbooks), so hardly here. */
    @Test
    @Tag("outside")
    void aThinnerWireDimsALampByWhatItLoses() throws IOException {
        Effect effect = effect(lamp("14 ga from lampSwitch", "14 ga from lampSwitch"),
                lamp("14 ga from lampSwitch", "18 ga from lampSwitch"));
        assertEquals(1, effect.lines().size(), effect.lines().toString());
        Effect.Line line = effect.lines().getFirst();
        assertEquals(Direction.WORSE, line.direction());
        assertEquals("Lamp", line.subject());
        assertEquals("every vehicle", line.vehicles());
        double then = volts(line.before());
        double here = volts(line.after());
        double amps = WATTS / DESIGN_VOLTS * Math.sqrt(here / DESIGN_VOLTS);
        assertEquals(METRES * (OHM_18 - OHM_14) * amps, then - here, 0.01);
        assertTrue(line.what().startsWith(Math.round(100 * Math.pow(here / then, 3.4)) + " % of its light"),
                line.what());
        assertTrue(effect.headline().orElseThrow().startsWith("Lamp gets 0.1"), effect.headline().orElseThrow());
    }

    private static double volts(String words) {
        return Double.parseDouble(words.replace(" V", ""));
    }

    @Test
    void whatIsRenamedGetsWhatItGot() throws IOException {
        assertEquals(List.of(), effect(lamp("lampL", "lampL"), lamp("lampL", "lampLeft")).lines());
    }

    @Test
    void aThickerWireIsNoObjection() throws IOException {
        Effect effect = effect(lamp("14 ga from lampSwitch", "18 ga from lampSwitch"),
                lamp("14 ga from lampSwitch", "14 ga from lampSwitch"));
        assertEquals(List.of(Direction.OTHER), effect.lines().stream().map(Effect.Line::direction).toList());
        assertTrue(effect.headline().isEmpty());
    }

    /** The Orrin has too many vehicles to solve each: one with each choice is, and the worst is named. */
    @Test
    void ofManyVehiclesOneWithEachChoiceIsSolvedAndTheWorstIsNamed() throws BadCall {
        EditedExample orrin = new EditedExample("orrin");
        Project before = orrin.open().project();
        Effect effect = effect(before, orrin.with("front-harness.loom", "wire a 8 ga from FB:lamps to S3",
                "wire a 20 ga from FB:lamps to S3").open().project());
        assertTrue(effect.lines().stream().filter(line -> line.direction() == Direction.WORSE).count() >= 2,
                effect.lines().toString());
        for (Effect.Line line : effect.lines()) {
            // what the headlamps no longer draw is left for the others
            assertEquals(line.subject().contains("headlamp"), line.direction() == Direction.WORSE, line.toString());
            assertTrue(line.vehicles().matches("the worst of \\d+ vehicles looked at: 19.*headlampRelays.*"),
                    line.vehicles());
        }
        assertEquals(List.of(), effect(before, before).lines());
    }
}
