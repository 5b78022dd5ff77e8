// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.match.Matcher;
import org.loomwright.compare.match.Matching;

/** Elements are found again under whatever name, held against edit scripts that know which is which. */
class MatchQualityTest {

    private static final int ROUNDS = 60;
    private static final int WIRES = 120;

    private final Sides sides = new Sides();
    private int predicted;
    private int known;
    private int right;
    private int hardKnown;
    private int hardRight;

    @Test
    void precisionAndRecallAreNinetyNineInAHundred() {
        for (int seed = 1; seed <= ROUNDS; seed++) {
            Invented old = Invented.of(WIRES, seed);
            count(old, old.revised(seed + 1_000));
        }
        String figures = right + " right of " + predicted + " pairs told and " + known + " that there are; of those"
                + " edited " + hardRight + " of " + hardKnown;
        assertTrue(right >= 0.99 * predicted && right >= 0.99 * known, figures);
        assertTrue(hardKnown > 10 * ROUNDS && hardRight >= 0.99 * hardKnown, figures);
    }

    private void count(Invented old, Invented now) {
        Matching matching = Matcher.match(sheet(old), sheet(now));
        Map<Integer, ItemId> before = old.elements();
        Map<Integer, ItemId> after = now.elements();
        predicted += (int) matching.partners().keySet().stream().filter(before.values()::contains).count();
        after.forEach((number, id) -> {
            boolean found = before.containsKey(number)
                    && matching.after(before.get(number)).filter(id::equals).isPresent();
            known++;
            right += found ? 1 : 0;
            if (now.edited().contains(number)) {
                hardKnown++;
                hardRight += found ? 1 : 0;
            }
        });
    }

    private FactSheet sheet(Invented invented) {
        return FactSheet.of(sides.project(Map.of("front.loom", invented.text())));
    }
}
