// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.nio.file.Path;
import java.util.Optional;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeSold.Archive;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Opens a project as it was when a revision of its kit was sold: the revisions are those of git. */
public final class GitArchive implements Archive {

    private final OpenProject open;
    private final SinceRevision.Then then;
    private final ProjectPlace now;

    /**
     * @param open reads and joins sources
     * @param base the folder that the caller is in
     * @param now  where the project is
     */
    public GitArchive(OpenProject open, Path base, ProjectPlace now) {
        this.open = open;
        this.then = new SinceRevision.Then(new GitReader(), base);
        this.now = now;
    }

    @Override
    public Opened at(String at) throws BadCall {
        Optional<ProjectPlace> place = then.of(now, at);
        if (place.isEmpty()) {
            throw new BadCall("'" + at + "' has no source where " + now.name() + " is now; compare it by hand: compare"
                    + " --sold " + at + ":FOLDER " + (now.prefix().isEmpty() ? now.name() : now.prefix()));
        }
        return open.open(place.get(), Cancel.NEVER, Progress.NONE);
    }
}
