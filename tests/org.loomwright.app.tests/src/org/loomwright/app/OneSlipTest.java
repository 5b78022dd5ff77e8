// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.LinkedProject;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** One slip is told once, where it stands, and nothing is said that only follows from it. */
class OneSlipTest {

    private static List<String> findings(String text) throws BadCall {
        return StandardRules.engine().check(TextProject.open(text).project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE).counting().stream().filter(each -> each.severity().atLeast(Severity.WARNING))
                .map(Finding::rule).toList();
    }

    private static String example(String name) throws IOException {
        return Files.readString(Repository.root().resolve("docs/examples/broken/" + name + "-mended.loom"));
    }

    @Test
    void aStudOnAGroundThatNobodyDeclared() throws IOException, BadCall {
        String text = example("no-return-path");
        assertEquals(List.of(), findings(text));
        assertEquals(List.of("name-unknown"), findings(text.replace("bulkhead on body", "bulkhead on boddy")));
    }

    @Test
    void aDatumThatIsNoPlace() throws IOException, BadCall {
        assertEquals(List.of("branch-start-unknown", "end-unreached", "name-unknown"),
                findings(example("no-return-path").replace("datum bulkhead", "datum bulkhaed")).stream().sorted()
                        .distinct().toList());
    }

    @Test
    void aLimitThatIsSetLaterHoldsAtOnce() {
        SourceReader reader = Repository.reader();
        Source platform = reader.read("a.loom", "platform orrin\n".getBytes(StandardCharsets.UTF_8));
        Source first = practice(reader, "20 in");
        LinkedProject before = LinkedProject.of(List.of(platform, first));
        LinkedProject after = before.again(List.of(platform, practice(reader, "18 in")));
        assertEquals("18 in", after.project().platforms().get("orrin").limits().value(Limit.CLAMP_SPACING).written());
        assertEquals(0, after.again(after.project().sources()).afresh());
    }

    private static Source practice(SourceReader reader, String value) {
        return reader.read("b.loom", ("practice shop {\n    limit clampSpacing " + value + " source \"a test\"\n}\n")
                .getBytes(StandardCharsets.UTF_8));
    }
}
