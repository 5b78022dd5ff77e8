// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.sheets.document.Point;

/** What holds of every tree on a board: true lengths, starts where they leave, and no crossings. */
class BoardLayoutTest {

    /** A trunk, sometimes a second one, branches on them and branches on branches. */
    private static List<Strand> tree(long seed, int branches) {
        Random random = new Random(seed);
        List<Strand> strands = new ArrayList<>();
        strands.add(new Strand("main", "", 0, 500 + random.nextInt(3_000)));
        if (seed % 3 == 0) {
            strands.add(new Strand("back", "", 0, 200 + random.nextInt(800)));
        }
        for (int i = 0; i < branches; i++) {
            Strand parent = strands.get(i < branches / 2 ? 0 : random.nextInt(strands.size()));
            strands.add(new Strand("b" + i, parent.name(), Math.floor(random.nextDouble() * parent.length()),
                    random.nextInt(700)));
        }
        return strands;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void lengthsAreTrueAndEachStrandBeginsWhereItLeaves(long seed) {
        List<Strand> strands = tree(seed, 18);
        Board board = new BoardLayout(30, 60).lay(strands, 2_440, 1_220);
        for (Strand strand : strands) {
            List<Point> path = board.paths().get(strand.name());
            assertEquals(strand.length(), Board.length(path), 1e-6, strand.toString());
            if (!strand.parent().isEmpty()) {
                Point start = Board.at(board.paths().get(strand.parent()), strand.station());
                assertEquals(0, start.to(path.getFirst()), 1e-6, strand.toString());
            }
            for (Point point : path) {
                assertTrue(point.x() >= BoardLayout.EDGE - 1e-6 && point.x() <= board.width() - BoardLayout.EDGE + 1e-6
                        && point.y() >= BoardLayout.EDGE - 1e-6
                        && point.y() <= board.height() - BoardLayout.EDGE + 1e-6, strand + " " + point);
            }
        }
    }

    /** Lines of the JDK's own geometry. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void branchesOfATrunkNeverCross(long seed) {
        List<Strand> strands = new ArrayList<>(tree(seed, 40));
        strands.removeIf(each -> !each.parent().isEmpty() && !each.parent().equals("main")
                && !each.parent().equals("back"));
        assertEquals(List.of(), crossings(new BoardLayout(30, 60).lay(strands, 2_440, 1_220).paths()));
    }

    /** Branches on branches on branches, unfolded and folded. */
    @Test
    void nothingCrossesInRandomTrees() {
        List<String> found = new ArrayList<>();
        for (long seed = 1; seed <= 400; seed++) {
            List<Strand> strands = tree(seed, 4 + (int) (seed % 29));
            for (double height : List.of(1_220.0, 6_000.0)) {
                List<String> crossings = crossings(new BoardLayout(30, 60).lay(strands, 2_440, height).paths());
                if (!crossings.isEmpty()) {
                    found.add("tree " + seed + " on " + height + ": " + crossings);
                }
            }
        }
        assertEquals(List.of(), found);
    }

    /** The fan is laid for every tree here, not only for those that need it. */
    @Test
    void aFanNeverCrossesAndKeepsLengths() {
        int bends = 0;
        for (long seed = 1; seed <= 300; seed++) {
            List<Strand> strands = tree(seed, 4 + (int) (seed % 40));
            Map<String, List<Point>> paths = FanLayout.paths(strands, strands.getFirst());
            assertEquals(List.of(), crossings(paths), "tree " + seed);
            for (Strand strand : strands) {
                List<Point> path = paths.get(strand.name());
                assertEquals(strand.length(), Board.length(path), 1e-6, strand.toString());
                if (!strand.parent().isEmpty()) {
                    assertEquals(0, Board.at(paths.get(strand.parent()), strand.station()).to(path.getFirst()), 1e-6);
                }
                bends += path.size();
            }
        }
        assertTrue(bends > 10_000, bends + " points");
    }

    private static List<String> crossings(Map<String, List<Point>> paths) {
        List<String> found = new ArrayList<>();
        List<String> names = List.copyOf(paths.keySet());
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                if (cross(paths.get(names.get(i)), paths.get(names.get(j)))) {
                    found.add(names.get(i) + " and " + names.get(j));
                }
            }
        }
        return found;
    }

    private static boolean cross(List<Point> one, List<Point> other) {
        for (int i = 1; i < one.size(); i++) {
            for (int j = 1; j < other.size(); j++) {
                if (Line2D.linesIntersect(one.get(i - 1).x(), one.get(i - 1).y(), one.get(i).x(), one.get(i).y(),
                        other.get(j - 1).x(), other.get(j - 1).y(), other.get(j).x(), other.get(j).y())
                        && !touch(one.get(i - 1), one.get(i), other.get(j - 1), other.get(j))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Lines that only meet in a point where one of them begins or ends, as a branch does at its breakout. */
    private static boolean touch(Point a, Point b, Point c, Point d) {
        return Line2D.ptSegDist(a.x(), a.y(), b.x(), b.y(), c.x(), c.y()) < 1e-3
                || Line2D.ptSegDist(c.x(), c.y(), d.x(), d.y(), a.x(), a.y()) < 1e-3;
    }

    @Test
    void aTrunkThatIsTooLongIsFoldedOnceAndNoBreakoutLiesInTheBend() {
        List<Strand> strands = List.of(new Strand("main", "", 0, 3_400), new Strand("a", "main", 500, 200),
                new Strand("b", "main", 2_300, 200), new Strand("c", "main", 3_400, 200));
        Board board = new BoardLayout(30, 60).lay(strands, 2_440, 1_220);
        assertTrue(board.fits(), board.width() + " x " + board.height());
        assertEquals(3_400, Board.length(board.paths().get("main")), 1e-6);
        assertEquals(List.of(), crossings(board.paths()));
        for (String name : List.of("a", "b", "c")) {
            Point start = board.paths().get(name).getFirst();
            assertTrue(board.paths().get("main").stream().anyMatch(each -> Math.abs(each.y() - start.y()) < 1e-6),
                    name + " leaves a straight");
        }
    }

    @Test
    void aBranchThatIsTooLongIsFoldedAndWhatDoesNotFitNamesTheBoardThatWould() {
        List<Strand> strands = List.of(new Strand("main", "", 0, 1_000), new Strand("long", "main", 500, 1_900));
        Board folded = new BoardLayout(30, 60).lay(strands, 2_440, 1_220);
        assertTrue(folded.fits(), folded.width() + " x " + folded.height());
        assertEquals(1_900, Board.length(folded.paths().get("long")), 1e-6);
        assertEquals(List.of(), crossings(folded.paths()));
        Board small = new BoardLayout(30, 60).lay(strands, 300, 200);
        assertFalse(small.fits());
        assertTrue(small.width() >= 1_000 && small.height() >= 1_900, small.width() + " x " + small.height());
    }

    /** Trunk, stations and branches of the Orrin's rear harness: 3.4 m of trunk and 1.5 m of branch on 8 x 4 ft. */
    @Test
    void whereOneFoldDoesNotFitAnotherIsTried() {
        List<Strand> strands = List.of(new Strand("main", "", 0, 3_385), new Strand("bDoor", "main", 865, 230),
                new Strand("bRoof", "main", 865, 1_525), new Strand("bFuel", "main", 2_110, 500),
                new Strand("bTailL", "main", 2_490, 380), new Strand("bStudL", "main", 2_490, 245),
                new Strand("bGate", "main", 2_490, 615), new Strand("bPlate", "main", 2_910, 420),
                new Strand("bTow", "main", 2_910, 745), new Strand("bTailR", "main", 3_385, 390),
                new Strand("bStudR", "main", 3_385, 245));
        for (double height : List.of(1_220.0, 1_000.0)) {
            Board board = new BoardLayout(30, 40).lay(strands, 2_440, height);
            assertTrue(board.fits() && board.width() <= 2_440 && board.height() <= height,
                    board.width() + " x " + board.height());
            assertEquals(List.of(), crossings(board.paths()));
            strands.forEach(each -> assertEquals(each.length(), Board.length(board.paths().get(each.name())), 1e-6,
                    each.name()));
        }
    }
}
