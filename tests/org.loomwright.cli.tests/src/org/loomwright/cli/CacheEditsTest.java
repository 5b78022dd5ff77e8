// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.testing.Git;

/**
 * Whatever is edited between two checks, and whatever befalls the folder of the cache: what is printed is to the byte
 * what a check without a cache prints, with {@code --since} and {@code --baseline} too.
 */
class CacheEditsTest {

    private static final int ROUNDS = 20;
    private static final Pattern NUMBER = Pattern.compile("(?<=\\s)\\d+(?= (mm|ga|A|C|W)\\b)");
    private static final Pattern DECLARED = Pattern.compile(
            "^\\s*(connector|branch|breakout|device|splice|harness|drawing|place|option|lamp|housing) (\\w+)\\b");
    private static final List<String> DAYS = List.of("2026-12-31", "2027-06-30", "2027-07-01", "2028-01-01");
    private static final String SETTINGS = """
            practice bench of trailer {
                treat length-unknown as note because "we measure on the car"
            }
            waive w1: place-not-reached on adaptor13to7 because "measured" until 2027-06-30
            waive w2: orphan-wire on adaptor13to7 because "nothing to accept"
            """;

    @TempDir
    private Path temporary;

    private Path folder;
    private Path kept;
    private Git git;

    @BeforeEach
    void repository() throws IOException {
        folder = Files.createDirectory(temporary.resolve("cars"));
        kept = temporary.resolve("kept");
        git = Git.init(folder);
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("loomwright.root"), "docs/examples/trailer"))) {
            for (Path file : files.filter(each -> each.toString().endsWith(".loom")).sorted().toList()) {
                git.write("p/" + file.getFileName(), Files.readString(file));
            }
        }
        git.write("p/settings.loom", SETTINGS).commit("as it was");
        git.run("tag", "v1");
    }

    private Call call(boolean cached, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Main.run(args, new Door(new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), folder,
                cached ? Map.of(Caches.FOLDER, kept.toString()) : Map.of(Caches.FOLDER, "off"), false, false));
        return new Call(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void nobodyCanTellThatThereIsACache() throws IOException {
        assertEquals(0, call(false, "check", "p", "--write-baseline", "known.txt", "--today", DAYS.getFirst()).code());
        Set<String> outcomes = new HashSet<>();
        for (int seed = 1; seed <= ROUNDS; seed++) {
            Random random = new Random(seed);
            StringBuilder edits = new StringBuilder("seed " + seed + ":");
            for (int i = 1 + random.nextInt(3); i > 0; i--) {
                edits.append(' ').append(edit(random));
            }
            String day = DAYS.get(random.nextInt(DAYS.size()));
            List<String> more = switch (seed % 4) {
                case 0 -> List.of("--since", "v1");
                case 1 -> List.of("--baseline", "known.txt", "--format", "json", "--all");
                case 2 -> List.of("--since", "HEAD", "--format", "sarif");
                default -> List.of("--format", "json", "--all");
            };
            List<String> args = new ArrayList<>(List.of("check", "p", "--today", day));
            args.addAll(more);
            Call anew = call(false, args.toArray(String[]::new));
            assertEquals(anew, call(true, args.toArray(String[]::new)), edits.toString());
            assertEquals(anew, call(true, args.toArray(String[]::new)), edits + ", asked again");
            outcomes.add(anew.out());
            if (random.nextInt(4) == 0) {
                git.commit("as edited");
            }
        }
        assertTrue(outcomes.size() > ROUNDS / 2, outcomes.size() + " outcomes: the edits do too little");
        assertTrue(names(kept, ".report").size() > ROUNDS / 3 && !names(kept, ".silences").isEmpty(),
                "the cache keeps too little: " + names(kept, ""));
    }

    private static List<Path> names(Path folder, String ending) throws IOException {
        if (!Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(each -> each.toString().endsWith(ending)).sorted().toList();
        }
    }

    /** One edit, and what it was. */
    private String edit(Random random) throws IOException {
        List<Path> files = names(folder.resolve("p"), ".loom");
        Path file = files.get(random.nextInt(files.size()));
        String name = file.getFileName().toString();
        switch (random.nextInt(10)) {
            case 0, 1 -> number(file, random);
            case 2 -> line(file, random);
            case 3 -> rename(files, file, random);
            case 4 -> Files.move(file, file.resolveSibling("a" + random.nextInt(100) + name));
            case 5 -> {
                if (files.size() > 4) {
                    Files.delete(file);
                }
            }
            case 6 -> git.run("checkout", "-q", "v1", "--", "p");
            case 7 -> Files.writeString(file, "// a note\n" + Files.readString(file));
            case 8 -> {
                Files.writeString(folder.resolve("p/settings.loom"), SETTINGS.replace("as note", random.nextBoolean()
                        ? "as error" : "as silent"));
                return "settings";
            }
            default -> {
                return damage(random);
            }
        }
        return "edit of " + name;
    }

    private static void number(Path file, Random random) throws IOException {
        Files.writeString(file, replaced(NUMBER.matcher(Files.readString(file)), Files.readString(file),
                Integer.toString(1 + random.nextInt(400)), random));
    }

    private static String replaced(Matcher matcher, String text, String by, Random random) {
        List<int[]> found = new ArrayList<>();
        while (matcher.find()) {
            found.add(new int[] {matcher.start(), matcher.end()});
        }
        if (found.isEmpty()) {
            return text;
        }
        int[] at = found.get(random.nextInt(found.size()));
        return text.substring(0, at[0]) + by + text.substring(at[1]);
    }

    /** Another line is lost, whatever it was. */
    private static void line(Path file, Random random) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        lines.remove(random.nextInt(lines.size()));
        Files.write(file, lines);
    }

    /** An element gets another name wherever it is named. */
    private static void rename(List<Path> files, Path file, Random random) throws IOException {
        List<String> names = new ArrayList<>();
        for (String each : Files.readAllLines(file)) {
            Matcher declared = DECLARED.matcher(each);
            if (declared.find()) {
                names.add(declared.group(2));
            }
        }
        if (!names.isEmpty()) {
            String name = names.get(random.nextInt(names.size()));
            for (Path each : files) {
                Files.writeString(each, Files.readString(each).replaceAll("\\b" + name + "\\b", name + "q"));
            }
        }
    }

    /** Something befalls a kept file: cut off, emptied, another's bytes, a bit, another version's head, a folder. */
    private String damage(Random random) throws IOException {
        List<Path> all = names(kept, "");
        for (Path file : all.stream().filter(Files::isRegularFile).toList()) {
            byte[] bytes = Files.readAllBytes(file);
            byte[] garbage = new byte[1 + random.nextInt(500)];
            random.nextBytes(garbage);
            switch (random.nextInt(7)) {
                case 0 -> Files.write(file, Arrays.copyOf(bytes, random.nextInt(bytes.length + 1)));
                case 1 -> Files.write(file, garbage);
                case 2 -> Files.write(file, new byte[0]);
                case 3 -> Files.write(file, flipped(bytes, random.nextInt(Math.max(1, bytes.length)), random));
                case 4 -> Files.write(file, flipped(bytes, random.nextInt(Math.clamp(bytes.length, 1, 12)), random));
                case 5 -> {
                    Files.delete(file);
                    Files.createDirectory(file);
                }
                default -> Files.delete(file);
            }
        }
        return "damage of " + all.size() + " kept files";
    }

    private static byte[] flipped(byte[] bytes, int at, Random random) {
        byte[] flipped = bytes.clone();
        if (flipped.length > 0) {
            flipped[at] ^= (byte) (1 << random.nextInt(8));
        }
        return flipped;
    }
}
