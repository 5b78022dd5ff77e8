// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.loomwright.ide.project.Moment;
import org.loomwright.rules.Finding;

/** Hears what a workspace finds. Called by one thread at a time, never by one that draws a window. */
public interface Listener {

    /**
     * The findings of a file are now these.
     *
     * @param file     the file
     * @param version  that of the editor's text that they are about; empty when no editor has the file open
     * @param moment   the project that they were found in, with the texts that their spans count in
     * @param findings those that count, and nothing of what was said before
     */
    void findings(Path file, OptionalInt version, Moment moment, List<Finding> findings);

    /** Everything is checked as the texts are now. */
    default void settled(Path project) {
    }

    /** What flows in the circuits is known now, which somebody asked for before: what shows it may ask again. */
    default void solved(Path project) {
    }

    /** Something failed that should not have; the workspace goes on. One line for people. */
    default void trouble(String message) {
    }

    /** Something long is going on. {@code done} of {@code total}; both 0 when it is over. */
    default void progress(Path project, String what, long done, long total) {
    }
}
