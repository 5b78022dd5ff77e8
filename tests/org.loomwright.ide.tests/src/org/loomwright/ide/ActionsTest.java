// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.act.Action;
import org.loomwright.rules.Finding;

/** Accepting a finding, and all certain changes at once; {@link FixesOfRulesTest} tries the changes of rules. */
class ActionsTest {

    private static final Path BROKEN = Bench.ROOT.resolve("docs/examples/broken");

    private static Bench bench(Path example) throws IOException {
        return Files.isDirectory(example) ? Bench.folder(example)
                : Bench.of(example.getFileName().toString(), Files.readString(example));
    }

    @Test
    void aFindingCanBeAcceptedWithAReason() throws IOException {
        Bench bench = bench(BROKEN.resolve("cavity-taken-twice.loom"));
        Finding finding = bench.checked().findings().stream().filter(Finding::counts).findFirst().orElseThrow();
        String file = finding.place().span().file();
        Action accept = Services.actions(bench.checked(), file, finding.place().span().offset(),
                finding.place().span().end()).stream().filter(action -> action.title().startsWith("accept"))
                .findFirst().orElseThrow();
        assertTrue(accept.accepts());
        assertEquals(List.of(accept), Services.actions(bench.checked(), finding).stream().filter(Action::accepts)
                .toList());
        Bench after = Bench.of(file, bench.edited(file, accept.edits()));
        assertEquals(List.of(), after.checked().findings().stream().filter(Finding::counts).map(Finding::sentence)
                .toList());
        assertTrue(after.text(file).contains("because \"say why\""));
    }

    @Test
    void allCertainChangesOfAFileAreOneAction() {
        String text = "platform p {\n    yeers 1964 .. 1965\n    plase box\n    place b2 in box3\n}\n";
        Bench bench = Bench.of("a.loom", text);
        List<TextEdit> edits = Services.mendAll(bench.checked(), "a.loom").orElseThrow().edits();
        String after = bench.edited("a.loom", edits);
        assertTrue(after.contains("years 1964") && after.contains("place box"), after);
        assertTrue(Services.mendAll(Bench.orrin().moment(), "orrin.loom").isEmpty());
    }
}
