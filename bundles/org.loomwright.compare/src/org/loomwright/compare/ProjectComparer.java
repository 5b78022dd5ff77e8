// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

import org.loomwright.harness.link.Project;

/**
 * Compares two sides of a project.
 *
 * <p>Precondition: none; a side that could be read only in part, or a file without its project, is compared as far as
 * it goes. Postcondition: applied to the old side, the changes give the facts of the new one; equal sides give equal
 * comparisons. May be called from several threads. It leaves to others what follows from the changes, and their
 * rendering.
 */
@FunctionalInterface
public interface ProjectComparer {

    /** Compares two sides. */
    Comparison compare(Project old, Project now);
}
