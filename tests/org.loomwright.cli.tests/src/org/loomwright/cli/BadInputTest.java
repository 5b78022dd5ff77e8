// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What people really hand to a command line. */
class BadInputTest {

    private static final String PLATFORM = """
            platform orrin "Orrin 1200" {
                supply 12 V negative ground
                years 1964 .. 1971
                position front
                place bulkhead
                place lamp
            }
            """;

    private static final String DRAWING = """
            drawing front64 "Front 1964" of orrin fills front {
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
            }
            """;

    @TempDir
    private Path folder;

    private Path file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    private Path file(String name, byte[] bytes) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.write(file, bytes);
    }

    private Call check(String... paths) {
        String[] args = new String[paths.length + 1];
        args[0] = "check";
        System.arraycopy(paths, 0, args, 1, paths.length);
        return Call.in(folder, args);
    }

    @ParameterizedTest
    @ValueSource(strings = {"prove", "check", "fit", "format"})
    void anUnknownPathIsNamed(String command) {
        Call.in(folder, command, "nowhere/at.loom").isRefused("no such file or folder: nowhere/at.loom");
    }

    @ParameterizedTest
    @ValueSource(strings = {"prove", "check", "fit", "format"})
    void anEmptyFolderIsNoProject(String command) throws IOException {
        Files.createDirectory(folder.resolve("empty"));
        Call.in(folder, command, "empty").isRefused("no .loom file in the folder empty");
    }

    @Test
    void aFolderWithoutSourcesIsNoProject() throws IOException {
        file("p/notes.txt", "hello");
        file("p/.hidden/x.loom", PLATFORM);
        check("p").isRefused("no .loom file in the folder p");
    }

    @Test
    void anEmptyArgumentIsNotTheCurrentFolder() {
        check("").isRefused("no such file or folder: ''");
    }

    @Test
    void aFileOverFourMegabytesIsAFindingAndIsNotRead() throws IOException {
        file("p/orrin.loom", PLATFORM);
        try (RandomAccessFile large = new RandomAccessFile(folder.resolve("p/large.loom").toFile(), "rw")) {
            large.setLength((4L << 20) + 1);
        }
        check("p").finds("file-too-big", "p/large.loom:1:1");
    }

    @Test
    void binaryGarbageIsAFinding() throws IOException {
        byte[] garbage = new byte[20_000];
        new Random(7).nextBytes(garbage);
        file("p/orrin.loom", PLATFORM);
        file("p/picture.loom", garbage);
        check("p").finds("not-text", "p/picture.loom:1:1");
    }

    @Test
    void utf16IsAFindingThatNamesTheEncoding() throws IOException {
        file("p/orrin.loom", ("\ufeff" + PLATFORM).getBytes(StandardCharsets.UTF_16LE));
        Call call = check("p").finds("not-text", "p/orrin.loom:1:1");
        assertTrue(call.out().contains("UTF-16"), call.out());
    }

    @Test
    void carriageReturnsAndAByteOrderMarkAreNoMatter() throws IOException {
        file("p/orrin.loom", "\ufeff" + PLATFORM.replace("\n", "\r\n"));
        check("p").isFine();
        file("p/front.loom", "\ufeff" + DRAWING.replace("lamp 200", "lmap 200").replace("\n", "\r\n"));
        Call call = check("p").finds("name-unknown", "p/front.loom:6:28");
        assertFalse(call.out().contains("\r"), "a carriage return in the excerpt");
    }

    @Test
    void deepNestingIsAFinding() throws IOException {
        file("p/deep.loom", "platform p { ".repeat(5_000));
        Call call = check("p");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        file("p/deep.loom", PLATFORM + "drawing d of orrin when " + "(".repeat(100_000) + "heater" + ")".repeat(100_000)
                + " {\n}\n");
        assertEquals(Exit.FINDINGS, check("p").code());
    }

    @Test
    void aPlatformWithNoPossibleVehicleIsAFinding() throws IOException {
        file("p/orrin.loom", PLATFORM.replace("position",
                "option heater\n    never heater\n    never not heater\n    position"));
        file("p/front.loom", DRAWING);
        Call call = check("p");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().startsWith("error["), call.out());
    }

    @Test
    void aWireToItselfIsAFinding() throws IOException {
        file("p/orrin.loom", PLATFORM);
        file("p/front.loom", DRAWING.replace("200 mm\n}", """
                200 mm
                    circuit 1 "Lamp" BK {
                        splice S1 at wing
                        wire a 18 ga from S1 to S1
                    }
                }
                """.stripIndent().strip()));
        Call call = check("p");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains("p/front.loom:"), call.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e999 mm", "99999999999 in", "-5 mm", "NaN mm", "1/0 in", "0.0000000000000000001 mm", "5"})
    void absurdLengthsAreFindings(String length) throws IOException {
        file("p/orrin.loom", PLATFORM);
        file("p/front.loom", DRAWING.replace("500 mm", length));
        Call call = check("p");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains("p/front.loom:4:"), call.out());
        for (String command : new String[] {"fit", "prove"}) {
            assertTrue(Call.in(folder, command, "p").code() != Exit.FAULT, command);
        }
    }

    @Test
    void aSymbolicLinkLoopEnds() throws IOException {
        file("p/a/orrin.loom", PLATFORM);
        Files.createSymbolicLink(folder.resolve("p/a/again"), folder.resolve("p"));
        Files.createSymbolicLink(folder.resolve("p/self.loom"), folder.resolve("p/self.loom"));
        Call call = check("p");
        call.finds("file-unreadable", "p/self.loom:1:1");
        assertTrue(call.out().contains("1 error in 2 files"), call.out());
    }

    @Test
    void aLinkToNothingIsRefusedWhenItIsAll() throws IOException {
        Files.createDirectory(folder.resolve("p"));
        Files.createSymbolicLink(folder.resolve("p/gone.loom"), folder.resolve("nowhere"));
        check("p").isRefused("p/gone.loom: the file cannot be read: it is a link to something that does not exist");
    }

    @Test
    void aFolderNamedLikeASourceIsAFolder() throws IOException {
        file("p/x.loom/orrin.loom", PLATFORM);
        check("p").isFine();
        check("p/x.loom").isFine();
        Files.createDirectory(folder.resolve("y.loom"));
        check("y.loom").isRefused("no .loom file in the folder y.loom");
    }

    @Test
    void aProjectGivenTwiceIsCheckedOnce() throws IOException {
        file("p/orrin.loom", PLATFORM);
        Call call = check("p", "./p/", "p/../p").isFine();
        assertEquals(1, call.out().lines().count(), call.out());
        Call files = check("p/orrin.loom", "p/../p/orrin.loom").isFine();
        assertTrue(files.out().contains("in 1 file"), files.out());
        assertEquals(call.out(), check("p", "p/orrin.loom").isFine().out());
    }

    @Test
    void severalFilesAreOneProjectAndSeveralFoldersAreSeveral() throws IOException {
        file("p/orrin.loom", PLATFORM);
        file("q/orrin.loom", PLATFORM);
        file("p/front.loom", DRAWING);
        check("p", "q").isFine();
        check("p/orrin.loom", "p/front.loom").isFine();
        assertEquals(Exit.FINDINGS, check("p/orrin.loom", "q/orrin.loom").code(), "one name, two platforms");
    }

    @Test
    void aSyntaxErrorIsAFindingWithItsLine() throws IOException {
        file("p/orrin.loom", PLATFORM.replace("years 1964 .. 1971", "years 1964 bis 1971"));
        Call call = check("p");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains("p/orrin.loom:3:"), call.out());
        assertTrue(call.out().contains("years 1964 bis 1971"), call.out());
    }

    @Test
    void namesOfFilesCannotStainTheTerminal() throws IOException {
        file("p/\u001b[31mred.loom", "platform {{{\n");
        Call call = check("p");
        assertFalse(call.out().contains("\u001b"), call.out());
    }
}
