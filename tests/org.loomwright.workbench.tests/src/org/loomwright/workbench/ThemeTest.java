// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The dark theme of the platform, in a process of its own: everything can be read, and nothing stayed light. */
class ThemeTest {

    private static final String DARK = "org.eclipse.e4.ui.css.theme.e4_dark";
    /** WCAG 2.2, 1.4.3: contrast of text to its ground. */
    private static final double TEXT = 4.5;

    @TempDir
    private Path folder;

    @Test
    @Tag("outside")
    void whatIsWrittenInTheDarkCanBeRead() throws Exception {
        List<String> told;
        try (OtherWorkbench dark = OtherWorkbench.start(Session.SHOW, folder.resolve("workspace"), folder, "dark",
                "-cssTheme", DARK)) {
            told = dark.ready();
        }
        assertEquals(List.of(), told.stream().filter(each -> each.matches("(control|style) .*")
                && figure(each) < TEXT).distinct().toList());
        assertEquals(List.of(), told.stream().filter(each -> each.startsWith("written ") && figure(each) < TEXT)
                .toList());
        // board and circuit are sheets of paper on a dark table: that alone is white
        assertEquals(List.of(), told.stream().filter(each -> each.matches("ground (editor|harness) .*")
                && figure(each) > 0.1).toList(), "what lies under what is written is dark");
        assertEquals(List.of(), told.stream().filter(each -> each.matches("light (editor|harness) .*")
                && figure(each) > 0.2).toList(), "no large part is light");
        assertTrue(told.stream().filter(each -> each.startsWith("control ")).count() > 100);
        assertTrue(told.stream().filter(each -> each.startsWith("style ")).count() > 100);
        assertEquals(Set.of("editor", "harness", "formboard", "circuit"), told.stream().filter(each ->
                each.startsWith("ground ")).map(each -> each.split(" ")[1]).collect(Collectors.toSet()));
    }

    private static double figure(String line) {
        return Double.parseDouble(line.substring(line.lastIndexOf(' ') + 1));
    }
}
