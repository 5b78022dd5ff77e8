// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Replay;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.lang.Formatter;

/** What holds of every comparison, on invented projects by seed. */
class CompareLawsTest {

    private static final int ROUNDS = 3_000;
    private static final int WIRES = 14;

    private final Sides sides = new Sides();
    private final FactComparer comparer = new FactComparer();

    private FactSheet sheet(String text) {
        return FactSheet.of(sides.project(Map.of("front.loom", text)));
    }

    @Test
    void nothingChangedIsNoChangeAndTheWayBackIsTheInverse() {
        int changed = 0;
        for (int seed = 1; seed <= ROUNDS; seed++) {
            Invented invented = Invented.of(WIRES, seed);
            FactSheet old = sheet(invented.text());
            FactSheet now = sheet(invented.revised(seed).text());
            assertEquals(List.of(), comparer.compare(old, old).changes(), "seed " + seed);
            Comparison forth = comparer.compare(old, now);
            Comparison back = comparer.compare(now, old);
            assertEquals(now.content(), Replay.apply(old, forth.changes()).content(), "forth, seed " + seed);
            assertEquals(old.content(), Replay.apply(now, back.changes()).content(), "back, seed " + seed);
            assertEquals(forth.matching().reversed(), back.matching().partners(), "seed " + seed);
            assertEquals(SmallLawsTest.mirrored(forth), SmallLawsTest.told(back), "seed " + seed);
            changed += forth.changes().isEmpty() ? 0 : 1;
        }
        assertTrue(changed > ROUNDS * 8 / 10, changed + " revisions with changes");
    }

    @Test
    void aRenameOfAnyElementIsOneRename() {
        for (int seed = 1; seed <= ROUNDS / 2; seed++) {
            String text = Invented.of(WIRES, seed).text();
            List<String> names = text.lines().map(String::strip)
                    .filter(line -> line.matches("(connector|branch|breakout|wire|circuit|harness|trunk) .*"))
                    .map(line -> line.split(" ")[1]).toList();
            String name = names.get(new Random(seed).nextInt(names.size()));
            String renamed = renamed(text, name);
            List<Change> changes = comparer.compare(sheet(text), sheet(renamed)).changes();
            assertEquals("renamed", changes.stream().map(change -> change.kind().words())
                    .collect(Collectors.joining(", ")), () -> name + ": " + changes.stream()
                    .map(Change::sentence).toList());
        }
    }

    /** The text with another name for an element everywhere; circuits have numbers, which mean other things too. */
    private static String renamed(String text, String name) {
        return name.matches("\\d+") ? text.replace("circuit " + name + " ", "circuit 99999 ")
                : text.replaceAll("\\b" + name + "\\b", "other" + name);
    }

    @Test
    void layoutAndTheOrderOfLinesAreNoChange() {
        for (int seed = 1; seed <= ROUNDS / 2; seed++) {
            String text = Invented.of(WIRES, seed).text();
            Random random = new Random(seed);
            String other = text.lines().map(line -> " ".repeat(random.nextInt(5)) + line.replace(" from ", "   from ")
                    + (random.nextInt(4) == 0 ? "  // a note" : "") + (random.nextInt(6) == 0 ? "\n" : ""))
                    .collect(Collectors.joining("\n")) + "\n";
            assertEquals(List.of(), comparer.compare(sheet(text), sheet(other)).changes(), "seed " + seed);
            assertEquals(List.of(), comparer.compare(sheet(text), sheet(Formatter.format(other))).changes());
        }
    }
}
