// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.strip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

class StripLayoutTest {

    private record Words(double x, double y, double end) {
    }

    private static Strip strip(Sketch sketch) {
        return StripLayout.of(HarnessTree.of(sketch.view("front")));
    }

    private static Strip.Bar bar(Strip strip, String run) {
        return strip.bars().stream().filter(each -> each.run().equals(run)).findFirst().orElseThrow();
    }

    @Test
    void lengthsAreInProportion() {
        Sketch sketch = new Sketch();
        sketch.drawing("front").datum("bulkhead").trunk("main").breakout("wing", "500 mm").breakout("end", "1000 mm")
                .branch("b1", "wing", "lamp", "250 mm").branch("b2", "end", "horn", "400 mm");
        Strip strip = strip(sketch);
        Strip.Bar main = bar(strip, "main");
        Strip.Bar first = bar(strip, "b1");
        assertEquals(0.5, (first.x() - main.x()) / (main.end() - main.x()), 1e-9);
        assertEquals(0.25, (first.end() - first.x()) / (main.end() - main.x()), 1e-9);
        assertEquals(main.end(), bar(strip, "b2").x(), 1e-9);
        assertEquals(main.y(), first.from(), 1e-9);
        assertEquals("b1 to lamp, 250 mm", first.text());
    }

    @Test
    void aBranchHangsOnTheBranchThatItLeaves() {
        Sketch sketch = new Sketch();
        sketch.drawing("front").datum("bulkhead").trunk("main").breakout("wing", "500 mm")
                .branch("b1", "wing", "lamp", "300 mm").breakout("fork", "100 mm")
                .branch("b2", "fork", "horn", "80 mm");
        Strip strip = strip(sketch);
        assertEquals(bar(strip, "b1").y(), bar(strip, "b2").from(), 1e-9);
        assertEquals(100 * strip.scale(), bar(strip, "b2").x() - bar(strip, "b1").x(), 1e-9);
    }

    @Test
    void whatIsNotKnownIsMarked() {
        Sketch sketch = new Sketch();
        sketch.drawing("front").datum("bulkhead").trunk("main").breakout("wing", "unknown")
                .branch("b1", "wing", "lamp", "unknown");
        assertFalse(bar(strip(sketch), "main").known());
        assertFalse(bar(strip(sketch), "b1").known());
        assertTrue(bar(strip(sketch), "b1").text().endsWith("unknown"));
    }

    /** Whatever the harness, words lie over no other words and no line crosses them. */
    @Test
    void wordsStandFree() {
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            Sketch sketch = new Sketch();
            WiringSketch front = sketch.drawing("front").datum("bulkhead").trunk("main");
            int points = 1 + random.nextInt(8);
            for (int i = 0; i < points; i++) {
                front.breakout("o" + i, 100 + 150 * i + random.nextInt(100) + " mm");
            }
            int branches = random.nextInt(12);
            for (int i = 0; i < branches; i++) {
                front.branch("b" + i, "o" + random.nextInt(points), "p" + i, 50 + random.nextInt(500) + " mm");
            }
            Strip strip = strip(sketch);
            List<Words> words = new ArrayList<>();
            strip.posts().forEach(each -> words.add(words(each.x(), each.top(), each.text())));
            strip.bars().forEach(each -> words.add(words(each.end(), each.y(), each.text())));
            for (int i = 0; i < words.size(); i++) {
                Words one = words.get(i);
                assertTrue(one.end() <= strip.width() && one.y() >= StripLayout.ROW / 2
                        && one.y() <= strip.height(), "outside, seed " + seed);
                for (Words other : words.subList(i + 1, words.size())) {
                    assertTrue(Math.abs(one.y() - other.y()) >= StripLayout.ROW - 1e-9 || one.end() <= other.x()
                            || other.end() <= one.x(), "over each other, seed " + seed);
                }
                for (Strip.Bar bar : strip.bars()) {
                    boolean crosses = !bar.trunk() && bar.x() > one.x() && bar.x() < one.end()
                            && bar.from() < one.y() && bar.y() > one.y();
                    assertFalse(crosses, "a line through words, seed " + seed);
                }
            }
        }
    }

    private static Words words(double x, double y, String text) {
        return new Words(x + 6, y, x + 6 + text.length() * StripLayout.CHARACTER);
    }
}
