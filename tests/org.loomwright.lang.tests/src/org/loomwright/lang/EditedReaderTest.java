// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;

/** A text that is read again after an edit is what reading it from the start gives, and costs what was edited. */
class EditedReaderTest {

    private static final int EDITS = Integer.getInteger("loomwright.edits", 120);
    private static final List<String> PIECES = List.of("\n", " ", "", "", "{", "}", "\"", "/*", "*/", "// ", "18",
            " ga", " mm", " in", " when ", "not ", "wire q 18 ga from J1:1 to J1:2\n", "circuit 99 BK {\n",
            "    }\n", "}\n", "drawing z of p {\n}\n", "waive x on y because \"z\" until 2030-01-01\n",
            "branch ", "connector C9 at x\n", "option zz\n", "\r\n", "\t", "<<<<<<< a\n", "wirre b\n",
            "note \"n\"\n", "é", "7 1/2", ":", "'");

    private final EditedReader edited = Corpus.reader().forEdits();

    private Source read(String text) {
        return edited.read("a.loom", text.getBytes(StandardCharsets.UTF_8));
    }

    private void same(String text, String after) {
        Source fresh = Corpus.read(text);
        Source now = read(text);
        assertEquals(fresh.text(), now.text());
        if (!fresh.problems().equals(now.problems())) {
            assertEquals(lines(fresh), lines(now), after);
            assertEquals(fresh.problems(), now.problems(), after);
        }
        if (!fresh.elements().equals(now.elements())) {
            assertEquals(fresh.elements().toString(), now.elements().toString(), after);
        }
    }

    private static String lines(Source source) {
        return source.problems().stream().map(Corpus::shown).collect(Collectors.joining("\n"));
    }

    private static String all(boolean flat) {
        String text = Corpus.FILES.stream().map(Corpus::text).collect(Collectors.joining());
        return flat ? text.replaceAll("(?m)^ +", "") : text;
    }

    /** One edit after the other; a text that went to pieces is laid aside for the one before. */
    private void edits(String sound, int seed) {
        Random random = new Random(seed);
        String text = sound;
        read(text);
        for (int i = 0; i < EDITS; i++) {
            int at = random.nextInt(text.length() + 1);
            int end = Math.min(text.length(), at + (random.nextInt(3) == 0 ? random.nextInt(60) : random.nextInt(2)));
            String piece = PIECES.get(random.nextInt(PIECES.size()));
            String next = text.substring(0, at) + piece + text.substring(end);
            same(next, "seed " + seed + ", edit " + i + ": " + (end - at) + " characters at " + at + " became \""
                    + piece + "\"");
            if (random.nextInt(3) == 0) {
                text = next.length() > sound.length() / 2 && Corpus.read(next).problems().size() < 20 ? next : sound;
            }
        }
    }

    @Test
    void afterRandomEdits() {
        edits(all(false), 1);
    }

    @Test
    void afterRandomEditsOfATextWithoutIndentation() {
        edits(all(true), 2);
    }

    @Test
    void afterRandomEditsOfACircuit() {
        edits(project(3, 6), 3);
    }

    /** What a person types, letter by letter, and takes back. */
    @Test
    void afterEachKeyOfALine() {
        String text = project(3, 4);
        int at = text.indexOf("    circuit c2", text.indexOf("drawing d1"));
        for (String typed : List.of("    circuit new \"New\" BK/RD {\n        wire a 18 ga from A:1 to B:1\n    }\n",
                "    splice S1 at out // joint\n", "}\ndrawing e of p {\n", "\"")) {
            for (int length = 0; length <= typed.length(); length++) {
                String so = typed.substring(0, length);
                same(text.substring(0, at) + so + text.substring(at), so);
            }
            same(text, "taken back");
        }
    }

    @Test
    void aNumberWithoutUnitGetsTheUnitOfTheWholeText() {
        String text = project(2, 3);
        same(text, "sound");
        same(text.replaceFirst("wire a 18 ga", "wire a 18"), "one bare number");
        same(text.replaceFirst("wire a 18 ga", "wire a 18").replace("18 ga", "18 awg"), "of another system");
        same(text.replaceFirst("at 300 mm", "at 300").replace("100 mm", "10 in"), "of another unit");
    }

    @Test
    void whatStandsBeforeTheEditIsTheSameObject() {
        String text = project(5, 5);
        Source before = read(text);
        Source after = read(text.replaceFirst("(?s)(drawing d2.*?circuit c3 )BK", "$1RD"));
        for (int i = 0; i < 4; i++) {
            assertSame(before.elements().get(i), after.elements().get(i));
        }
        List<Circuit> old = ((Wiring) before.elements().get(4)).circuits();
        List<Circuit> now = ((Wiring) after.elements().get(4)).circuits();
        assertSame(old.get(2), now.get(2));
        assertEquals("RD", now.get(3).colours().getFirst().value().base());
    }

    /** A key costs the circuit that it is typed in, however long the text and the drawing are. */
    @Test
    void aKeyCostsOneCircuit() {
        for (String text : List.of(project(5, 10), project(50, 10), project(1, 500))) {
            read(text);
            String line = "wire q 18 ga from A:1 to ";
            int at = text.indexOf("    }", text.length() / 2);
            long before = edited.parsed();
            for (int length = 1; length <= line.length(); length++) {
                read(text.substring(0, at) + line.substring(0, length) + "\n" + text.substring(at));
            }
            long parsed = (edited.parsed() - before) / line.length();
            assertTrue(parsed < 300, () -> parsed + " characters were parsed for each key");
        }
    }

    private static String project(int drawings, int circuits) {
        StringBuilder text = new StringBuilder("platform p {\n    years 1964 .. 1971\n    option heater\n"
                + "    place box\n    place end\n}\ncatalogue c {\n    housing block {\n        cavities 1 .. 40\n"
                + "    }\n}\n");
        for (int d = 0; d < drawings; d++) {
            text.append("\ndrawing d").append(d).append(" of p {\n    datum box\n    trunk main {\n")
                    .append("        breakout out at 300 mm\n    }\n    branch b from out to end 100 mm\n")
                    .append("    connector A at box is block\n    connector B on b is block\n");
            for (int c = 0; c < circuits; c++) {
                text.append("    circuit c").append(c).append(" BK {\n        wire a 18 ga from A:1 to B:1 when heater")
                        .append(" or not (year <= 1966)\n    }\n");
            }
            text.append("    note \"end\"\n}\n");
        }
        return text.toString();
    }
}
