// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Segment;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** Branches that leave branches: the run along the trunk is used up first. */
class BranchOnBranchTest {

    private final Sketch sketch = new Sketch();

    private FitProblem problem(Project project) {
        return FitProblem.of(project.wiring("ours").orElseThrow(), project, FitDefaults.usual());
    }

    private WiringSketch harness() {
        return sketch.harness("ours").datum("bulkhead").made(SettingKind.BRANCH_TOLERANCE, "0 mm")
                .made(SettingKind.BREAKOUT_TOLERANCE, "0 mm");
    }

    private List<String> lines() {
        FitReport report = new ChainJudge().judge(problem(sketch.project()), Cancel.NEVER);
        return report.cells().stream().map(cell -> report.problem().rows().get(cell.row()).branch() + " "
                + cell.status().words() + cell.figures().map(each -> " " + each.margin()).orElse("")
                + cell.reason().map(each -> " " + each).orElse("")).toList();
    }

    /**
     * The parent leaves at 100 and the factory's at 120, so 20 of the parent lie along the trunk. Its breakout at 50
     * then lies 30 along the factory's branch, where the factory's horn leaves at 45: 15 along, and 40 to the horn.
     * Parent: 200 - 20 - 150 = 30. Child: 70 - 15 - 40 = 15. The second child leaves at 10, which is still on the
     * trunk, 10 before the factory's branch: 10 + 45 along, 40: 100 - 55 - 40 = 5.
     */
    @Test
    void childLiesWhereTheParentLeavesIt() {
        sketch.drawing("front64").datum("bulkhead").trunk("main").breakout("a", "120 mm")
                .branch("bG", "a", "grille", "150 mm").breakout("fork", "45 mm").branch("bH", "fork", "horn", "40 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "grille", "200 mm")
                .breakout("f0", "10 mm").breakout("f1", "50 mm").branch("b2", "f1", "horn", "70 mm")
                .branch("b3", "f0", "horn", "100 mm");
        assertEquals(List.of("b1 fits 30 mm", "b2 fits 15 mm", "b3 fits 5 mm"), lines());
    }

    /** Tolerances: parent's breakout 1, child's 2; the factory's stations 4 and 8, and its branch 16. */
    @Test
    void tolerancesOfTheWholeWayAddUp() {
        sketch.drawing("front64").datum("bulkhead").trunk("main").breakout("a", "100 mm ± 4 mm")
                .branch("bG", "a", "grille", "150 mm ± 99 mm").breakout("fork", "50 mm ± 8 mm")
                .branch("bH", "fork", "horn", "40 mm ± 16 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm ± 1 mm").branch("b1", "p", "grille", "400 mm")
                .breakout("f1", "50 mm ± 2 mm").branch("b2", "f1", "horn", "100 mm");
        assertEquals("b2 fits 29 mm", lines().getLast());
    }

    @Test
    void childOfABranchThatVehiclesDoNotUseIsNotProved() {
        sketch.drawing("front64").datum("bulkhead").trunk("main").breakout("a", "120 mm")
                .branch("bH", "a", "horn", "40 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "grille", "200 mm")
                .breakout("f1", "50 mm").branch("b2", "f1", "horn", "70 mm");
        assertEquals(List.of("b1 capped", "b2 not proved PARENT"), lines());
    }

    @Test
    void lengthOfTheFactoryParentNeedNotBeKnown() {
        sketch.drawing("front64").datum("bulkhead").trunk("main").breakout("a", "100 mm")
                .branch("bG", "a", "grille", "unknown").breakout("fork", "45 mm").branch("bH", "fork", "horn", "40 mm");
        harness().covers("front64").trunk("main").breakout("p", "100 mm").branch("b1", "p", "grille", "200 mm")
                .breakout("f1", "50 mm").branch("b2", "f1", "horn", "70 mm");
        assertEquals(List.of("b1 not proved FACTORY_LENGTH", "b2 fits 25 mm"), lines());
    }

    /**
     * Random vehicles and harnesses in whole millimetres, against a graph with one node a millimetre: the way of the
     * harness is walked node by node, and what the branch has to run is the shortest path from there.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void needIsTheShortestPathInTheVehicle(long seed) {
        Random random = new Random(seed);
        WiringSketch front = sketch.drawing("front64").datum("bulkhead");
        int points = 0;
        List<String> names = new ArrayList<>(List.of("bulkhead"));
        for (String trunk : List.of("main", "rear")) {
            front.trunk(trunk);
            for (int i = 0, at = 0; i < 3; i++) {
                at += random.nextInt(20);
                front.breakout("v" + points, at + " mm");
                names.add("v" + points++);
            }
        }
        int places = 7;
        for (int place = 0; place < places; place++) {
            front.branch("f" + place, names.get(random.nextInt(names.size())), "place" + place,
                    (25 + random.nextInt(20)) + " mm");
            for (int i = 0, at = 0; i < 2; i++) {
                at += random.nextInt(12);
                front.breakout("v" + points, at + " mm");
                names.add("v" + points++);
            }
        }
        WiringSketch ours = harness().covers("front64").trunk("main").breakout("p0", random.nextInt(30) + " mm")
                .breakout("p1", (30 + random.nextInt(30)) + " mm");
        ours.branch("b0", "p0", "place0", "300 mm").breakout("q0", random.nextInt(25) + " mm");
        ours.branch("b1", "p1", "place1", "300 mm").breakout("q1", random.nextInt(25) + " mm");
        ours.branch("b2", "q0", "place2", "300 mm").breakout("q2", random.nextInt(25) + " mm");
        ours.branch("b3", "q1", "place3", "300 mm");
        ours.branch("b4", "q2", "place4", "300 mm");
        ours.branch("b5", "bulkhead", "place5", "300 mm").breakout("q5", random.nextInt(25) + " mm");
        ours.branch("b6", "q5", "place6", "300 mm");
        Project project = sketch.project();
        Vehicle vehicle = new Vehicle(HarnessTree.of(project.wiring("front64").orElseThrow()));
        FitReport report = new ChainJudge().judge(problem(project), Cancel.NEVER);
        HarnessTree tree = HarnessTree.of(project.wiring("ours").orElseThrow());
        int walked = 0;
        for (FitCell cell : report.cells()) {
            FitRow row = report.problem().rows().get(cell.row());
            String start = vehicle.start(tree, row.branch());
            if (start != null) {
                walked++;
                FitCell.Figures figures = cell.figures().orElseThrow();
                assertEquals(vehicle.path(start, vehicle.end(row.place())).size() - 1,
                        (int) figures.along().plus(figures.demand().factory()).toMillimetres(), row::toString);
            }
        }
        assertTrue(walked >= 5, "places served: " + walked);
    }

    /** A vehicle as a graph with one node a millimetre. */
    private static final class Vehicle {

        private final Map<String, List<String>> graph = new HashMap<>();

        Vehicle(HarnessTree factory) {
            for (Segment segment : factory.segments()) {
                int from = (int) segment.from().station().length().orElseThrow().toMillimetres();
                int to = (int) segment.to().station().length().orElseThrow().toMillimetres();
                for (int at = from; at < to; at++) {
                    join(node(factory, segment.run(), at), node(factory, segment.run(), at + 1));
                }
            }
        }

        /** The first millimetre of a run is the point at which it starts. */
        private static String node(HarnessTree tree, String run, int at) {
            if (run.isEmpty()) {
                return "datum";
            }
            var start = tree.run(run).orElseThrow().start();
            return at > 0 ? run + "@" + at
                    : node(tree, start.run(), (int) start.station().length().orElseThrow().toMillimetres());
        }

        private void join(String one, String other) {
            graph.computeIfAbsent(one, key -> new ArrayList<>()).add(other);
            graph.computeIfAbsent(other, key -> new ArrayList<>()).add(one);
        }

        String end(String place) {
            String branch = "f" + place.substring("place".length());
            return graph.keySet().stream().filter(each -> each.startsWith(branch + "@"))
                    .max(Comparator.comparingInt(each -> Integer
                            .parseInt(each.substring(each.indexOf('@') + 1))))
                    .orElseThrow();
        }

        /**
         * Where a branch of ours starts in the vehicle; null when its parent lies past the place that the parent
         * serves.
         */
        String start(HarnessTree ours, String branch) {
            var start = ours.run(branch).orElseThrow().start();
            if (start.run().isEmpty()) {
                return "datum";
            }
            int station = (int) start.station().length().orElseThrow().toMillimetres();
            if (start.run().equals("main")) {
                for (int at = 1; at <= station; at++) {
                    String before = at == 1 ? "datum" : "main@" + (at - 1);
                    if (!graph.getOrDefault(before, List.of()).contains("main@" + at)) {
                        join(before, "main@" + at);
                    }
                }
                return station == 0 ? "datum" : "main@" + station;
            }
            String from = start(ours, start.run());
            String place = ours.run(start.run()).orElseThrow().run().to().orElseThrow().text();
            List<String> path = from == null ? List.of() : path(from, end(place));
            return station < path.size() ? path.get(station) : null;
        }

        List<String> path(String from, String to) {
            Map<String, String> before = new HashMap<>(Map.of(from, from));
            Deque<String> open = new ArrayDeque<>(List.of(from));
            while (!open.isEmpty() && !before.containsKey(to)) {
                String at = open.poll();
                for (String next : graph.get(at)) {
                    if (before.putIfAbsent(next, at) == null) {
                        open.add(next);
                    }
                }
            }
            List<String> path = new ArrayList<>(List.of(to));
            while (!path.getLast().equals(from)) {
                path.add(before.get(path.getLast()));
            }
            Collections.reverse(path);
            return path;
        }
    }
}
