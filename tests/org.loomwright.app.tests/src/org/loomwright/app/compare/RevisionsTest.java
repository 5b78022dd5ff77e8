// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.loomwright.app.Repository;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Replay;

/** Small revisions, each with the answer that a reviewer wants, written down before there was a comparison. */
class RevisionsTest {

    static final Path FOLDER = Repository.root()
            .resolve("tests/org.loomwright.app.tests/resources/org/loomwright/app/compare");

    private final Sides sides = new Sides();

    @TestFactory
    Stream<DynamicTest> aRevisionReadsAsAReviewerWouldTellIt() throws IOException {
        try (Stream<Path> entries = Files.list(FOLDER)) {
            List<Path> cases = entries.filter(Files::isDirectory).sorted().toList();
            assertTrue(cases.size() >= 14, cases.toString());
            return cases.stream().map(each -> DynamicTest.dynamicTest(each.getFileName().toString(),
                    () -> assertEquals(Files.readString(each.resolve("expected.txt")), answer(each))));
        }
    }

    @TestFactory
    Stream<DynamicTest> theChangesLeadFromOneSideToTheOther() throws IOException {
        try (Stream<Path> entries = Files.list(FOLDER)) {
            return entries.filter(Files::isDirectory).sorted().toList().stream().flatMap(each -> Stream.of(
                    DynamicTest.dynamicTest(each.getFileName() + " forth", () -> replays(each, "old", "new")),
                    DynamicTest.dynamicTest(each.getFileName() + " back", () -> replays(each, "new", "old"))));
        }
    }

    private void replays(Path folder, String from, String to) {
        Comparison comparison = compare(folder, from, to);
        assertEquals(String.join("\n", comparison.now().content()),
                String.join("\n", Replay.apply(comparison.old(), comparison.changes()).content()));
    }

    private String answer(Path folder) {
        return compare(folder, "old", "new").changes().stream().map(RevisionsTest::line)
                .collect(Collectors.joining());
    }

    private Comparison compare(Path folder, String from, String to) {
        return new FactComparer().compare(sides.project(Sides.files(folder.resolve(from))),
                sides.project(Sides.files(folder.resolve(to))));
    }

    private static String line(Change change) {
        return change.aspect().words() + " | " + change.sentence() + " | " + change.felt().words() + "\n";
    }
}
