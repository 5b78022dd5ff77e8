// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Meetings against asking each with each. */
class MeetingsTest {

    /** Vehicles of so many bodies. */
    private static Vehicles bodies(int count) {
        String[] names = new String[count];
        for (int i = 0; i < count; i++) {
            names[i] = "b" + i;
        }
        return Vehicles.of(Choices.builder().group("body", names).option("fan").build());
    }

    private static Condition between(Vehicles vehicles, int first, int last) {
        Condition some = vehicles.none();
        for (int i = first; i <= last; i++) {
            some = some.or(vehicles.where(new Assignment(Map.of("body", "b" + i))));
        }
        return some;
    }

    private static List<String> pairs(List<Condition> conditions) {
        List<String> pairs = new ArrayList<>();
        for (int later = 0; later < conditions.size(); later++) {
            for (int first = 0; first < later; first++) {
                if (!conditions.get(first).excludes(conditions.get(later))) {
                    pairs.add(first + " " + later);
                }
            }
        }
        return pairs;
    }

    private static List<BitSet> groups(List<Condition> conditions) {
        List<BitSet> groups = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            BitSet home = new BitSet();
            home.set(i);
            for (BitSet other : List.copyOf(groups)) {
                int at = i;
                if (other.stream().anyMatch(each -> !conditions.get(each).excludes(conditions.get(at)))) {
                    home.or(other);
                    groups.remove(other);
                }
            }
            groups.add(home);
        }
        groups.sort((one, other) -> Integer.compare(one.nextSetBit(0), other.nextSetBit(0)));
        return groups;
    }

    @Test
    void theSameAsEachWithEach() {
        Random random = new Random(7);
        for (int round = 0; round < 100; round++) {
            Vehicles vehicles = bodies(60);
            List<Condition> conditions = new ArrayList<>();
            for (int i = random.nextInt(20); i > 0; i--) {
                int first = random.nextInt(60);
                conditions.add(random.nextInt(12) == 0 ? vehicles.none()
                        : between(vehicles, first, Math.min(59, first + random.nextInt(6))));
            }
            assertEquals(pairs(conditions),
                    Meetings.pairs(conditions).stream().map(pair -> pair[0] + " " + pair[1]).toList());
            assertEquals(groups(conditions), Meetings.groups(conditions));
        }
    }

    private static long operations(int count, int length) {
        Vehicles vehicles = bodies(500);
        List<Condition> conditions = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            conditions.add(between(vehicles, i, Math.min(499, i + length - 1)));
        }
        long before = vehicles.work().operations();
        assertEquals(length == 1 ? count : 1, Meetings.groups(conditions).size());
        return vehicles.work().operations() - before;
    }

    @Test
    void tenTimesTheConditionsTakeAboutTenTimesTheQuestions() {
        assertTrue(operations(500, 1) <= 10 * 1.2 * operations(50, 1));
        assertTrue(operations(500, 2) <= 10 * 1.2 * operations(50, 2), "neighbours meet");
        assertTrue(operations(500, 60) <= 10 * 1.2 * operations(50, 60), "many meet");
    }
}
