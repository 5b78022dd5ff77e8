// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Expression;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.sketch.Sketch;
import org.loomwright.sketch.WiringSketch;

/** What a matrix says of drawings. Lengths: 1 in = 25.4 mm (international yard and pound agreement, 1959). */
class PlaceMatrixTest {

    private static Matrix matrix(Sketch sketch) {
        Project project = sketch.project();
        return new PlaceMatrix().lay("front", project, List.copyOf(project.wirings().values()), Cancel.NEVER);
    }

    private static WiringSketch drawing(Sketch sketch, String name, String station, String branch) {
        return sketch.drawing(name).datum("bulkhead").trunk("main").breakout("wing", station)
                .branch("b1", "wing", "lamp", branch).connector("J1", "bulkhead").connectorOn("H1", "b1",
                        new Expression.Always());
    }

    private static Row row(Matrix matrix, String title, String fact) {
        return matrix.rows().stream().filter(row -> row.title().equals(title) && row.fact().equals(fact)).findFirst()
                .orElseThrow(() -> new AssertionError(title + " " + fact + " is not among " + matrix.rows()));
    }

    private static List<String> words(Row row) {
        return row.cells().stream().map(Cell::words).toList();
    }

    @Test
    void aLengthIsEqualInInchesAndMillimetres() {
        Sketch sketch = new Sketch();
        drawing(sketch, "d1", "38 1/2 in", "7 1/2 in");
        drawing(sketch, "d2", "977.9 mm", "190.5 mm");
        drawing(sketch, "d3", "977.9 mm", "190.6 mm");
        Matrix matrix = matrix(sketch);
        assertTrue(row(matrix, "lamp", "from datum").isEqual());
        assertEquals(List.of("7 1/2 in", "190.5 mm", "190.6 mm"), words(row(matrix, "lamp", "branch")));
        assertEquals(2, row(matrix, "lamp", "branch").outlier().orElseThrow());
    }

    @Test
    void aLengthAlongThePathIsNeverOneAsMade() {
        Sketch sketch = new Sketch();
        drawing(sketch, "d1", "900 mm", "130 mm");
        drawing(sketch, "d2", "910 mm", "130 mm, path");
        Matrix matrix = matrix(sketch);
        assertEquals(List.of(0, 1), row(matrix, "lamp", "branch").groups());
        Pair pair = matrix.pairs().getFirst();
        assertEquals("10 mm", pair.largest().orElseThrow().difference().toString());
        assertEquals(2, pair.lengths());
    }

    @Test
    void stationsCountFromTheDatumHoweverTheyAreDimensioned() {
        Sketch sketch = new Sketch();
        sketch.drawing("d1").datum("bulkhead").trunk("main").breakout("tray", "100 mm")
                .breakoutAfter("wing", "tray", "300 mm").branch("b1", "wing", "lamp", "50 mm");
        sketch.drawing("d2").datum("bulkhead").trunk("main").breakout("wing", "400 mm")
                .branch("b1", "wing", "lamp", "50 mm");
        Row station = row(matrix(sketch), "lamp", "from datum");
        assertEquals(List.of("+300 mm", "400 mm"), words(station));
        assertTrue(station.isEqual());
    }

    @Test
    void aConnectorThatChangedItsNameKeepsItsRowAndItsCircuits() {
        Sketch sketch = new Sketch();
        drawing(sketch, "d1", "900 mm", "130 mm").wire("12", "a", "14 ga", "J1:1", "H1:1");
        sketch.drawing("d2").datum("bulkhead").trunk("main").breakout("wing", "900 mm")
                .branch("b9", "wing", "lamp", "130 mm").connector("X1", "bulkhead").connectorOn("X2", "b9",
                        new Expression.Always())
                .wire("56b", "x", "2.5 mm2", "X2:1", "X1:1");
        Matrix matrix = matrix(sketch);
        assertEquals(List.of("H1", "X2"), words(row(matrix, "H1", "name")));
        assertEquals(List.of("12", "56b"), words(row(matrix, "12", "number")));
        assertEquals(List.of("14 ga", "2.5 mm2"), words(row(matrix, "12", "size")));
        assertTrue(matrix.rows().stream().noneMatch(row -> row.section() == Section.CIRCUITS
                && row.cells().contains(Cell.ABSENT)), matrix.rows()::toString);
    }

    @Test
    void aSizeThatHoldsOtherwiseStandsFirstAndBare() {
        Sketch sketch = new Sketch();
        drawing(sketch, "d1", "900 mm", "130 mm").wire("12", "a", "14 ga", "J1:1", "H1:1")
                .largerWhen("12 ga", Sketch.is("fan"));
        drawing(sketch, "d2", "900 mm", "130 mm").wire("12", "a", "14 ga", "J1:1", "H1:1", Sketch.is("fan"));
        assertEquals(List.of("14 ga / 12 ga when fan", "14 ga when fan"), words(row(matrix(sketch), "12", "size")));
    }

    @Test
    void theOnlyDrawingWithoutSomethingIsTheOddOne() {
        Sketch sketch = new Sketch();
        drawing(sketch, "d1", "900 mm", "130 mm").branch("b2", "wing", "fog", "1 m");
        drawing(sketch, "d2", "900 mm", "130 mm");
        drawing(sketch, "d3", "900 mm", "130 mm").branch("b2", "wing", "fog", "1000 mm");
        Matrix matrix = matrix(sketch);
        assertEquals(1, row(matrix, "fog", "branch").outlier().orElseThrow());
        assertTrue(matrix.pairs().get(1).isEqual(), "d1 and d3 say the same");
        assertEquals(1, matrix.pairs().get(0).elements().get(Section.PLACES));
    }

    @Test
    void workGrowsWithTheNumberOfCircuitsAndOfDrawings() {
        long small = compared(30, 4);
        assertTrue(small >= 3 * 30, "each is weighed: " + small);
        assertTrue(compared(300, 4) <= 1.2 * 10 * small, compared(300, 4) + " against " + small);
        assertTrue(compared(30, 40) <= 1.5 * 10 * small, compared(30, 40) + " against " + small);
    }

    private static long compared(int circuits, int drawings) {
        Sketch sketch = new Sketch();
        IntStream.range(0, drawings).forEach(i -> {
            WiringSketch drawing = sketch.drawing("d" + i).datum("bulkhead").stud("G", "frame");
            for (int j = 0; j < circuits; j++) {
                drawing.connector("C" + j, "place" + j).wire((i % 2) * 1000 + j + "", "a", "14 ga", "C" + j + ":1",
                        "C" + (j + 1) % circuits + ":2").wire((i % 2) * 1000 + j + "", "b", "14 ga", "C" + j + ":1",
                        "G");
            }
        });
        return matrix(sketch).compared();
    }

    @Test
    void theResultDoesNotDependOnAnythingButItsInput() {
        Sketch sketch = new Sketch();
        drawing(sketch, "d1", "900 mm", "130 mm").wire("12", "a", "14 ga", "J1:1", "H1:1");
        drawing(sketch, "d2", "910 mm", "130 mm").wire("13", "a", "14 ga", "J1:1", "H1:1");
        Project project = sketch.project();
        List<WiringView> views = List.copyOf(project.wirings().values());
        assertEquals(new PlaceMatrix().lay("x", project, views, Cancel.NEVER),
                new PlaceMatrix().lay("x", project, views, Cancel.NEVER));
    }
}
