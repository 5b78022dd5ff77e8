// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Checks a project.
 *
 * <p>Precondition: none; a project that could be read only in part is checked as far as it goes. Postcondition: the
 * report holds the problems of the text and what the rules found, ordered by file, place, rule and element; equal
 * projects and settings give equal reports. May be called from several threads. It leaves the rendering of findings,
 * and the reading of files, to others.
 */
@FunctionalInterface
public interface RuleEngine {

    /**
     * Checks a project.
     *
     * @throws org.loomwright.quantity.Cancelled if it was cancelled
     */
    Report check(Project project, Settings settings, Cancel cancel, Progress progress);
}
