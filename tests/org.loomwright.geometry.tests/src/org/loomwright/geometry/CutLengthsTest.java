// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** Routes and cut lengths of wires, worked by hand. */
class CutLengthsTest {

    private final Sketch sketch = new Sketch();
    private final WiringSketch front = sketch.harness("front").datum("bulkhead").trunk("main").breakout("a", "12.5 in")
            .branch("bLamp", "a", "lamp", "7 in").connector("J1", "bulkhead").connector("H1", "lamp");

    private List<CutLength> lengths(CutSettings settings) {
        HarnessTree tree = HarnessTree.of(sketch.view("front"));
        CutLengths lengths = new CutLengths(tree, sketch.project().parts(), settings);
        return RoutedWire.all(tree, NodeSpots.of(tree)).stream().flatMap(wire -> lengths.of(wire).stream()).toList();
    }

    private CutLength only() {
        List<CutLength> all = lengths(CutSettings.usual());
        assertEquals(1, all.size());
        return all.getFirst();
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    /**
     * 12.5 in + 7 in = 317.5 + 177.8 = 495.3 mm; 15 mm at either housing: 525.3 mm; 2 mm shortfall: 527.3 mm; on the 5
     * mm grid 530 mm. The wire is longer than 0.3 m and not longer than 1.5 m: -0 / +50 mm.
     */
    @Test
    @Tag("outside") // tolerance: IPC/WHMA-A-620 as restated in inches by a harness maker, metric form from memory
    void routeAllowancesShortfallAndGridAddUp() {
        front.wire("12", "a", "18 ga", "J1:1", "H1:1");
        CutLength length = only();
        assertEquals(mm(525.3), length.length().orElseThrow());
        assertEquals(mm(530), length.cut().orElseThrow());
        assertEquals(new Tolerance(Length.ZERO, mm(50)), length.tolerance());
        assertEquals(List.of("route 495.3 mm", "at J1:1 15 mm", "at H1:1 15 mm", "machine shortfall 2 mm",
                "rounding up to 5 mm 2.7 mm"), length.terms().stream().map(Object::toString).toList());
    }

    @Test
    void branchMeasuredToTheTipNeedsNoAllowance() {
        front.branch("bHorn", "a", "horn", "100 mm, tip").connector("H2", "horn")
                .wire("12", "a", "18 ga", "H1:1", "H2:1");
        // 177.8 + 100 + 15 + 0 = 292.8; + 2 = 294.8; on the grid 295
        assertEquals(mm(292.8), only().length().orElseThrow());
        assertEquals(mm(295), only().cut().orElseThrow());
        assertEquals(new Tolerance(Length.ZERO, mm(25)), only().tolerance());
    }

    @Test
    void splicesAndStudsHaveTheirOwnAllowance() {
        front.stud("G1", "lamp").spliceOn("12", "S1", "main", "100 mm").wire("12", "a", "18 ga", "S1", "G1");
        // 317.5 - 100 + 177.8 = 395.3; + 10 + 10 = 415.3; + 2 = 417.3; 420
        assertEquals(mm(415.3), only().length().orElseThrow());
        assertEquals(mm(420), only().cut().orElseThrow());
    }

    @Test
    void statedLengthWinsOverTheRoute() {
        front.wireOf("12", "a", "18 ga", "J1:1", "H1:1", "600 mm");
        assertTrue(only().stated());
        assertEquals(mm(600), only().length().orElseThrow());
        assertEquals(mm(605), only().cut().orElseThrow());
    }

    @Test
    void pinnedLengthIsCutAsItStands() {
        front.wireOf("12", "a", "18 ga", "J1:1", "H1:1", "601.5 mm ± 3 mm, pinned");
        assertEquals(mm(601.5), only().cut().orElseThrow());
        assertEquals(Tolerance.symmetric(mm(3)), only().tolerance());
    }

    @Test
    void resistorCableIsNeverCutToFit() {
        sketch.part(new Part(Part.Kind.RESISTOR_CABLE, sketch.name("ballast"), "", List.of(), List.of(), List.of(),
                List.of(), List.of(), List.of(), sketch.span()));
        front.cable("ballast").wireOf("12", "a", "18 ga", "J1:1", "H1:1", "1511 mm");
        assertEquals(mm(1511), only().cut().orElseThrow());
    }

    @Test
    void harnessSetsItsOwnGrid() {
        front.set(Ours.SettingKind.GRID, "1/2 in").wire("12", "a", "18 ga", "J1:1", "H1:1");
        // 527.3 mm = 20.76 in
        assertEquals(Length.ofInches(21), only().cut().orElseThrow());
    }

    @Test
    void unknownLengthStaysUnknown() {
        front.branch("bHorn", "a", "horn", "unknown").connector("H2", "horn").wire("12", "a", "18 ga", "J1:1", "H2:1");
        assertEquals(Optional.empty(), only().cut());
        assertEquals(Optional.empty(), only().length());
    }

    @Test
    void wireThatRunsDifferentlyHasALengthForEach() {
        front.branch("b2", "a", "horn", "100 mm", Sketch.upTo(1966))
                .branch("b3", "a", "horn", "200 mm", Sketch.from(1967))
                .connector("H2", "horn").wire("12", "a", "18 ga", "J1:1", "H2:1");
        List<CutLength> all = lengths(CutSettings.usual());
        assertEquals(List.of("year <= 1966", "year >= 1967"), all.stream().map(each -> each.when().words()).toList());
        // 317.5 + 100 + 30 + 2 = 449.5, and 100 more
        assertEquals(List.of(mm(450), mm(550)), all.stream().map(each -> each.cut().orElseThrow()).toList());
    }

    @Test
    void wireWithoutARouteHasNoLengthAndIsLost() {
        front.connector("H3", "roof").wire("12", "a", "18 ga", "J1:1", "H3:1");
        assertEquals(List.of(), lengths(CutSettings.usual()));
        HarnessTree tree = HarnessTree.of(sketch.view("front"));
        assertTrue(RoutedWire.all(tree, NodeSpots.of(tree)).getFirst().lost().isAlways());
    }

    @Test
    void spliceMethodOfTheCatalogueStatesItsAllowance() {
        sketch.part(new Part(Part.Kind.SPLICE_METHOD, sketch.name("welded"), "",
                List.of(new Fact<>(new Part.Figure(Part.FigureKind.LENGTH, Sketch.quantity("6 mm"), Optional.empty(),
                        ""),
                        new Expression.Always(), sketch.span())),
                List.of(), List.of(), List.of(), List.of(), List.of(), sketch.span()));
        front.spliceBy("12", "S1", "a", "welded").wire("12", "a", "18 ga", "J1:1", "S1");
        // 317.5 + 15 + 6
        assertEquals(mm(338.5), only().length().orElseThrow());
    }
}
