// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.loomwright.geometry.Outside;

/** The search against published packings and closed forms. */
@Tag("outside")
class SeededSearchOutsideTest {

    private static final double ROUNDING = 1e-12;

    private final PackingSearch search = new SeededSearch();

    static Stream<String[]> equal() {
        return Outside.rows("equal-circles.csv").stream();
    }

    static Stream<String[]> moreEqual() {
        return Outside.rows("more-equal-circles.csv").stream();
    }

    static Stream<String[]> unequal() {
        return Outside.rows("unequal-circles.csv").stream();
    }

    /** Never below the optimum, where it is proven, nor over 3 % above the best known packing. */
    @ParameterizedTest
    @MethodSource("equal") // Specht's records, see equal-circles.csv
    void equalCirclesUpToTwentyAreNoThickerThanKnown(String count, String ratio, String status) {
        double[] circles = Circles.equal(Integer.parseInt(count), 2.4);
        Packing packing = search.search(circles).packing();
        Circles.check(circles, packing);
        double found = packing.diameter() / 2.4;
        double known = Double.parseDouble(ratio);
        assertTrue(found <= known * 1.03, () -> found + " for " + known);
        assertTrue(found <= known * 1.001, () -> "used to be within a thousandth: " + found + " for " + known);
        assertTrue(found >= known * (1 - ROUNDING), () -> found + " undercuts a " + status + " optimum of " + known);
    }

    @ParameterizedTest
    @MethodSource("moreEqual") // Specht's records, see more-equal-circles.csv
    void moreEqualCirclesAreHardlyThickerThanKnown(String count, String ratio) {
        double[] circles = Circles.equal(Integer.parseInt(count), 1);
        double found = search.search(circles).packing().diameter();
        assertTrue(found <= Double.parseDouble(ratio) * 1.03, () -> found + " for " + ratio);
        assertTrue(found >= Double.parseDouble(ratio) * (1 - ROUNDING), () -> found + " for " + ratio);
    }

    /** A hard case, far more mixed than wires are: one circle of each radius. The records took hours. */
    @ParameterizedTest
    @MethodSource("unequal") // Ye, Huang and Lü, see unequal-circles.csv
    void circlesOfAllSizesAreHardlyThickerThanKnown(String count, String radius) {
        double[] circles = IntStream.rangeClosed(1, Integer.parseInt(count)).mapToDouble(r -> 2 * r).toArray();
        Packing packing = search.search(circles).packing();
        Circles.check(circles, packing);
        double found = packing.diameter() / 2;
        double known = Double.parseDouble(radius);
        assertTrue(found <= known * 1.04, () -> found + " for " + known);
        assertTrue(found >= known * (1 - 1e-8), () -> found + " for " + known);
        assertTrue(circles.length > 10 || found <= known * (1 + 1e-7), () -> "up to ten the record: " + found);
    }

    /**
     * Three circles that touch each other lie in one whose curvature follows from theirs: Descartes' theorem (1643). If
     * the third fits beside the other two within their circle, which the same theorem tells, it needs no room.
     */
    @Test
    void threeCirclesFollowDescartes() {
        Random random = new Random(1_643);
        for (int round = 0; round < 200; round++) {
            double[] d = Circles.wires(random, 3);
            d[0] *= 1 + random.nextInt(4);
            double[] falling = Stream.of(d[0], d[1], d[2]).sorted((a, b) -> Double.compare(b, a))
                    .mapToDouble(Double::doubleValue).toArray();
            double a = 2 / falling[0];
            double b = 2 / falling[1];
            double c = 2 / falling[2];
            double pair = falling[0] + falling[1];
            double niche = a + b - 2 / pair; // curvature of the greatest circle beside the pair
            double expected = c >= niche ? pair : 2 / (2 * Math.sqrt(a * b + b * c + c * a) - a - b - c);
            assertEquals(expected, search.search(d).packing().diameter(), 1e-7 * expected);
        }
    }

    /**
     * Circles with half the section of a circle always fit into it: Fekete, Keldenich and Scheffer, Packing Disks into
     * Disks with Optimal Worst-Case Density, SoCG 2019. So a search that is any good stays below.
     */
    @Test
    void nothingTakesMoreThanTwiceItsSection() {
        Random random = new Random(2_019);
        for (int round = 0; round < 30; round++) {
            double[] circles = Circles.wires(random, 1 + random.nextInt(25));
            circles[0] *= 1 + random.nextInt(5);
            Packing packing = search.search(circles).packing();
            Circles.check(circles, packing);
            assertTrue(packing.diameter() <= Math.sqrt(2) * Circles.root(circles) * (1 + 1e-9));
            assertTrue(packing.diameter() >= Circles.root(circles) * (1 - ROUNDING), "the sections must fit");
        }
    }
}
