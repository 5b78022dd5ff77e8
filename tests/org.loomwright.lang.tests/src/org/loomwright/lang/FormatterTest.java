// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;

/** The canonical form says the same as the text, keeps its comments, and is its own canonical form. */
class FormatterTest {
    static final List<String> FILES = Corpus.FILES;
    private static final int TEXTS = 400;
    private static final Pattern COMMENT = Pattern.compile("c([0-9]+)");

    @ParameterizedTest
    @FieldSource("FILES")
    void corpusIsCanonical(String file) {
        assertEquals(Corpus.text(file), Formatter.format(Corpus.text(file)));
    }

    @Test
    void twiceChangesNothing() {
        GeneratedTexts texts = new GeneratedTexts(1, true);
        for (int i = 0; i < TEXTS; i++) {
            String once = Formatter.format(texts.next());
            assertEquals(once, Formatter.format(once));
        }
    }

    @Test
    void saysTheSame() {
        GeneratedTexts texts = new GeneratedTexts(2, true);
        int readable = 0;
        for (int i = 0; i < TEXTS; i++) {
            String text = texts.next();
            Source before = Corpus.read(text);
            Source after = Corpus.read(Formatter.format(text));
            assertEquals(Spanless.describe(before.elements()), Spanless.describe(after.elements()), text);
            assertEquals(before.problems().stream().map(Problem::message).sorted().toList(),
                    after.problems().stream().map(Problem::message).sorted().toList(), text);
            readable += before.problems().stream().noneMatch(each -> each.code().equals("syntax")) ? 1 : 0;
        }
        assertTrue(readable > TEXTS * 9 / 10, readable + " of " + TEXTS + " generated texts can be read");
    }

    @Test
    void commentsStayInOrder() {
        GeneratedTexts texts = new GeneratedTexts(3, true);
        int seen = 0;
        for (int i = 0; i < TEXTS; i++) {
            String formatted = Formatter.format(texts.next());
            List<Integer> numbers = new ArrayList<>();
            for (Matcher comment = COMMENT.matcher(formatted); comment.find();) {
                numbers.add(Integer.parseInt(comment.group(1)));
            }
            assertEquals(java.util.stream.IntStream.rangeClosed(1, texts.comments()).boxed().toList(), numbers);
            seen += numbers.size();
        }
        assertTrue(seen > 10 * TEXTS);
    }

    @Test
    void spacingIsCanonical() {
        GeneratedTexts untidy = new GeneratedTexts(4, true);
        for (int i = 0; i < TEXTS; i++) {
            String formatted = Formatter.format(untidy.next());
            assertFalse(formatted.contains("\n\n\n") || formatted.startsWith("\n") || formatted.endsWith("\n\n"));
            formatted.lines().forEach(line -> assertEquals(line.stripTrailing(), line));
            assertTrue(formatted.isEmpty() || formatted.endsWith("\n"));
        }
    }

    @Test
    void damagedTextsLoseNothingButWhiteSpace() {
        Random random = new Random(5);
        GeneratedTexts texts = new GeneratedTexts(5, true);
        String marks = "{}\"/*-+.:,()\n\r\t '\u00b1\\aw1";
        for (int i = 0; i < 4 * TEXTS; i++) {
            StringBuilder text = new StringBuilder(texts.next());
            for (int k = random.nextInt(6); k >= 0 && text.length() > 0; k--) {
                int at = random.nextInt(text.length());
                if (random.nextBoolean()) {
                    text.deleteCharAt(at);
                } else {
                    text.insert(at, marks.charAt(random.nextInt(marks.length())));
                }
            }
            String formatted = Formatter.format(text.toString());
            assertEquals(text.toString().replaceAll("\\s", ""), formatted.replaceAll("\\s", ""));
            assertEquals(formatted, Formatter.format(formatted), text.toString());
        }
    }

    @Test
    void untidyText() {
        String untidy = "\uFEFF\r\n\r\nplatform  orrin{supply 12 V negative ground // 12 V\r\n\r\n\r\n\r\n"
                + "  never a:b\t( c )\r\n"
                + "// before\r\n}waive x on front : 12b because \"y\" until 2027 - 6 - 30\r\n"
                + "drawing d of orrin\r\n{ // d\r\n\r\ncircuit 1 LG / BK {}\r\ntolerance - 0 mm + 25 mm\r\n}\r\n\r\n";
        assertEquals("""
                platform orrin {
                    supply 12 V negative ground  // 12 V

                    never a: b (c)
                    // before
                }
                waive x on front:12b because "y" until 2027-6-30
                drawing d of orrin {  // d
                    circuit 1 LG/BK {
                    }
                    tolerance -0 mm +25 mm
                }
                """, Formatter.format(untidy));
    }

    @Test
    void indentationStaysWhereBracesDoNotBalance() {
        String text = "drawing d of orrin\n  trunk  main {\n      breakout a at 1 in\n  }\n}\n";
        assertEquals("drawing d of orrin\n  trunk main {\n      breakout a at 1 in\n  }\n}\n", Formatter.format(text));
    }
}
