// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.Repository;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;
import org.loomwright.lang.SourceReader;

class KeptSourcesTest {

    private static final SourceReader READER = Repository.reader();

    /** A drawing and a harness. */
    private static final String EVERYTHING = corpus("drawing") + corpus("harness").split("kit frontKit")[0];

    @TempDir
    private Path folder;

    private static String corpus(String name) {
        try {
            return Files.readString(Repository.root().resolve(
                    "tests/org.loomwright.lang.tests/resources/org/loomwright/lang/corpus/" + name + ".loom"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every source that lies in the repository: examples, those of rules that break them, those of the language. */
    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(Repository.root().resolve("docs"))) {
            return files.filter(file -> file.toString().endsWith(".loom")).sorted().toList();
        }
    }

    @Test
    void whatComesOutIsWhatWentIn() throws IOException {
        int kept = 0;
        for (Path file : sources()) {
            byte[] bytes = Files.readAllBytes(file);
            Source source = READER.read(file.toString(), bytes);
            Optional<byte[]> packed = PackedSources.pack(source);
            boolean wirings = source.elements().stream().allMatch(Wiring.class::isInstance)
                    && !source.elements().isEmpty();
            assertEquals(wirings && source.problems().isEmpty(), packed.isPresent(), file.toString());
            if (packed.isPresent()) {
                kept++;
                Source out = PackedSources.unpack(file.toString(), bytes, packed.get()).orElseThrow();
                assertEquals(source, out);
                assertTrue(packed.get().length < 2 * bytes.length + 200, file + ": " + packed.get().length);
            }
        }
        assertTrue(kept > 20, "drawings and harnesses: " + kept);
    }

    /** The corpus of the language has each construct that there is; lines of it are left out at random. */
    @Test
    void everyConstructComesOutAgain() {
        Random random = new Random(10);
        int kept = 0;
        for (int round = 0; round < 60; round++) {
            StringBuilder text = new StringBuilder();
            EVERYTHING.lines().filter(line -> line.endsWith("{") || line.endsWith("}") || random.nextInt(8) > 0)
                    .forEach(line -> text.append(line).append(random.nextInt(9) == 0 ? " // \u00fc\n" : "\n"));
            byte[] bytes = (round == 0 ? EVERYTHING : text.toString()).getBytes(StandardCharsets.UTF_8);
            Source source = READER.read("every.loom", bytes);
            Optional<byte[]> packed = PackedSources.pack(source);
            if (packed.isPresent()) {
                kept++;
                assertEquals(source, PackedSources.unpack("every.loom", bytes, packed.get()).orElseThrow());
                assertEquals(READER.read("lower/every.loom", bytes),
                        PackedSources.unpack("lower/every.loom", bytes, packed.get()).orElseThrow());
            }
            assertTrue(round > 0 || kept == 1, "the whole corpus is kept: " + source.problems());
        }
        assertTrue(kept > 20, kept + " of 60 without a problem");
    }

    /** What is kept is never parsed again; what changed is, and is kept from then on. */
    @Test
    void onlyWhatChangedIsRead() {
        List<String> read = new ArrayList<>();
        SourceReader counting = (file, bytes) -> {
            read.add(file);
            return READER.read(file, bytes);
        };
        ReportCache cache = new ReportCache(folder, "tool", ReportCache.USUAL_BOUND);
        byte[] every = EVERYTHING.getBytes(StandardCharsets.UTF_8);
        byte[] broken = "drawing {".getBytes(StandardCharsets.UTF_8);
        byte[] edited = (EVERYTHING + "// more\n").getBytes(StandardCharsets.UTF_8);
        for (List<byte[]> contents : List.of(List.of(every, broken), List.of(every, broken), List.of(edited, broken),
                List.of(edited, every), List.of(edited, every))) {
            KeptSources sources = new KeptSources(cache, "project", () -> counting);
            assertEquals(READER.read("a", contents.get(0)), sources.read("a", contents.get(0)));
            assertEquals(READER.read("b", contents.get(1)), sources.read("b", contents.get(1)));
            sources.keep();
        }
        assertEquals(List.of("a", "b", "b", "a", "b", "b"), read);
        for (KeptSources other : List.of(new KeptSources(cache, "another project", () -> counting),
                new KeptSources(new ReportCache(folder, "next build", ReportCache.USUAL_BOUND), "project",
                        () -> counting))) {
            other.read("a", edited);
        }
        assertEquals(List.of("a", "b", "b", "a", "b", "b", "a", "a"), read);
    }

    /** Whatever the damage, the file is read instead. */
    @Test
    void damageIsNoticed() {
        byte[] bytes = EVERYTHING.getBytes(StandardCharsets.UTF_8);
        byte[] packed = PackedSources.pack(READER.read("a", bytes)).orElseThrow();
        Map<String, byte[]> whole = Map.of("print", packed, "other", new byte[0]);
        byte[] good = PackedSources.pack(whole);
        assertArrayEquals(packed, PackedSources.unpack(good).orElseThrow().get("print"));
        Random random = new Random(12);
        for (int round = 0; round < 2_000; round++) {
            byte[] bad = good.clone();
            bad[random.nextInt(bad.length)] ^= (byte) (1 << random.nextInt(8));
            assertEquals(Optional.empty(), PackedSources.unpack(bad));
            byte[] damaged = packed.clone();
            damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
            PackedSources.unpack("a", bytes, damaged); // no exception, no endless loop
        }
        for (int length = 0; length < good.length; length += 7) {
            assertEquals(Optional.empty(), PackedSources.unpack(Arrays.copyOf(good, length)));
            PackedSources.unpack("a", bytes, Arrays.copyOf(packed, Math.min(length, packed.length)));
        }
    }
}
