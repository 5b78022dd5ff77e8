// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Delta;
import org.loomwright.compare.change.Replay;
import org.loomwright.compare.change.Space;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.lang.Formatter;

/**
 * What holds of every comparison, on 1,000 invented projects with elements of every sort and edits of any line; on
 * thousands of harnesses {@link CompareLawsTest} tries the same.
 */
class SmallLawsTest {

    private static final int BASES = 200;
    private static final int EACH = 5;

    private final Sides sides = new Sides();
    private final FactComparer comparer = new FactComparer();

    private FactSheet sheet(String text) {
        return FactSheet.of(sides.project(Map.of("all.loom", text)));
    }

    private static String edited(String text, Random random) {
        String edited = text;
        for (int i = 1 + random.nextInt(4); i > 0; i--) {
            edited = LineEdits.edit(edited, random);
        }
        return edited;
    }

    /** Revisions of revisions, each an edit of any lines, sensible or not. */
    @Test
    void theChangesOfAnyEditGiveTheOtherSideAndTheWayBackIsTheInverse() {
        int changed = 0;
        int mirrored = 0;
        for (int seed = 1; seed <= BASES; seed++) {
            Random random = new Random(seed);
            String text = Small.of(seed).text();
            FactSheet old = sheet(text);
            assertEquals(List.of(), comparer.compare(old, old).changes(), "seed " + seed);
            for (int round = 0; round < EACH; round++) {
                String about = "seed " + seed + ", round " + round;
                text = edited(text, random);
                FactSheet now = sheet(text);
                Comparison forth = comparer.compare(old, now);
                Comparison back = comparer.compare(now, old);
                assertEquals(now.content(), Replay.apply(old, forth.changes()).content(), "forth, " + about);
                assertEquals(old.content(), Replay.apply(now, back.changes()).content(), "back, " + about);
                if (eachHasOneName(old) && eachHasOneName(now) && choicesStay(old, now)) {
                    assertEquals(forth.matching().reversed(), back.matching().partners(), about);
                    assertEquals(mirrored(forth), told(back), about);
                    mirrored++;
                }
                changed += forth.changes().size();
                old = now;
            }
        }
        assertTrue(changed > 2 * BASES * EACH, changed + " changes in all: the edits do too little");
        assertTrue(mirrored > BASES * EACH / 3, mirrored + " mirrored");
    }

    /** Which of two elements of one name is meant nobody can tell; that there are two is an error of the text. */
    private static boolean eachHasOneName(FactSheet sheet) {
        return sheet.items().keySet().stream().noneMatch(id -> id.name().contains("(no. "));
    }

    /** Where they do not, conditions are told of the new platform, which is another one on the way back. */
    private static boolean choicesStay(FactSheet old, FactSheet now) {
        return old.platforms().keySet().equals(now.platforms().keySet()) && old.platforms().keySet().stream()
                .allMatch(name -> Space.isSame(old.platforms().get(name).vehicles().choices(),
                        now.platforms().get(name).vehicles().choices()));
    }

    /** What the way back has to tell: what was added is removed, and so on, of the elements of the other side. */
    static List<String> mirrored(Comparison forth) {
        List<String> all = new ArrayList<>();
        for (Change change : forth.changes()) {
            all.add(change.aspect() + " " + switch (change.kind()) {
                case ADDED -> Change.Kind.REMOVED;
                case REMOVED -> Change.Kind.ADDED;
                case SPLIT -> Change.Kind.JOINED;
                case JOINED -> Change.Kind.SPLIT;
                default -> change.kind();
            });
            change.deltas().forEach(delta -> all.add(switch (delta) {
                case Delta.Added added -> "- " + added.item();
                case Delta.Removed removed -> "+ " + removed.item();
                case Delta.Renamed renamed -> renamed.item() + " -> " + renamed.from();
                case Delta.Restated restated -> forth.matching().reversed().get(restated.item()) + ": "
                        + restated.slot().property();
            }));
        }
        return all.stream().sorted().toList();
    }

    /** What a comparison tells: aspect and kind of each change, and all that it replaces. */
    static List<String> told(Comparison comparison) {
        List<String> all = new ArrayList<>();
        for (Change change : comparison.changes()) {
            all.add(change.aspect() + " " + change.kind());
            change.deltas().forEach(delta -> all.add(switch (delta) {
                case Delta.Added added -> "+ " + added.item();
                case Delta.Removed removed -> "- " + removed.item();
                case Delta.Renamed renamed -> renamed.from() + " -> " + renamed.item();
                case Delta.Restated restated -> restated.item() + ": " + restated.slot().property();
            }));
        }
        return all.stream().sorted().toList();
    }

    @Test
    void aRenameOfAnElementOfAnySortIsOneRename() {
        Map<Sort, Integer> renamed = new EnumMap<>(Sort.class);
        for (int seed = 1; seed <= BASES; seed++) {
            Small small = Small.of(seed);
            FactSheet old = sheet(small.text());
            Random random = new Random(seed);
            for (int round = 0; round < EACH; round++) {
                Small.Named element = small.elements().get(random.nextInt(small.elements().size()));
                FactSheet now = sheet(element.renamed(small.text()));
                Comparison comparison = comparer.compare(old, now);
                List<Change> changes = comparison.changes();
                assertEquals("renamed", changes.stream().map(change -> change.kind().words())
                        .collect(Collectors.joining(", ")), () -> element + ": " + changes.stream()
                        .map(Change::sentence).toList());
                assertEquals(element.sort(), changes.getFirst().item().sort());
                assertEquals(now.content(), Replay.apply(old, changes).content(), element.toString());
                renamed.merge(element.sort(), 1, Integer::sum);
            }
        }
        for (Sort sort : Sort.values()) {
            assertTrue(renamed.getOrDefault(sort, 0) >= 2, sort + " in " + renamed);
        }
    }

    @Test
    void layoutIsNoChange() {
        for (int seed = 1; seed <= BASES; seed++) {
            String text = Small.of(seed).text();
            FactSheet sheet = sheet(text);
            Random random = new Random(seed);
            String other = text.lines().map(line -> " ".repeat(random.nextInt(5)) + line.strip().replace(" ",
                    " ".repeat(1 + random.nextInt(2))) + (random.nextInt(4) == 0 ? "  // a note" : "")
                    + (random.nextInt(6) == 0 ? "\r\n" : "")).collect(Collectors.joining("\n")) + "\n";
            assertEquals(List.of(), comparer.compare(sheet, sheet(other)).changes(), "seed " + seed);
            assertEquals(List.of(), comparer.compare(sheet, sheet(Formatter.format(other))).changes(),
                    "seed " + seed);
        }
    }
}
