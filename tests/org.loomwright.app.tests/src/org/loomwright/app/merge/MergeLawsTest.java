// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.loomwright.app.Repository;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Delta;
import org.loomwright.compare.change.Replay;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.merge.Merged;
import org.loomwright.compare.merge.Version;

/** What holds of every merge, on seeded edits of the files of the largest example. */
class MergeLawsTest {

    private static final int ROUNDS = 400;

    /** Of laws that {@link SmallMergeLawsTest} tries thousands of times. */
    private static final int FEW = 100;

    private final Merging merging = new Merging();
    private final List<Version> files = new ArrayList<>();

    @BeforeEach
    void read() throws IOException {
        try (Stream<Path> all = Files.list(Repository.root().resolve("docs/examples/orrin"))) {
            for (Path file : all.filter(each -> each.toString().endsWith(".loom")).sorted().toList()) {
                files.add(merging.version(Files.readString(file)));
            }
        }
        assertTrue(files.size() >= 5, "files: " + files.size());
    }

    private Version file(int seed) {
        return files.get(seed % files.size());
    }

    private Version edited(Version base, int seed, boolean renames) {
        return merging.version(Edits.of(base.text(), new Random(seed), renames));
    }

    @Test
    void oneSideAloneIsTheResultByteForByte() {
        for (int seed = 0; seed < FEW; seed++) {
            Version base = file(seed);
            Version side = edited(base, seed, true);
            assertEquals(side.text(), merging.merge(base, side, base).text(), "ours, seed " + seed);
            assertEquals(side.text(), merging.merge(base, base, side).text(), "theirs, seed " + seed);
            assertEquals(side.text(), merging.merge(base, side, side).text(), "both, seed " + seed);
        }
    }

    @Test
    void theSidesMayBeExchanged() {
        int clean = 0;
        int torn = 0;
        for (int seed = 0; seed < FEW; seed++) {
            Version base = file(seed);
            Version one = edited(base, seed, true);
            Version other = edited(base, seed + 10_000, true);
            Merged forth = merging.merge(base, one, other);
            Merged back = merging.merge(base, other, one);
            assertEquals(facts(forth), facts(back), "seed " + seed);
            if (forth.conflicts().isEmpty()) {
                assertEquals(Merging.unnumbered(merging.facts(forth.text())),
                        Merging.unnumbered(merging.facts(back.text())), "seed " + seed);
                clean++;
            } else {
                torn++;
            }
        }
        assertTrue(clean > FEW / 4 && torn > FEW / 50, clean + " without and " + torn + " with conflicts");
    }

    /** The conflicts without the sides. */
    private static Set<String> facts(Merged merged) {
        Set<String> facts = new TreeSet<>();
        merged.conflicts().forEach(each -> facts.add(each.fact() + " was " + each.base() + ": "
                + new TreeSet<>(List.of(each.ours(), each.theirs()))));
        return facts;
    }

    /** Changes of different facts are the changes of one side made on the other, which another engine does. */
    @Test
    void aMergeIsTheChangesOfOneSideMadeOnTheOther() {
        int compared = 0;
        for (int seed = 0; seed < ROUNDS; seed++) {
            Version base = file(seed);
            Version one = edited(base, seed, false);
            Version other = edited(base, seed + 20_000, false);
            Comparison left = new FactComparer().compare(base.facts(), one.facts());
            Comparison right = new FactComparer().compare(base.facts(), other.facts());
            if (areApart(left.changes(), right.changes())) {
                Merged merged = merging.merge(base, one, other);
                assertEquals(List.of(), merged.conflicts().stream().filter(each -> !each.fact().equals("note"))
                        .toList(), "seed " + seed + ": notes are no facts");
                FactSheet expected = Replay.apply(one.facts(), right.changes());
                assertEquals(shown(expected), shown(merging.facts(merged.text())), "seed " + seed);
                compared += right.changes().isEmpty() || left.changes().isEmpty() ? 0 : 1;
            }
        }
        assertTrue(compared > ROUNDS / 20, "compared only " + compared);
    }

    /** The facts as they are written: a name that nothing has any more is still that name. */
    private static String shown(FactSheet sheet) {
        return String.join("\n", sheet.content()).replaceAll(" = .* \\| ", " ");
    }

    /** No element that one side touched is touched by the other, and none has another name. */
    private static boolean areApart(List<Change> left, List<Change> right) {
        Set<ItemId> touched = new HashSet<>();
        for (Change change : left) {
            for (Delta delta : change.deltas()) {
                touched.add(delta.item());
            }
        }
        return Stream.of(left, right).flatMap(List::stream).flatMap(change -> change.deltas().stream())
                .noneMatch(Delta.Renamed.class::isInstance)
                && right.stream().flatMap(change -> change.deltas().stream())
                .noneMatch(delta -> touched.contains(delta.item()));
    }

    @Test
    void noElementIsLost() {
        for (int seed = 0; seed < ROUNDS; seed++) {
            Version base = file(seed);
            Version one = edited(base, seed, false);
            Version other = edited(base, seed + 30_000, false);
            Merged merged = merging.merge(base, one, other);
            Set<ItemId> expected = new TreeSet<>(one.facts().items().keySet());
            expected.addAll(other.facts().items().keySet());
            base.facts().items().keySet().stream().filter(id -> !one.facts().items().containsKey(id)
                    || !other.facts().items().containsKey(id)).forEach(expected::remove);
            expected.removeIf(id -> id.name().contains("(no. ")
                    || base.facts().items().containsKey(new ItemId(id.sort(), id.owner(), id.name() + " (no. 2)")));
            expected.removeAll(merging.facts(merged.text()).items().keySet());
            assertEquals(Set.of(), expected, "seed " + seed + "\n" + merged.conflicts());
        }
    }

    @Test
    void whatIsMarkedIsReadBackAsOneProblemEach() {
        int marked = 0;
        for (int seed = 0; seed < ROUNDS; seed++) {
            Version base = file(seed);
            Version one = edited(base, seed, false);
            Version other = edited(base, seed + 40_000, false);
            Merged merged = merging.merge(base, one, other);
            long stretches = merged.text().lines().filter(line -> line.startsWith("<<<<<<< ")).count();
            long told = merging.source(merged.text()).problems().stream()
                    .filter(problem -> problem.code().equals("merge-conflict")).count();
            assertEquals(stretches, told, "seed " + seed);
            assertTrue(merged.conflicts().size() >= stretches, "seed " + seed);
            marked += (int) stretches;
        }
        assertTrue(marked > 5, marked + " conflicts");
    }
}
