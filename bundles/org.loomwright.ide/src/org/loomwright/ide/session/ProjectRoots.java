// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
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
    /** How deep below a folder that an editor has open projects are looked for. */
    private static final int MOST_DEPTH = 32;

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

    /** The roots of the projects in a folder, each once, in order; none lies in another. O(files of the folder). */
    static List<Path> below(Path folder) {
        TreeSet<Path> holding = new TreeSet<>();
        try {
            Files.walkFileTree(folder, EnumSet.noneOf(FileVisitOption.class), MOST_DEPTH, new SimpleFileVisitor<>() {

                @Override
                public FileVisitResult preVisitDirectory(Path each, BasicFileAttributes attributes) {
                    return isHidden(each) && !each.equals(folder) ? FileVisitResult.SKIP_SUBTREE
                            : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    if (attributes.isRegularFile() && !isHidden(file)
                            && file.toString().endsWith(ProjectFiles.ENDING)) {
                        holding.add(file.getParent());
                        return FileVisitResult.SKIP_SIBLINGS;
                    }
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFileFailed(Path file, IOException failed) {
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            return List.of();
        }
        List<Path> roots = new ArrayList<>();
        for (Path each : holding) {
            if (roots.stream().noneMatch(each::startsWith)) {
                Path root = of(each.resolve("any"), Optional.of(folder));
                roots.removeIf(other -> other.startsWith(root));
                roots.add(root);
            }
        }
        return roots;
    }

    private static boolean isHidden(Path path) {
        return path.getFileName() != null && path.getFileName().toString().startsWith(".");
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
