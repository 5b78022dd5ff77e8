// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What the searches keep to, whatever circles they are given. */
class SeededSearchTest {

    private final PackingSearch search = new SeededSearch();
    private final PackingSearch laid = new LaidPacking();

    @Test
    void everyPackingHoldsAllCirclesAndNoneOverlap() {
        Random random = new Random(31);
        for (int round = 0; round < 20; round++) {
            double[] circles = Circles.wires(random, 1 + random.nextInt(30));
            Packing quick = laid.search(circles).packing();
            Packing thorough = search.search(circles).packing();
            Circles.check(circles, quick);
            Circles.check(circles, thorough);
            assertTrue(thorough.diameter() <= quick.diameter() * (1 + 1e-12), "thorough is never worse than quick");
        }
    }

    @Test
    void orderOfTheCirclesDoesNotMatter() {
        Random random = new Random(5);
        for (int round = 0; round < 10; round++) {
            double[] circles = Circles.wires(random, 12);
            PackingSearch.Found found = search.search(circles);
            assertEquals(found, search.search(Circles.shuffled(random, circles)));
        }
    }

    @Test
    void doubledCirclesGiveTheSamePackingDoubled() {
        double[] circles = Circles.wires(new Random(8), 15);
        double once = search.search(circles).packing().diameter();
        assertEquals(2 * once, search.search(Arrays.stream(circles).map(d -> 2 * d).toArray()).packing().diameter());
    }

    @Test
    void inchesGiveTheSamePackingAsMillimetres() {
        Random random = new Random(254);
        for (int round = 0; round < 10; round++) {
            double[] circles = Circles.wires(random, 15);
            double mm = search.search(circles).packing().diameter();
            double[] inches = Arrays.stream(circles).map(d -> d / 25.4).toArray();
            assertEquals(mm, 25.4 * search.search(inches).packing().diameter(), 1e-12 * mm);
        }
    }

    @Test
    void manyThreadsFindTheSame() {
        double[] circles = Circles.wires(new Random(77), 18);
        PackingSearch.Found alone = search.search(circles);
        List<PackingSearch.Found> all = IntStream.range(0, 8).parallel()
                .mapToObj(i -> search.search(circles)).toList();
        all.forEach(each -> assertEquals(alone, each));
    }

    /** The bits of one answer. They change when the search is changed, and for no other reason. */
    @Test
    void equalInputGivesEqualBitsOnEveryMachine() {
        double[] circles = {1.19, 1.19, 1.19, 1.40, 1.40, 1.40, 1.40, 1.40, 1.65, 2.1, 2.1, 3.3};
        assertEquals("0x1.b34012ece829ep2", Double.toHexString(search.search(circles).packing().diameter()));
    }

    @Test
    void oneAndTwoCirclesNeedNoSearch() {
        assertEquals(1.7, search.search(1.7).packing().diameter());
        assertEquals(5.5, search.search(2.25, 3.25).packing().diameter(), 1e-9);
        assertEquals(5.5, laid.search(3.25, 2.25).packing().diameter(), 1e-7);
    }

    @Test
    void wireBesideTwoThickOnesNeedsNoRoom() {
        assertEquals(16, search.search(8, 1, 8).packing().diameter(), 1e-8);
        assertEquals(16, search.search(8, 8, 1, 1, 1, 1, 1, 1).packing().diameter(), 1e-8);
    }

    @Test
    void hairAmongCablesIsFound() {
        double[] circles = {20, 1e-6, 20, 1e-9, 20};
        Packing packing = search.search(circles).packing();
        Circles.check(circles, packing);
        assertEquals(20 * (1 + 2 / Math.sqrt(3)), packing.diameter(), 1e-5);
    }

    /** Work is counted, not time: twenty wires are a small question, and however many there are, it is bounded. */
    @Test
    void workGrowsSlowerThanTheCubeAndIsBounded() {
        Random random = new Random(10);
        long few = search.search(Circles.wires(random, 6)).work();
        long more = search.search(Circles.wires(random, 60)).work();
        assertTrue(few > 0 && more < 300 * few, few + ", " + more);
        assertTrue(search.search(Circles.wires(random, 20)).work() < 6_000_000);
        assertTrue(more < 26_000_000, () -> "60: " + more);
        assertTrue(search.search(Circles.wires(random, 600)).work() < 60_000_000);
        long tens = laid.search(Circles.wires(random, 60)).work();
        long hundreds = laid.search(Circles.wires(random, 600)).work();
        assertTrue(hundreds < 200 * tens, tens + ", " + hundreds);
        long little = new SeededSearch(100_000).search(Circles.wires(random, 60)).work();
        assertTrue(little < 2_000_000, () -> "a search with a limit of its own: " + little);
    }

    @Test
    void circlesWithoutThicknessAreAMistakeOfOurs() {
        assertThrows(IllegalArgumentException.class, () -> search.search());
        assertThrows(IllegalArgumentException.class, () -> search.search(1, 0));
        assertThrows(IllegalArgumentException.class, () -> search.search(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> laid.search(1, Double.POSITIVE_INFINITY));
    }

    @Test
    void packingRefusesCirclesThatOverlap() {
        PlacedCircle left = new PlacedCircle(-1, 0, 2);
        assertEquals(4, new Packing(List.of(left, new PlacedCircle(1, 0, 2))).diameter());
        assertEquals(0, new Packing(List.of(left, new PlacedCircle(1.5, 0, 2))).overlap());
        assertThrows(IllegalArgumentException.class, () -> new Packing(List.of(left, new PlacedCircle(0.99, 0, 2))));
        assertThrows(IllegalArgumentException.class, () -> new Packing(List.of(left, left)));
        assertThrows(IllegalArgumentException.class, () -> new Packing(List.of(new PlacedCircle(0, 0, 0))));
        assertThrows(IllegalArgumentException.class, () -> new Packing(List.of()));
        double touching = new Packing(List.of(left, new PlacedCircle(1 - 1e-9, 0, 2))).overlap();
        assertTrue(touching > 0 && touching <= Packing.TOLERANCE, () -> "rounding is allowed, and told: " + touching);
    }
}
