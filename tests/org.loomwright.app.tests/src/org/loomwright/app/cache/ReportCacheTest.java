// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.app.CheckProject;
import org.loomwright.app.Checked;
import org.loomwright.app.Contents;
import org.loomwright.app.Repository;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

class ReportCacheTest {

    private static Checked orrin;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() throws BadCall {
        SourceReader reader = Repository.reader();
        orrin = new CheckProject(() -> reader, StandardRules::engine, Optional.empty()).check(
                ProjectPlace.findOne(Repository.root(), "docs/examples/orrin"), Settings.TIMELESS, 1, Cancel.NEVER,
                Progress.NONE);
    }

    private static Finding odd(String words) {
        Span span = new Span("ä\ud83d\ude97.loom", 3, 4, 1, 4);
        return new Finding("rule", Severity.NOTE, true, "", words, words, List.of("", words), "basis",
                Optional.of(new Finding.Affected(Optional.empty(), words, "", Optional.empty(), Optional.empty(),
                        true)), new Finding.Label(span, words), List.of(new Finding.Label(Span.NONE, "")), "",
                List.of(new Finding.Fix("mend", List.of(new TextEdit(span, words)))),
                Optional.of(new Finding.Acceptance(Finding.Acceptance.How.AS_FACTORY, words, span)), "0");
    }

    private static Kept kept(Report report) {
        return new Kept(new Contents(1, 2, 3, 4, "judged by the practice shop: 1 limit set"), report);
    }

    @Test
    void whatComesOutIsWhatWentIn() {
        Kept whole = new Kept(orrin.contents(), orrin.all());
        assertTrue(orrin.all().findings().size() > 100);
        assertEquals(whole, ReportBytes.unpack(ReportBytes.pack(whole)).orElseThrow());
        assertArrayEquals(ReportBytes.pack(whole), ReportBytes.pack(ReportBytes.unpack(ReportBytes.pack(whole))
                .orElseThrow()));
        for (String words : List.of("", "plain", "ÿ", "Ā", "\ud83d\ude97", "half of one: \ud83d", "\u0000\n\t",
                "x".repeat(100_000))) {
            Kept one = kept(new Report(List.of(odd(words), odd(words + "2")), new Report.Work(1, -1, Long.MAX_VALUE)));
            assertEquals(one, ReportBytes.unpack(ReportBytes.pack(one)).orElseThrow());
        }
    }

    /** Whatever the damage, there is no exception, and only what is whole is taken. */
    @Test
    void damageIsNoticed() {
        byte[] good = ReportBytes.pack(new Kept(orrin.contents(), orrin.all()));
        Random random = new Random(11);
        for (int round = 0; round < 2_000; round++) {
            byte[] bad = good.clone();
            int at = random.nextInt(bad.length);
            bad[at] ^= (byte) (1 << random.nextInt(8));
            assertEquals(Optional.empty(), ReportBytes.unpack(bad), "byte " + at);
        }
        for (int length = 0; length < good.length; length += 97) {
            assertEquals(Optional.empty(), ReportBytes.unpack(java.util.Arrays.copyOf(good, length)));
        }
    }

    @Test
    void everyPartOfTheQuestionIsInTheKey() {
        Map<String, byte[]> files = files("a", "1", "b", "2");
        Settings day = Settings.on(LocalDate.of(2027, 6, 30));
        Set<String> keys = new HashSet<>();
        keys.add(ReportKey.of("tool", ReportKey.of(files), day));
        keys.add(ReportKey.of("other", ReportKey.of(files), day));
        keys.add(ReportKey.of("tool", ReportKey.of(files), Settings.TIMELESS));
        keys.add(ReportKey.of("tool", ReportKey.of(files), Settings.on(LocalDate.of(2027, 7, 1))));
        keys.add(ReportKey.of("tool", ReportKey.of(files("a", "1", "b", "3")), day));
        keys.add(ReportKey.of("tool", ReportKey.of(files("a", "1", "c", "2")), day));
        keys.add(ReportKey.of("tool", ReportKey.of(files("a", "12", "b", "")), day));
        keys.add(ReportKey.of("tool", ReportKey.of(files("b", "2", "a", "1")), day));
        keys.add(ReportKey.of("tool", ReportKey.of(files("a", "1b", "", "2")), day));
        keys.add(ReportKey.of("tool", ReportKey.of(files("a", "1")), day));
        assertEquals(10, keys.size());
        assertTrue(keys.contains(ReportKey.of("tool", ReportKey.of(files("a", "1", "b", "2")), day)));
    }

