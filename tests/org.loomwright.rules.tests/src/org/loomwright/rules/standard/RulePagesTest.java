// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.loomwright.rules.RuleInfo;

/** Every rule has its page, an example that breaks it and a mended twin, and nothing is left over. */
class RulePagesTest {

    private static final Pattern EXPECTATION = Pattern.compile("// expect (\\S+) at line ([1-9]\\d*)( when .+)?");
    private static final List<String> HEADINGS = List.of("## Why", "## How it is computed", "## Example",
            "## How to mend it", "## Limits");

    private static Path root() {
        String root = System.getProperty("loomwright.root");
        if (root != null) {
            return Path.of(root);
        }
        Path at = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(at.resolve("docs/rules"))) {
            at = at.getParent();
        }
        return at;
    }

    static Stream<RuleInfo> rules() {
        return StandardRules.book().infos().stream();
    }

    private static String read(String path) throws IOException {
        return Files.readString(root().resolve(path));
    }

    @ParameterizedTest
    @MethodSource("rules")
    void hasAPageThatSaysWhatTheRuleSaysOfItself(RuleInfo rule) throws IOException {
        String page = read(rule.page());
        assertTrue(page.startsWith("# " + rule.id() + "\n\n" + rule.title() + "\n"), "title of " + rule.page());
        assertTrue(page.contains("| basis | " + rule.basis() + " |"), "basis of " + rule.page());
        assertTrue(page.contains("| severity | " + rule.severity().words() + " |"), "severity of " + rule.page());
        assertTrue(page.contains("| looks at | " + rule.scope().words() + " |"), "scope of " + rule.page());
        String counts = rule.kind() == RuleInfo.Kind.TRANSCRIPTION ? "in drawings and harnesses"
                : "in harnesses of ours; inherited on drawings";
        assertTrue(page.contains("| counts | " + counts + " |"), "kind of " + rule.page());
        HEADINGS.forEach(heading -> assertTrue(page.contains("\n" + heading + "\n"), heading + " in " + rule.page()));
        assertTrue(page.contains("../examples/broken/" + rule.id() + ".loom"), "example in " + rule.page());
        assertTrue(page.contains("../examples/broken/" + rule.id() + "-mended.loom"),
                "mended example in " + rule.page());
    }

    @ParameterizedTest
    @MethodSource("rules")
    void hasAnExampleThatSaysWhatToExpectAndAMendedTwin(RuleInfo rule) throws IOException {
        String broken = read(rule.brokenExample());
        var expectation = EXPECTATION.matcher(broken.lines().findFirst().orElseThrow());
        assertTrue(expectation.matches(), "first line of " + rule.brokenExample());
        assertEquals(rule.id(), expectation.group(1));
        assertTrue(Integer.parseInt(expectation.group(2)) <= broken.lines().count());
        String mended = read(rule.mendedExample());
        assertEquals("// expect nothing", mended.lines().findFirst().orElseThrow());
        Set<String> same = broken.lines().skip(1).collect(Collectors.toSet());
        long changed = mended.lines().skip(1).filter(line -> !same.contains(line)).count();
        assertTrue(changed <= 6, changed + " lines of " + rule.mendedExample() + " differ");
    }

    /** The page shows the finding of the example at the line where the example says that it is. */
    @ParameterizedTest
    @MethodSource("rules")
    void thePageShowsTheFindingOfItsExample(RuleInfo rule) throws IOException {
        var expectation = EXPECTATION.matcher(read(rule.brokenExample()).lines().findFirst().orElseThrow());
        assertTrue(expectation.matches());
        String page = read(rule.page());
        String place = rule.id() + ".loom:" + expectation.group(2) + ":";
        assertTrue(page.contains("[" + rule.id() + "]: "), "message in " + rule.page());
        assertTrue(page.contains(place), place + " in " + rule.page());
    }

    @Test
    void theIndexListsEveryRuleOnceInOrder() throws IOException {
        List<String> listed = read("docs/rules/README.md").lines().filter(line -> line.startsWith("| [")).map(
                line -> line.substring(3, line.indexOf(']'))).toList();
        assertEquals(rules().map(RuleInfo::id).toList(), listed);
    }

    @Test
    void noPageOrExampleIsLeftOver() throws IOException {
        // the finding of a comparison has a page without being a rule of a project
        Set<String> pages = new TreeSet<>(Set.of("README.md", "interface-changed.md"));
        Set<String> examples = new TreeSet<>();
        rules().forEach(rule -> {
            pages.add(rule.id() + ".md");
            examples.add(rule.id());
            examples.add(rule.id() + "-mended");
        });
        try (Stream<Path> files = Files.list(root().resolve("docs/rules"))) {
            assertEquals(pages, files.map(file -> file.getFileName().toString())
                    .collect(Collectors.toCollection(TreeSet::new)));
        }
        try (Stream<Path> files = Files.list(root().resolve("docs/examples/broken"))) {
            Set<String> found = files.map(file -> file.getFileName().toString().replaceFirst("\\.loom$", ""))
                    .filter(name -> examples.contains(name) || rules().anyMatch(rule -> name.startsWith(rule.id())))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(examples, found);
        }
    }

    @Test
    void idsAreDistinctAndReadAlike() {
        List<String> ids = rules().map(RuleInfo::id).toList();
        assertEquals(ids.size(), Set.copyOf(ids).size());
        ids.forEach(id -> assertTrue(id.matches("[a-z]+(-[a-z]+)+"), id));
    }
}
