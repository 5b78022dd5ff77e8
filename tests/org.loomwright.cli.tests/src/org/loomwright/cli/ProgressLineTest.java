// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressLineTest {

    private static final String CLEAR = "\r\u001b[K";

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final AtomicLong milliseconds = new AtomicLong();

    private ProgressLine line(boolean shown) {
        return new ProgressLine(new PrintStream(bytes, true, StandardCharsets.UTF_8), shown,
                () -> milliseconds.get() * 1_000_000);
    }

    private String printed() {
        return bytes.toString(StandardCharsets.UTF_8);
    }

    @Test
    void whatIsQuickIsQuiet() {
        try (ProgressLine line = line(true)) {
            milliseconds.set(999);
            line.report("reading files", 3, 10);
        }
        assertEquals("", printed());
    }

    @Test
    void afterASecondItShowsAtMostFiveTimesASecondAndIsGoneAtTheEnd() {
        try (ProgressLine line = line(true)) {
            milliseconds.set(1_000);
            line.report("reading files", 3, 10);
            milliseconds.set(1_199);
            line.report("reading files", 4, 10);
            milliseconds.set(1_200);
            line.report("linking", 5, 0);
        }
        assertEquals(CLEAR + "reading files (3 of 10)" + CLEAR + "linking (5)" + CLEAR, printed());
    }

    @Test
    void nothingIsShownWithoutATerminal() {
        try (ProgressLine line = line(false)) {
            milliseconds.set(5_000);
            line.report("reading files", 3, 10);
        }
        assertEquals("", printed());
    }
}
