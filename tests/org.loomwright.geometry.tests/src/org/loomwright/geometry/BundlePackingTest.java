// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.geometry.BundleSize.Method;
import org.loomwright.geometry.packing.PackingCache;

/** What mixed bundles can be packed into, and whether they go through a bore. */
class BundlePackingTest {

    private final BundleDiameter diameter = new BundleDiameter();
    private final PackingCache cache = new PackingCache();

    private static double[] handbook() {
        return Outside.rows("mixed-bundle.csv").stream().flatMapToDouble(row ->
                IntStream.range(0, Integer.parseInt(row[0])).mapToDouble(i -> Double.parseDouble(row[1]))).toArray();
    }

    private static double[] wires(Random random, int n) {
        return IntStream.range(0, n).mapToDouble(i -> 1 + random.nextInt(31) / 10.0).toArray();
    }

    /**
     * The handbook's rule gives 4.914 mm for its nine wires. Nine of the thinnest need 1.19 x 3.6131 = 4.300 mm, nine
     * of the thickest 1.65 x 3.6131 = 5.962 mm, both after Pirl 1969: the packing lies between.
     */
    @Test
    @Tag("outside") // worked example of a cable maker's handbook, see mixed-bundle.csv
    void handbooksMixedBundlePacksAboutAsTheRuleSays() {
        BundleSize size = diameter.of(handbook());
        BundleSize.Figure packed = size.packed(cache);
        assertEquals(Method.FOUND_PACKING, packed.method());
        assertTrue(packed.mm() >= size.bound().mm());
        assertTrue(packed.mm() > 1.19 * 3.613125 && packed.mm() < 1.65 * 3.613126, () -> "" + packed);
        assertEquals(4.914, packed.mm(), 0.05 * 4.914);
        assertEquals(packed, size.withPacking(cache).diameter());
        assertEquals(4.914, size.withPacking(cache).rule().mm(), 0.001);
    }

    /** Smallest known circle around circles of radius 1 to n: neither bound may lie on the wrong side of it. */
    @Test
    @Tag("outside") // Ye, Huang and Lü, see unequal-circles.csv
    void publishedPackingsLieBetweenTheBounds() {
        for (String[] row : Outside.rows("unequal-circles.csv")) {
            BundleSize size = diameter.of(IntStream.rangeClosed(1, Integer.parseInt(row[0]))
                    .mapToDouble(radius -> 2 * radius).toArray());
            double published = 2 * Double.parseDouble(row[1]);
            assertTrue(size.bound().mm() <= published, row[0]);
            assertTrue(size.ceiling().mm() >= published, row[0]);
        }
    }

    @Test
    void packingLiesBetweenTheBounds() {
        Random random = new Random(99);
        for (int round = 0; round < 20; round++) {
            BundleSize size = diameter.of(wires(random, 1 + random.nextInt(24)));
            double packed = size.packed(cache).mm();
            assertTrue(packed >= size.bound().mm());
            assertTrue(packed <= size.ceiling().mm() * (1 + 1e-12));
            assertEquals(packed, size.withPacking(cache).diameter().mm());
            assertTrue(size.withPacking(cache).ceiling().mm() <= packed * (1 + 1e-8));
        }
    }

    @Test
    void boundsDecideWithoutASearch() {
        BundleSize mixed = diameter.of(handbook());
        BoreAnswer narrow = mixed.fits(4.0, cache);
        assertFalse(narrow.fits());
        assertTrue(narrow.isCertain() && narrow.by().method().isBound());
        BoreAnswer wide = mixed.fits(6.0, cache);
        assertTrue(wide.fits());
        assertEquals(Method.HALF_SECTION, wide.by().method());
        assertEquals(6.0 - mixed.ceiling().mm(), wide.spareMm(), 1e-12);
        BundleSize seven = diameter.of(2, 2, 2, 2, 2, 2, 2);
        assertTrue(seven.fits(6, cache).fits());
        assertEquals(Method.KNOWN_PACKING, seven.fits(6, cache).by().method());
        assertFalse(seven.fits(5.99, cache).fits());
        assertTrue(seven.fits(5.99, cache).isCertain());
        assertTrue(diameter.of(8, 8).fits(16, cache).fits());
        assertEquals(0, cache.searches());
    }

