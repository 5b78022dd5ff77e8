// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;

/** From bytes to a source: what is refused, that nothing throws, and that threads and settings make no difference. */
class ReadingTest {
    private static List<String> problems(byte[] bytes) {
        return Corpus.reader().read("a.loom", bytes).problems().stream().map(Corpus::shown).toList();
    }

    @Test
    void emptyAndBlankFilesAreFine() {
        assertEquals(List.of(), Corpus.problems(""));
        assertEquals(List.of(), Corpus.problems(" \n\n\t// nothing\n"));
        assertEquals("", Corpus.read("\uFEFF").text());
    }

    @Test
    void otherEncodingsAreNamed() {
        String text = "platform p {\n}\n";
        for (Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE, StandardCharsets.UTF_16)) {
            assertEquals(List.of("1:1+0 not-text: the file is UTF-16 text, not UTF-8"),
                    problems(text.getBytes(charset)));
        }
        assertEquals(List.of("1:1+0 not-text: the file is UTF-32 text, not UTF-8"),
                problems(("\uFEFF" + text).getBytes(Charset.forName("UTF-32LE"))));
        byte[] latin = "platform p {\n    note \"\u00e9t\u00e9\"\n}\n".getBytes(StandardCharsets.ISO_8859_1);
        assertEquals(List.of("1:1+0 not-text: byte 23 (line 2) is not UTF-8"), problems(latin));
    }

    @Test
    void theReplacementCharacterItselfIsText() {
        assertEquals(List.of(), Corpus.problems("platform p {\n    note \"\uFFFD\"\n}\n"));
    }

    @Test
    void otherBytesAreNoText() {
        assertEquals(List.of("1:1+0 not-text: the file is no text: byte 13 (line 2) is zero"),
                problems("platform p {\n\0}\n".getBytes(StandardCharsets.UTF_8)));
        byte[] noise = new byte[1000];
        new Random(1).nextBytes(noise);
        Source source = Corpus.reader().read("a.loom", noise);
        assertEquals("not-text", source.problems().getFirst().code());
        assertEquals(List.of(), source.elements());
        assertEquals(List.of("1:1+0 not-text: the lines of the file end with CR alone"),
                Corpus.problems("platform p {\r}\r"));
    }

    @Test
    void largeFilesAreRefused() {
        byte[] large = new byte[8 * 1024 * 1024 + 1];
        Arrays.fill(large, (byte) ' ');
        assertEquals(List.of("1:1+0 file-too-big: the file has 8388609 bytes; files over 8388608 bytes are not read"),
                problems(large));
        assertEquals(List.of(), problems(Arrays.copyOf(large, large.length - 1)));
    }

    @Test
    void manyProblemsAreCutShort() {
        List<String> problems = Corpus.problems("platform p {\n" + "    nonsense\n".repeat(3_000) + "}\n");
        assertEquals(1_001, problems.size());
        assertEquals("1002:5+8 too-many: the file has 2000 more problems from here on", problems.getLast());
    }

    @Test
    void damagedTextsNeverThrow() {
        Random random = new Random(7);
        List<String> texts = Corpus.FILES.stream().map(Corpus::text).toList();
        String marks = "{}\"/*-+.:,()\n\r\t '\u00b1\\aw1\u0001 ";
        for (int i = 0; i < 1_500; i++) {
            StringBuilder text = new StringBuilder(texts.get(random.nextInt(texts.size())));
            for (int k = random.nextInt(12); k >= 0; k--) {
                int from = random.nextInt(text.length());
                int to = Math.min(text.length(), from + random.nextInt(30));
                switch (random.nextInt(3)) {
                    case 0 -> text.delete(from, to);
                    case 1 -> text.insert(random.nextInt(text.length()), text.substring(from, to));
                    default -> text.insert(from, marks.charAt(random.nextInt(marks.length())));
                }
            }
            checkSpans(Corpus.read(text.toString()));
        }
    }

    private static void checkSpans(Source source) {
        List<Problem> problems = source.problems();
        for (int i = 0; i < problems.size(); i++) {
            Problem problem = problems.get(i);
            assertTrue(problem.span().offset() >= 0 && problem.span().end() <= source.text().length(), source.text());
            assertTrue(i == 0 || problems.get(i - 1).span().compareTo(problem.span()) <= 0, source.text());
            problem.edits().forEach(edit -> assertTrue(edit.span().end() <= source.text().length()));
        }
    }

    @Test
    void threadsMakeNoDifference() throws Exception {
        List<String> texts = new ArrayList<>();
        GeneratedTexts generated = new GeneratedTexts(11, true);
        for (int i = 0; i < 150; i++) {
            texts.add(generated.next());
        }
        texts.add(Corpus.resource("mistakes.loom"));
        List<Source> alone = texts.stream().map(Corpus::read).toList();
        try (ExecutorService pool = Executors.newFixedThreadPool(8)) {
            for (int round = 0; round < 4; round++) {
                List<Future<Source>> together = texts.stream().map(text -> pool.submit(() -> Corpus.read(text)))
                        .toList();
                for (int i = 0; i < texts.size(); i++) {
                    assertEquals(alone.get(i), together.get(i).get());
                }
            }
        }
    }

    @Test
    void readersMadeAtTheSameTimeAgree() throws Exception {
        String text = Corpus.text("drawing.loom");
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            List<Future<Source>> together = java.util.stream.Stream.generate(() -> pool.submit(() -> LoomReader.create()
                    .read("a.loom", text.getBytes(StandardCharsets.UTF_8)))).limit(4).toList();
            for (Future<Source> each : together) {
                assertEquals(Corpus.read(text), each.get());
            }
        }
    }

    @Test
    void localesMakeNoDifference() {
        Source here = Corpus.read(Corpus.resource("mistakes.loom"));
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("tr-TR", "ar-EG", "de-DE")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertEquals(here, Corpus.read(Corpus.resource("mistakes.loom")));
            }
        } finally {
            Locale.setDefault(before);
        }
    }
}
