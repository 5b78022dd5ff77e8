// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.app.BadCall;

/**
 * A folder that holds a set of files and nothing else. The set is replaced whole or not at all: the new one is written
 * beside the folder and takes its place by renaming, and what a killed process left behind is mended by the next one. A
 * hidden list in the folder says which files are of the set; a folder with anything else in it is left alone.
 */
public final class SetFolder {

    private static final String LIST = ".loomwright-sheets";
    private static final String NEW = ".new";
    private static final String OLD = ".old";

    private final Path path;
    private final String shown;

    private SetFolder(Path path, String shown) {
        this.path = path;
        this.shown = shown;
    }

    /**
     * Names a folder, which need not exist.
     *
     * @param base the folder that relative paths start from
     * @throws BadCall if something that is no folder is in its place, or a folder that holds what is of no set
     */
    public static SetFolder at(Path base, String name) throws BadCall {
        try {
            Path path = base.resolve(name).toAbsolutePath().normalize();
            if (name.isEmpty() || path.getFileName() == null || Files.exists(path) && !Files.isDirectory(path)) {
                throw new BadCall("cannot write to " + (name.isEmpty() ? "''" : name) + ": it is not a folder");
            }
            SetFolder folder = new SetFolder(Files.exists(path) ? path.toRealPath() : path, name);
            folder.mend();
            folder.refuseStrangers();
            return folder;
        } catch (InvalidPathException e) {
            throw new BadCall("cannot write to " + name + ": it is not a path");
        } catch (IOException e) {
            throw new BadCall("cannot write to " + name + ": " + reason(e));
        }
    }

    /** The folder as the caller named it. */
    public String shown() {
        return shown;
    }

    /**
     * Puts a set in place of the one that is there.
     *
     * @param files contents by name, in order
     * @return how many files of an earlier set are gone that the new one does not have
     * @throws BadCall if it cannot be written; then the earlier set is as it was
     */
    public int replace(Map<String, byte[]> files) throws BadCall {
        Path fresh = beside(NEW);
        Path old = beside(OLD);
        try {
            Files.createDirectories(path.getParent());
            remove(fresh);
            Files.createDirectory(fresh);
            Files.writeString(fresh.resolve(LIST), String.join("\n", files.keySet()) + "\n");
            for (Map.Entry<String, byte[]> each : files.entrySet()) {
                Files.write(fresh.resolve(each.getKey()), each.getValue(), StandardOpenOption.CREATE_NEW);
            }
            refuseStrangers();
            Set<String> before = new HashSet<>(listed(path));
            before.removeAll(files.keySet());
            if (Files.isDirectory(path)) {
                Files.move(path, old);
                try {
                    Files.move(fresh, path);
                } catch (IOException e) {
                    Files.move(old, path);
                    throw e;
                }
                remove(old);
            } else {
                Files.move(fresh, path);
            }
            return before.size();
        } catch (IOException e) {
            throw new BadCall("cannot write to " + shown + ": " + reason(e));
        } finally {
            discard(fresh);
        }
    }

    private Path beside(String ending) {
        return path.resolveSibling("." + path.getFileName() + "." + ProcessHandle.current().pid() + ending);
    }

    /** Removes what processes left behind that are no more, and puts back a set that one had moved aside. */
    private void mend() throws IOException {
        Path parent = path.getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            return;
        }
        List<Path> left = new ArrayList<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(parent, this::isAbandoned)) {
            entries.forEach(left::add);
        }
        for (Path each : left) {
            if (each.getFileName().toString().endsWith(OLD) && !Files.exists(path)) {
                Files.move(each, path);
            } else {
                remove(each);
            }
        }
    }

    private boolean isAbandoned(Path entry) {
        String name = entry.getFileName().toString();
        String start = "." + path.getFileName() + ".";
        String ending = name.endsWith(NEW) ? NEW : OLD;
        if (!name.startsWith(start) || !name.endsWith(ending) || name.length() <= start.length() + ending.length()) {
            return false;
        }
        String number = name.substring(start.length(), name.length() - ending.length());
        if (number.length() > 10 || !number.chars().allMatch(c -> c >= '0' && c <= '9')) {
            return false;
        }
        long process = Long.parseLong(number);
        return process == ProcessHandle.current().pid()
                || ProcessHandle.of(process).filter(ProcessHandle::isAlive).isEmpty();
    }

    private void refuseStrangers() throws BadCall, IOException {
        if (!Files.isDirectory(path)) {
            return;
        }
        Set<String> ours = new HashSet<>(listed(path));
        ours.add(LIST);
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(path)) {
            for (Path entry : entries) {
                if (!ours.contains(entry.getFileName().toString())
                        || !Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS)) {
                    throw new BadCall("will not replace what is in " + shown + ": " + entry.getFileName()
                            + " is not of a set of sheets; name another folder");
                }
            }
        }
    }

    private static List<String> listed(Path folder) throws IOException {
        Path list = folder.resolve(LIST);
        return Files.isRegularFile(list, LinkOption.NOFOLLOW_LINKS)
                ? new String(Files.readAllBytes(list), StandardCharsets.UTF_8).lines().toList() : List.of();
    }

    /** Removes a folder with what its own list names, and nothing else. */
    private static void remove(Path folder) throws IOException {
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        for (String name : listed(folder)) {
            Path file = folder.resolve(name);
            if (file.normalize().getParent().equals(folder) && !Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
                Files.deleteIfExists(file);
            }
        }
        Files.deleteIfExists(folder.resolve(LIST));
        Files.deleteIfExists(folder);
    }

    private static void discard(Path folder) {
        try {
            remove(folder);
        } catch (IOException e) {
            // The next run tries again; the reason that is already on its way says more.
        }
    }

    private static String reason(IOException e) {
        return switch (e) {
            case java.nio.file.AccessDeniedException denied -> "permission denied";
            case FileAlreadyExistsException there -> there.getFile() + " is in the way";
            case java.nio.file.FileSystemException named when named.getReason() != null -> named.getReason();
            default -> e.getMessage() == null ? "input or output error" : e.getMessage();
        };
    }
}
