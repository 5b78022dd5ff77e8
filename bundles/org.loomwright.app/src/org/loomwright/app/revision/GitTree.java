// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.ObjectLoader;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.revwalk.RevWalk;
import org.eclipse.jgit.submodule.SubmoduleWalk;
import org.eclipse.jgit.treewalk.TreeWalk;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectFiles;

/**
 * The files of one revision, found as {@link ProjectFiles} finds those of a folder: ordered by name, folder by folder,
 * names that begin with a dot left alone, links followed but each thing taken once. What is there but cannot be read is
 * among them; loading it gives the reason.
 */
final class GitTree {

    /** Links that lead to links: as many as a file system follows. */
    private static final int MOST_LINKS = 40;

    /** How a pointer begins that stands in for a large file. */
    private static final byte[] POINTER = "version https://git-lfs".getBytes(StandardCharsets.US_ASCII);
    private static final int LONGEST_POINTER = 1024;
    private static final String POINTER_ID = "oid sha256:";

    private final Repository repository;
    private final ObjectId root;

    GitTree(Repository repository, ObjectId root) {
        this.repository = repository;
        this.root = root;
    }

    /** Something in the revision: where it really is, what it is, and its id. */
    record Found(String path, FileMode mode, ObjectId id) {

        boolean isFolder() {
            return mode.equals(FileMode.TREE) || mode.equals(FileMode.GITLINK);
        }
    }

    /** What a path leads to, through links; empty when there is nothing. The top is the empty path. */
    Optional<Found> find(String path) throws IOException {
        return find(path, MOST_LINKS);
    }

    /** The submodule that a path leads into; empty when it leads into none. */
    Optional<String> submoduleAbove(String path) throws IOException {
        for (String folder = Paths.folder(path); !folder.isEmpty(); folder = Paths.folder(folder)) {
            Optional<Found> found = find(folder);
            if (found.isPresent()) {
                return found.filter(each -> each.mode().equals(FileMode.GITLINK)).map(Found::path);
            }
        }
        return Optional.empty();
    }

    private Optional<Found> find(String path, int links) throws IOException {
        if (path.isEmpty()) {
            return Optional.of(new Found("", FileMode.TREE, root));
        }
        Optional<Found> folder = find(Paths.folder(path), links);
        if (folder.isEmpty() || !folder.get().mode().equals(FileMode.TREE)) {
            return Optional.empty();
        }
        String name = path.substring(path.lastIndexOf('/') + 1);
        for (Found entry : entries(folder.get())) {
            if (entry.path().equals(Paths.below(folder.get().path(), name))) {
                return follow(entry, links);
            }
        }
        return Optional.empty();
    }

    private Optional<Found> follow(Found entry, int links) throws IOException {
        if (!entry.mode().equals(FileMode.SYMLINK)) {
            return Optional.of(entry);
        }
        String target = new String(repository.open(entry.id()).getCachedBytes(LONGEST_POINTER * 4),
                StandardCharsets.UTF_8);
        if (links == 0 || target.startsWith("/")) {
            return Optional.empty();
        }
        try {
            return find(Paths.normal(Paths.below(Paths.folder(entry.path()), target), target), links - 1);
        } catch (BadCall outside) {
            return Optional.empty();
        }
    }

    private List<Found> entries(Found folder) throws IOException {
        List<Found> entries = new ArrayList<>();
        try (TreeWalk walk = new TreeWalk(repository)) {
            walk.addTree(folder.id());
            while (walk.next()) {
                entries.add(new Found(Paths.below(folder.path(), walk.getNameString()), walk.getFileMode(),
                        walk.getObjectId(0)));
            }
        }
        entries.sort(Comparator.comparing(Found::path));
        return entries;
    }

    /** The sources below a folder, named from there. */
    List<Input> below(Found folder) throws IOException {
        List<Input> inputs = new ArrayList<>();
        walk(folder, "", new HashSet<>(), inputs);
        return List.copyOf(inputs);
    }

    private void walk(Found folder, String prefix, Set<String> seen, List<Input> inputs) throws IOException {
        if (!seen.add(folder.path())) {
            return;
        }
        if (folder.mode().equals(FileMode.GITLINK)) {
            submodule(folder, prefix, inputs);
            return;
        }
        for (Found entry : entries(folder)) {
            String name = entry.path().substring(entry.path().lastIndexOf('/') + 1);
            if (name.startsWith(".")) {
                continue;
            }
            Optional<Found> real = follow(entry, MOST_LINKS);
            if (real.isPresent() && real.get().isFolder()) {
                walk(real.get(), prefix + name + "/", seen, inputs);
            } else if (name.endsWith(ProjectFiles.ENDING)) {
                if (real.isEmpty()) {
                    inputs.add(Input.unreadable(prefix + name, "it is a link to something outside of the revision"));
                } else if (seen.add(real.get().path())) {
                    inputs.add(input(real.get(), prefix + name));
                }
            }
        }
    }

    /** The revision of a submodule that this revision asks for. */
    private void submodule(Found folder, String prefix, List<Input> inputs) throws IOException {
        String name = prefix.isEmpty() ? folder.path() : Paths.stem(prefix, "/");
        try (Repository inside = repository.isBare() ? null
                : SubmoduleWalk.getSubmoduleRepository(repository, folder.path())) {
            if (inside == null || !inside.getObjectDatabase().has(folder.id())) {
                inputs.add(Input.unreadable(name, "it is a submodule whose revision is not here; fetch it with"
                        + " 'git submodule update --init'"));
                return;
            }
            try (RevWalk commits = new RevWalk(inside)) {
                GitTree tree = new GitTree(inside, commits.parseCommit(folder.id()).getTree());
                tree.walk(tree.find("").orElseThrow(), prefix, new HashSet<>(), inputs);
            }
        }
    }

    /** A file, with its bytes; those of a file that is too large are left where they are. */
    Input input(Found file, String name) throws IOException {
        ObjectLoader loader = repository.open(file.id());
        if (loader.getSize() > Loader.LARGEST) {
            return new Input(name, loader.getSize(), InputStream::nullInputStream);
        }
        byte[] bytes = loader.getCachedBytes(Loader.LARGEST);
        return isPointer(bytes) ? large(name, new String(bytes, StandardCharsets.US_ASCII)) : Input.of(name, bytes);
    }

    private static boolean isPointer(byte[] bytes) {
        return bytes.length <= LONGEST_POINTER && bytes.length > POINTER.length
                && Arrays.equals(bytes, 0, POINTER.length, POINTER, 0, POINTER.length);
    }

    /** The file that a pointer stands for, if it was fetched. */
    private Input large(String name, String pointer) {
        String id = pointer.lines().filter(line -> line.startsWith(POINTER_ID))
                .map(line -> line.substring(POINTER_ID.length()).strip()).findFirst().orElse("");
        if (id.matches("[0-9a-f]{64}")) {
            Path store = repository.getCommonDirectory().toPath().resolve("lfs/objects");
            Path file = store.resolve(id.substring(0, 2)).resolve(id.substring(2, 4)).resolve(id);
            if (Files.isRegularFile(file)) {
                return Input.of(name, file);
            }
        }
        return Input.unreadable(name, "git holds a pointer to a large file that is not here; fetch it with"
                + " 'git lfs fetch --all'");
    }
}
