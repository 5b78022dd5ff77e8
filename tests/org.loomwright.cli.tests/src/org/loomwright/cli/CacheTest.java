// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A project that did not change is not checked again, and nobody can tell from what is printed. */
class CacheTest {

    private static final String TEXT = """
            platform orrin "Orrin 1200" {
                years 1964 .. 1971
            }
            waive w1: orphan-wire on orrin because "±"
            waive w2: orphan-wire on orrin because "old" until 2027-06-30
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void project() throws IOException {
        Files.createDirectory(folder.resolve("p"));
        Files.writeString(folder.resolve("p/all.loom"), TEXT);
    }

    private Call check(String... more) {
        return check(Map.of(Caches.FOLDER, "kept"), more);
    }

    private Call check(Map<String, String> environment, String... more) {
        String[] args = new String[more.length + 2];
        args[0] = "check";
        args[1] = "p";
        System.arraycopy(more, 0, args, 2, more.length);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Main.run(args, new Door(new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), folder, environment, false, false));
        return new Call(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** The answers that are kept; what was silent lies beside them, in files of its own. */
    private List<String> kept() throws IOException {
        return all().stream().filter(name -> name.endsWith(".report")).toList();
    }

    private List<String> all() throws IOException {
        return Files.exists(folder.resolve("kept")) ? Call.files(folder.resolve("kept")) : List.of();
    }

    @Test
    void theSecondAnswerIsTheSameToTheByteInEveryFormat() throws IOException {
        for (String format : List.of("text", "json", "sarif", "junit")) {
            String[] args = {"--format", format, "--all", "--today", "2027-01-01"};
            Call anew = check(Map.of(), args);
            assertEquals(anew, check(args), format);
            assertEquals(anew, check(args), format);
        }
        assertEquals(1, kept().size());
    }

    @Test
    void aKeptAnswerIsReallyUsed() throws IOException {
        Call first = check("--today", "2027-01-01");
        Path report = folder.resolve("kept").resolve(kept().getFirst());
        Call other = check("--today", "2028-01-01");
        assertNotEquals(first, other, "the day is part of the question: a waiver is over");
        Path second = folder.resolve("kept").resolve(
                kept().stream().filter(name -> !report.endsWith(name)).findFirst().orElseThrow());
        Files.copy(second, report, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        assertEquals(other, check("--today", "2027-01-01"), "what lies in the cache is what is printed");
        assertEquals(first, check("--today", "2027-01-01", "--no-cache"));
    }

    @Test
    void aChangedByteIsSeen() throws IOException {
        check();
        Files.writeString(folder.resolve("p/all.loom"), TEXT.replace("w1", "w3"));
        check();
        assertEquals(2, kept().size());
        Files.move(folder.resolve("p/all.loom"), folder.resolve("p/none.loom"));
        check();
        assertEquals(3, kept().size(), "so is another name");
        Files.writeString(folder.resolve("p/more.loom"), "");
        check();
        assertEquals(4, kept().size(), "and another file");
        check();
        assertEquals(4, kept().size());
    }

    @Test
    void aDamagedAnswerIsMadeAnew() throws IOException {
        Call first = check();
        Path report = folder.resolve("kept").resolve(kept().getFirst());
        byte[] good = Files.readAllBytes(report);
        for (int at = 0; at < good.length; at += 7) {
            byte[] bad = good.clone();
            bad[at] ^= 0x11;
            Files.write(report, bad);
            assertEquals(first, check(), "byte " + at);
            assertEquals(good.length, Files.size(report));
        }
        Files.write(report, new byte[0]);
        assertEquals(first, check());
        assertEquals(-1, Files.mismatch(report, Files.write(folder.resolve("good"), good)), "it is written again");
    }

    @Test
    void aCacheThatCannotBeWrittenIsNoMatter() throws IOException {
        Call anew = check(Map.of());
        Files.writeString(folder.resolve("kept"), "in the way");
        assertEquals(anew, check());
        assertEquals("in the way", Files.readString(folder.resolve("kept")));
    }

    @Test
    void whatCannotBeReadIsNotKept() throws IOException {
        Files.createSymbolicLink(folder.resolve("p/gone.loom"), folder.resolve("nowhere"));
        assertEquals(check(Map.of()), check());
        assertEquals(List.of(), all());
    }

    @Test
    void noCacheKeepsNothing() throws IOException {
        check("--no-cache");
        check(Map.of(Caches.FOLDER, "off", "HOME", folder.toString()));
        assertEquals(List.of("p/all.loom"), Call.files(folder));
    }

    @Test
    void theFolderIsTheOneOfTheUser() {
        Map<String, String> environment = new HashMap<>(Map.of("HOME", "/home/anna"));
        Path base = Path.of("/base");
        assertEquals(Optional.empty(), Caches.folder(base, Map.of()));
        assertEquals(Optional.of(Path.of("/home/anna/.cache/loomwright/reports")), Caches.folder(base, environment));
        environment.put("XDG_CACHE_HOME", "relative/does/not/count");
        assertEquals(Optional.of(Path.of("/home/anna/.cache/loomwright/reports")), Caches.folder(base, environment));
        environment.put("XDG_CACHE_HOME", "/fast");
        assertEquals(Optional.of(Path.of("/fast/loomwright/reports")), Caches.folder(base, environment));
        environment.put(Caches.FOLDER, "here");
        assertEquals(Optional.of(Path.of("/base/here")), Caches.folder(base, environment));
        environment.put(Caches.FOLDER, "off");
        assertEquals(Optional.empty(), Caches.folder(base, environment));
    }

    @Test
    void anotherBuildIsAnother() throws IOException {
        Path classes = Files.createDirectories(folder.resolve("classes/a"));
        Path jar = folder.resolve("b.jar");
        Files.writeString(classes.resolve("X.class"), "one");
        Files.writeString(jar, "two");
        String path = folder.resolve("classes") + File.pathSeparator + jar;
        String first = Build.of(path).orElseThrow();
        assertEquals(first, Build.of(path).orElseThrow());
        Files.writeString(classes.resolve("X.class"), "0ne");
        String second = Build.of(path).orElseThrow();
        assertNotEquals(first, second);
        Files.writeString(jar, "tw0");
        assertNotEquals(second, Build.of(path).orElseThrow());
        assertTrue(Build.identity().isPresent());
    }
}
