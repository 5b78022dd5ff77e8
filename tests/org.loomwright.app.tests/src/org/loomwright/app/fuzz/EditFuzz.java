// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.loomwright.app.EditSession;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Silences;
import org.loomwright.rules.standard.StandardRules;

/**
 * Edits a project at random: files are damaged, mended, taken away, put back and copied. After each edit the report of
 * the session has to be the one of all files read, joined and checked from the start, and so has that of a check which
 * knows from the one before to which questions there was no answer.
 */
final class EditFuzz {

    private final SourceReader reader = LoomReader.create();
    private final StockShelf shelf = new StockShelf(reader);
    private final SortedMap<String, byte[]> originals = new TreeMap<>();

    /** Reads the example that is going to be edited. */
    EditFuzz(Path example) throws IOException {
        try (Stream<Path> walk = Files.list(example)) {
            for (Path path : walk.filter(each -> each.toString().endsWith(".loom")).sorted().toList()) {
                originals.put(path.getFileName().toString(), Files.readAllBytes(path));
            }
        }
    }

    /**
     * Makes some edits one after the other.
     *
     * @return what went wrong; empty when nothing did
     */
    List<String> run(long seed, int edits, int threads) {
        Random random = new Random(seed);
        SortedMap<String, byte[]> texts = new TreeMap<>(originals);
        EditSession session = new EditSession(reader, 1, StandardRules.engine(threads), Settings.TIMELESS);
        List<String> faults = new ArrayList<>();
        Map<String, Silences> silences = new HashMap<>();
        texts.forEach((name, bytes) -> session.edit(name, bytes, Cancel.NEVER));
        compare("seed " + seed + ", opened", session.report(), full(texts), faults);
        List<String> names = List.copyOf(originals.keySet());
        for (int i = 0; i < edits; i++) {
            String name = names.get(random.nextInt(names.size()));
            String what = "seed " + seed + ", edit " + i + ": " + edit(session, texts, name, random);
            Report full = full(texts);
            compare(what, session.report(), full, faults);
            compare(what + ", what was silent not asked", remembering(texts, silences, threads), full, faults);
        }
        return faults;
    }

    private String edit(EditSession session, Map<String, byte[]> texts, String name, Random random) {
        String copy = "copy-of-" + name;
        byte[] now = texts.getOrDefault(name, originals.get(name));
        switch (random.nextInt(8)) {
            case 0 -> {
                texts.remove(name);
                session.remove(name, Cancel.NEVER);
                return "removed " + name;
            }
            case 1 -> {
                if (texts.remove(copy) != null) {
                    session.remove(copy, Cancel.NEVER);
                    return "removed " + copy;
                }
                return put(session, texts, copy, now, "copied ");
            }
            case 2, 3 -> {
                return put(session, texts, name, originals.get(name), "mended ");
            }
            default -> {
                return put(session, texts, name, new Mutations(random.nextLong()).damage(now), "damaged ");
            }
        }
    }

    private static String put(EditSession session, Map<String, byte[]> texts, String name, byte[] bytes, String what) {
        texts.put(name, bytes);
        session.edit(name, bytes, Cancel.NEVER);
        return what + name;
    }

    private Report full(Map<String, byte[]> texts) {
        return StandardRules.engine().check(project(texts), Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    private Project project(Map<String, byte[]> texts) {
        List<Source> sources = new ArrayList<>();
        texts.forEach((name, bytes) -> sources.add(reader.read(name, bytes)));
        return Project.link(sources, shelf);
    }

    private Report remembering(Map<String, byte[]> texts, Map<String, Silences> silences, int threads) {
        RuleEngine.Answered answered = StandardRules.engine(threads).check(project(texts), Settings.TIMELESS,
                scope -> silences.getOrDefault(scope, Silences.NONE), Cancel.NEVER, Progress.NONE);
        silences.put(answered.scope(), new Silences(answered.silences()));
        return answered.report();
    }

    private static void compare(String when, Report incremental, Report full, List<String> faults) {
        String expected = full.toString();
        String got = incremental.toString();
        if (!expected.equals(got)) {
            int at = 0;
            while (at < Math.min(expected.length(), got.length()) && expected.charAt(at) == got.charAt(at)) {
                at++;
            }
            faults.add(when + ": expected " + around(expected, at) + " but got " + around(got, at));
        }
    }

    private static String around(String text, int at) {
        return text.substring(Math.max(0, at - 200), Math.min(text.length(), at + 200));
    }

    /** The long run: example folder, number of sessions, edits in each. */
    public static void main(String[] args) throws IOException {
        EditFuzz fuzz = new EditFuzz(Path.of(args[0]));
        int faulty = 0;
        for (long seed = 0; seed < Long.parseLong(args[1]); seed++) {
            List<String> faults = fuzz.run(seed, Integer.parseInt(args[2]), 2);
            faulty += faults.isEmpty() ? 0 : 1;
            faults.forEach(System.out::println);
        }
        System.out.println(args[1] + " sessions of " + args[2] + " edits, " + faulty + " with faults");
    }
}
