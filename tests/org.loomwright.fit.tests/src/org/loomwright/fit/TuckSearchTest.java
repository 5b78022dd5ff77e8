// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;

/** The dynamic programme against trying every laying, and how its work grows. */
class TuckSearchTest {

    private static final long HALF_MM = 500_000;

    private static double[] millimetres(long[] tucks) {
        return Arrays.stream(tucks).mapToDouble(each -> each / 1e6).toArray();
    }

    private static void assertLaid(Chain chain, double[] tucks) {
        double before = 0;
        for (int k = 0; k < tucks.length; k++) {
            assertTrue(tucks[k] >= before && tucks[k] - before <= chain.slacks()[k], () -> Arrays.toString(tucks));
            before = tucks[k];
        }
    }

    /** Every tuck on the lattice of half millimetres is tried, for data in whole millimetres. */
    @Test
    void findsTheBestOfAllLayings() {
        Random random = new Random(11);
        Map<Double, Integer> stages = new TreeMap<>();
        for (int round = 0; round < 3_000; round++) {
            Chain chain = Chain.random(random, 4, 3);
            double[] tucks = millimetres(new TuckSearch(chain.stops(), chain.demands(), Cancel.NEVER, HALF_MM).tucks());
            assertLaid(chain, tucks);
            double[] best = chain.best(0.5);
            assertArrayEquals(best, chain.worth(tucks), 1e-9, () -> chain + " laid " + Arrays.toString(tucks));
            stages.merge(best[0], 1, Integer::sum);
        }
        assertEquals(4, stages.size(), "all four stages occur: " + stages);
        assertTrue(stages.values().stream().allMatch(count -> count > 50), stages::toString);
    }

    /** With data in whole units no finer lattice finds anything better than halves. */
    @Test
    void halvesAreFineEnough() {
        Random random = new Random(12);
        for (int round = 0; round < 400; round++) {
            Chain chain = Chain.random(random, 3, 3);
            assertArrayEquals(chain.best(0.5), chain.best(0.25), 1e-9, chain::toString);
            double[] fine = millimetres(new TuckSearch(chain.stops(), chain.demands(), Cancel.NEVER).tucks());
            assertArrayEquals(chain.best(0.5), chain.worth(fine), 1e-9, chain::toString);
        }
    }

    @Test
    void withoutSlackTheTrunkLiesAsItIsMade() {
        Random random = new Random(13);
        for (int round = 0; round < 500; round++) {
            Chain chain = Chain.random(random, 6, 0);
            assertArrayEquals(new long[chain.stations().length],
                    new TuckSearch(chain.stops(), chain.demands(), Cancel.NEVER).tucks());
        }
    }

    /** More slack never makes the laying worse. */
    @Test
    void moreSlackNeverHurts() {
        Random random = new Random(14);
        for (int round = 0; round < 500; round++) {
            Chain chain = Chain.random(random, 5, 3);
            int[] more = Arrays.stream(chain.slacks()).map(each -> each + 1).toArray();
            Chain looser = new Chain(chain.stations(), more, chain.branches());
            double[] before = chain.worth(millimetres(
                    new TuckSearch(chain.stops(), chain.demands(), Cancel.NEVER, HALF_MM).tucks()));
            double[] after = looser.worth(millimetres(
                    new TuckSearch(looser.stops(), looser.demands(), Cancel.NEVER, HALF_MM).tucks()));
            assertTrue(Chain.compare(after, before) <= 0, chain::toString);
        }
    }

    @Test
    void equallyGoodLayingsTakeUpTheLeast() {
        Chain chain = new Chain(new int[] {10, 20}, new int[] {4, 4}, List.of(List.of(), List.of()));
        assertArrayEquals(new long[2], new TuckSearch(chain.stops(), chain.demands(), Cancel.NEVER).tucks());
    }

    private static TuckSearch laid(int stops, int slackMm) {
        List<FitColumn.Stop> all = IntStream.range(0, stops).mapToObj(k -> new FitColumn.Stop("p" + k,
                Chain.mm(100 * (k + 1)), k == 0 ? Chain.mm(slackMm) : Length.ZERO)).toList();
        List<List<Demand>> demands = IntStream.range(0, stops).mapToObj(k -> List.of(
                new Chain.Twig(60, 0, 10, 100 * (k + 1) - 3, 50, 1, 250, 150).demand())).toList();
        TuckSearch search = new TuckSearch(all, demands, Cancel.NEVER);
        search.tucks();
        return search;
    }

    @Test
    void workGrowsWithBreakoutsTimesSlack() {
        TuckSearch small = laid(10, 5);
        TuckSearch longer = laid(100, 5);
        TuckSearch looser = laid(10, 50);
        assertEquals(10 * 201, small.evaluations());
        assertEquals(10 * small.evaluations(), longer.evaluations());
        assertEquals(10 * 2_001, looser.evaluations());
        assertEquals(10 * small.points(), longer.points());
        assertTrue(looser.points() <= 10 * small.points());
        assertEquals(TuckLattice.HALF_UNIT, looser.step());
    }

    @Test
    void veryMuchSlackMakesTheLatticeCoarserNotTheWorkEndless() {
        TuckSearch search = laid(100, 100_000);
        assertTrue(search.step() > TuckLattice.HALF_UNIT);
        assertEquals(0, search.step() % TuckLattice.HALF_UNIT);
        assertTrue(search.evaluations() <= TuckLattice.MOST_POINTS);
    }
}
