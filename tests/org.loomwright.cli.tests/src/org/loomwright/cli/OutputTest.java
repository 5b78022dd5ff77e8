// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where results go, and what happens when they cannot go there. */
class OutputTest {

    private static final String PROJECT = """
            platform orrin "Orrin 1200" {
                years 1964 .. 1971
                position front
                place bulkhead
                place lamp
            }
            catalogue parts {
                cable pvc "PVC cable" {
                    temperature 85 C
                }
            }
            drawing front64 "Front 1964" of orrin fills front {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
            }
            harness ours "Front" of orrin fills front {
                covers front64
                cable pvc
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 250 mm
            }
            kit box "Front kit" revision "A" of orrin {
                contains ours
            }
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void project() throws IOException {
        Files.createDirectory(folder.resolve("p"));
        Files.writeString(folder.resolve("p/all.loom"), PROJECT);
    }

    @Test
    void proveSaysWhereItWroteAndWritesThere() throws IOException {
        Call call = Call.in(folder, "prove", "p").isFine();
        assertTrue(call.out().contains("p: nothing to object to"), call.out());
        assertTrue(call.out().contains("fits the drawings as transcribed: 2 lengths from sheets"), call.out());
        assertTrue(call.out().contains("loomwright-out/p: ours-wires.csv, ours-parts.csv, box-kit.csv"), call.out());
        assertTrue(call.out().contains("not checked"), call.out());
        assertFalse(call.out().toLowerCase(Locale.ROOT).contains("safe"), call.out());
        assertEquals(List.of("loomwright-out/p/box-kit.csv", "loomwright-out/p/ours-parts.csv",
                "loomwright-out/p/ours-wires.csv", "p/all.loom"), Call.files(folder));
    }

    @Test
    void proveWritesNoListThatSomebodyCouldCutFromWhenItObjects() throws IOException {
        Files.writeString(folder.resolve("p/all.loom"), PROJECT.replace("lamp 250 mm", "lamp 200 mm"));
        Call call = Call.in(folder, "prove", "p").finds("place-not-reached", "p/all.loom:27:12");
        assertTrue(call.out().contains("p: not proved"), call.out());
        assertTrue(call.out().contains("none written"), call.out());
        assertEquals(List.of("p/all.loom"), Call.files(folder));
    }

    @Test
    void whatIsNotKnownIsNotProvedAndNotGuessed() throws IOException {
        Files.writeString(folder.resolve("p/all.loom"), PROJECT.replace("lamp 200 mm", "lamp unknown"));
        Call call = Call.in(folder, "fit", "p").finds("length-unknown", "p/all.loom:18:33");
        assertTrue(call.out().contains("ours not proved: 1 length from sheets, 1 missing"), call.out());
        assertEquals(Exit.FINE, Call.in(folder, "fit", "p", "--fail-on", "error").code());
    }

    @Test
    void whatSomebodyAcceptedDoesNotCountAndOtherRulesAreNotAsked() throws IOException {
        String waived = "waive w: place-not-reached on ours:b1 because \"spliced on the vehicle\"\n"
                + "waive x: orphan-wire on ours because \"asked by check alone\"\n";
        Files.writeString(folder.resolve("p/all.loom"), PROJECT.replace("lamp 250 mm", "lamp 200 mm") + waived);
        Call call = Call.in(folder, "fit", "p").isFine();
        assertTrue(call.out().contains("ours fits but for what is accepted"), call.out());
        assertFalse(call.out().contains("waiver-unused"), call.out());
    }

    @Test
    void twoCallsWriteTheSameBytes() throws IOException {
        Call.in(folder, "sheets", "p", "--to", "one").isFine();
        Call.in(folder, "sheets", "p", "--to", "two").isFine();
        for (String name : Call.files(folder.resolve("one"))) {
            assertEquals(-1, Files.mismatch(folder.resolve("one").resolve(name), folder.resolve("two").resolve(name)));
        }
        assertTrue(Call.files(folder.resolve("two")).contains("ours-wire-list.pdf"));
    }

    @Test
    void aFileInPlaceOfTheFolderIsOneLineAndNothingIsWritten() throws IOException {
        Files.writeString(folder.resolve("taken"), "kept");
        Call.in(folder, "sheets", "p", "--to", "taken").isRefused("cannot write to taken: it is not a folder");
        Call.in(folder, "sheets", "p", "--to", "taken/below").isRefused("cannot write");
        Call.in(folder, "prove", "p", "--to", "taken").isRefused("cannot write to taken: it is not a folder");
        assertEquals("kept", Files.readString(folder.resolve("taken")));
        assertEquals(List.of("p/all.loom", "taken"), Call.files(folder));
    }

    @Test
    void aFolderWithAnythingElseInItIsLeftAlone() throws IOException {
        Path link = folder.resolve("out/ours-wire-list.pdf");
        Files.createDirectory(folder.resolve("out"));
        Files.createSymbolicLink(link, folder.resolve("p/all.loom"));
        Call.in(folder, "sheets", "p", "--to", "out").isRefused("will not replace what is in out");
        assertEquals(PROJECT, Files.readString(folder.resolve("p/all.loom")));
        assertTrue(Files.isSymbolicLink(link));
        Call.in(folder, "sheets", "p", "--to", "p").isRefused("all.loom is not of a set of sheets");
        assertEquals(List.of("out/ours-wire-list.pdf", "p/all.loom"), Call.files(folder));
    }

    @Test
    void aSetIsReplacedWholeAndNothingElseIsLeftBehind() throws IOException {
        Call.in(folder, "sheets", "p", "--to", "out").isFine();
        Call again = Call.in(folder, "sheets", "p", "--only", "cover", "--to", "out").isFine();
        assertTrue(again.out().contains("in place of an earlier set"), again.out());
        assertEquals(List.of("out/.loomwright-sheets", "out/box-cover.pdf", "p/all.loom"), Call.files(folder));
        Files.writeString(folder.resolve("out/notes.txt"), "mine");
        Call.in(folder, "sheets", "p", "--to", "out").isRefused("notes.txt is not of a set of sheets");
        assertTrue(Files.exists(folder.resolve("out/box-cover.pdf")));
    }

    @Test
    void whatAKilledRunLeftBehindIsMended() throws IOException {
        Call.in(folder, "sheets", "p", "--to", "out").isFine();
        List<String> set = Call.files(folder.resolve("out"));
        // a process that is no more had moved the set aside, and begun with another
        Files.move(folder.resolve("out"), folder.resolve(".out.999999999.old"));
        Files.createDirectory(folder.resolve(".out.999999999.new"));
        Files.writeString(folder.resolve(".out.999999999.new/.loomwright-sheets"), "box-cover.pdf\n");
        Files.writeString(folder.resolve(".out.999999999.new/box-cover.pdf"), "half");
        Call.in(folder, "sheets", "p", "--only", "nothing", "--to", "out").isRefused("no document is called 'nothing'");
        Call.in(folder, "sheets", "p", "fornt", "--to", "out").isRefused("no harness and no kit is called 'fornt'");
        assertEquals(set, Call.files(folder.resolve("out")));
        assertFalse(Files.exists(folder.resolve(".out.999999999.new")));
    }

    @Test
    void vehiclesOfACallAreUnderstoodOrRefusedInOneLine() {
        Call.in(folder, "sheets", "p", "--for", "year 1965", "--only", "cover", "--to", "out").isFine();
        Call.in(folder, "sheets", "p", "--for", "yaer 1965", "--to", "out").isRefused("--for");
        Call.in(folder, "sheets", "p", "--for", "year 1965 {", "--to", "out").isRefused("--for is a condition");
        Call.in(folder, "sheets", "p", "--for", "year 1999", "--to", "out").isRefused("--for");
        Call.in(folder, "sheets", "p", "--paper", "B7", "--to", "out").isRefused("--paper is A4, A3, letter, not 'B7'");
    }

    @Test
    void sheetsOfATextWithErrorsAreNotWritten() throws IOException {
        Files.writeString(folder.resolve("p/all.loom"), PROJECT.replace("covers front64", "covers front46"));
        Call call = Call.in(folder, "sheets", "p", "--to", "out").finds("name-unknown", "p/all.loom:");
        assertTrue(call.out().contains("no sheet was written"), call.out());
        assertFalse(Files.exists(folder.resolve("out")));
        Call all = Call.in(folder, "sheets", "p", "--even-with-errors", "--to", "out");
        assertEquals(Exit.FINDINGS, all.code());
        assertTrue(all.out().contains("every page has a stamp: 1 error stands against it"), all.out());
    }

    @Test
    void anUnknownHarnessIsNamedWithThoseThatThereAre() {
        Call.in(folder, "sheets", "p", "fornt", "--to", "out")
                .isRefused("no harness and no kit is called 'fornt'; there is box, ours");
        assertTrue(Call.in(folder, "sheets", "p", "ours", "--to", "out").isFine().out().contains("ours-cover.pdf"));
    }

    @Test
    void formatChangesOnlyWhenAskedTo() throws IOException {
        String crooked = PROJECT.replace("    years", "  years");
        Files.writeString(folder.resolve("p/all.loom"), crooked);
        Call checked = Call.in(folder, "format", "p", "--check");
        assertEquals(Exit.FINDINGS, checked.code());
        assertTrue(checked.out().startsWith("would change p/all.loom\n"), checked.out());
        assertEquals(crooked, Files.readString(folder.resolve("p/all.loom")));
        assertEquals("changed p/all.loom\n1 of 1 file changed\n", Call.in(folder, "format", "p").isFine().out());
        assertEquals(PROJECT, Files.readString(folder.resolve("p/all.loom")));
        Call.in(folder, "format", "p", "--check").isFine();
    }

    @Test
    void formatLeavesWhatIsNoText() throws IOException {
        byte[] bytes = {0, 1, 2, 3, 0, 0, 0};
        Files.write(folder.resolve("p/odd.loom"), bytes);
        Call call = Call.in(folder, "format", "p");
        assertEquals(Exit.FINDINGS, call.code());
        assertTrue(call.err().startsWith("p/odd.loom:1:1: "), call.err());
        assertEquals(7, Files.size(folder.resolve("p/odd.loom")));
    }

    @Test
    void whoStopsReadingEndsNothing() {
        OutputStream broken = new OutputStream() {
            @Override
            public void write(int one) throws IOException {
                throw new IOException("Broken pipe");
            }
        };
        ResultStream results = new ResultStream(broken);
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Door door = new Door(new PrintStream(results, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), folder, Map.of(), false, false);
        assertEquals(Exit.FINE, Main.run(new String[] {"check", "p"}, door));
        assertEquals("", err.toString(StandardCharsets.UTF_8));
        assertTrue(results.failure().isEmpty());
    }

    @Test
    void aFullDiskBehindStandardOutputIsKept() {
        ResultStream results = new ResultStream(new OutputStream() {
            @Override
            public void write(int one) throws IOException {
                throw new IOException("No space left on device");
            }
        });
        PrintStream out = new PrintStream(results, false, StandardCharsets.UTF_8);
        out.println("x");
        out.flush();
        assertEquals("No space left on device", results.failure().orElseThrow());
    }

    @Test
    void aFaultOfOursIsOneLineAndAFile() throws IOException {
        PrintStream faulty = new PrintStream(new ByteArrayOutputStream(), false, StandardCharsets.UTF_8) {
            @Override
            public void print(String text) {
                throw new IllegalStateException("made by a test");
            }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Path cache = folder.resolve("cache");
        Door door = new Door(faulty, new PrintStream(err, true, StandardCharsets.UTF_8), folder,
                Map.of("XDG_CACHE_HOME", cache.toString()), false, false);
        assertEquals(Exit.FAULT, Main.run(new String[] {"check", "p"}, door));
        String line = err.toString(StandardCharsets.UTF_8);
        assertEquals(1, line.lines().count(), line);
        String name = Call.files(cache).getFirst();
        assertTrue(line.contains(name), line);
        String details = Files.readString(cache.resolve(name));
        assertTrue(details.contains("made by a test") && details.contains("arguments: [check, p]"), details);
    }
}
