// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.harness.Source;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/**
 * Every example in {@code docs/examples/broken} yields exactly the finding that its first line announces, and its
 * mended twin yields nothing.
 */
class BrokenExamplesTest {

    private static final String MENDED = "-mended";
    private static final LocalDate TODAY = LocalDate.of(2026, 1, 1);
    /** Rules whose findings are notes in any case. */
    private static final Set<String> NOTES = Set.of("circuits-bounded", "fuse-opens-at-start",
            "other-half-assumed", "wakes-when-opened");
    private static final Pattern EXPECTED = Pattern.compile("// expect (\\S+) at line (\\d+)(?: when (.+))?");

    private final SourceReader reader = Repository.reader();

    private static List<String> names() throws IOException {
        List<String> names = new ArrayList<>();
        for (Path entry : Repository.entries(Repository.root().resolve("docs/examples/broken"))) {
            names.add(entry.getFileName().toString());
        }
        return names;
    }

    private Opened open(String name) throws BadCall {
        return Repository.open(Repository.root().resolve("docs/examples/broken"), name, reader, 1);
    }

    /** Warnings and errors; and the notes of a rule that finds nothing else, in its own examples. */
    private static List<Finding> findings(Opened opened, String name) {
        return StandardRules.engine().check(opened.project(), Settings.on(TODAY), Cancel.NEVER, Progress.NONE)
                .counting().stream().filter(finding -> finding.severity().atLeast(Severity.WARNING)
                        || NOTES.contains(finding.rule()) && name.startsWith(finding.rule())).toList();
    }

    @TestFactory
    Stream<DynamicTest> eachExampleYieldsWhatItAnnounces() throws IOException {
        return names().stream().map(name -> DynamicTest.dynamicTest(name, () -> {
            Opened opened = open(name);
            List<String> expected = new ArrayList<>();
            for (Source source : opened.project().sources()) {
                String first = source.text().lines().findFirst().orElse("");
                Matcher line = EXPECTED.matcher(first);
                if (line.matches()) {
                    String when = line.group(3) == null ? "" : " when " + line.group(3);
                    expected.add(line.group(1) + " at " + source.file() + ":" + line.group(2) + when);
                } else {
                    assertEquals("// expect nothing", first);
                }
            }
            assertEquals(expected, findings(opened, name).stream().map(BrokenExamplesTest::inWords).toList());
            assertEquals(name.contains(MENDED), expected.isEmpty());
        }));
    }

    private static String inWords(Finding finding) {
        return finding.rule() + " at " + finding.place().span().file() + ":" + finding.place().span().line()
                + finding.affected().map(affected -> " when " + affected.words()).orElse("");
    }

    @Test
    void everyRuleHasAnExampleAndItsMendedTwin() throws IOException {
        List<String> names = names();
        TreeSet<String> missing = new TreeSet<>();
        for (RuleInfo rule : StandardRules.book().infos()) {
            for (String stem : List.of(rule.id(), rule.id() + MENDED)) {
                if (!names.contains(stem) && !names.contains(stem + ".loom")) {
                    missing.add(stem);
                }
            }
        }
        assertTrue(missing.isEmpty(), () -> "no example: " + missing);
    }
}
