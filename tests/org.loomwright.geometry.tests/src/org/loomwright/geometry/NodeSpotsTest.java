// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Problem;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** Where connectors, splices, studs and devices sit. */
class NodeSpotsTest {

    private final Sketch sketch = new Sketch();
    private final WiringSketch front = sketch.drawing("front").datum("bulkhead").trunk("main").breakout("a", "100 mm");

    private static List<String> labels(NodeSpots spots, Node.Kind kind, String element) {
        return spots.of(new Node(kind, "front", element, "1")).stream().map(each -> each.value().label()
                + (each.when().isAlways() ? "" : " when " + each.when().words())).toList();
    }

    private NodeSpots spots() {
        return NodeSpots.of(HarnessTree.of(sketch.view("front")));
    }

    @Test
    void everythingSitsAtItsPoint() {
        front.branch("bLamp", "a", "lamp", "70 mm").branch("bFuse", "a", "fuseBox", "5 mm").connector("J1", "bulkhead")
                .connector("H1", "lamp").stud("G1", "lamp").device("F1", "fuseBox").splice("12", "S1", "a")
                .spliceOn("12", "S2", "main", "40 mm").splice("12", "S3", "bLamp").splice("12", "S4", "bulkhead")
                .wire("12", "a", "18 ga", "S1", "F1:1");
        NodeSpots spots = spots();
        assertEquals(List.of(), spots.problems());
        assertEquals(List.of("bulkhead"), labels(spots, Node.Kind.CAVITY, "J1"));
        assertEquals(List.of("bLamp"), labels(spots, Node.Kind.CAVITY, "H1"));
        assertEquals(List.of("bLamp"), labels(spots, Node.Kind.STUD, "G1"));
        assertEquals(List.of("bFuse"), labels(spots, Node.Kind.PIN, "F1"));
        assertEquals(List.of("a"), labels(spots, Node.Kind.SPLICE, "S1"));
        assertEquals(List.of("main at 40 mm"), labels(spots, Node.Kind.SPLICE, "S2"));
        assertEquals(List.of("bLamp"), labels(spots, Node.Kind.SPLICE, "S3"));
        assertEquals(List.of("bulkhead"), labels(spots, Node.Kind.SPLICE, "S4"));
        assertEquals(List.of(), labels(spots, Node.Kind.SPLICE, "S9"));
    }

    @Test
    void connectorNoBranchReachesIsReported() {
        front.connector("H9", "roof");
        List<Problem> problems = spots().problems();
        assertEquals(List.of("end-unreached"), problems.stream().map(Problem::code).toList());
        assertEquals("no trunk or branch reaches connector \"H9\"", problems.getFirst().message());
    }

    @Test
    void twoBranchesToOnePlaceNeedAChoice() {
        front.branch("b1", "a", "lamp", "70 mm").branch("b2", "a", "lamp", "70 mm").connector("H1", "lamp")
                .connectorOn("H2", "b2", new Expression.Always());
        NodeSpots spots = spots();
        assertEquals(List.of("branch-ambiguous"), spots.problems().stream().map(Problem::code).toList());
        assertTrue(spots.problems().getFirst().message().contains("H1"));
        assertEquals(List.of("b2"), labels(spots, Node.Kind.CAVITY, "H2"));
    }

    @Test
    void branchesOfDifferentVehiclesAreNoChoice() {
        front.branch("b1", "a", "lamp", "70 mm", Sketch.upTo(1966))
                .branch("b2", "a", "lamp", "90 mm", Sketch.from(1967))
                .connector("H1", "lamp");
        NodeSpots spots = spots();
        assertEquals(List.of(), spots.problems());
        assertEquals(List.of("b1 when year <= 1966", "b2 when year >= 1967"), labels(spots, Node.Kind.CAVITY, "H1"));
    }

    @Test
    void placeThatSomeVehiclesDoNotReachIsReportedForThem() {
        front.branch("b1", "a", "lamp", "70 mm", Sketch.upTo(1966)).connector("H1", "lamp");
        Problem problem = spots().problems().getFirst();
        assertEquals("end-unreached", problem.code());
        assertTrue(problem.message().endsWith("(year >= 1967)"), problem.message());
    }

    @Test
    void connectorOfFewerVehiclesNeedsItsBranchOnlyThere() {
        front.branch("b1", "a", "lamp", "70 mm", Sketch.is("fogLamps")).connectorOn("H1", "b1", Sketch.is("fogLamps"));
        WiringView view = sketch.view("front");
        assertEquals(List.of(), NodeSpots.of(HarnessTree.of(view)).problems());
    }
}
