// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import org.loomwright.harness.link.Project;

/**
 * How much there is in a project.
 *
 * @param files     sources
 * @param drawings  of the factory
 * @param harnesses of ours
 * @param kits      of ours
 * @param practice  that the project judges by figures and weights of its own; empty where it does not
 */
public record Contents(int files, int drawings, int harnesses, int kits, String practice) {

    /** Counts what is in a project. */
    public static Contents of(Project project) {
        return new Contents(project.sources().size(), project.drawings().size(), project.harnesses().size(),
                project.kits().size(), PracticeWords.of(project));
    }

    /** Returns both together. */
    public Contents and(Contents other) {
        return new Contents(files + other.files, drawings + other.drawings, harnesses + other.harnesses,
                kits + other.kits, "");
    }
}
