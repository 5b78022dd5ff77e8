// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.loomwright.app.compare.Small;
import org.loomwright.compare.merge.Merged;
import org.loomwright.compare.merge.Version;

/** What holds of every merge, on thousands of edits of invented harnesses and projects. */
class SmallMergeLawsTest {

    private static final int BASES = 400;
    private static final int SIDES = 5;

    private final Merging merging = new Merging();

    private List<Version> sides(Version base, int seed) {
        List<Version> sides = new ArrayList<>();
        Random random = new Random(seed);
        for (int i = 0; i < SIDES; i++) {
            sides.add(merging.version(Edits.of(base.text(), random, true)));
        }
        return sides;
    }

    /** 2,000 sides alone, and 2,000 pairs of sides, either way round. New lines of both may stand in either order. */
    @Test
    void oneSideAloneIsTheResultAndTwoMayBeExchanged() {
        int clean = 0;
        int torn = 0;
        for (int seed = 1; seed <= BASES; seed++) {
            Small small = Small.of(seed);
            Version base = merging.version(seed % 4 == 0 ? small.text() : small.harnessText());
            List<Version> sides = sides(base, seed);
            for (int i = 0; i < SIDES; i++) {
                String about = "seed " + seed + ", side " + i;
                Version one = sides.get(i);
                assertEquals(one.text(), merging.merge(base, one, base).text(), about);
                if (i == 0) {
                    assertEquals(one.text(), merging.merge(base, base, one).text(), about);
                    assertEquals(one.text(), merging.merge(base, one, one).text(), about);
                }
                Version other = sides.get((i + 1) % SIDES);
                Merged forth = merging.merge(base, one, other);
                Merged back = merging.merge(base, other, one);
                assertEquals(conflicts(forth), conflicts(back), about);
                if (forth.conflicts().isEmpty()) {
                    clean++;
                    if (forth.text().equals(back.text())) {
                        continue;
                    }
                    assertEquals(Merging.unnumbered(merging.facts(forth.text())),
                            Merging.unnumbered(merging.facts(back.text())), about);
                } else {
                    torn++;
                }
            }
        }
        assertTrue(clean > BASES && torn > BASES / 10, clean + " without and " + torn + " with conflicts");
    }

    /** The conflicts without the sides. */
    private static Set<String> conflicts(Merged merged) {
        Set<String> facts = new TreeSet<>();
        merged.conflicts().forEach(each -> facts.add(each.fact() + " was " + each.base() + ": "
                + new TreeSet<>(List.of(each.ours(), each.theirs()))));
        return facts;
    }
}
