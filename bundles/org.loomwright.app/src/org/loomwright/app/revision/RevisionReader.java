// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.nio.file.Path;
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
     * @throws BadCall if there is no repository, no such revision, or nothing at that path; one line says which
     */
    ProjectPlace read(Path base, String revision, String path, boolean fromTop) throws BadCall;
}
