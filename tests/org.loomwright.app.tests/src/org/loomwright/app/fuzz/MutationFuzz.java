// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.loomwright.app.Texts;
import org.loomwright.app.print.FindingText;
import org.loomwright.app.print.Palette;
import org.loomwright.harness.Element;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/**
 * Checks projects of which one file is damaged. A round fails when anything is thrown, when a finding takes more than a
 * screen, or when it takes longer than {@link #HANG_SECONDS}, which is far beyond what a slow machine needs.
 */
final class MutationFuzz {

    /** Lines and columns of a large terminal: no message is longer. */
    static final int SCREEN_LINES = 50;
    static final int SCREEN_CHARACTERS = 8_000;
    static final int HANG_SECONDS = 120;

    private final SourceReader reader = LoomReader.create();
    private final RuleEngine engine = StandardRules.engine();
    private final List<byte[]> files = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private final List<Source> sources = new ArrayList<>();

    /** Files by what they hold, so that a kit is damaged as often as a drawing. */
    private final List<List<Integer>> kinds;

    /** What a round found out. */
    record Round(long seed, String file, int findings, long nanoseconds, List<String> faults) {
    }

    /** Reads the example that is going to be damaged. */
    MutationFuzz(Path example) throws IOException {
        List<Path> found;
        try (Stream<Path> walk = Files.walk(example)) {
            found = walk.filter(path -> path.toString().endsWith(".loom")).sorted().toList();
        }
        for (Path path : found) {
            names.add(path.getFileName().toString());
            files.add(Files.readAllBytes(path));
            sources.add(reader.read(names.getLast(), files.getLast()));
        }
        Map<String, List<Integer>> byKind = new TreeMap<>();
        for (int i = 0; i < sources.size(); i++) {
            for (String kind : kinds(sources.get(i))) {
                byKind.computeIfAbsent(kind, key -> new ArrayList<>()).add(i);
            }
        }
        kinds = List.copyOf(byKind.values());
    }

    private static Set<String> kinds(Source source) {
        Set<String> kinds = new TreeSet<>();
        for (Element element : source.elements()) {
            kinds.add(element instanceof Wiring wiring ? wiring.kind().name() : element.getClass().getSimpleName());
        }
        return kinds;
    }

    /** How many kinds of files the example has. */
    int kinds() {
        return kinds.size();
    }

    /** Damages one file and checks the project. */
    Round round(long seed) {
        List<Integer> ofKind = kinds.get((int) Math.floorMod(seed, kinds.size()));
        int at = ofKind.get(new Random(seed).nextInt(ofKind.size()));
        byte[] damaged = new Mutations(seed).damage(files.get(at));
        List<String> faults = new ArrayList<>();
        long start = System.nanoTime();
        int findings = 0;
        try {
            List<Source> all = new ArrayList<>(sources);
            all.set(at, reader.read(names.get(at), damaged));
            Report report = engine.check(Project.link(all), Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
            findings = report.findings().size();
            FindingText text = new FindingText(Texts.of(all), "", Palette.PLAIN);
            for (Finding finding : report.findings()) {
                length(finding, text, faults);
            }
        } catch (RuntimeException | StackOverflowError fault) {
            faults.add(fault + " at " + fault.getStackTrace()[0] + "; the text in hexadecimal: "
                    + (damaged.length > 4_000 ? "long" : HexFormat.of().formatHex(damaged)));
        }
        long took = System.nanoTime() - start;
        if (took > HANG_SECONDS * 1_000_000_000L) {
            faults.add("took " + took / 1_000_000 + " ms");
        }
        return new Round(seed, names.get(at), findings, took, faults);
    }

    private static void length(Finding finding, FindingText text, List<String> faults) {
        StringBuilder out = new StringBuilder();
        text.append(finding, out);
        if (out.length() > SCREEN_CHARACTERS || out.chars().filter(c -> c == '\n').count() > SCREEN_LINES) {
            faults.add("a message longer than a screen: " + out.substring(0, 200));
        }
    }

    /** The long run: example folder, number of rounds, first seed. Prints faults, and at the end the slowest rounds. */
    public static void main(String[] args) throws IOException {
        MutationFuzz fuzz = new MutationFuzz(Path.of(args[0]));
        long rounds = Long.parseLong(args[1]);
        long first = args.length > 2 ? Long.parseLong(args[2]) : 0;
        long slowest = 0;
        long slowestSeed = first;
        long faulty = 0;
        for (long seed = first; seed < first + rounds; seed++) {
            Round round = fuzz.round(seed);
            if (!round.faults().isEmpty()) {
                faulty++;
                System.out.println(round);
            }
            if (round.nanoseconds() > slowest) {
                slowest = round.nanoseconds();
                slowestSeed = seed;
            }
        }
        System.out.println(rounds + " rounds, " + faulty + " with faults; the slowest, seed " + slowestSeed + ", took "
                + slowest / 1_000_000 + " ms");
    }
}
