// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jgit.errors.AmbiguousObjectException;
import org.eclipse.jgit.errors.IncorrectObjectTypeException;
import org.eclipse.jgit.errors.MissingObjectException;
import org.eclipse.jgit.errors.RevisionSyntaxException;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.revwalk.RevWalk;
import org.eclipse.jgit.storage.file.FileRepositoryBuilder;
import org.loomwright.app.BadCall;
import org.loomwright.app.NearNames;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectFiles;
import org.loomwright.app.load.ProjectPlace;

/**
 * Reads revisions of git. Blobs are taken as they are stored: what line ends the work tree has makes no difference to a
 * source. Work trees beside the first one, repositories without a work tree and submodules are read as well.
 */
public final class GitReader implements RevisionReader {

    @Override
    public Optional<ProjectPlace> find(Path base, String revision, String path, boolean fromTop) throws BadCall {
        try (Repository repository = open(base)) {
            ObjectId commit = commit(repository, revision);
            String full = fromTop ? Paths.normal(path, path) : below(repository, base, path);
            try (RevWalk walk = new RevWalk(repository)) {
                GitTree tree = new GitTree(repository, walk.parseCommit(commit).getTree());
                Optional<GitTree.Found> found = tree.find(full);
                if (found.isEmpty()) {
                    noteSubmodule(tree, revision, full);
                    return Optional.empty();
                }
                return place(repository, tree, found.get(), revision, full);
            }
        } catch (IOException e) {
            throw new BadCall("cannot read " + revision + " from git: " + reason(e));
        }
    }

    /** Another repository begins at a submodule, and a path does not lead into it. */
    private static void noteSubmodule(GitTree tree, String revision, String full) throws BadCall, IOException {
        Optional<String> submodule = tree.submoduleAbove(full);
        if (submodule.isPresent()) {
            throw new BadCall("'" + submodule.get() + "' is a submodule in " + revision
                    + "; call from within it, with a revision of its own");
        }
    }

    private static Optional<ProjectPlace> place(Repository repository, GitTree tree, GitTree.Found found,
            String revision, String full) throws IOException {
        Path top = repository.isBare() ? repository.getDirectory().toPath() : repository.getWorkTree().toPath();
        String last = full.substring(full.lastIndexOf('/') + 1);
        if (found.isFolder()) {
            List<Input> inputs = tree.below(found);
            if (inputs.isEmpty()) {
                return Optional.empty();
            }
            String name = last.isEmpty() ? Paths.stem(top.toAbsolutePath().getFileName().toString(), ".git") : last;
            return Optional.of(new ProjectPlace(name, top.resolve(full),
                    revision + ":" + (full.isEmpty() ? "" : full + "/"), inputs));
        }
        String folder = full.substring(0, full.length() - last.length());
        return Optional.of(new ProjectPlace(Paths.stem(last, ProjectFiles.ENDING), top.resolve(folder),
                revision + ":" + folder, List.of(tree.input(found, last))));
    }

    private static Repository open(Path base) throws BadCall, IOException {
        Path folder = base.toAbsolutePath().normalize();
        FileRepositoryBuilder builder = new FileRepositoryBuilder().findGitDir(folder.toFile());
        if (builder.getGitDir() == null) {
            throw new BadCall("there is no git repository here: " + folder);
        }
        return builder.setMustExist(true).build();
    }

    /** The commit that a name means; a tag means the commit that it is on. */
    private static ObjectId commit(Repository repository, String revision) throws BadCall, IOException {
        try {
            ObjectId id = revision.isBlank() ? null : repository.resolve(revision + "^{commit}");
            if (id != null) {
                return id;
            }
        } catch (AmbiguousObjectException e) {
            throw new BadCall("more than one revision begins with '" + revision + "'");
        } catch (IncorrectObjectTypeException e) {
            throw new BadCall("'" + revision + "' is no commit");
        } catch (MissingObjectException e) {
            throw new BadCall("'" + revision + "' is not in this copy of the repository" + shallow(repository));
        } catch (RevisionSyntaxException e) {
            throw new BadCall("'" + revision + "' is not the name of a revision");
        }
        if (repository.getRefDatabase().getRefs().stream().noneMatch(Ref::isSymbolic)
                && repository.resolve("HEAD") == null) {
            throw new BadCall("the repository has no commit yet");
        }
        List<String> names = new ArrayList<>();
        for (Ref ref : repository.getRefDatabase().getRefs()) {
            names.add(Repository.shortenRefName(ref.getName()));
        }
        names.remove("HEAD");
        throw new BadCall("no revision is called '" + revision + "'" + NearNames.or(revision, names, "")
                + shallow(repository));
    }

    /** A server often fetches the last commits only. */
    private static String shallow(Repository repository) {
        try {
            return repository.getObjectDatabase().getShallowCommits().isEmpty() ? ""
                    : "; this copy holds the last commits only, fetch all of them";
        } catch (IOException e) {
            return "";
        }
    }

    /** The path of something from the top of the repository. */
    private static String below(Repository repository, Path base, String path) throws BadCall, IOException {
        if (repository.isBare()) {
            return Paths.normal(path, path);
        }
        Path top = repository.getWorkTree().toPath().toRealPath();
        Path there = real(base.toAbsolutePath().resolve(path).normalize());
        if (!there.startsWith(top)) {
            throw new BadCall("'" + path + "' is outside of the repository");
        }
        return top.relativize(there).toString().replace('\\', '/');
    }

    /** The real path, as far as it exists: what was deleted since has a path all the same. */
    private static Path real(Path path) throws IOException {
        if (Files.exists(path)) {
            return path.toRealPath();
        }
        Path parent = path.getParent();
        return parent == null ? path : real(parent).resolve(path.getFileName());
    }

    private static String reason(IOException e) {
        String words = e.getMessage();
        return words == null || words.isBlank() ? "input or output error" : words.lines().findFirst().orElseThrow();
    }
}
