// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.ide.act.Actions;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Unit;
import org.loomwright.rules.Finding;

/** Texts that nobody wants to meet: very long, wrong on every line, changed at random. */
class HardTextsTest {

    private static void askEverything(Moment moment, String file, int offset) {
        Services.complete(moment, file, offset, Cancel.NEVER);
        Services.hover(moment, file, offset, Cancel.NEVER);
        Services.definition(moment, file, offset);
        Services.highlights(moment, file, offset);
        Services.rename(moment, file, offset, "other", Cancel.NEVER);
        Services.actions(moment, file, offset, offset + 10);
    }

    @Test
    void aFileOf50000LinesIsServed() {
        String text = LargeText.of(50_000);
        Bench bench = Bench.of("large.loom", text);
        Moment moment = bench.moment();
        assertEquals(List.of(), moment.project().problems());
        int middle = text.indexOf("wire a", text.length() / 2);
        askEverything(moment, "large.loom", middle + 5);
        assertTrue(Services.outline(moment, "large.loom").size() > 500);
        assertTrue(Services.colours(moment, "large.loom").size() > 200_000);
        assertEquals(List.of(), Services.format(moment, "large.loom"));
        assertTrue(Services.folds(moment, "large.loom").size() > 10_000);
        // a keystroke: what did not change is not matched again
        String changed = text.substring(0, middle) + "wire b 18 ga\n        " + text.substring(middle);
        WordLines again = Bench.READER.words().read(changed, Optional.of(moment.words("large.loom")));
        assertTrue(again.looked() <= 2, () -> again.looked() + " lines were matched");
    }

    /** A wrong word on each of 5,000 lines: told of up to a bound, each with what to do, and a key costs one line. */
    @Test
    void aSyntaxErrorOnEveryLineOf5000IsServed() {
        String sound = LargeText.of(5_000);
        String text = sound.lines().map(line -> line.isBlank() || line.strip().equals("}") ? line
                : line.replaceFirst("(\\S+)", "$1q")).collect(Collectors.joining("\n", "", "\n"));
        Bench bench = Bench.of("a.loom", text);
        List<Finding> found = bench.moment().findings();
        assertTrue(found.size() >= 1_000 && found.size() <= 1_001, () -> found.size() + " findings");
        assertEquals("too-many", found.getLast().rule());
        assertTrue(found.stream().filter(each -> each.sentence().contains("\"drawingq\"")
                && !each.fixes().isEmpty()).count() > 10, "each says what was meant");
        assertTrue(Services.actions(bench.moment(), "a.loom", 0, text.length()).size() <= 2 * Actions.MOST);
        Services.mendAll(bench.moment(), "a.loom");
        Services.inlays(bench.moment(), "a.loom", 0, text.length(), Unit.MM, Cancel.NEVER);
        for (int offset = 0; offset < text.length(); offset += 4_999) {
            askEverything(bench.moment(), "a.loom", offset);
        }
        int middle = text.indexOf("wireq a", text.length() / 2);
        WordLines again = Bench.READER.words().read(text.substring(0, middle) + "x" + text.substring(middle),
                Optional.of(bench.moment().words("a.loom")));
        assertTrue(again.looked() <= 2, () -> again.looked() + " lines were matched");
    }

    @Test
    void marksAndQuotesOutOfPlaceOnEveryLineAreServed() {
        StringBuilder text = new StringBuilder("drawing d of {\n");
        for (int i = 0; i < 5_000; i++) {
            text.append("    wirre ").append(i).append(" from } to \" { 18 mm when and\n");
        }
        Bench bench = Bench.of("a.loom", text.toString());
        assertTrue(bench.moment().findings().size() >= 1_000 && bench.moment().findings().size() <= 1_001);
        for (int offset = 0; offset < text.length(); offset += 4_999) {
            askEverything(bench.moment(), "a.loom", offset);
        }
        Services.colours(bench.moment(), "a.loom");
        Services.inlays(bench.moment(), "a.loom", 0, text.length(), Unit.MM, Cancel.NEVER);
    }

    /** After any edits the words of a text are those that reading it from the start gives. */
    @Test
    void wordsAfterRandomEditsAreThoseOfAFreshReading() {
        Random random = new Random(11);
        String text = Bench.orrin().text("front-1964.loom");
        WordLines lines = Bench.READER.words().read(text);
        List<String> pieces = List.of("{", "}", "\n", "\"", " when ", "wire a ", "/*", "*/", "//", "18 ga", "",
                "\u0001");
        for (int i = 0; i < 300; i++) {
            int at = random.nextInt(text.length() + 1);
            int end = Math.min(text.length(), at + random.nextInt(12));
            text = text.substring(0, at) + pieces.get(random.nextInt(pieces.size())) + text.substring(end);
            WordLines next = Bench.READER.words().read(text, Optional.of(lines));
            WordLines fresh = Bench.READER.words().read(text);
            assertEquals(fresh.lines(), next.lines(), "after edit " + i);
            assertEquals(fresh.comments(), next.comments());
            inOrder(next);
            lines = next;
        }
    }

    private static void inOrder(WordLines lines) {
        int last = 0;
        for (Line line : lines.lines()) {
            for (Word word : line.words()) {
                assertTrue(word.offset() >= last && word.end() <= lines.text().length(), () -> line.toString());
                last = word.end();
            }
        }
    }

    /** Whatever is asked about whatever text, nothing throws. */
    @Test
    void randomEditsAndQuestionsNeverFail() {
        Random random = new Random(5);
        String file = "front-1964.loom";
        List<String> pieces = new ArrayList<>(List.of("{", "}", "\n", "\"", " when ", "wire a ", "/*", " from ", "J1:",
                " of ", "not (", "18 ga", "", "datum ", "connector X is "));
        String text = Bench.orrin().text(file);
        for (int i = 0; i < 40; i++) {
            int at = random.nextInt(text.length() + 1);
            int end = Math.min(text.length(), at + random.nextInt(20));
            text = text.substring(0, at) + pieces.get(random.nextInt(pieces.size())) + text.substring(end);
            Bench bench = Bench.orrin().with(file, text);
            for (int q = 0; q < 5; q++) {
                askEverything(bench.moment(), file, random.nextInt(text.length() + 1));
            }
            Services.inlays(bench.moment(), file, 0, text.length(), Unit.MM, Cancel.NEVER);
            Services.outline(bench.moment(), file);
        }
    }
}
