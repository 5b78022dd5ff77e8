// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.Run;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** What a harness sets, for a place or for all of itself, and what holds when it does not. */
class FitSettingsTest {

    private final Sketch sketch = new Sketch();
    private final WiringSketch ours = sketch.harness("ours").datum("bulkhead").trunk("main").breakout("p", "100 mm")
            .branch("b1", "p", "lamp", "200 mm");

    private FitSettings settings() {
        return new FitSettings(HarnessTree.of(sketch.view("ours")), FitDefaults.usual());
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    @Test
    void defaultsHoldForAHarnessThatSaysNothing() {
        FitSettings settings = settings();
        assertEquals(mm(40), settings.serviceLoop("lamp"));
        assertEquals(Length.ZERO, settings.movement("lamp"));
        assertEquals(mm(250), settings.excess("lamp"));
        assertEquals(mm(150), settings.doublingBack("lamp"));
        assertEquals(Length.ZERO, settings.spacing());
        assertEquals("common practice", FitDefaults.usual().basis());
    }

    @Test
    void placeWinsOverHarnessAndTheLaterOfTwoHolds() {
        ours.setAt("lamp", SettingKind.EXCESS, "4 in").set(SettingKind.EXCESS, "90 mm").set(SettingKind.EXCESS, "80 mm")
                .setAt("lamp", SettingKind.MOVEMENT, "12 mm").set(SettingKind.SPACING, "30 mm");
        FitSettings settings = settings();
        assertEquals(mm(101.6), settings.excess("lamp"));
        assertEquals(mm(80), settings.excess("horn"));
        assertEquals(mm(12), settings.movement("lamp"));
        assertEquals(Length.ZERO, settings.movement("horn"));
        assertEquals(mm(30), settings.spacing());
    }

    @Test
    void settingThatIsNoLengthIsPassedOver() {
        ours.set(SettingKind.EXCESS, "12 V").set(SettingKind.DOUBLING_BACK, "-5 mm");
        assertEquals(mm(250), settings().excess("lamp"));
        assertEquals(mm(150), settings().doublingBack("lamp"));
    }

    @Test
    void defaultToleranceOfTheHarnessHoldsForItsBranches() {
        ours.tolerance("1 mm / 7 mm");
        Run branch = sketch.view("ours").run("b1").orElseThrow();
        assertEquals(new Tolerance(mm(1), mm(7)), settings().made(branch, mm(200)));
        ours.made(SettingKind.BRANCH_TOLERANCE, "0 mm / 9 mm");
        assertEquals(new Tolerance(Length.ZERO, mm(9)), settings().made(branch, mm(200)));
    }
}
