// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.BadCall;

/**
 * Where a project is.
 *
 * @param name   what it is called: the name of its folder, or of its file
 * @param root   the folder that the names of its sources start from
 * @param prefix what stands before the name of a source so that it can be opened from where the caller is; empty or
 *               ending in {@code /}
 * @param inputs its sources
 */
public record ProjectPlace(String name, Path root, String prefix, List<Input> inputs) {

    /**
     * Finds the projects that the arguments of a call name. A folder is a project of its own, named twice it is the
     * same; single files make up one project together.
     *
     * @param base      the folder that relative paths start from
     * @param arguments paths as they were given, at least one
     * @throws BadCall if a path does not exist or a folder holds no source
     */
    public static List<ProjectPlace> find(Path base, List<String> arguments) throws BadCall {
        List<ProjectPlace> places = new ArrayList<>();
        List<Path> folders = new ArrayList<>();
        List<Path> files = new ArrayList<>();
        for (String argument : arguments) {
            Path path = path(base, argument);
            if (!Files.isDirectory(path)) {
                files.add(Path.of(argument));
            } else if (folders.stream().noneMatch(folder -> isSame(folder, path))) {
                folders.add(path);
                places.add(folder(path, argument));
            }
        }
        files.removeIf(file -> folders.stream().anyMatch(folder -> isBelow(base.resolve(file), folder)));
        if (!files.isEmpty()) {
            List<Input> inputs = ProjectFiles.of(base, files);
            places.add(new ProjectPlace(stem(files.getFirst()), base, "", inputs));
        }
        return List.copyOf(places);
    }

    /** Finds the one project that an argument names; see {@link #find}. */
    public static ProjectPlace findOne(Path base, String argument) throws BadCall {
        return find(base, List.of(argument)).getFirst();
    }

    private static Path path(Path base, String argument) throws BadCall {
        try {
            Path path = base.resolve(argument);
            if (argument.isEmpty() || !Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
                throw new BadCall("no such file or folder: " + (argument.isEmpty() ? "''" : argument));
            }
            return path;
        } catch (InvalidPathException e) {
            throw new BadCall("not a path: " + argument);
        }
    }

    private static ProjectPlace folder(Path folder, String argument) throws BadCall {
        List<Input> inputs = ProjectFiles.below(folder);
        if (inputs.isEmpty()) {
            throw new BadCall("no " + ProjectFiles.ENDING + " file in the folder " + argument);
        }
        String shown = Path.of(argument).normalize().toString().replace('\\', '/');
        String prefix = shown.isEmpty() || shown.endsWith("/") ? shown : shown + "/";
        return new ProjectPlace(name(folder), folder, prefix, inputs);
    }

    private static String name(Path folder) {
        Path last = folder.toAbsolutePath().normalize().getFileName();
        return last == null ? "project" : last.toString();
    }

    private static String stem(Path file) {
        String name = file.getFileName().toString();
        return name.endsWith(ProjectFiles.ENDING)
                ? name.substring(0, name.length() - ProjectFiles.ENDING.length()) : name;
    }

    private static boolean isBelow(Path file, Path folder) {
        try {
            return file.toRealPath().startsWith(folder.toRealPath());
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean isSame(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return one.equals(other);
        }
    }
}
