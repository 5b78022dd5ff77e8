// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A project with a past: known findings do not count, new ones do. */
class BaselineTest {

    private static final String TEXT = """
            platform orrin "Orrin 1200" {
                years 1964 .. 1971
            }
            waive w1: orphan-wire on orrin because "one"
            waive w2: orphan-wire on orrin because "two"
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void project() throws IOException {
        Files.createDirectory(folder.resolve("p"));
        write(TEXT);
    }

    private void write(String text) throws IOException {
        Files.writeString(folder.resolve("p/all.loom"), text);
    }

    private Call check(String... more) {
        String[] args = new String[more.length + 2];
        args[0] = "check";
        args[1] = "p";
        System.arraycopy(more, 0, args, 2, more.length);
        return Call.in(folder, args);
    }

    private List<String> known() throws IOException {
        return Files.readAllLines(folder.resolve("known.txt")).stream().filter(line -> !line.startsWith("#")).toList();
    }

    @Test
    void knownFindingsAreCountedAndDoNotFail() throws IOException {
        assertEquals(Exit.FINDINGS, check().code());
        Call written = check("--write-baseline", "known.txt");
        assertEquals(Exit.FINE, written.code(), written::toString);
        assertEquals("wrote 2 known findings to known.txt\n", written.err());
        Call call = check("--baseline", "known.txt").isFine();
        assertEquals("p: no findings in 1 file; not counted: 2 known (--all)\n", call.out());
        Call all = check("--baseline", "known.txt", "--all").isFine();
        assertEquals(2, all.out().split("\\[waiver-unused] \\(known\\): ", -1).length - 1, all.out());
    }

    @Test
    void theFileIsSortedAndCanBeReviewed() throws IOException {
        check("--write-baseline", "known.txt");
        List<String> lines = known();
        assertEquals(lines.stream().sorted().toList(), lines);
        assertEquals(2, lines.size());
        for (String line : lines) {
            assertTrue(line.matches("[0-9a-f]{32}  # \\w+ waiver-unused on orrin: the waiver of .*"), line);
        }
        byte[] before = Files.readAllBytes(folder.resolve("known.txt"));
        check("--write-baseline", "known.txt", "--baseline", "known.txt");
        assertEquals(new String(before), Files.readString(folder.resolve("known.txt")), "written twice");
    }

    @Test
    void aNewFindingCountsAndMovedLinesAreNoMatter() throws IOException {
        check("--write-baseline", "known.txt");
        write("\n\n" + TEXT + "waive w3: orphan-wire on orrin because \"three\"\n");
        Call call = check("--baseline", "known.txt").finds("waiver-unused", "p/all.loom:8:");
        assertFalse(call.out().contains("\"one\""), call.out());
        assertTrue(call.out().endsWith("in 1 file; not counted: 2 known (--all)\n"), call.out());
        assertEquals(Exit.FINE, check("--baseline", "known.txt", "--fail-on", "never").code());
    }

    @Test
    void whatIsGoneIsSaidSoThatTheFileCanBeShortened() throws IOException {
        check("--write-baseline", "known.txt");
        write(TEXT.replaceAll("(?m)^waive w2.*\n", ""));
        Call call = check("--baseline", "known.txt").isFine();
        assertTrue(call.out().contains(
                "known.txt: 1 of 2 known findings is gone; --write-baseline shortens the file\n"), call.out());
        String gone = call.out().lines().filter(line -> line.startsWith("  gone: ")).findFirst().orElseThrow();
        assertTrue(known().stream().anyMatch(line -> gone.startsWith("  gone: " + line.substring(0, 32))), gone);
        Call json = check("--baseline", "known.txt", "--format", "json").isFine();
        assertTrue(json.out().contains("\"known\": 1") && json.out().contains("\"gone\": ["), json.out());
        check("--write-baseline", "known.txt");
        assertEquals(1, known().size());
        assertFalse(check("--baseline", "known.txt").isFine().out().contains("gone"));
    }

    @Test
    void whatCannotBeReadIsNeverKnown() throws IOException {
        write(TEXT + "drawing {\n");
        Call written = check("--write-baseline", "known.txt");
        assertEquals(Exit.FINDINGS, written.code(), "a text that cannot be read hides anything");
        assertEquals(2, known().size());
        assertEquals(Exit.FINDINGS, check("--baseline", "known.txt").code());
    }

    @Test
    void aMissingBaselineIsOneLine() {
        check("--baseline", "nowhere.txt").isRefused("no such baseline: nowhere.txt; --write-baseline writes one");
        check("--baseline", "").isRefused("no such baseline: ''");
        check("--baseline", "p").isRefused("no such baseline: p");
    }

    @ParameterizedTest
    @ValueSource(strings = {"hello", "0123", "{\"a\": 1}", "0123456789abcdef0123456789abcdef0",
        "0123456789abcdef0123456789abcdeg", "0123456789ABCDEF0123456789ABCDEF",
        "0123456789abcdef0123456789abcdef 0123456789abcdef0123456789abcdef"})
    void aDamagedBaselineIsOneLine(String line) throws IOException {
        Files.writeString(folder.resolve("known.txt"), "# words\n\n" + line + "\n");
        check("--baseline", "known.txt").isRefused(
                "the baseline known.txt is damaged: line 3 does not begin with a fingerprint");
        Files.write(folder.resolve("known.txt"), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
        check("--baseline", "known.txt").isRefused("the baseline known.txt cannot be read: it is not UTF-8 text");
    }

    @Test
    void aBaselineOfAnotherVersionIsOneLine() throws IOException {
        check("--write-baseline", "known.txt");
        String text = Files.readString(folder.resolve("known.txt"));
        assertTrue(text.contains("\n# version 1\n"), text);
        Files.writeString(folder.resolve("known.txt"), text.replace("# version 1", "# version 2"));
        check("--baseline", "known.txt").isRefused("the baseline known.txt is of version 2, and this program reads "
                + "version 1: write it anew with --write-baseline");
    }

    @Test
    void aBaselineNeverReplacesASource() throws IOException {
        Call call = check("--write-baseline", "p/all.loom");
        assertEquals(Exit.BAD_CALL, call.code());
        assertTrue(call.err().contains("will not write over a source"), call.err());
        assertEquals(TEXT, Files.readString(folder.resolve("p/all.loom")));
    }
}
