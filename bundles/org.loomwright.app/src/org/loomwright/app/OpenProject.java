// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Reads and joins sources of a project and the parts of the stock that it uses. Safe for use by several threads. */
public final class OpenProject {

    private final Loader loader;
    private final StockShelf stock;

    /**
     * @param reader  reads one source
     * @param threads the most threads to read with, at least 1; the result does not depend on it
     */
    public OpenProject(SourceReader reader, int threads) {
        loader = new Loader(reader, threads);
        stock = new StockShelf(reader);
    }

    /**
     * A project that is open.
     *
     * @param place   where it is
     * @param project its sources, joined
     */
    public record Opened(ProjectPlace place, Project project) {
    }

    /**
     * Opens a project. Files that cannot be read, and names that mean nothing, are among its problems.
     *
     * @throws BadCall if not one file could be read
     */
    public Opened open(ProjectPlace place, Cancel cancel, Progress progress) throws BadCall {
        Loader.Loaded loaded = loader.load(place.inputs(), cancel, progress);
        if (loaded.unreadable() == place.inputs().size()) {
            throw new BadCall("nothing could be read: " + place.prefix() + place.inputs().getFirst().name() + ": "
                    + loaded.sources().getFirst().problems().getFirst().message());
        }
        return new Opened(place, Project.link(loaded.sources(), stock));
    }
}
