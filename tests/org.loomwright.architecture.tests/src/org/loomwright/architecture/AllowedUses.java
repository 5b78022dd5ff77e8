// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What {@code releng/allowed-uses.txt} says: for each room the rooms and the libraries that it may use. */
record AllowedUses(Map<String, Room> rooms) {

    /** What all our bundles and packages are called at the front. */
    static final String PREFIX = "org.loomwright.";

    /** What one room may use: passed on, not passed on, and of third parties. */
    record Room(Set<String> uses, Set<String> alone, Set<String> libraries) {
    }

    static AllowedUses read(Path file) throws IOException {
        List<String> lines = new ArrayList<>();
        for (String line : Files.readAllLines(file)) {
            String fact = line.replaceFirst("#.*", "").stripTrailing();
            if (fact.isEmpty()) {
                continue;
            }
            if (Character.isWhitespace(fact.charAt(0))) {
                lines.set(lines.size() - 1, lines.getLast() + fact);
            } else {
                lines.add(fact);
            }
        }
        Map<String, Room> rooms = new LinkedHashMap<>();
        for (String line : lines) {
            readRoom(line, rooms);
        }
        return new AllowedUses(rooms);
    }

    private static void readRoom(String line, Map<String, Room> rooms) {
        String[] words = line.split("\\s+");
        Room room = new Room(new TreeSet<>(), new TreeSet<>(), new TreeSet<>());
        Set<String> kind = null;
        for (String word : List.of(words).subList(1, words.length)) {
            switch (word) {
                case "uses" -> kind = room.uses();
                case "alone" -> kind = room.alone();
                case "library" -> kind = room.libraries();
                default -> {
                    if (kind == null) {
                        throw new IllegalArgumentException("a keyword is missing before " + word + ": " + line);
                    }
                    if (kind != room.libraries() && !rooms.containsKey(word)) {
                        throw new IllegalArgumentException(word + " must stand before " + words[0]
                                + " in the file, so that uses point one way: " + line);
                    }
                    kind.add(word);
                }
            }
        }
        if (rooms.put(words[0], room) != null) {
            throw new IllegalArgumentException("twice: " + words[0]);
        }
    }

    /** The rooms that a room may use, itself included. */
    Set<String> reachable(String room) {
        Set<String> all = new TreeSet<>(rooms.get(room).alone());
        addPassedOn(room, all);
        return all;
    }

    private void addPassedOn(String room, Set<String> all) {
        all.add(room);
        rooms.get(room).uses().forEach(used -> addPassedOn(used, all));
    }

    /** True if a room may use a bundle or package of this name. */
    boolean allows(String room, String name) {
        if (name.startsWith(PREFIX)) {
            String rest = name.substring(PREFIX.length());
            return reachable(room).contains(rest.split("\\.", 2)[0]);
        }
        if (name.equals("java") || name.startsWith("java.")) {
            return !name.startsWith("java.awt") && !name.startsWith("java.beans");
        }
        return rooms.get(room).libraries().stream().anyMatch(l -> name.equals(l) || name.startsWith(l + "."));
    }
}
