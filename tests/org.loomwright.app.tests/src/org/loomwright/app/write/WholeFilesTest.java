// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;

class WholeFilesTest {

    @TempDir
    private Path folder;

    private List<String> left() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).map(file -> folder.relativize(file).toString()).sorted().toList();
        }
    }

    @Test
    void makesFoldersAndLeavesNothingElseBehind() throws Exception {
        new WholeFiles().add(folder.resolve("a/b/one.csv"), new byte[] {1}).add(folder.resolve("a/two.csv"),
                new byte[] {2}).write();
        assertEquals(List.of("a/b/one.csv", "a/two.csv"), left());
        assertArrayEquals(new byte[] {1}, Files.readAllBytes(folder.resolve("a/b/one.csv")));
    }

    @Test
    void refusesASourceAndWritesNothingOfTheRest() throws Exception {
        Files.writeString(folder.resolve("front.loom"), "kept");
        WholeFiles files = new WholeFiles().add(folder.resolve("one.csv"), new byte[] {1})
                .add(folder.resolve("front.loom"), new byte[] {2});
        BadCall refused = assertThrows(BadCall.class, files::write);
        assertTrue(refused.getMessage().startsWith("will not write over a source: "), refused.getMessage());
        assertEquals(List.of("front.loom"), left());
        assertEquals("kept", Files.readString(folder.resolve("front.loom")));
    }

    @Test
    void refusesALinkBecauseASourceMayBeBehindIt() throws Exception {
        Files.writeString(folder.resolve("front.loom"), "kept");
        Files.createSymbolicLink(folder.resolve("one.csv"), folder.resolve("front.loom"));
        WholeFiles files = new WholeFiles().add(folder.resolve("one.csv"), new byte[] {1});
        assertThrows(BadCall.class, files::write);
        assertEquals("kept", Files.readString(folder.resolve("front.loom")));
        assertTrue(Files.isSymbolicLink(folder.resolve("one.csv")));
    }

    @Test
    void aFileInPlaceOfTheFolderIsOneLineAndNothingHalfWritten() throws Exception {
        Files.writeString(folder.resolve("taken"), "kept");
        WholeFiles files = new WholeFiles().add(folder.resolve("fine/one.csv"), new byte[] {1})
                .add(folder.resolve("taken/two.csv"), new byte[] {2});
        BadCall refused = assertThrows(BadCall.class, files::write);
        assertEquals(1, refused.getMessage().lines().count());
        assertEquals(List.of("taken"), left());
    }

    @Test
    void theSameContentIsNotWrittenAgain() throws Exception {
        Path file = folder.resolve("one.csv");
        new WholeFiles().add(file, new byte[] {1}).write();
        FileTime old = FileTime.fromMillis(1_000_000);
        Files.setLastModifiedTime(file, old);
        new WholeFiles().add(file, new byte[] {1}).write();
        assertEquals(old, Files.getLastModifiedTime(file));
        new WholeFiles().add(file, new byte[] {2}).write();
        assertFalse(old.equals(Files.getLastModifiedTime(file)));
    }

    @Test
    void rewritesASourceThroughALinkAndKeepsThePermissions() throws Exception {
        Path real = Files.writeString(folder.resolve("real.loom"), "old");
        Files.setPosixFilePermissions(real, PosixFilePermissions.fromString("rw-rw-r--"));
        Path link = Files.createSymbolicLink(folder.resolve("link.loom"), real);
        new WholeFiles().add(link, "new".getBytes(StandardCharsets.UTF_8)).rewrite();
        assertEquals("new", Files.readString(real));
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("rw-rw-r--",
                PosixFilePermissions.toString(Files.getPosixFilePermissions(real)));
    }

    @Test
    void whatAKilledProcessLeftIsRemovedByTheNextWriteAndNothingElse() throws Exception {
        Path file = folder.resolve("one.csv");
        long gone = new ProcessBuilder("true").start().onExit().get().pid();
        long self = ProcessHandle.current().pid();
        Files.writeString(folder.resolve(".one.csv." + gone + ".part"), "half");
        Files.writeString(folder.resolve(".one.csv." + self + ".part"), "half, of a process with my number");
        Files.writeString(folder.resolve(".one.csv.1.part"), "of a process that is still there");
        Files.writeString(folder.resolve(".one.csv.my.part"), "somebody's own");
        Files.writeString(folder.resolve(".two.csv." + gone + ".part"), "of another file");
        new WholeFiles().add(file, new byte[] {1}).write();
        assertEquals(List.of(".one.csv.1.part", ".one.csv.my.part", ".two.csv." + gone + ".part", "one.csv"), left());
    }

    /** The long run of 1,000 kills is {@link KillsWhileWriting#main}; its result is in docs/performance.md. */
    @Test
    void everyFileIsOneWholeGenerationWheneverTheWriterIsKilled() throws Exception {
        KillsWhileWriting.Outcome outcome = new KillsWhileWriting(folder, 7).kill(25);
        assertEquals(List.of(), outcome.faults());
        assertTrue(outcome.written() > 0 && outcome.halfway() > 0, outcome.toString());
    }
}
