// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts that go round in circles, are far too long, or come in thousands. */
class HardInputTest {

    /** Far beyond what a slow machine needs; small input takes a fraction of a second. */
    private static final Duration HANG = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    private Call check(String text, String... options) throws IOException {
        Files.createDirectories(folder.resolve("p"));
        Files.writeString(folder.resolve("p/a.loom"), text);
        String[] args = new String[options.length + 2];
        args[0] = "check";
        args[1] = "p";
        System.arraycopy(options, 0, args, 2, options.length);
        Call call = Assertions.assertTimeout(HANG, () -> Call.in(folder, args));
        assertTrue(call.code() == Exit.FINDINGS || call.code() == Exit.FINE, call::toString);
        assertFalse(call.out().contains("\tat "), call.out());
        for (String command : new String[] {"fit", "prove"}) {
            assertTrue(Assertions.assertTimeout(HANG, () -> Call.in(folder, command, "p")).code() != Exit.FAULT);
        }
        return call;
    }

    @Test
    void modesThatExtendEachOtherAreAFindingEachRing() throws IOException {
        Call call = check("""
                platform orrin {
                    mode one extends two {
                    }
                    mode two extends three {
                    }
                    mode three extends one {
                    }
                    mode four extends two {
                    }
                    mode five extends five {
                    }
                }
                """);
        assertTrue(call.out().contains("mode \"one\" extends itself in the end, by way of two, three"), call.out());
        assertTrue(call.out().contains("mode \"five\" extends itself in the end"), call.out());
        assertEquals(2, call.out().split("error\\[mode-circle\\]", -1).length - 1, call.out());
    }

    @Test
    void breakoutsBranchesMatesAndKitsInARingEnd() throws IOException {
        Call call = check("""
                platform orrin {
                    option a1
                    option b1
                    require a1 when b1
                    require b1 when a1
                    place bulkhead
                    place lamp
                    ground body1
                    strap s1 from body1 to body1 1 mohm
                }
                harness ring of orrin {
                    covers ring, other
                    datum bulkhead
                    trunk main {
                        breakout one after two at 100 mm
                        breakout two after three at 100 mm
                        breakout three after one at 100 mm
                    }
                    branch b1 from b2 to lamp 100 mm
                    branch b2 from b1 to lamp 100 mm
                    connector J1 at bulkhead mates J2
                    connector J2 at bulkhead mates J3
                    connector J3 at bulkhead mates J1
                    connector J4 at bulkhead mates J4
                    circuit 1 BK {
                        wire a 14 ga from J1:1 to J2:1
                        wire b 14 ga from J2:1 to J1:1
                        wire c 14 ga from J4:1 to J4:1
                    }
                }
                harness other of orrin when a1 and not b1 {
                    covers ring
                }
                kit k1 "K" revision "A" of orrin {
                    needs k2 revision "A" or later
                    contains ring
                }
                kit k2 "K" revision "A" of orrin {
                    needs k1 revision "A" or later
                    contains other
                    contains k1
                }
                """);
        assertTrue(call.out().contains("error[breakout-circle]"), call.out());
        assertTrue(call.out().contains("error[branch-circle]"), call.out());
    }

    @Test
    void thousandsOfFindingsAreFoldedByRule() throws IOException {
        StringBuilder text = new StringBuilder("""
                platform orrin {
                    place bulkhead
                }
                harness ours of orrin {
                    connector J1 at bulkhead
                    circuit 1 BK {
                """);
        for (int i = 0; i < 2_000; i++) {
            text.append("        wire w").append(i).append(" 18 ga from J1:").append(i).append(" to J9:1\n");
        }
        text.append("    }\n}\n");
        Call call = check(text.toString());
        assertTrue(call.out().contains("\nand 1,950 more of orphan-wire; --all shows them\n"), call.out());
        assertTrue(call.out().contains("2000 errors"), call.out().substring(call.out().length() - 300));
        Call all = check(text.toString(), "--all");
        assertFalse(all.out().contains(" more of orphan-wire"), "folded");
        assertEquals(2_001, all.out().split("error\\[orphan-wire\\]", -1).length);
        Call json = check(text.toString(), "--format", "json");
        assertTrue(json.out().split("\"orphan-wire\"", -1).length > 2_000, "json has all");
    }

    @Test
    void aLineOfAMegabyteIsCutInTheExcerpt() throws IOException {
        Call call = check("platform orrin {\n    place " + "x ".repeat(10_000) + "\"" + "y".repeat(1_000_000) + "\"\n}\n");
        assertTrue(call.out().lines().allMatch(line -> line.length() < 1_000),
                () -> "longest line: " + call.out().lines().mapToInt(String::length).max());
        assertTrue(call.out().lines().count() < 2_000, () -> call.out().lines().count() + " lines");
    }

    @Test
    void mixedLineEndsNulBytesAndAMarkInTheMiddleAreFindingsOrNothing() throws IOException {
        assertEquals(Exit.FINE, check("platform orrin {\r\n    place bulkhead\n    place lamp\r\n}\r").code());
        Files.write(folder.resolve("p/b.loom"), "drawing d\0 of orrin {\n}\n".getBytes(StandardCharsets.UTF_8));
        assertEquals(Exit.FINDINGS, check("platform orrin {\n    place \uFEFFbulkhead\n}\n").code());
    }

    @Test
    void aFileThatCannotBeReadIsNamedAndTheRestIsChecked() throws IOException {
        Files.createDirectories(folder.resolve("p/gone.loom").getParent());
        Files.createSymbolicLink(folder.resolve("p/gone.loom"), folder.resolve("nowhere.loom"));
        Call call = check("platform orrin {\n    place bulkhead\n}\n");
        assertTrue(call.out().contains("file-unreadable"), call.out());
    }

    @Test
    void aFolderOfFiveHundredDrawingsIsChecked() throws IOException {
        Files.createDirectories(folder.resolve("p"));
        for (int i = 0; i < 500; i++) {
            Files.writeString(folder.resolve("p/d" + i + ".loom"), "drawing d" + i + " of orrin {\n}\n");
        }
        Call call = check("platform orrin {\n    place bulkhead\n}\n");
        assertTrue(call.out().contains("501 files"), call.out());
    }
}
