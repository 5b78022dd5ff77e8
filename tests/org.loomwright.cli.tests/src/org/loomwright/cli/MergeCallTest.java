// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code merge} as it is called. */
class MergeCallTest {

    private static final String BASE = "platform p {\n    years 1964 .. 1971\n    position front\n"
            + "    zone z ambient 50 C\n    position rear\n}\n";

    @TempDir
    private Path folder;

    @BeforeEach
    void versions() throws IOException {
        write("base", BASE);
        write("ours", BASE.replace("1971", "1972"));
        write("theirs", BASE.replace("50 C", "60 C"));
        write("other", BASE.replace("1971", "1973"));
    }

    private void write(String name, String text) throws IOException {
        Files.writeString(folder.resolve(name), text);
    }

    private String read(String name) throws IOException {
        return Files.readString(folder.resolve(name));
    }

    @Test
    void theResultIsPrinted() {
        assertEquals(BASE.replace("1971", "1972").replace("50 C", "60 C"),
                Call.in(folder, "merge", "base", "ours", "theirs").isFine().out());
    }

    @Test
    void theResultIsWrittenOverOneOfThem() throws IOException {
        assertEquals("", Call.in(folder, "merge", "base", "ours", "theirs", "--to", "ours").isFine().out());
        assertEquals(BASE.replace("1971", "1972").replace("50 C", "60 C"), read("ours"));
        Call.in(folder, "merge", "base", "theirs", "theirs", "--to", "fresh.loom").isFine();
        assertEquals(read("theirs"), read("fresh.loom"));
    }

    @Test
    void aConflictEndsWithOneAndIsToldInOneLine() {
        Call call = Call.in(folder, "merge", "base", "ours", "other", "--name", "p.loom", "--marks", "9");
        assertEquals(Exit.FINDINGS, call.code());
        assertEquals("p.loom:2: conflict: platform p: years 1964 .. 1972 in ours, 1964 .. 1973 in theirs; was 1964 .. "
                + "1971\np.loom: 1 conflict to settle\n", call.err());
        assertTrue(call.out().contains("<<<<<<<<< ours\n    years 1964 .. 1972\n=========\n    years 1964 .. 1973\n"
                + ">>>>>>>>> theirs\n"), call.out());
    }

    @Test
    void bracesThatDoNotBalanceAreMergedLineByLine() throws IOException {
        write("ours", read("ours").replace("}\n", ""));
        Call call = Call.in(folder, "merge", "base", "ours", "theirs");
        assertEquals(Exit.FINE, call.code(), call::toString);
        assertEquals("ours: the braces of a version do not balance; it was merged line by line\n", call.err());
        assertEquals(BASE.replace("1971", "1972").replace("50 C", "60 C").replace("}\n", ""), call.out());
        write("other", read("other").replace("}\n", "}\n}\n"));
        Call torn = Call.in(folder, "merge", "base", "ours", "other");
        assertEquals(Exit.FINDINGS, torn.code(), torn::toString);
        assertTrue(torn.out().contains("<<<<<<< ours\n    years 1964 .. 1972\n=======\n"), torn.out());
    }

    @Test
    void wrongCallsAreRefusedAndNothingIsWritten() throws IOException {
        Call.in(folder, "merge", "base", "ours").isRefused("THEIRS");
        Call.in(folder, "merge", "base", "ours", "nowhere").isRefused("no such file: nowhere");
        Call.in(folder, "merge", "base", "ours", ".").isRefused("a folder cannot be merged");
        Call.in(folder, "merge", "base", "ours", "theirs", "--marks", "3").isRefused("--marks is a number from 7");
        Call.in(folder, "merge", "base", "ours", "theirs", "--to", ".").isRefused("--to is a file");
        Files.write(folder.resolve("other"), new byte[] {0, 0, 1, 0});
        Call.in(folder, "merge", "base", "ours", "other", "--to", "ours").isRefused("cannot merge ours of theirs: ");
        assertEquals(BASE.replace("1971", "1972"), read("ours"));
    }
}
