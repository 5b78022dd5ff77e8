// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.loomwright.app.BadCall;
import org.loomwright.app.sheet.Table;

/**
 * Two sources and four lists that are written again and again, each generation different in every byte that matters.
 * Its {@code main} is the process that is killed.
 *
 * @param folder where they are
 */
record Generations(Path folder) {

    private static final List<String> SOURCES = List.of("front.loom", "rear.loom");
    private static final List<String> LISTS = List.of("wires.csv", "parts.csv", "box.csv", "large.csv");
    private static final int LINES = 40;
    private static final int LARGE = 4_000;

    private static int lines(String name) {
        return name.equals("large.csv") ? LARGE : LINES + name.length() * 37;
    }

    private static byte[] source(String name, long generation) {
        return ("// generation " + generation + " of " + name + "\n").repeat(lines(name))
                .getBytes(StandardCharsets.UTF_8);
    }

    private static Table list(String name, long generation) {
        List<List<String>> rows = new ArrayList<>();
        for (int row = 1; row < lines(name); row++) {
            rows.add(List.of("generation " + generation, name));
        }
        return new Table(name, List.of("generation " + generation, name), rows);
    }

    /** Writes one generation: the sources in place, then the lists. */
    void write(long generation) throws BadCall {
        WholeFiles sources = new WholeFiles();
        SOURCES.forEach(name -> sources.add(folder.resolve(name), source(name, generation)));
        sources.rewrite();
        new SheetFolder(folder.resolve("sheets"), "sheets")
                .write(LISTS.stream().map(name -> list(name, generation)).toList());
    }

    /** Puts the sources in place, which are only ever rewritten. */
    void begin() throws IOException, BadCall {
        for (String name : SOURCES) {
            Files.write(folder.resolve(name), source(name, 0));
        }
        write(0);
    }

    /**
     * What is wrong with the files as they are: one is missing, is not one whole generation, or is of a generation
     * that cannot stand beside the others, which are moved into place one after the other.
     *
     * @param least the generation that was complete before
     */
    List<String> faults(long least) throws IOException {
        List<String> faults = new ArrayList<>();
        long before = Long.MAX_VALUE;
        long first = -1;
        for (String name : Stream.concat(SOURCES.stream(), LISTS.stream()).toList()) {
            Path file = folder.resolve(LISTS.contains(name) ? "sheets/" + name : name);
            long generation = Files.exists(file) ? generation(Files.readAllLines(file), name) : -1;
            first = first < 0 ? generation : first;
            if (generation < 0) {
                faults.add(name + (Files.exists(file) ? " is not whole" : " is lost"));
            } else if (generation > before || generation < first - 1 || generation < least) {
                faults.add(name + " is of generation " + generation + ", after one of " + before + ", " + first
                        + " being the first and " + least + " known to be complete");
            }
            before = generation;
        }
        return faults;
    }

    /** The generation of the file that is written last: all others are of this or of the next one. */
    long complete() throws IOException {
        return generation(Files.readAllLines(folder.resolve("sheets").resolve(LISTS.getLast())), LISTS.getLast());
    }

    /** Reads the number from the first line, and wants it in every line; -1 when that is not so. */
    private static long generation(List<String> lines, String name) {
        if (lines.size() != lines(name)) {
            return -1;
        }
        String digits = lines.getFirst().replaceFirst(".*?generation (\\d+).*", "$1");
        String line = LISTS.contains(name) ? "generation " + digits + "," + name
                : "// generation " + digits + " of " + name;
        return lines.stream().map(each -> each.replace("\uFEFF", "").replace("\"", "")).allMatch(line::equals)
                ? Long.parseLong(digits) : -1;
    }

    /** The drafts that lie about. */
    List<Path> leftovers() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.getFileName().toString().endsWith(".part")).sorted().toList();
        }
    }

    /** Writes generations until it is killed: the folder, and the number of the first one. */
    public static void main(String[] args) throws BadCall {
        Generations files = new Generations(Path.of(args[0]));
        long generation = Long.parseLong(args[1]);
        files.write(generation++);
        System.out.println("writing");
        while (true) {
            files.write(generation++);
        }
    }
}
