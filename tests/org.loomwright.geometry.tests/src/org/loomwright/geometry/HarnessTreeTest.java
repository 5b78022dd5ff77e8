// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** The tree of a drawing: stations, tolerances, provenance, routes and what is wrong with it. */
class HarnessTreeTest {

    private final Sketch sketch = new Sketch();
    private final WiringSketch front = sketch.drawing("front").datum("bulkhead");

    private HarnessTree tree() {
        return HarnessTree.of(sketch.view("front"));
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    private static void assertDistance(double millimetres, String tolerance, Provenance provenance, Distance actual) {
        assertEquals(mm(millimetres), actual.length().orElseThrow());
        assertEquals(Sketch.tolerance(tolerance), actual.tolerance());
        assertEquals(provenance, actual.provenance());
    }

    private Problem onlyProblem() {
        List<Problem> problems = tree().problems();
        assertEquals(1, problems.size(), problems::toString);
        return problems.getFirst();
    }

    @Test
    void chainAddsUpItsTolerancesWorstCase() {
        front.tolerance("10 mm").trunk("main").breakout("a", "100 mm ± 2 mm")
                .breakoutAfter("b", "a", "200 mm ± 3 mm, sample")
                .breakoutAfter("c", "b", "300 mm").breakout("d", "700 mm ± 4 mm");
        HarnessTree tree = tree();
        assertEquals(List.of(), tree.problems());
        assertDistance(100, "2 mm", Provenance.SHEET, tree.breakout("a").orElseThrow().station());
        assertDistance(300, "5 mm", Provenance.SAMPLE, tree.breakout("b").orElseThrow().station());
        assertDistance(600, "15 mm", Provenance.SAMPLE, tree.breakout("c").orElseThrow().station());
        List<Segment> segments = tree.segments();
        assertEquals(List.of("bulkhead - a", "a - b", "b - c", "c - d"), segments.stream().map(Segment::label)
                .toList());
        assertDistance(200, "3 mm", Provenance.SAMPLE, segments.get(1).length());
        assertDistance(300, "10 mm", Provenance.SHEET, segments.get(2).length());
        // d is dimensioned from the datum, so the stretch before it bears both chains: 15 + 4
        assertDistance(100, "19 mm", Provenance.SAMPLE, segments.get(3).length());
    }

    @Test
    void toleranceOfADifferenceIsFlipped() {
        front.trunk("main").breakout("a", "100 mm ± 1 mm / 2 mm").breakout("b", "150 mm ± 4 mm / 8 mm");
        Distance between = tree().segments().get(1).length();
        // shortest: 146 - 102, longest: 158 - 99
        assertDistance(50, "6 mm / 9 mm", Provenance.SHEET, between);
    }

    @Test
    void inchesStayExact() {
        front.trunk("main").breakout("leftWing", "12.5 in").breakout("radiator", "20 3/4 in")
                .breakout("r", "20 49/64 in");
        HarnessTree tree = tree();
        assertEquals(317_500_000, tree.breakout("leftWing").orElseThrow().station().length().orElseThrow()
                .nanometres());
        assertEquals(527_050_000, tree.breakout("radiator").orElseThrow().station().length().orElseThrow()
                .nanometres());
        assertEquals(396_875, tree.segments().get(2).length().length().orElseThrow().nanometres());
    }

    @Test
    void unknownStationDoesNotSpoilWhatLiesBeyondIt() {
        front.trunk("main").breakout("a", "100 mm").breakout("b", "unknown").breakoutAfter("c", "b", "5 mm")
                .breakout("d", "300 mm").branch("bD", "d", "lamp", "50 mm, scaled");
        HarnessTree tree = tree();
        assertEquals(List.of(), tree.problems());
        assertFalse(tree.breakout("b").orElseThrow().station().isKnown());
        assertFalse(tree.breakout("c").orElseThrow().station().isKnown());
        assertEquals(List.of("a", "b", "c", "d"),
                tree.run("main").orElseThrow().points().stream().map(Spot::name).toList());
        assertEquals(List.of(true, false, true, false, true),
                tree.segments().stream().map(segment -> segment.length().isKnown()).toList());
        Spot lamp = tree.spots("lamp").getFirst().value();
        assertDistance(350, "0 mm", Provenance.SCALED, tree.route(tree.datum().orElseThrow(), lamp).length());
        Spot b = tree.breakout("b").orElseThrow();
        assertFalse(tree.route(b, lamp).length().isKnown());
        assertDistance(5, "0 mm", Provenance.SHEET, tree.route(b, tree.breakout("c").orElseThrow()).length());
        assertDistance(5, "0 mm", Provenance.SHEET, tree.route(tree.breakout("c").orElseThrow(), b).length());
    }

    @Test
    void trunksRunInDifferentDirectionsFromTheDatum() {
        front.trunk("left").breakout("a", "100 mm").trunk("right").breakout("b", "70 mm")
                .branch("bA", "a", "lampLeft", "10 mm").branch("bB", "b", "lampRight", "20 mm")
                .branch("bC", "bulkhead", "fuseBox", "5 mm");
        HarnessTree tree = tree();
        Route route = tree.route(tree.spots("lampLeft").getFirst().value(), tree.spots("bB").getFirst().value());
        assertEquals(List.of("bA", "left", "right", "bB"), route.legs().stream().map(Route.Leg::run).toList());
        assertDistance(200, "0 mm", Provenance.SHEET, route.length());
        assertDistance(5, "0 mm", Provenance.SHEET, tree.fromDatum(tree.spots("fuseBox").getFirst().value()));
    }

    @Test
    void branchMayLeaveABranchOrContinueIt() {
        front.trunk("main").breakout("a", "100 mm").branch("bA", "a", "grille", "80 mm").breakout("fork", "30 mm")
                .branch("bB", "fork", "horn", "20 mm").branch("bC", "bA", "fan", "40 mm")
                        .branch("bD", "fan", "sensor", "7 mm");
        HarnessTree tree = tree();
        assertEquals(List.of(), tree.problems());
        assertEquals(List.of(0, 1, 2, 2, 3), tree.runs().stream().map(TreeRun::depth).toList());
        assertDistance(150, "0 mm", Provenance.SHEET, tree.fromDatum(tree.spots("horn").getFirst().value()));
        assertDistance(117, "0 mm", Provenance.SHEET, tree.route(tree.spots("horn").getFirst().value(),
                tree.spots("sensor").getFirst().value()).length());
    }

    @Test
    void treeOfFewerVehiclesLeavesOutWhatTheyDoNotHave() {
        front.trunk("main").breakout("a", "100 mm").branch("bFog", "a", "fog", "10 mm", Sketch.is("fogLamps"))
                .branch("bFan", "a", "fan", "10 mm", Sketch.not("fogLamps"));
        var view = sketch.view("front");
        var fog = view.platform().vehicles().resolve(Sketch.is("fogLamps")).condition();
        assertEquals(List.of("main", "bFog"), HarnessTree.of(view, fog).runs().stream().map(TreeRun::name).toList());
        assertEquals(3, HarnessTree.of(view).runs().size());
    }

    @Test
    void missingDatumIsReported() {
        sketch.drawing("loose").trunk("main").breakout("a", "100 mm");
        List<Problem> problems = HarnessTree.of(sketch.view("loose")).problems();
        assertEquals(List.of("datum-missing"), problems.stream().map(Problem::code).toList());
        assertEquals(mm(100), HarnessTree.of(sketch.view("loose")).segments().getFirst().length().length()
                .orElseThrow());
    }

    @Test
    void breakoutBeforeThePreviousOneIsReported() {
        front.trunk("main").breakout("a", "100 mm").breakout("b", "88 mm").breakout("c", "100 mm");
        Problem problem = onlyProblem();
        assertEquals("breakout-order", problem.code());
        assertEquals(tree().breakout("b").orElseThrow().span(), problem.span());
        assertTrue(problem.message().contains("lies 12 mm before \"a\""), problem.message());
        // the tree goes on with the stations as they are stated
        assertEquals(List.of("bulkhead - b", "b - a", "a - c"), tree().segments().stream().map(Segment::label)
                .toList());
        assertDistance(12, "0 mm", Provenance.SHEET, tree().segments().get(1).length());
    }

    @Test
    void breakoutsOfDifferentVehiclesNeedNoOrder() {
        front.trunk("main").breakout("a", "100 mm", Sketch.is("coupe")).breakout("b", "88 mm", Sketch.is("saloon"));
        assertEquals(List.of(), tree().problems());
        front.breakout("c", "90 mm", Sketch.upTo(1966));
        assertEquals("breakout-order", onlyProblem().code());
    }

    @Test
    void branchFromAnUnknownPointIsReportedAndLeftOut() {
        front.trunk("main").breakout("a", "100 mm").branch("bX", "nose", "lamp", "10 mm")
                .branch("bY", "bX", "horn", "10 mm");
        assertEquals("branch-start-unknown", onlyProblem().code());
        assertEquals(List.of("main"), tree().runs().stream().map(TreeRun::name).toList());
    }

    @Test
    void branchHangsOnNothingWhereItsBreakoutIsMissing() {
        front.trunk("main").breakout("a", "100 mm").breakout("b", "300 mm", Sketch.is("fogLamps"))
                .branch("bX", "b", "lamp", "10 mm").breakout("x", "5 mm").branch("bY", "x", "horn", "10 mm");
        Problem problem = onlyProblem();
        assertEquals("branch-start-missing", problem.code());
        assertTrue(problem.message().endsWith("which is not there (not fogLamps)"), problem.message());
        HarnessTree tree = tree();
        var fog = tree.view().platform().vehicles().resolve(Sketch.is("fogLamps")).condition();
        assertEquals(fog, tree.run("bY").orElseThrow().when());
        assertEquals(fog, tree.spots("horn").getFirst().when());
        assertEquals(fog, tree.breakout("x").orElseThrow().when());
        assertDistance(315, "0 mm", Provenance.SHEET, tree.fromDatum(tree.spots("horn").getFirst().value()));
        assertDistance(215, "0 mm", Provenance.SHEET,
                tree.route(tree.breakout("a").orElseThrow(), tree.spots("horn").getFirst().value()).length());
        assertEquals(List.of("main"), HarnessTree.of(tree.view(), fog.not()).runs().stream().map(TreeRun::name)
                .toList());
    }

    @Test
    void branchThatNoVehicleHasTogetherWithItsBreakoutIsLeftOut() {
        front.trunk("main").breakout("a", "100 mm", Sketch.is("fogLamps"))
                .branch("bX", "a", "lamp", "10 mm", Sketch.not("fogLamps"));
        assertEquals("branch-start-missing", onlyProblem().code());
        assertEquals(List.of("main"), tree().runs().stream().map(TreeRun::name).toList());
    }

    @Test
    void branchesThatHangOnEachOtherAreReported() {
        front.trunk("main").breakout("a", "100 mm").branch("bX", "y", "lamp", "10 mm").breakout("x", "2 mm")
                .branch("bY", "x", "horn", "10 mm").breakout("y", "2 mm").branch("bZ", "y", "fan", "3 mm");
        assertEquals("branch-circle", onlyProblem().code());
        assertEquals(List.of("main"), tree().runs().stream().map(TreeRun::name).toList());
    }

    @Test
    void breakoutsCountedFromEachOtherAreReported() {
        front.trunk("main").breakoutAfter("a", "b", "1 mm").breakoutAfter("b", "c", "1 mm")
                .breakoutAfter("c", "a", "1 mm")
                .breakoutAfter("d", "c", "1 mm").breakout("e", "50 mm");
        assertEquals("breakout-circle", onlyProblem().code());
        assertEquals(List.of(false, false, false, false, true),
                tree().run("main").orElseThrow().points().stream().map(spot -> spot.station().isKnown()).toList());
    }

    @Test
    void breakoutCountedFromAnotherRunIsReported() {
        front.trunk("left").breakout("a", "10 mm").trunk("right").breakoutAfter("b", "a", "5 mm");
        assertEquals("breakout-base-unknown", onlyProblem().code());
    }

    @Test
    void breakoutPastTheEndOfItsBranchIsReported() {
        front.trunk("main").breakout("a", "100 mm").branch("bA", "a", "lamp", "30 mm").breakout("f", "31 mm");
        assertEquals("breakout-past-end", onlyProblem().code());
    }

    @Test
    void startAtAPlaceWithTwoBranchesIsReported() {
        front.trunk("main").breakout("a", "100 mm").branch("b1", "a", "lamp", "30 mm")
                .branch("b2", "a", "lamp", "30 mm")
                .branch("b3", "lamp", "horn", "30 mm");
        assertEquals("branch-ambiguous", onlyProblem().code());
    }

    @Test
    void negativeAndAbsurdLengthsAreUnknown() {
        front.trunk("main").breakout("a", "-5 mm").breakout("b", "200000 m").breakout("c", "7 mm");
        assertEquals(List.of("length-negative", "length-absurd"),
                tree().problems().stream().map(Problem::code).toList());
        assertFalse(tree().breakout("a").orElseThrow().station().isKnown());
        assertFalse(tree().breakout("b").orElseThrow().station().isKnown());
    }

    @Test
    void drawingWithoutAShapeHasNoProblems() {
        sketch.drawing("wires").connector("J1", "bulkhead");
        HarnessTree tree = HarnessTree.of(sketch.view("wires"));
        assertTrue(tree.isShapeless());
        assertEquals(List.of(), tree.problems());
        assertEquals(List.of(), NodeSpots.of(tree).problems());
    }

    @Test
    void widestOfSeveralDefaultTolerancesHolds() {
        front.tolerance("3 mm / 0 mm").tolerance("1 mm / 9 mm").trunk("main").breakout("a", "100 mm");
        assertEquals(new Tolerance(mm(3), mm(9)), tree().breakout("a").orElseThrow().station().tolerance());
    }

    @ParameterizedTest
    @ValueSource(ints = {200, 5_000})
    void longChainNeedsNoDeepStack(int breakouts) {
        front.trunk("main").breakout("p0", "1 mm");
        for (int i = 1; i < breakouts; i++) {
            front.breakoutAfter("p" + i, "p" + (i - 1), "1 mm ± 0.001 mm");
        }
        Distance last = tree().segments().getLast().length();
        assertDistance(1, "0.001 mm", Provenance.SHEET, last);
        assertEquals(mm(breakouts), tree().breakout("p" + (breakouts - 1)).orElseThrow().station().length()
                .orElseThrow());
    }

    /** Routes against shortest paths over all pairs of points in the graph of the segments. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void routesAreThePathsInTheGraphOfSegments(long seed) {
        Random random = new Random(seed);
        front.trunk("t0").breakout("p0", "10 mm");
        int points = 1;
        for (int run = 1; run < 9; run++) {
            String from = random.nextInt(5) == 0 ? "bulkhead" : "p" + random.nextInt(points);
            front.branch("b" + run, from, "place" + run, (100 + random.nextInt(50)) + " mm");
            int at = 0;
            for (int i = random.nextInt(4); i > 0; i--) {
                at += random.nextInt(20);
                front.breakout("p" + points++, at + " mm");
            }
        }
        HarnessTree tree = tree();
        assertEquals(List.of(), tree.problems());
        Map<String, Map<String, Long>> graph = new HashMap<>();
        for (Segment segment : tree.segments()) {
            long length = segment.length().length().orElseThrow().nanometres();
            graph.computeIfAbsent(segment.from().name(), key -> new HashMap<>())
                    .merge(segment.to().name(), length, Math::min);
            graph.computeIfAbsent(segment.to().name(), key -> new HashMap<>())
                    .merge(segment.from().name(), length, Math::min);
        }
        for (String from : graph.keySet()) {
            Map<String, Long> shortest = new HashMap<>(Map.of(from, 0L));
            for (int round = 0; round < graph.size(); round++) {
                graph.forEach((a, next) -> next.forEach((b, length) -> {
                    if (shortest.containsKey(a)) {
                        shortest.merge(b, shortest.get(a) + length, Math::min);
                    }
                }));
            }
            for (String to : graph.keySet()) {
                Route route = tree.route(tree.spots(from).getFirst().value(), tree.spots(to).getFirst().value());
                assertEquals(shortest.get(to), route.length().length().orElseThrow().nanometres(), from + " to " + to);
            }
        }
    }

    @Test
    void problemsStandInOrderOfTheSource() {
        front.trunk("main").breakout("a", "100 mm").breakout("b", "88 mm").branch("bX", "nowhere", "lamp", "1 mm")
                .trunk("aft").breakout("c", "-1 mm");
        List<Span> spans = tree().problems().stream().map(Problem::span).toList();
        assertEquals(3, spans.size());
        assertEquals(spans.stream().sorted().toList(), spans);
    }
}
