// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Finds the sources of a project: every file of its folder, and of the folders in it, whose name ends in {@code .loom}.
 * Names that begin with a dot are left alone. Links are followed, but each folder and each file is taken once, so that
 * a link to a folder above ends nowhere. Two walks over equal folders find the same files in the same order.
 */
public final class ProjectFiles {

    /** How the name of a source ends. */
    public static final String ENDING = ".loom";

    private final Set<Path> seen = new HashSet<>();
    private final List<Input> found = new ArrayList<>();

    private ProjectFiles() {
    }

    /**
     * The sources below a folder, ordered by name, folder by folder. A folder or file that cannot be read is among
     * them; loading it gives the reason.
     */
    public static List<Input> below(Path folder) {
        ProjectFiles walk = new ProjectFiles();
        walk.folder(folder, "");
        return List.copyOf(walk.found);
    }

    /**
     * Single files, each named as it was given, each real file once.
     *
     * @param base  the folder that relative paths start from
     * @param files the files, in the order that they keep
     */
    public static List<Input> of(Path base, List<Path> files) {
        ProjectFiles single = new ProjectFiles();
        for (Path file : files) {
            single.file(base.resolve(file), file.normalize().toString().replace('\\', '/'));
        }
        return List.copyOf(single.found);
    }

    private void folder(Path folder, String prefix) {
        if (!isNew(folder)) {
            return;
        }
        List<Path> entries = new ArrayList<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
            stream.forEach(entries::add);
        } catch (IOException | java.nio.file.DirectoryIteratorException e) {
            IOException cause = e instanceof IOException direct ? direct : (IOException) e.getCause();
            found.add(Input.unreadable(prefix.isEmpty() ? "." : prefix, Loader.reason(cause)));
            return;
        }
        entries.sort(Comparator.comparing(entry -> entry.getFileName().toString()));
        for (Path entry : entries) {
            String name = entry.getFileName().toString();
            if (name.startsWith(".")) {
                continue;
            }
            if (Files.isDirectory(entry)) {
                folder(entry, prefix + name + "/");
            } else if (name.endsWith(ENDING)) {
                file(entry, prefix + name);
            }
        }
    }

    private void file(Path file, String name) {
        if (isNew(file)) {
            found.add(Input.of(name, file));
        }
    }

    private boolean isNew(Path path) {
        try {
            return seen.add(path.toRealPath());
        } catch (IOException e) {
            return seen.add(path.toAbsolutePath().normalize());
        }
    }
}
