// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever follows {@code docs/first-hour.md} word by word sees what stands there. */
class FirstHourTest {

    private static final Pattern BLOCK = Pattern.compile("```(\\w*)\n(.*?)```", Pattern.DOTALL);
    private static final Pattern FILE = Pattern.compile("`(\\w[\\w-]*\\.loom)`");
    private static final String PROMPT = "$ ./loomwright ";
    private static final String LEFT_OUT = "...";
    private static final String MORE = " ".repeat(14);

    @TempDir
    private Path folder;

    @Test
    void everyCommandPrintsWhatTheDocumentShows() throws IOException {
        String document = Files.readString(Path.of(System.getProperty("loomwright.root"), "docs/first-hour.md"))
                .replace("\r\n", "\n");
        Path wren = Files.createDirectory(folder.resolve("wren"));
        List<Integer> codes = new ArrayList<>();
        Matcher block = BLOCK.matcher(document);
        int before = 0;
        while (block.find()) {
            String text = block.group(2);
            if (block.group(1).equals("loom")) {
                Files.writeString(wren.resolve(named(document.substring(before, block.start()))), text);
            } else if (text.startsWith(PROMPT)) {
                int line = text.indexOf('\n');
                if (codes.size() == 1) {
                    slip(wren);
                }
                Call call = Call.in(folder, text.substring(PROMPT.length(), line).split(" "));
                assertShown(text.substring(line + 1), call.out());
                assertEquals("", call.err());
                codes.add(call.code());
                if (codes.size() == 2) {
                    mend(wren);
                } else if (codes.size() == 3) {
                    change(wren.resolve("front-harness.loom"), "headlampLeft 235 mm", "headlampLeft 255 mm");
                }
            } else {
                String first = text.lines().findFirst().orElseThrow();
                assertTrue(first.startsWith("wire,"), first);
                assertEquals(text, Files.readString(folder.resolve("loomwright-out/wren/front-wires.csv"))
                        .replace("\r\n", "\n"));
            }
            before = block.end();
        }
        assertEquals(List.of(Exit.FINE, Exit.FINDINGS, Exit.FINDINGS, Exit.FINE, Exit.FINE), codes);
    }

    /** The file that the last words before a block name. */
    private static String named(String words) {
        String name = "";
        for (Matcher file = FILE.matcher(words); file.find();) {
            name = file.group(1);
        }
        assertTrue(!name.isEmpty(), () -> "no file is named before the block, in: " + words);
        return name;
    }

    /** The three slips of the hand that the document tells of. */
    private static void slip(Path wren) throws IOException {
        Path drawing = wren.resolve("front-1968.loom");
        change(drawing, "at 61 in", "at 61");
        change(drawing, "to H2:1", "to H2:3");
        change(drawing, "fills front {", "fills front when year <= 1970 {");
    }

    private static void mend(Path wren) throws IOException {
        Path drawing = wren.resolve("front-1968.loom");
        change(drawing, "at 61", "at 61 in");
        change(drawing, "to H2:3", "to H2:1");
        change(drawing, "fills front when year <= 1970 {", "fills front {");
    }

    private static void change(Path file, String from, String to) throws IOException {
        String text = Files.readString(file);
        assertTrue(text.contains(from), from);
        Files.writeString(file, text.replace(from, to));
    }

    /** The same lines; what the document leaves out with three dots may be anything, with its further lines. */
    private static void assertShown(String expected, String printed) {
        List<String> lines = new ArrayList<>(printed.lines().toList());
        List<String> shown = new ArrayList<>();
        for (String line : expected.lines().toList()) {
            String next = lines.isEmpty() ? "" : lines.removeFirst();
            String start = line.endsWith(LEFT_OUT) ? line.substring(0, line.length() - LEFT_OUT.length()) : null;
            if (start == null || !next.startsWith(start)) {
                shown.add(next);
                continue;
            }
            shown.add(line);
            while (!lines.isEmpty() && lines.getFirst().startsWith(MORE)) {
                lines.removeFirst();
            }
        }
        shown.addAll(lines);
        assertEquals(expected.stripTrailing(), String.join("\n", shown).stripTrailing());
    }
}
