// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.act.Action;
import org.loomwright.rules.Finding;

/** Every rule that has a fix offers it where the finding is, and the fix mends the finding. */
class ActionsTest {

    private static final Path BROKEN = Bench.ROOT.resolve("docs/examples/broken");

    private static List<Path> examples() throws IOException {
        try (Stream<Path> files = Files.list(BROKEN)) {
            return files.filter(path -> !path.getFileName().toString().contains("-mended")).sorted().toList();
        }
    }

    private static Bench bench(Path example) throws IOException {
        return Files.isDirectory(example) ? Bench.folder(example)
                : Bench.of(example.getFileName().toString(), Files.readString(example));
    }

    @Test
    void everyFixOfABrokenExampleIsOfferedAndCertainOnesMend() throws IOException {
        Set<String> mended = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        for (Path example : examples()) {
            Bench bench = bench(example);
            for (Finding finding : bench.checked().findings()) {
                if (!finding.counts()) {
                    continue;
                }
                String file = finding.place().span().file();
                List<Action> offered = Services.actions(bench.checked(), file, finding.place().span().offset(),
                        finding.place().span().offset());
                for (Finding.Fix fix : finding.fixes()) {
                    if (offered.stream().noneMatch(action -> action.edits().equals(fix.edits()))) {
                        wrong.add(example.getFileName() + ": " + fix.title() + " is not offered");
                    }
                    if (fix.certain() && mends(example, bench, finding, fix)) {
                        mended.add(finding.rule());
                    } else if (fix.certain()) {
                        wrong.add(example.getFileName() + ": " + fix.title() + " does not mend");
                    }
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertFalse(mended.isEmpty(), "some rules have fixes");
    }

    private static boolean mends(Path example, Bench before, Finding finding, Finding.Fix fix) throws IOException {
        Bench after = bench(example);
        fix.edits().stream().map(edit -> edit.span().file()).distinct()
                .forEach(file -> after.with(file, before.edited(file, fix.edits())));
        return after.checked().findings().stream().noneMatch(each -> each.counts()
                && each.rule().equals(finding.rule()) && each.element().equals(finding.element())
                && each.sentence().equals(finding.sentence()));
    }

    @Test
    void aFindingCanBeAcceptedWithAReason() throws IOException {
        Bench bench = bench(BROKEN.resolve("cavity-taken-twice.loom"));
        Finding finding = bench.checked().findings().stream().filter(Finding::counts).findFirst().orElseThrow();
        String file = finding.place().span().file();
        Action accept = Services.actions(bench.checked(), file, finding.place().span().offset(),
                finding.place().span().end()).stream().filter(action -> action.title().startsWith("accept"))
                .findFirst().orElseThrow();
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
