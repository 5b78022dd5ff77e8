// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.loomwright.geometry.BundleSize.Method;

/** How thick bundles are, against published packings, a handbook's factors and its worked example. */
class BundleDiameterTest {

    private static final double ROUNDING = 1e-12;

    private final BundleDiameter diameter = new BundleDiameter();

    static Stream<String[]> packings() {
        return Outside.rows("equal-circles.csv").stream();
    }

    private BundleSize equal(int n, double mm) {
        return diameter.of(IntStream.range(0, n).mapToDouble(i -> mm).toArray());
    }

    @ParameterizedTest
    @MethodSource("packings")
    @Tag("outside") // circle packing tables, see equal-circles.csv
    void equalWiresAreAsThickAsTheBestPacking(String count, String ratio, String status) {
        int n = Integer.parseInt(count);
        double published = Double.parseDouble(ratio);
        BundleSize size = equal(n, 2);
        assertEquals(published, size.diameter().mm() / 2, 1e-14 * published);
        assertTrue(size.bound().mm() <= size.diameter().mm());
        if (status.equals("proven")) {
            assertEquals(published, size.bound().mm() / 2, 1e-14 * published);
        } else {
            assertTrue(size.bound().mm() / 2 < published - 1e-3, "what nobody has proven is no bound");
        }
    }

    @Test
    @Tag("outside") // factors of a cable maker's handbook, see bundle-factors.csv
    void handbookFactorsAreNeverBelowThePacking() {
        for (String[] row : Outside.rows("bundle-factors.csv")) {
            double factor = Double.parseDouble(row[1]);
            double packing = equal(Integer.parseInt(row[0]), 1).diameter().mm();
            assertTrue(factor >= packing - 0.005, row[0] + " wires: " + packing);
            assertTrue(factor <= packing * 1.11, row[0] + " wires: " + packing);
        }
    }

    @Test
    @Tag("outside") // worked example of a cable maker's handbook, see mixed-bundle.csv
    void ruleGivesTheHandbooksWorkedExample() {
        double[] wires = Outside.rows("mixed-bundle.csv").stream().flatMapToDouble(row ->
                IntStream.range(0, Integer.parseInt(row[0])).mapToDouble(i -> Double.parseDouble(row[1]))).toArray();
        BundleSize size = diameter.of(wires);
        assertEquals(9, size.wires());
        assertEquals(16.78, Arrays.stream(wires).map(d -> d * d).sum(), 0.01);
        assertEquals(4.914, size.rule().mm(), 0.001);
        assertEquals(4.92, size.rule().mm(), 0.01);
        assertEquals(size.rule(), size.diameter());
    }

    /** 1.2 sqrt(n) lies below the proven optimum for exactly these numbers of equal wires. */
    @Test
    @Tag("outside") // follows from the packing tables
    void ruleIsNotUsedBelowThePacking() {
        List<Integer> tooThin = IntStream.rangeClosed(1, 14).boxed()
                .filter(n -> equal(n, 1).rule().mm() < equal(n, 1).bound().mm() - 1e-9).toList();
        assertEquals(List.of(2, 3, 4, 5, 6, 9, 10), tooThin);
        tooThin.forEach(n -> assertTrue(equal(n, 1).diameter().mm() >= equal(n, 1).bound().mm()));
    }

    @Test
    void twoThickWiresBeatTheRule() {
        // a pair of 8 mm cables beside a 1 mm wire: 1.2 sqrt(129) = 13.63 mm, but the pair alone is 16 mm wide
        BundleSize size = diameter.of(8, 1, 8);
        assertEquals(Method.TWO_LARGEST, size.bound().method());
        assertEquals(16, size.diameter().mm(), 1e-12);
        assertEquals(13.629, size.rule().mm(), 0.001);
    }

    @Test
    void equalCoreBoundsAMixedBundle() {
        // seven wires of 3 mm need 9 mm, whatever else is there
        BundleSize size = diameter.of(3, 3, 3, 3, 3, 3, 3, 0.1);
        assertEquals(Method.PROVEN_PACKING, size.bound().method());
        assertEquals(9, size.bound().mm(), 1e-12);
    }

    @Test
    void ratiosRiseWithTheNumber() {
        for (int n = 1; n < EqualCircles.MOST; n++) {
            assertTrue(EqualCircles.known(n + 1) >= EqualCircles.known(n));
            assertTrue(EqualCircles.bound(n + 1) >= EqualCircles.bound(n));
            assertTrue(EqualCircles.bound(n) <= EqualCircles.known(n));
        }
    }

    @Test
    void boundsHoldForAnyBundle() {
        Random random = new Random(20_240_131);
        for (int round = 0; round < 2_000; round++) {
            double[] wires = IntStream.rangeClosed(0, random.nextInt(30))
                    .mapToDouble(i -> 0.5 + random.nextInt(40) / 10.0)
                    .toArray();
            BundleSize size = diameter.of(wires);
            double largest = Arrays.stream(wires).max().orElseThrow();
            double smallest = Arrays.stream(wires).min().orElseThrow();
            assertTrue(size.bound().mm() >= largest);
            assertTrue(size.bound().mm() >= Math.sqrt(Arrays.stream(wires).map(d -> d * d).sum()) - ROUNDING);
            assertTrue(size.diameter().mm() >= size.bound().mm());
            assertTrue(size.bound().mm() / smallest >= Math.max(1, Math.sqrt(wires.length)) - ROUNDING);
            double[] more = Arrays.copyOf(wires, wires.length + 1);
            more[wires.length] = 0.5 + random.nextInt(40) / 10.0;
            assertTrue(diameter.of(more).bound().mm() >= size.bound().mm(), "one more wire makes it no thinner");
        }
    }

    /** Random wires that do lie in a circle: the bound never claims more than that circle. */
    @Test
    void boundNeverExceedsAnArrangementThatExists() {
        Random random = new Random(7);
        for (int round = 0; round < 300; round++) {
            List<double[]> placed = new ArrayList<>();
            double hole = 10;
            for (int attempt = 0; attempt < 400; attempt++) {
                double radius = 0.6 + random.nextDouble() * 2;
                double angle = random.nextDouble() * 2 * Math.PI;
                double out = Math.sqrt(random.nextDouble()) * (hole - radius);
                double x = out * Math.cos(angle);
                double y = out * Math.sin(angle);
                if (placed.stream().allMatch(other -> Math.hypot(other[0] - x, other[1] - y) >= other[2] + radius)) {
                    placed.add(new double[] {x, y, radius});
                }
            }
            double[] wires = placed.stream().mapToDouble(each -> 2 * each[2]).toArray();
            assertTrue(diameter.of(wires).bound().mm() <= 2 * hole);
        }
    }

    @Test
    void bundleWithoutAWireIsAMistakeOfOurs() {
        assertThrows(IllegalArgumentException.class, () -> diameter.of());
        assertThrows(IllegalArgumentException.class, () -> diameter.of(1, 0));
        assertThrows(IllegalArgumentException.class, () -> diameter.of(Double.NaN));
    }
}
