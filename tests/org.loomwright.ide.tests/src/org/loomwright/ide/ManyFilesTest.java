// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.navigate.Rename;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** A workspace with 5,000 files: all of them are known, and an edit of one leaves the others what they are. */
class ManyFilesTest {

    private static final int FILES = 5_000;

    @TempDir
    private Path folder;

    private static String drawing(int number) {
        return "drawing d" + number + " of p when year = " + (1_901 + number % 100)
                + " {\n    datum box\n    circuit 1 BK {\n        splice S at box\n    }\n}\n";
    }

    @Test
    void allAreKnownAndAnEditCostsOne() throws Exception {
        Files.writeString(folder.resolve("p.loom"), "platform p {\n    years 1901 .. 2000\n    place box\n}\n");
        for (int i = 0; i < FILES; i++) {
            Path sub = folder.resolve("part" + i / 1_000);
            Files.createDirectories(sub);
            Files.writeString(sub.resolve("d" + i + ".loom"), drawing(i));
        }
        Path file = folder.resolve("part4/d4321.loom");
        Map<Integer, Integer> told = new ConcurrentHashMap<>();
        try (Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(1), Settings.TIMELESS,
                new Pace(Duration.ofHours(1), Duration.ZERO),
                (path, version, moment, findings) -> version.ifPresent(each -> told.put(each, findings.size())))) {
            workspace.in(List.of(folder));
            workspace.opened(file, 1, drawing(4_321));
            Moment opened = workspace.ask(file, (moment, name, cancel) -> moment).get(5, TimeUnit.MINUTES);
            assertEquals(FILES + 1, opened.project().sources().size());
            assertEquals(FILES, opened.project().wirings().size());
            assertEquals(List.of(), opened.findings());
            assertEquals(0, told.get(1));

            workspace.changed(file, 2, drawing(4_321).replace("datum box", "datum bax"));
            Moment changed = workspace.ask(file, (moment, name, cancel) -> moment).get(5, TimeUnit.MINUTES);
            assertEquals(1, told.get(2));
            for (int i = 0; i < FILES; i++) {
                if (i != 4_321) {
                    String name = "d" + i;
                    assertSame(opened.project().wirings().get(name), changed.project().wirings().get(name), name);
                }
            }
            assertNotSame(opened.project().wirings().get("d4321"), changed.project().wirings().get("d4321"));

            workspace.changed(file, 3, drawing(4_321));
            Rename.Renamed renamed = workspace.ask(file, (moment, name, cancel) -> Services.rename(moment, name,
                    drawing(4_321).indexOf("box"), "case", cancel)).get(5, TimeUnit.MINUTES);
            assertEquals(2 * FILES + 1, renamed.edits().size(), "each datum, each splice, and where it is declared");
            assertTrue(workspace.ask(file, (moment, name, cancel) -> Services.search(moment, "d777", cancel)).get(5,
                    TimeUnit.MINUTES).stream().anyMatch(each -> each.symbol().name().equals("d777")));
        }
    }
}
