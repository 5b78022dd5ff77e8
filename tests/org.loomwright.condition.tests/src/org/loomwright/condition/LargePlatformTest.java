// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.loomwright.condition.Reader.expression;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Platforms whose vehicles nobody could list. Expected counts are worked out by hand or by a recurrence. */
class LargePlatformTest {
    private static Choices.Builder options(int count) {
        Choices.Builder builder = Choices.builder().years(1964, 1971).group("body", "saloon", "coupe", "estate");
        for (int i = 0; i < count; i++) {
            builder.option("o" + i);
        }
        return builder;
    }

    /** No option together with the one before. */
    private static Choices chain(int count) {
        Choices.Builder builder = options(count);
        for (int i = 1; i < count; i++) {
            builder.never(expression("o" + (i - 1) + " and o" + i));
        }
        return builder.build();
    }

    @Test
    void freeChoicesMultiply() {
        Vehicles vehicles = Vehicles.of(options(40).build());
        BigInteger all = BigInteger.TWO.pow(40).multiply(BigInteger.valueOf(24));
        assertEquals(all, vehicles.count());
        assertEquals("every vehicle", vehicles.all().words());
        Condition condition = Orrin.condition(vehicles, "o3 and o39 and year = 1966");
        assertEquals(all.divide(BigInteger.valueOf(32)), condition.count());
        assertEquals(Set.of("year", "o3", "o39"), condition.support());
        assertEquals("year = 1966 and o3 and o39", condition.words());
        assertEquals("824,633,720,832 of 26,388,279,066,624 vehicles", condition.tally());
    }

    /**
     * Rows of options without two neighbours: the recurrence a(n) = a(n-1) + a(n-2) of Fibonacci, a(1) = 2, a(2) = 3.
     */
    @Test
    void constraintsAreCountedExactly() {
        for (int count : new int[] {1, 2, 3, 10, 100}) {
            BigInteger one = BigInteger.ONE;
            BigInteger two = BigInteger.TWO;
            for (int i = 1; i < count; i++) {
                BigInteger sum = one.add(two);
                one = two;
                two = sum;
            }
            assertEquals(two.multiply(BigInteger.valueOf(24)), Vehicles.of(chain(count)).count());
        }
    }

    @Test
    void wordsOnThousandsOfBillionsOfVehicles() {
        Vehicles vehicles = Vehicles.of(chain(60));
        Condition condition = Orrin.condition(vehicles, "o10 and not o11 and not o9 and (saloon or o58 and not o59)");
        assertEquals("o10 and o58 or saloon and o10", sorted(condition.words()));
        assertEquals(Set.of("body", "o10", "o58"), condition.support());
        Assignment example = condition.example().orElseThrow();
        assertTrue(example.words().startsWith("1964, saloon, not o0, not o1"), example.words());
    }

    private static String sorted(String words) {
        return String.join(" or ", List.of(words.split(" or ")).stream().sorted().toList());
    }

    /** Ten times the options take at most twelve times the work: no effort that grows faster than the platform. */
    @Test
    void effortGrowsWithTheNumberOfOptions() {
        Work small = work(30);
        Work large = work(300);
        assertTrue(large.nodes() < 12 * small.nodes(), small + " " + large);
        assertTrue(large.operations() < 12 * small.operations(), small + " " + large);
    }

    /** Builds a platform, resolves, counts and words a condition; the same questions whatever the size. */
    private static Work work(int options) {
        Vehicles vehicles = Vehicles.of(chain(options));
        for (int i = 0; i < 10; i++) {
            Condition condition = Orrin.condition(vehicles, "o" + i + " and saloon or year < 1966 and not o" + (i + 3));
            condition.count();
            condition.words();
            condition.not().words();
        }
        return vehicles.work();
    }

    @Test
    void askingTwiceCostsNothing() {
        Vehicles vehicles = Vehicles.of(chain(30));
        Condition condition = Orrin.condition(vehicles, "o3 or o7 and saloon");
        condition.words();
        Work before = vehicles.work();
        condition.words();
        assertEquals(before, vehicles.work());
    }

    /**
     * Each option of the first half excludes its partner in the second half: a diagram in this order is exponential.
     */
    @Test
    void tooManyTiesEndInOneClearException() {
        Choices.Builder builder = options(60);
        for (int i = 0; i < 30; i++) {
            builder.never(expression("o" + i + " and o" + (i + 30)));
        }
        Choices choices = builder.build();
        TooManyCombinations thrown =
                assertThrows(TooManyCombinations.class, () -> Vehicles.of(choices, 200_000));
        assertTrue(thrown.getMessage().contains("more than 200,000 decision nodes"), thrown.getMessage());
    }

    @Test
    void aFullDiagramStaysUsableForWhatIsInIt() {
        Vehicles vehicles = Vehicles.of(options(60).build(), 60_000);
        Condition fine = Orrin.condition(vehicles, "o1 and not o2");
        BigInteger count = fine.count();
        List<Condition> pairs = new ArrayList<>();
        assertThrows(TooManyCombinations.class, () -> {
            Condition all = vehicles.all();
            for (int i = 0; i < 30; i++) {
                all = all.minus(Orrin.condition(vehicles, "o" + i + " and o" + (i + 30)));
                pairs.add(all);
            }
        });
        assertTrue(pairs.size() > 5);
        assertEquals(count, fine.count());
        assertEquals("o1 and not o2", fine.wording().expression().words());
        BigInteger three = BigInteger.valueOf(3);
        for (int i = 0; i < pairs.size(); i++) {
            BigInteger rest = BigInteger.TWO.pow(60 - 2 * (i + 1)).multiply(BigInteger.valueOf(24));
            assertEquals(three.pow(i + 1).multiply(rest), pairs.get(i).count());
        }
    }

    @Test
    void conditionsThatNobodyUsesMakeRoom() {
        Vehicles vehicles = Vehicles.of(chain(60), 30_000);
        for (int i = 0; i < 3_000; i++) {
            String text = "o" + i % 60 + " and o" + (i / 60) % 60 + " or not o" + (i + i / 60) % 60 + " and o" + i % 7;
            Condition condition = Orrin.condition(vehicles, text);
            assertTrue(condition.implies(Orrin.condition(vehicles, text + " or saloon")));
        }
        assertTrue(vehicles.work().nodes() > 300_000, "the test is too small to prove anything: " + vehicles.work());
    }

    @Test
    void threadsMayShareOne() throws Exception {
        Vehicles vehicles = Vehicles.of(chain(40));
        List<String> expected = new ArrayList<>();
        Vehicles alone = Vehicles.of(chain(40));
        List<Callable<String>> tasks = new ArrayList<>();
        for (int i = 0; i < 64; i++) {
            String text = "o" + i % 40 + " and year >= " + (1964 + i % 8) + " or saloon and o" + (i + 7) % 40;
            expected.add(Orrin.condition(alone, text).words() + " " + Orrin.condition(alone, text).tally());
            tasks.add(() -> Orrin.condition(vehicles, text).words() + " " + Orrin.condition(vehicles, text).tally());
        }
        try (ExecutorService threads = Executors.newFixedThreadPool(8)) {
            List<String> found = new ArrayList<>();
            for (Future<String> future : threads.invokeAll(tasks)) {
                found.add(future.get());
            }
            assertEquals(expected, found);
        }
    }
}
