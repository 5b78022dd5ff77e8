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
import org.junit.jupiter.params.provider.CsvSource;

/** {@code check --fix} as a call: what it prints, what it writes, how it ends. */
class FixCallTest {

    private static final String TEXT = """
            platform orrin "Orrin 1200" {
                supply 12 V negative ground
                place bulkhead
            }
            kit box "Kit" of orin
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.createDirectories(folder.resolve("p"));
        Files.writeString(folder.resolve("p/a.loom"), TEXT);
    }

    @Test
    void itMendsAndSaysWhatItMended() throws IOException {
        Call call = Call.in(folder, "check", "p", "--fix").isFine();
        assertEquals("""
                fixed p/a.loom:5 [name-unknown] "orin" becomes "orrin"

                p: 1 fix made in 1 file
                p: no findings in 1 file (1 kit)
                """, call.out());
        assertEquals(TEXT.replace("orin\n", "orrin\n"), Files.readString(folder.resolve("p/a.loom")));
        assertEquals("p: nothing to fix\np: no findings in 1 file (1 kit)\n",
                Call.in(folder, "check", "p", "--fix").isFine().out());
    }

    @Test
    void whatIsKnownIsForACheckAfterwards() throws IOException {
        for (String option : new String[] {"--since", "--write-baseline"}) {
            Call.in(folder, "check", "p", "--fix", option, "HEAD").isRefused(
                    "--fix mends whatever it can, known or not: call check again with --since or a baseline");
        }
        Call.in(folder, "check", "p", "--fix", "--format", "json").isRefused(
                "--fix prints text; call check again for another format");
        assertEquals(TEXT, Files.readString(folder.resolve("p/a.loom")));
    }

    @Test
    void whatRemainsIsReportedAndDecides() throws IOException {
        Files.writeString(folder.resolve("p/b.loom"), "kit other of nothing\n");
        Call call = Call.in(folder, "check", "p", "--fix").finds("name-unknown", "p/b.loom:1:14");
        assertTrue(call.out().startsWith("fixed p/a.loom:5"), call.out());
    }

    @Test
    void aDryRunPrintsTheDifferenceAndWritesNothing() throws IOException {
        Call call = Call.in(folder, "check", "p", "--fix", "--dry-run");
        assertEquals(Exit.FINDINGS, call.code());
        assertEquals("""
                --- p/a.loom
                +++ p/a.loom
                @@ -2,4 +2,4 @@
                     supply 12 V negative ground
                     place bulkhead
                 }
                -kit box "Kit" of orin
                +kit box "Kit" of orrin
                p: 1 fix to make in 1 file
                """, call.out());
        assertEquals(TEXT, Files.readString(folder.resolve("p/a.loom")));
        assertEquals(List.of("p/a.loom"), Call.files(folder));
    }

    @Test
    void callsThatMeanNothingAreRefused() {
        Call.in(folder, "check", "p", "--dry-run").isRefused("--dry-run says what --fix would do");
        Call.in(folder, "check", "p", "--fix", "--format", "json").isRefused("--fix prints text");
    }

    /**
     * 200 mm from the factory, nothing by tolerance or along the trunk: 199 mm is 1 mm short, and the next step of 5 mm is
     * 200; with 25 mm made longer and 30 mm allowed 206 mm is 1 mm long, and the step before 205 is that.
     */
    @ParameterizedTest
    @CsvSource({"199 mm,place-not-reached,200 mm", "206 mm,excess-too-great,205 mm"})
    void anotherLengthIsOfferedAndLeftToWhoeverKnowsTheOtherDrawings(String made, String rule, String offered)
            throws IOException {
        String text = """
                platform orrin "Orrin 1200" {
                    supply 12 V negative ground
                    place bulkhead
                    place lamp
                    position front
                }
                drawing front68 of orrin fills front {
                    tolerance ± 0 mm
                    datum bulkhead
                    trunk main {
                        breakout wing at 300 mm
                    }
                    branch bLamp from wing to lamp 200 mm
                }
                harness ours of orrin fills front {
                    covers front68
                    serviceLoop 0 mm
                    excessAtMost 30 mm
                    branches made -0 mm +25 mm
                    breakouts made ± 0 mm
                    datum bulkhead
                    trunk main {
                        breakout wing at 300 mm
                    }
                    branch bLamp from wing to lamp LENGTH
                }
                """;
        Path file = folder.resolve("p/a.loom");
        Files.writeString(file, text.replace("LENGTH", made));
        Call call = Call.in(folder, "check", "p", "--fix").finds(rule, "p/a.loom:25:12");
        assertTrue(call.out().startsWith("left to you p/a.loom:25 [" + rule + "] \"" + made + "\" becomes \"" + offered
                + "\"\n"), call.out());
        assertEquals(text.replace("LENGTH", made), Files.readString(file));
        Files.writeString(file, text.replace("LENGTH", offered));
        Call.in(folder, "check", "p").isFine();
        for (String more : List.of(" from sheet", " pinned")) {
            Files.writeString(file, text.replace("LENGTH", made + more));
            assertFalse(Call.in(folder, "check", "p", "--fix").finds(rule, "p/a.loom:25:12").out()
                    .contains("left to you"), more);
        }
    }
}