    /** Fifteen equal wires: 4.5214 is the best that is known, 4.3284 (of fourteen) what is proven. */
    @Test
    void whatNobodyHasProvenIsNotCertain() {
        BundleSize fifteen = diameter.of(IntStream.range(0, 15).mapToDouble(i -> 1).toArray());
        assertFalse(fifteen.fits(4.4, cache).fits());
        assertFalse(fifteen.fits(4.4, cache).isCertain());
        assertTrue(fifteen.fits(4.53, cache).fits());
        assertEquals(0, cache.searches());
    }

    @Test
    void searchDecidesWhatBoundsLeaveOpen() {
        BundleSize mixed = diameter.of(handbook());
        double least = mixed.packed(new PackingCache()).mm();
        BoreAnswer yes = mixed.fits(least * 1.001, cache);
        assertTrue(yes.fits());
        BoreAnswer no = mixed.fits(least * 0.999, cache);
        assertFalse(no.fits());
        assertFalse(no.isCertain(), "a search that finds nothing proves nothing");
        assertEquals(Method.FOUND_PACKING, no.by().method());
        assertTrue(diameter.of(8, 1, 8).fits(16, cache).fits(), "a bound that is reached");
    }

    @Test
    void answerDoesNotDependOnWhatWasAskedBefore() {
        BundleSize mixed = diameter.of(handbook());
        BoreAnswer asked = mixed.fits(5.4, cache);
        assertEquals(Method.LAID_PACKING, asked.by().method());
        mixed.packed(cache);
        assertEquals(asked, mixed.fits(5.4, cache));
        assertEquals(mixed.packed(new PackingCache()), mixed.packed(cache));
    }

    @Test
    void sameWiresAreSearchedOnce() {
        BundleSize.Figure first = diameter.of(1.2, 2.4, 3.1, 2.4).packed(cache);
        assertEquals(1, cache.searches());
        long work = cache.work();
        assertTrue(work > 0);
        assertEquals(first, diameter.of(2.4, 3.1, 2.4, 1.2).packed(cache));
        IntStream.range(0, 50).parallel().forEach(i -> diameter.of(2.4, 2.4, 3.1, 1.2).packed(cache));
        assertEquals(1, cache.searches());
        assertEquals(work, cache.work());
        diameter.of(2.4, 3.1, 2.4).packed(cache);
        assertEquals(2, cache.searches());
    }

    @Test
    void equalWiresKeepTheKnownPacking() {
        BundleSize eight = diameter.of(1, 1, 1, 1, 1, 1, 1, 1);
        assertEquals(eight.diameter().mm(), eight.packed(cache).mm());
        assertEquals(eight.diameter().mm(), eight.withPacking(cache).diameter().mm());
        BundleSize sixteen = diameter.of(IntStream.range(0, 16).mapToDouble(i -> 2).toArray());
        assertSame(sixteen, sixteen.withPacking(cache));
        assertEquals(0, cache.searches());
    }

    @Test
    void coverAddsItsWallOnBothSides() {
        assertEquals(10.6, new BundleCover(0.3).outsideMm(10), 1e-12);
        assertEquals(10, new BundleCover(0).outsideMm(10));
        assertThrows(IllegalArgumentException.class, () -> new BundleCover(-0.1));
        assertThrows(IllegalArgumentException.class, () -> new BundleCover(Double.NaN));
    }

    @Test
    @Tag("outside") // FAA AC 43.13-1B, 11-249, see conduit.csv
    void conduitIsAQuarterWiderThanItsBundle() {
        String[] row = Outside.rows("conduit.csv").getFirst();
        ConduitRoom room = ConduitRoom.AIRCRAFT_PRACTICE;
        assertTrue(room.basis().endsWith(row[0]));
        assertEquals(10 * (1 + Double.parseDouble(row[1]) / 100), room.leastInsideMm(10), 1e-12);
        assertEquals(10, room.thickestBundleMm(room.leastInsideMm(10)), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new ConduitRoom(-0.01, "none"));
    }
}
