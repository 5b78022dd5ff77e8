// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject;
import org.loomwright.app.PrintSheets;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.fit.ChainJudge;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.sheets.PrintedSheets;
import org.loomwright.sheets.SheetKind;
import org.loomwright.sheets.page.Paper;
import org.loomwright.workbench.sheets.PrintRun;

/** What the dialog that prints does, without a window. */
class PrintRunTest {

    private static final Set<SheetKind> ALL = EnumSet.allOf(SheetKind.class);

    private final SourceReader reader = LoomReader.create();
    private final List<String> told = new ArrayList<>();

    @TempDir
    private Path root;
    private Project project;

    @BeforeEach
    void open() throws Exception {
        open(SmallHarness.TEXT);
    }

    private void open(String text) throws Exception {
        Files.writeString(root.resolve("one.loom"), text);
        project = new OpenProject(reader, 1).open(ProjectPlace.findOne(root, "one.loom"), Cancel.NEVER, Progress.NONE)
                .project();
    }

    private PrintRun.Outcome run(PrintRun run, Cancel cancel) throws BadCall {
        PrintSheets printer = new PrintSheets(StandardRules.engine(1), StandardRules.book().infos(), new ChainJudge(),
                new PrintedSheets(1));
        return run.run(project, root, printer, reader, Settings.TIMELESS, cancel, (what, done, total) -> told.add(what));
    }

    private static PrintRun all(String folder, boolean even) {
        return new PrintRun("one", "", ALL, Paper.A4, folder, even);
    }

    private List<String> files(String folder) throws Exception {
        try (Stream<Path> files = Files.list(root.resolve(folder))) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void whatIsAskedForIsWrittenWithProgress() throws Exception {
        PrintRun.Outcome all = run(all("all", true), Cancel.NEVER);
        assertEquals(all.files() + 1, files("all").size(), "the files and the list of them");
        assertTrue(all.pages() > SheetKind.values().length, all.words());
        assertTrue(told.contains("printing the wire list") && told.contains("writing all"), told.toString());
        byte[] cover = Files.readAllBytes(root.resolve("all/one-cover.pdf"));
        assertEquals("%PDF-", new String(cover, 0, 5, StandardCharsets.ISO_8859_1));

        run(new PrintRun("one", "", EnumSet.of(SheetKind.WIRE_LIST), Paper.LETTER, "all", true), Cancel.NEVER);
        assertTrue(files("all").contains("one-wire-list.pdf") && !files("all").contains("one-cover.pdf"));
    }

    @Test
    void afterCancelTheEarlierSetIsAsItWas() throws Exception {
        run(all("sheets", true), Cancel.NEVER);
        List<String> before = files("sheets");
        byte[] cover = Files.readAllBytes(root.resolve("sheets/one-cover.pdf"));
        told.clear();
        Cancel soon = () -> told.stream().filter(each -> each.startsWith("printing")).count() >= 3;
        PrintRun less = new PrintRun("one", "", EnumSet.complementOf(EnumSet.of(SheetKind.PARTS)), Paper.A3, "sheets",
                true);
        assertThrows(Cancelled.class, () -> run(less, soon));
        assertTrue(told.stream().filter(each -> each.startsWith("printing")).count() < 5, told.toString());
        assertEquals(before, files("sheets"));
        assertEquals(-1, java.util.Arrays.mismatch(cover, Files.readAllBytes(root.resolve("sheets/one-cover.pdf"))));
    }

    @Test
    void whatHasErrorsIsNotWrittenUnlessAskedFor() throws Exception {
        open(SmallHarness.TEXT.replace("to C:1", "to nowhere:1"));
        PrintRun.Outcome stamped = run(all("stamped", true), Cancel.NEVER);
        assertTrue(stamped.errors() > 0 && stamped.words().contains("stamp"), stamped.words());
        PrintRun.Outcome refused = run(all("refused", false), Cancel.NEVER);
        assertEquals(stamped.errors(), refused.errors());
        assertEquals(0, refused.files());
        assertTrue(refused.words().startsWith("No sheet was written"), refused.words());
        assertFalse(Files.exists(root.resolve("refused")));
    }

    @Test
    void badInputGetsOneLine() throws Exception {
        assertEquals("cannot write to one.loom: it is not a folder",
                assertThrows(BadCall.class, () -> run(all("one.loom", true), Cancel.NEVER)).getMessage());
        Files.createDirectory(root.resolve("mine"));
        Files.writeString(root.resolve("mine/letter.txt"), "dear");
        assertTrue(assertThrows(BadCall.class, () -> run(all("mine", true), Cancel.NEVER)).getMessage()
                .contains("letter.txt is not of a set of sheets"));
        assertEquals(List.of("letter.txt"), files("mine"));
        assertTrue(new PrintRun("", "", ALL, Paper.A4, "x", false).objection().isPresent());
        assertTrue(new PrintRun("one", "", Set.of(), Paper.A4, "x", false).objection().isPresent());
        assertTrue(all("  ", false).objection().isPresent());
        assertTrue(all("x", false).objection().isEmpty());
        assertEquals(List.of("one"), PrintRun.names(project));
    }
}
