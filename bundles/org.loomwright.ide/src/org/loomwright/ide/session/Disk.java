// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectFiles;

/**
 * The files of one project as they are on disk, and which of them changed since they were last looked at. Safe for use
 * by several threads.
 */
final class Disk {

    private record Stamp(long size, long modified, Object key) {
        static final Stamp NONE = new Stamp(-1, 0, null);
    }

    private final Path root;
    private Map<String, Stamp> seen = new TreeMap<>();

    Disk(Path root) {
        this.root = root;
    }

    /**
     * What is different.
     *
     * @param changed new and changed files, each with the bytes that it had when it was read
     * @param gone    names of files that are no more
     */
    record Difference(List<Input> changed, List<String> gone) {

        boolean isNone() {
            return changed.isEmpty() && gone.isEmpty();
        }
    }

    /** Looks at all files; linear in their number, and reads only what changed. */
    synchronized Difference look() {
        Map<String, Stamp> now = new LinkedHashMap<>();
        List<Input> changed = new ArrayList<>();
        for (Input input : ProjectFiles.below(root)) {
            Stamp stamp = stamp(input.name());
            now.put(input.name(), stamp);
            if (!stamp.equals(seen.get(input.name()))) {
                changed.add(inMemory(input));
            }
        }
        List<String> gone = seen.keySet().stream().filter(name -> !now.containsKey(name)).toList();
        seen = new TreeMap<>(now);
        return new Difference(changed, gone);
    }

    /** One file as it is on disk now; the next look does not tell of it again. */
    synchronized Difference look(String name) {
        Path file = root.resolve(name);
        if (!Files.exists(file)) {
            seen.remove(name);
            return new Difference(List.of(), List.of(name));
        }
        seen.put(name, stamp(name));
        return new Difference(List.of(inMemory(Input.of(name, file))), List.of());
    }

    private Stamp stamp(String name) {
        try {
            BasicFileAttributes file = Files.readAttributes(root.resolve(name), BasicFileAttributes.class);
            return new Stamp(file.size(), file.lastModifiedTime().toMillis(), file.fileKey());
        } catch (IOException e) {
            return Stamp.NONE;
        }
    }

    /** A file whose bytes are read now, so that a later change of it does not show half. */
    private static Input inMemory(Input input) {
        if (input.size() > Loader.LARGEST) {
            return input;
        }
        try (InputStream stream = input.content().open()) {
            return Input.of(input.name(), stream.readAllBytes());
        } catch (IOException e) {
            return input; // loading it gives the reason
        }
    }
}
