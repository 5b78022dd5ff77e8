// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * What came of one call of the command line.
 *
 * @param code the exit code
 * @param out  standard output
 * @param err  standard error
 */
record Call(int code, String out, String err) {

    /** Runs a call in a folder, without a terminal. */
    static Call in(Path folder, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Main.run(args, new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), folder);
        return new Call(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8))
                .withoutTrace();
    }

    private Call withoutTrace() {
        for (String text : List.of(out, err)) {
            assertFalse(text.contains("\tat ") || text.contains("Exception"), text);
        }
        return this;
    }

    /** The call was wrong: one line on standard error that contains the words, nothing on standard output. */
    Call isRefused(String words) {
        assertEquals(Exit.BAD_CALL, code, this::toString);
        assertEquals(1, err.lines().count(), err);
        assertTrue(err.startsWith("loomwright: ") && err.contains(words), err);
        assertEquals("", out);
        return this;
    }

    /** Nothing is objected to. */
    Call isFine() {
        assertEquals(Exit.FINE, code, this::toString);
        assertEquals("", err);
        return this;
    }

    /** There is a finding of a rule or problem at a place, and nothing on standard error. */
    Call finds(String rule, String place) {
        assertEquals(Exit.FINDINGS, code, this::toString);
        assertTrue(out.contains("[" + rule + "]"), out);
        assertTrue(out.contains("--> " + place), out);
        assertEquals("", err);
        return this;
    }

    /** The files below a folder, with {@code /} between folders. */
    static List<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted().toList();
        }
    }
}
