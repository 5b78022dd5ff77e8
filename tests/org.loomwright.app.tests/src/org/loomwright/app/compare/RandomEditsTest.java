// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Replay;
import org.loomwright.compare.facts.FactSheet;

/** Whatever is edited, the changes lead from the one side to the other, and equal sides have none. */
class RandomEditsTest {

    private static final int ROUNDS = 40;

    private final Sides sides = new Sides();
    private final FactComparer comparer = new FactComparer();

    @Test
    void theChangesOfAnyEditGiveTheOtherSide() {
        Map<String, String> text = Sides.orrin();
        FactSheet old = FactSheet.of(sides.project(text));
        int changed = 0;
        for (int seed = 1; seed <= ROUNDS; seed++) {
            FactSheet now = FactSheet.of(sides.project(edited(text, new Random(seed))));
            changed += replayed(old, now, seed);
            replayed(now, old, seed);
        }
        assertTrue(changed > 5 * ROUNDS, changed + " changes in all: the edits do too little");
    }

    @Test
    void equalSidesHaveNoChange() {
        for (int seed = 1; seed <= 5; seed++) {
            Map<String, String> text = edited(Sides.orrin(), new Random(seed));
            FactSheet one = FactSheet.of(sides.project(text));
            FactSheet other = FactSheet.of(sides.project(text));
            assertEquals(List.of(), comparer.compare(one, other).changes(), "seed " + seed);
        }
    }

    private int replayed(FactSheet from, FactSheet to, int seed) {
        Comparison comparison = comparer.compare(from, to);
        assertEquals(String.join("\n", to.content()),
                String.join("\n", Replay.apply(from, comparison.changes()).content()), "seed " + seed);
        return comparison.changes().size();
    }

    /** One to twelve edits: lines lost, doubled or moved, other numbers, names changed here or everywhere. */
    private static Map<String, String> edited(Map<String, String> files, Random random) {
        Map<String, String> edited = new TreeMap<>(files);
        List<String> names = List.copyOf(edited.keySet());
        int edits = 1 + random.nextInt(12);
        for (int i = 0; i < edits; i++) {
            String file = names.get(random.nextInt(names.size()));
            edited.put(file, LineEdits.edit(edited.get(file), random));
        }
        return edited;
    }
}
