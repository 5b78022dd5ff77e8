// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** What lies together in each stretch, and the copper in it. */
class BundlesTest {

    private final Sketch sketch = new Sketch();
    private final WiringSketch front = sketch.drawing("front").datum("bulkhead").trunk("main").breakout("a", "100 mm")
            .breakout("b", "300 mm").branch("bLamp", "a", "lamp", "70 mm").branch("bHorn", "b", "horn", "50 mm")
            .connector("J1", "bulkhead").connector("H1", "lamp").connector("H2", "horn");

    private Bundles.Result bundles() {
        HarnessTree tree = HarnessTree.of(sketch.view("front"));
        return new Bundles().of(tree, RoutedWire.all(tree, NodeSpots.of(tree)), tree.vehicles());
    }

    private static List<String> lines(Bundles.Result result) {
        return result.sections().stream().map(section -> section.label() + ": "
                + String.join(" ", section.wires().stream().map(each -> each.wire().label()).toList())).toList();
    }

    private void cable(String... rows) {
        List<Part.Size> sizes = new ArrayList<>();
        for (String row : rows) {
            String[] words = row.split(", ");
            sizes.add(new Part.Size(WiringSketch.size(words[0]), Optional.of(Sketch.quantity(words[1])), Optional
                    .empty(),
                    "", sketch.span()));
        }
        sketch.part(new Part(Part.Kind.CABLE, sketch.name("thin"), "", List.of(), List.of(), sizes, List.of(), List
                .of(),
                List.of(), sketch.span()));
        front.cable("thin");
    }

    @Test
    void wiresLieInTheSectionsOfTheirRoutes() {
        front.spliceOn("12", "S1", "main", "200 mm").wire("12", "a", "18 ga", "J1:1", "S1")
                .wire("12", "b", "18 ga", "S1", "H1:1").wire("12", "c", "18 ga", "S1", "H2:1")
                .wire("31", "a", "18 ga", "H1:2", "H2:2");
        assertEquals(List.of("bulkhead - a: 12a", "a - main at 200 mm: 12a 12b 31a", "main at 200 mm - b: 12c 31a",
                "a - bLamp: 12b 31a", "b - bHorn: 12c 31a"), lines(bundles()));
        assertEquals(List.of(), bundles().lost());
        Section middle = bundles().sections().get(1);
        assertEquals(Length.ofMillimetres(100), middle.length().length().orElseThrow());
        assertEquals(3, middle.size().orElseThrow().wires());
    }

    @Test
    void catalogueGivesTheDiametersAndPackingGivesTheBundle() {
        cable("18 ga, 2.0 mm", "14 ga, 3 mm");
        front.wire("12", "a", "18 ga", "J1:1", "H1:1").wire("12", "b", "18 ga", "J1:2", "H1:2")
                .wire("12", "c", "14 ga", "J1:3", "H2:1");
        Section first = bundles().sections().getFirst();
        assertFalse(first.isEstimated());
        // 1.2 sqrt(4 + 4 + 9) = 4.948 mm; the 3 mm wire beside one of 2 mm is 5 mm wide
        assertEquals(5, first.size().orElseThrow().diameter().mm(), 1e-9);
        assertEquals(4.948, first.size().orElseThrow().rule().mm(), 0.001);
        // two equal wires in the branch
        assertEquals(4, bundles().on("bLamp").getFirst().size().orElseThrow().diameter().mm(), 1e-9);
    }

    @Test
    void sizeThatTheCatalogueLacksIsEstimatedAndSaysSo() {
        cable("14 ga, 3 mm");
        front.wire("12", "a", "18 ga", "J1:1", "H1:1");
        Section first = bundles().sections().getFirst();
        assertTrue(first.isEstimated());
        // 0.7788 mm² solid is 0.9958 mm across; 1.15 times that and two walls of 0.58 mm: 2.305 mm
        assertEquals(2.305, first.size().orElseThrow().diameter().mm(), 0.001);
    }

