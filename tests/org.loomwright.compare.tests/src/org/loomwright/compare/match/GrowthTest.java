// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.facts.Value;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;

/** The pairs that are compared grow with the elements, not with their square. */
class GrowthTest {

    private static final double MOST_GROWTH = 1.2;
    private static final FactSheet NOTHING = new FactSheet(new TreeMap<>(), Map.of(), Map.of());

    @Test
    void pairsGrowWithTheElements() {
        long small = compared(300, 10);
        long large = compared(3_000, 10);
        assertTrue(large <= 10 * MOST_GROWTH * small, small + " pairs, then " + large);
    }

    @Test
    void pairsGrowWithTheElementsWhenAllAreRenamed() {
        long small = compared(300, 1);
        long large = compared(3_000, 1);
        assertTrue(large <= 10 * MOST_GROWTH * small, small + " pairs, then " + large);
    }

    /** Every so many wires has another name on the new side; all are found again. */
    private static long compared(int wires, int every) {
        Matching matching = Matcher.match(sheet(wires, Integer.MAX_VALUE), sheet(wires, every));
        assertEquals(wires, matching.partners().size());
        matching.partners().forEach((old, now) -> {
            int number = Integer.parseInt(old.name().substring(1));
            assertEquals(number % every == 0 ? "renamed" + number : old.name(), now.name());
        });
        return matching.compared();
    }

    private static FactSheet sheet(int wires, int every) {
        List<Item> items = new ArrayList<>();
        for (int i = 1; i <= wires; i++) {
            TreeMap<Slot, List<Stated>> facts = new TreeMap<>();
            put(facts, Property.SIZE, i % 3 == 0 ? "16 ga" : "18 ga");
            put(facts, Property.FROM, "J" + i / 12 + ":" + i % 12);
            put(facts, Property.TO, "S" + i / 3);
            String name = every != Integer.MAX_VALUE && i % every == 0 ? "renamed" + i : "w" + i;
            items.add(new Item(new ItemId(Sort.WIRE, "front/1", name), facts, List.of(), Span.NONE));
        }
        return NOTHING.with(items);
    }

    private static void put(TreeMap<Slot, List<Stated>> facts, Property property, String value) {
        facts.put(Slot.of(property), List.of(new Stated(Value.word(value), new Expression.Always(), Span.NONE)));
    }
}