    private static Map<String, byte[]> files(String... namesAndTexts) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            files.put(namesAndTexts[i], namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    /** A rule engine that judges otherwise, as the next build might. */
    @Test
    void aRebuiltProgramDoesNotUseWhatTheOldOneKept() throws BadCall {
        SourceReader reader = Repository.reader();
        ProjectPlace place = new ProjectPlace("p", folder, "", List.of(Input.of("p.loom",
                "platform p {\n    years 1964 .. 1971\n}\n".getBytes(StandardCharsets.UTF_8))));
        List<String> asked = new ArrayList<>();
        for (String tool : List.of("first", "second", "first", "second")) {
            RuleEngine engine = (project, settings, cancel, progress) -> {
                asked.add(tool);
                return new Report(List.of(odd(tool)), new Report.Work(0, 0, 0));
            };
            Checked checked = new CheckProject(() -> reader, threads -> engine,
                    Optional.of(new ReportCache(folder, tool, ReportCache.USUAL_BOUND)))
                    .check(place, Settings.TIMELESS, 1, Cancel.NEVER, Progress.NONE);
            assertEquals(tool, checked.report().findings().getFirst().sentence());
        }
        assertEquals(List.of("first", "second"), asked);
    }

    @Test
    void theOldestGoPastTheBound() throws IOException {
        Kept one = kept(new Report(List.of(odd("x".repeat(1_000))), new Report.Work(0, 0, 0)));
        int size = ReportBytes.pack(one).length;
        ReportCache cache = new ReportCache(folder, "tool", 5L * size);
        Files.writeString(folder.resolve("fault-of-ours.txt"), "not ours to delete");
        Path abandoned = Files.writeString(folder.resolve("old.part"), "half");
        Files.setLastModifiedTime(abandoned, FileTime.fromMillis(System.currentTimeMillis() - 7_200_000));
        for (int i = 0; i < 8; i++) {
            cache.keep("key" + i, one);
            Path file = folder.resolve("key" + i + ".report");
            assertTrue(Files.exists(file), "the newest stays");
            Files.setLastModifiedTime(file, FileTime.fromMillis(1_000_000L * (i + 1)));
            if (i == 4) {
                assertTrue(cache.find("key0").isPresent(), "asked for: it is the youngest now");
            }
        }
        assertEquals(List.of("fault-of-ours.txt", "key0.report", "key4.report", "key5.report", "key6.report",
                "key7.report"), names());
        new ReportCache(folder, "tool", size - 1).keep("large", one);
        assertNotEquals(Optional.empty(), cache.find("key7"), "what is larger than the bound drives nothing out");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void manyAtATimeAlwaysSeeAWholeReport() throws Exception {
        Kept whole = new Kept(orrin.contents(), orrin.all());
        List<Future<?>> running = new ArrayList<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            for (int thread = 0; thread < 4; thread++) {
                running.add(pool.submit(() -> {
                    ReportCache cache = new ReportCache(folder, "tool", ReportCache.USUAL_BOUND);
                    for (int i = 0; i < 40; i++) {
                        cache.keep("key" + i % 3, whole);
                        Optional<Kept> found = cache.find("key" + (i + 1) % 3);
                        assertTrue(found.isEmpty() || found.get().equals(whole));
                    }
                    return null;
                }));
            }
            for (Future<?> each : running) {
                each.get();
            }
        }
        assertEquals(List.of("key0.report", "key1.report", "key2.report"), names());
    }
}