    @Test
    void wiresOfDifferentVehiclesCountTogetherUntilAskedApart() {
        front.wire("12", "a", "18 ga", "J1:1", "H1:1", Sketch.is("fogLamps"))
                .wire("12", "b", "18 ga", "J1:2", "H1:2", Sketch.not("fogLamps"))
                .wire("12", "c", "18 ga", "J1:3", "H1:3");
        HarnessTree tree = HarnessTree.of(sketch.view("front"));
        List<RoutedWire> wires = RoutedWire.all(tree, NodeSpots.of(tree));
        assertEquals(3, new Bundles().of(tree, wires, tree.vehicles()).sections().getFirst().wires().size());
        Condition fog = tree.view().platform().vehicles().resolve(Sketch.is("fogLamps")).condition();
        List<Section.Occupant> with = new Bundles().of(tree, wires, fog).sections().getFirst().wires();
        assertEquals(List.of("12a", "12c"), with.stream().map(each -> each.wire().label()).toList());
    }

    @Test
    void wireWithoutASizeIsCountedApart() {
        front.wire("12", "a", "", "J1:1", "H1:1");
        Section first = bundles().sections().getFirst();
        assertEquals(Optional.empty(), first.size());
        assertEquals(List.of("12a"), first.unsized().stream().map(WireView::label).toList());
    }

    @Test
    void wireToASpliceNobodyCanPlaceIsLost() {
        front.spliceOn("12", "S1", "main", "unknown").wire("12", "a", "18 ga", "J1:1", "S1")
                .wire("12", "b", "18 ga", "J1:2", "H1:1");
        assertEquals(List.of("12a"), bundles().lost().stream().map(WireView::label).toList());
        assertEquals(List.of("12b"), bundles().sections().getFirst().wires().stream().map(each -> each.wire().label())
                .toList());
    }

    @Test
    void spliceBehindTheLastKnownPointStaysBeforeAnUnknownEnd() {
        front.branch("bFan", "b", "fan", "unknown").connector("H3", "fan").spliceOn("12", "S1", "bFan", "900 mm")
                .wire("12", "a", "18 ga", "S1", "H3:1");
        assertEquals("bFan at 900 mm - bFan: 12a", lines(bundles()).getLast());
    }

    /** 8.96 g/cm³, the handbook value: 1 mm² weighs 8.96 g a metre. */
    @Test
    void copperWeighsSectionTimesLengthTimesDensity() {
        assertEquals(8.96, Copper.HANDBOOK.grams(ConductorSize.metric("1"), Length.ofMetres(1)), 1e-9);
        front.wire("12", "a", "1 mm2", "J1:1", "H1:1").wire("12", "b", "2.5 mm2", "J1:2", "H2:1");
        // 3.5 mm² over 0.1 m
        assertEquals(3.136, bundles().sections().getFirst().copperGrams(Copper.HANDBOOK).orElseThrow(), 1e-9);
        // 2.5 mm² over 0.2 m
        assertEquals(4.48, bundles().sections().get(1).copperGrams(Copper.HANDBOOK).orElseThrow(), 1e-9);
    }

    @Test
    void largestSizeOfAWireCounts() {
        cable("18 ga, 2.0 mm", "14 ga, 3 mm");
        front.wire("12", "a", "18 ga", "J1:1", "H1:1").largerWhen("14 ga", Sketch.is("fan"));
        Section.Occupant occupant = bundles().sections().getFirst().wires().getFirst();
        assertEquals("14 ga", occupant.size().orElseThrow().written());
        assertEquals(3, occupant.diameter().orElseThrow().mm(), 1e-9);
        HarnessTree tree = HarnessTree.of(sketch.view("front"));
        Condition plain = tree.view().platform().vehicles().resolve(new Expression.Not(Sketch.is("fan"))).condition();
        Section.Occupant without = new Bundles().of(tree, RoutedWire.all(tree, NodeSpots.of(tree)), plain).sections()
                .getFirst().wires().getFirst();
        assertEquals("18 ga", without.size().orElseThrow().written());
    }
}
