// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Everything that conditions answer, against the plain enumeration of the vehicles of 500 random platforms.
 */
class EnumerationTest {
    private static final int PLATFORMS = 500;

    private interface Check {
        void check(RandomPlatform platform, Vehicles vehicles, Enumeration enumeration);
    }

    private static void onRandomPlatforms(Check check) {
        for (int seed = 0; seed < PLATFORMS; seed++) {
            RandomPlatform platform = new RandomPlatform(seed, 5, 4);
            Vehicles vehicles = Vehicles.of(platform.choices());
            assertEquals(List.of(), vehicles.problems());
            check.check(platform, vehicles, new Enumeration(platform.choices()));
        }
    }

    private static Condition resolve(Vehicles vehicles, Expression expression) {
        Resolution resolution = vehicles.resolve(expression);
        assertEquals(List.of(), resolution.problems());
        return resolution.condition();
    }

    private static BigInteger size(List<?> list) {
        return BigInteger.valueOf(list.size());
    }

    /** Texts for machines are equal exactly for the same vehicles, also in another run, which asks other things first. */
    @Test
    void canonicalTexts() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            Vehicles another = Vehicles.of(platform.choices());
            Map<String, List<?>> meant = new HashMap<>();
            for (int i = 0; i < 10; i++) {
                Expression expression = platform.expression(3);
                resolve(another, platform.expression(2));
                String text = resolve(vehicles, expression).canonical();
                assertEquals(text, resolve(another, expression).canonical());
                List<?> now = enumeration.with(expression);
                assertEquals(now, meant.computeIfAbsent(text, key -> now), "the same text for other vehicles");
            }
            assertEquals(meant.size(), new HashSet<>(meant.values()).size(), "two texts for the same vehicles");
        });
    }

    @Test
    void counts() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            assertEquals(size(enumeration.possible()), vehicles.count());
            for (int i = 0; i < 20; i++) {
                Expression expression = platform.expression(3);
                Condition condition = resolve(vehicles, expression);
                assertEquals(size(enumeration.with(expression)), condition.count(), expression.words());
                assertEquals(enumeration.with(expression).isEmpty(), condition.isNever());
                assertEquals(enumeration.with(new Expression.Not(expression)).isEmpty(), condition.isAlways());
            }
        });
    }

    @Test
    void algebra() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            for (int i = 0; i < 10; i++) {
                Expression one = platform.expression(2);
                Expression other = platform.expression(2);
                Condition left = resolve(vehicles, one);
                Condition right = resolve(vehicles, other);
                Set<Map<String, String>> a = new HashSet<>(enumeration.with(one));
                Set<Map<String, String>> b = new HashSet<>(enumeration.with(other));
                assertEquals(a.equals(b), left.equals(right));
                assertEquals(b.containsAll(a), left.implies(right));
                assertEquals(a.stream().noneMatch(b::contains), left.excludes(right));
                assertEquals(left.and(right), left.not().or(right.not()).not());
                assertEquals(left.minus(right), left.and(right.not()));
                assertEquals(left.or(right).hashCode(), right.or(left).hashCode());
                assertEquals(vehicles.anyOf(List.of(left, right)), left.or(right));
                assertEquals(vehicles.allOf(List.of(left, right)), left.and(right));
            }
        });
    }

    @Test
    void examplesAreTheFirstVehicle() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            for (int i = 0; i < 10; i++) {
                Expression expression = platform.expression(3);
                assertEquals(
                        enumeration.with(expression).stream().findFirst(),
                        resolve(vehicles, expression).example().map(Assignment::members));
            }
        });
    }

    @Test
    void assignmentsAreTheDifferentRestrictions() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            List<String> names = platform.choices().axes().stream().map(Axis::name).toList();
            for (int i = 0; i < 5; i++) {
                Expression expression = platform.expression(2);
                Set<String> some = new TreeSet<>(names.subList(i % names.size(), names.size()));
                List<Map<String, String>> expected =
                        restrictions(enumeration.with(expression), some, platform.choices());
                Condition condition = resolve(vehicles, expression);
                Assignments all = condition.assignments(some, 10_000);
                assertTrue(all.complete());
                assertEquals(expected, all.list().stream().map(Assignment::members).toList());
                Assignments few = condition.assignments(some, 3);
                assertEquals(all.list().size() <= 3, few.complete());
                assertEquals(all.list().subList(0, Math.min(3, all.list().size())), few.list());
                BigInteger sum = BigInteger.ZERO;
                for (Assignment assignment : all.list()) {
                    sum = sum.add(condition.and(vehicles.where(assignment)).count());
                }
                assertEquals(condition.count(), sum);
            }
        });
    }

    /** Returns the different restrictions to some axes, in order of members. */
    private static List<Map<String, String>> restrictions(
            List<Map<String, String>> vehicles, Set<String> axes, Choices choices) {
        Set<Map<String, String>> restrictions = new LinkedHashSet<>();
        for (Map<String, String> vehicle : vehicles) {
            Map<String, String> restricted = new LinkedHashMap<>(vehicle);
            restricted.keySet().retainAll(axes);
            restrictions.add(restricted);
        }
        List<Map<String, String>> sorted = new ArrayList<>(restrictions);
        for (Axis axis : choices.axes().reversed()) {
            if (axes.contains(axis.name())) {
                sorted.sort(Comparator.comparingInt(each -> axis.members().indexOf(each.get(axis.name()))));
            }
        }
        return sorted;
    }

    @Test
    void cellsAreTheDifferentCombinationsOfConditions() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            List<Expression> expressions = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                expressions.add(platform.expression(2));
            }
            Map<Set<Integer>, Integer> expected = new HashMap<>();
            Expression whole = platform.expression(1);
            for (Map<String, String> vehicle : enumeration.with(whole)) {
                Set<Integer> holding = new TreeSet<>();
                for (int i = 0; i < expressions.size(); i++) {
                    if (enumeration.holds(expressions.get(i), vehicle)) {
                        holding.add(i);
                    }
                }
                expected.merge(holding, 1, Integer::sum);
            }
            List<Condition> conditions = expressions.stream().map(each -> resolve(vehicles, each)).toList();
            Cells cells = resolve(vehicles, whole).split(conditions, 1_000);
            assertTrue(cells.complete());
            Map<Set<Integer>, Integer> found = new HashMap<>();
            cells.list().forEach(cell -> found.put(cell.holding(), cell.vehicles().count().intValue()));
            assertEquals(expected, found);
            assertEquals(expected.size(), cells.list().size());
            Cells two = resolve(vehicles, whole).split(conditions, 2);
            assertEquals(cells.list().size() <= 2, two.complete());
            assertEquals(cells.list().subList(0, Math.min(2, cells.list().size())), two.list());
        });
    }

    /** Two vehicles that agree on the support agree on the condition; and no axis of the support can be left out. */
    @Test
    void supportSufficesAndNothingInItIsNeedless() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            for (int i = 0; i < 10; i++) {
                Expression expression = platform.expression(2);
                Set<String> support = resolve(vehicles, expression).support();
                assertTrue(suffices(support, expression, enumeration));
                for (String axis : support) {
                    Set<String> fewer = new HashSet<>(support);
                    fewer.remove(axis);
                    assertTrue(!suffices(fewer, expression, enumeration), axis + " in " + expression.words());
                }
            }
        });
    }

    private static boolean suffices(Set<String> axes, Expression expression, Enumeration enumeration) {
        Map<Map<String, String>, Boolean> seen = new HashMap<>();
        for (Map<String, String> vehicle : enumeration.possible()) {
            Map<String, String> restricted = new HashMap<>(vehicle);
            restricted.keySet().retainAll(axes);
            boolean holds = enumeration.holds(expression, vehicle);
            Boolean before = seen.put(restricted, holds);
            if (before != null && before != holds) {
                return false;
            }
        }
        return true;
    }

    /** The printed words, read back, mean the same vehicles. */
    @Test
    void wordsMeanTheSameVehicles() {
        onRandomPlatforms((platform, vehicles, enumeration) -> {
            for (int i = 0; i < 10; i++) {
                Expression expression = platform.expression(3);
                Condition condition = resolve(vehicles, expression);
                Wording wording = condition.wording();
                assertTrue(wording.isWhole());
                if (!condition.isNever() && !condition.isAlways()) {
                    Expression read = Reader.expression(condition.words());
                    assertEquals(enumeration.with(expression), enumeration.with(read), condition.words());
                    assertEquals(condition, resolve(vehicles, read));
                    assertEquals(wording.expression().words(), read.words());
                }
                assertEquals(condition, resolve(vehicles, wording.expression()));
            }
        });
    }
}
