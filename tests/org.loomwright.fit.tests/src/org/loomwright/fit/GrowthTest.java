// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** How the work of a whole judgement grows. */
class GrowthTest {

    private static FitReport judge(int drawings, int places, String slack) {
        Sketch sketch = new Sketch();
        WiringSketch ours = sketch.harness("ours").datum("bulkhead").trunk("main");
        for (int place = 0; place < places; place++) {
            ours.breakout("p" + place, 100 * (place + 1) + " mm");
        }
        ours.slack("p0", slack);
        for (int place = 0; place < places; place++) {
            ours.branch("b" + place, "p" + place, "place" + place, "200 mm");
        }
        for (int i = 0; i < drawings; i++) {
            ours.covers("d" + i);
            WiringSketch drawing = sketch.drawing("d" + i).when(i == 0 ? Sketch.upTo(1966) : Sketch.from(1967))
                    .datum("bulkhead").trunk("main");
            for (int place = 0; place < places; place++) {
                drawing.breakout("f" + place, 100 * (place + 1) - i % 7 + " mm");
            }
            for (int place = 0; place < places; place++) {
                drawing.branch("f" + place + "b", "f" + place, "place" + place, "120 mm");
            }
        }
        Project project = sketch.project();
        return new ChainJudge().judge(FitProblem.of(project.wiring("ours").orElseThrow(), project, FitDefaults.usual()),
                Cancel.NEVER);
    }

    @Test
    void rigidTrunkIsLookedAtOncePerPlaceAndDrawing() {
        assertEquals(4 * 5, judge(4, 5, "0 mm").work().evaluations());
        assertEquals(40 * 5, judge(40, 5, "0 mm").work().evaluations());
        assertEquals(4 * 50, judge(4, 50, "0 mm").work().evaluations());
    }

    @Test
    void slackMultipliesItByItsHalfUnits() {
        long perMillimetre = 40;
        assertEquals(5 * (10 * perMillimetre + 1), judge(1, 5, "10 mm").work().evaluations());
        assertEquals(50 * (10 * perMillimetre + 1), judge(1, 50, "10 mm").work().evaluations());
        assertEquals(5 * (100 * perMillimetre + 1), judge(1, 5, "100 mm").work().evaluations());
        assertEquals(10 * judge(1, 5, "10 mm").work().points(), judge(1, 50, "10 mm").work().points());
    }
}
