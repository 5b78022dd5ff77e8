// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several projects in one call. */
class SeveralProjectsTest {

    private static final String FINE = "platform orrin \"Orrin 1200\" {\n    years 1964 .. 1971\n}\n";
    private static final String WARNED = FINE + "waive w: orphan-wire on orrin because \"a test\"\n";

    @TempDir
    private Path folder;

    private void project(String name, String text) throws IOException {
        Files.createDirectories(folder.resolve(name));
        Files.writeString(folder.resolve(name).resolve("all.loom"), text);
    }

    @Test
    void resultsComeInTheOrderGivenWithATotal() throws IOException {
        for (String name : List.of("e", "d", "c", "b", "a")) {
            project(name, name.equals("c") ? WARNED : FINE);
        }
        Call call = Call.in(folder, "check", "e", "d", "c", "b", "a");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        List<String> lines = call.out().lines().skip(call.out().lines().takeWhile(line -> !line.startsWith("e:"))
                .count()).toList();
        assertEquals(List.of("e", "d", "c", "b", "a", "5 projects"),
                lines.stream().map(line -> line.substring(0, line.indexOf(':'))).toList());
        assertTrue(lines.getLast().endsWith(" in 5 files"), lines.getLast());
        assertEquals(call, Call.in(folder, "check", "e", "d", "c", "b", "a"));
        assertEquals(Exit.FINE, Call.in(folder, "check", "e", "d", "b").code());
        assertEquals(Exit.FINE, Call.in(folder, "check", "e", "c", "--fail-on", "never").code());
    }

    @Test
    void oneThatCannotBeReadDoesNotStopTheOthers() throws IOException {
        project("fine", FINE);
        Files.createDirectory(folder.resolve("gone"));
        Files.createSymbolicLink(folder.resolve("gone/all.loom"), folder.resolve("nowhere"));
        Call call = Call.in(folder, "check", "gone", "fine");
        assertEquals(Exit.BAD_CALL, call.code(), call::toString);
        assertTrue(call.out().contains("fine: no findings in 1 file\n"), call.out());
        assertEquals(1, call.err().lines().count(), call.err());
        assertTrue(call.err().startsWith("loomwright: nothing could be read: gone/all.loom: "), call.err());
    }

    @Test
    void oneThatIsNotThereIsAWrongCall() throws IOException {
        project("fine", FINE);
        Call.in(folder, "check", "fine", "nowhere").isRefused("no such file or folder: nowhere");
    }
}
