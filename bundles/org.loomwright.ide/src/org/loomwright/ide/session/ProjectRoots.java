// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.loomwright.app.load.ProjectFiles;

/**
 * Finds the project that a file belongs to. A project is a folder with everything below it, as it is for
 * {@code check}; so one that holds sources takes in the folders below it. From the file's folder outwards: a folder
 * that itself holds sources belongs to the project; one that holds none ends the search, unless no platform has been
 * come upon yet, without which no project can be. The search never leaves the folder that the editor has open.
 */
final class ProjectRoots {

    private static final Pattern PLATFORM = Pattern.compile("\\s*platform\\s+\\S.*");
    /** Sources that are looked into for a platform; a project of more has one in a folder of its own, or is found. */
    private static final int MOST_FILES = 2_000;
    private static final int MOST_LEVELS = 8;

    private ProjectRoots() {
    }

    /**
     * The root of the project of a file.
     *
     * @param file   the file, absolute
     * @param bound  the outermost folder that may be the root; empty for none
     */
    static Path of(Path file, Optional<Path> bound) {
        Path root = file.getParent();
        boolean platform = false;
        for (int level = 0; level < MOST_LEVELS; level++) {
            Path parent = root.getParent();
            if (parent == null || parent.getParent() == null || bound.filter(root::equals).isPresent()) {
                return root;
            }
            if (!holdsSource(parent)) {
                platform = platform || holdsPlatform(root);
                if (platform || bound.isEmpty()) {
                    return root;
                }
            }
            root = parent;
        }
        return root;
    }

    private static boolean holdsSource(Path folder) {
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder, "*" + ProjectFiles.ENDING)) {
            for (Path each : stream) {
                if (!each.getFileName().toString().startsWith(".") && Files.isRegularFile(each)) {
                    return true;
                }
            }
            return false;
        } catch (IOException | java.nio.file.DirectoryIteratorException e) {
            return false;
        }
    }

    private static boolean holdsPlatform(Path folder) {
        try (Stream<Path> files = Files.walk(folder, MOST_LEVELS)) {
            return files.filter(file -> file.toString().endsWith(ProjectFiles.ENDING)).limit(MOST_FILES)
                    .anyMatch(ProjectRoots::statesPlatform);
        } catch (IOException | java.io.UncheckedIOException e) {
            return false;
        }
    }

    private static boolean statesPlatform(Path file) {
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1)) {
            return reader.lines().anyMatch(line -> PLATFORM.matcher(line).matches());
        } catch (IOException | java.io.UncheckedIOException e) {
            return false;
        }
    }
}
