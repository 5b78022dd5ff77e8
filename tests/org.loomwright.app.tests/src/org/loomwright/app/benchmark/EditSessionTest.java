// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.EditSession;
import org.loomwright.app.load.Input;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** How much is worked out again after an edit, and that nothing else depends on it. */
class EditSessionTest {

    private static final String DRAWING = "drawings/d1961.loom";

    private final SourceReader reader = LoomReader.create();

    private EditSession session(int threads) {
        return new EditSession(reader, 1, StandardRules.engine(threads), Settings.TIMELESS);
    }

    private EditSession opened(List<Input> inputs) {
        EditSession session = session(1);
        session.open(inputs, Cancel.NEVER, Progress.NONE);
        return session;
    }

    private static String text(List<Input> inputs, String name) throws IOException {
        Input input = inputs.stream().filter(each -> each.name().equals(name)).findFirst().orElseThrow();
        return new String(input.content().open().readAllBytes(), StandardCharsets.UTF_8);
    }

    private static byte[] slipped(List<Input> inputs) throws IOException {
        return text(inputs, DRAWING).replaceFirst("to L1:1", "to L1:9")
                .getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void aChangeInOneDrawingAsksAboutThatDrawing() throws IOException {
        List<Input> few = new LargeProject(4, 36).inputs();
        List<Input> many = new LargeProject(40, 36).inputs();
        EditSession small = opened(few);
        EditSession large = opened(many);
        long everything = large.work().asked();
        Report report = small.edit(DRAWING, slipped(few), Cancel.NEVER);
        assertEquals(List.of(DRAWING), report.of("unknown-cavity").stream().map(each -> each.place().span().file())
                .distinct().toList());
        large.edit(DRAWING, slipped(many), Cancel.NEVER);
        assertEquals(1, small.work().joined());
        assertEquals(1, large.work().joined());
        assertEquals(small.work().asked(), large.work().asked());
        assertTrue(large.work().asked() * 5 < everything, large.work() + " of " + everything);
    }

    @Test
    void nothingChangedNothingAsked() throws IOException {
        List<Input> inputs = new LargeProject(4, 36).inputs();
        EditSession session = opened(inputs);
        String before = session.report().toString();
        session.check(Cancel.NEVER, Progress.NONE);
        assertEquals(0, session.work().joined());
        assertTrue(session.work().asked() < 10, "only what asks about the project as a whole: " + session.work());
        assertEquals(before, session.report().toString());
    }

    @Test
    void aChangeOfThePlatformAsksEverything() throws IOException {
        List<Input> inputs = new LargeProject(4, 36).inputs();
        EditSession session = opened(inputs);
        long everything = session.work().asked();
        session.edit("platform.loom", (text(inputs, "platform.loom") + "\n").getBytes(StandardCharsets.UTF_8),
                Cancel.NEVER);
        assertEquals(6, session.work().joined());
        assertEquals(everything, session.work().asked());
    }

    @Test
    void whatIsMendedIsNoLongerFound() throws IOException {
        List<Input> inputs = new LargeProject(4, 36).inputs();
        EditSession session = opened(inputs);
        String clean = session.report().toString();
        session.edit(DRAWING, "drawing {".getBytes(StandardCharsets.UTF_8), Cancel.NEVER);
        assertTrue(session.report().findings().stream().anyMatch(each -> each.rule().equals("name-missing")),
                session.report()::toString);
        session.remove(DRAWING, Cancel.NEVER);
        assertTrue(session.project().wiring("d1961").isEmpty());
        session.edit(DRAWING, text(inputs, DRAWING).getBytes(StandardCharsets.UTF_8), Cancel.NEVER);
        assertEquals(clean, session.report().toString());
    }

    @Test
    void aCancelledEditIsMadeUpFor() throws IOException {
        List<Input> inputs = new LargeProject(4, 36).inputs();
        EditSession session = opened(inputs);
        String before = session.report().toString();
        int[] questions = {0};
        byte[] changed = slipped(inputs);
        assertThrows(Cancelled.class, () -> session.edit(DRAWING, changed, () -> ++questions[0] > 8));
        assertEquals(before, session.report().toString());
        Report made = session.check(Cancel.NEVER, Progress.NONE);
        EditSession other = opened(inputs);
        assertEquals(other.edit(DRAWING, changed, Cancel.NEVER).toString(), made.toString());
    }

    @Test
    void threadsMakeNoDifference() {
        List<Input> inputs = new LargeProject(6, 90).inputs();
        String alone = session(1).open(inputs, Cancel.NEVER, Progress.NONE).toString();
        for (int threads : new int[] {2, 8}) {
            assertEquals(alone, session(threads).open(inputs, Cancel.NEVER, Progress.NONE).toString());
        }
    }
}
