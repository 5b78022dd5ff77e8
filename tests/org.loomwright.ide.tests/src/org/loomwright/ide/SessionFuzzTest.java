// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** After any edits, saves, deletions and closings the editor shows what a fresh check of the same texts finds. */
class SessionFuzzTest {

    private static final int ROUNDS = 40;
    private static final Map<String, String> TEXTS = Map.of(
            "p.loom", "platform p {\n    years 1964 .. 1967\n    option heater\n    place box\n    place end\n}\n",
            "c.loom", "catalogue c {\n    housing two {\n        cavities 1 .. 2\n    }\n}\n",
            "d.loom", "drawing d of p when year <= 1965 {\n    datum box\n    trunk main {\n"
                    + "        breakout out at 300 mm\n    }\n    branch b from out to end 100 mm\n"
                    + "    connector A at box is two\n    connector B on b is two\n    circuit 1 BK {\n"
                    + "        wire a 18 ga from A:1 to B:1\n        wire b 18 ga from A:2 to B:2 when heater\n    }\n"
                    + "}\n",
            "e.loom", "drawing e of p when year >= 1966 {\n    datum box\n    connector A at box is two\n}\n");
    private static final List<String> PIECES = List.of("", "\n", "}", "{", " when heater", "box", "two", "A:1", "B:1",
            "wire c 16 ga from A:1 to B:2\n", "connector A at box is two\n", "\"", "18", "not ");

    @TempDir
    private Path temporary;

    @Test
    void whatIsShownIsWhatAFreshCheckFinds() throws Exception {
        Path folder = temporary.toRealPath();
        Map<String, List<Finding>> shown = new ConcurrentHashMap<>();
        Map<String, String> disk = new TreeMap<>(TEXTS);
        Map<String, String> buffers = new TreeMap<>();
        for (var each : TEXTS.entrySet()) {
            Files.writeString(folder.resolve(each.getKey()), each.getValue());
        }
        Random random = new Random(3);
        try (Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(1), Settings.TIMELESS,
                new Pace(Duration.ofMillis(1), Duration.ZERO),
                (file, version, moment, findings) -> shown.put(file.getFileName().toString(), findings))) {
            workspace.project(folder);
            List<String> names = new ArrayList<>(new TreeMap<>(TEXTS).keySet());
            for (int round = 0; round < ROUNDS; round++) {
                for (int i = random.nextInt(4); i >= 0; i--) {
                    step(workspace, folder, names.get(random.nextInt(names.size())), disk, buffers, random);
                }
                workspace.refresh();
                settle(workspace);
                Map<String, String> texts = new TreeMap<>(disk);
                texts.putAll(buffers);
                assertEquals(expected(texts), present(shown, texts), "round " + round + " " + texts);
            }
        }
    }

    /** A check may be ended by one that is on its way anyway. */
    private static void settle(Workspace workspace) throws Exception {
        workspace.settled().handle((done, failed) -> null).get(60, TimeUnit.SECONDS);
        workspace.settled().handle((done, failed) -> null).get(60, TimeUnit.SECONDS);
    }

    private static void step(Workspace workspace, Path folder, String name, Map<String, String> disk,
            Map<String, String> buffers, Random random) throws Exception {
        Path file = folder.resolve(name);
        switch (random.nextInt(8)) {
            case 0 -> {
                buffers.remove(name);
                workspace.closed(file);
            }
            case 1 -> {
                disk.remove(name);
                Files.deleteIfExists(file);
            }
            case 2 -> {
                String text = TEXTS.get(name) + "// " + random.nextInt() + "\n";
                disk.put(name, text);
                Files.write(file, text.getBytes(StandardCharsets.UTF_8));
            }
            default -> {
                String text = buffers.getOrDefault(name, disk.getOrDefault(name, TEXTS.get(name)));
                int at = random.nextInt(text.length() + 1);
                int end = Math.min(text.length(), at + random.nextInt(6));
                String next = random.nextInt(4) == 0 ? TEXTS.get(name) : text.substring(0, at)
                        + PIECES.get(random.nextInt(PIECES.size())) + text.substring(end);
                buffers.put(name, next);
                workspace.changed(file, random.nextInt(1_000_000), next);
            }
        }
    }

    private static Map<String, List<String>> expected(Map<String, String> texts) {
        Bench bench = Bench.empty();
        texts.forEach(bench::with);
        Map<String, List<String>> expected = new TreeMap<>();
        for (String name : texts.keySet()) {
            List<String> findings = words(bench.checked().findings(name).stream().filter(Finding::counts).toList());
            if (!findings.isEmpty()) {
                expected.put(name, findings);
            }
        }
        return expected;
    }

    private static Map<String, List<String>> present(Map<String, List<Finding>> shown, Map<String, String> texts) {
        Map<String, List<String>> present = new TreeMap<>();
        shown.forEach((name, findings) -> {
            if (!findings.isEmpty()) {
                present.put(name, words(findings));
            }
        });
        return present;
    }

    private static List<String> words(List<Finding> findings) {
        return findings.stream().map(each -> each.place().span().at() + " " + each.rule() + " " + each.sentence()
                + each.affected().map(affected -> " " + affected.words()).orElse("")).toList();
    }
}
