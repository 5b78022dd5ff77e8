// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.nio.file.Path;
import java.util.Optional;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.ProjectPlace;

/** Reads what a version control system keeps. Changes nothing. */
public interface RevisionReader {

    /**
     * The sources of a file or folder at a revision.
     *
     * @param base     the folder that the caller is in; it lies in the work tree, or is a repository without one
     * @param revision what the caller calls the revision: a tag, a branch, {@code HEAD~2}, the beginning of an id
     * @param path     a file or folder, from {@code base}, or from the top of the repository
     * @param fromTop  which of the two
     * @return the sources; empty when the revision has nothing at that path, or a folder without sources
     * @throws BadCall if there is no repository or no such revision; one line says which
     */
    Optional<ProjectPlace> find(Path base, String revision, String path, boolean fromTop) throws BadCall;

    /**
     * The same, where the sources have to be there.
     *
     * @throws BadCall if they are not, or if there is no repository or no such revision; one line says which
     */
    default ProjectPlace read(Path base, String revision, String path, boolean fromTop) throws BadCall {
        Optional<ProjectPlace> found = find(base, revision, path, fromTop);
        if (found.isEmpty()) {
            boolean elsewhere = fromTop && find(base, revision, path, false).isPresent();
            throw new BadCall("no source '" + (path.isEmpty() ? "." : path) + "' in " + revision
                    + (elsewhere ? "; did you mean './" + path + "'?" : ""));
        }
        return found.get();
    }
}
