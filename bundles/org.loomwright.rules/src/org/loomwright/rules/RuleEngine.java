// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.function.Function;
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

    /**
     * A report and what a later check need not ask again.
     *
     * @param report   the report; the same whatever was known
     * @param scope    names all projects for which some of these questions may stand in a later check
     * @param silences the questions of this check to which no rule had anything to say
     */
    record Answered(Report report, String scope, List<Silence> silences) {

        public Answered {
            silences = List.copyOf(silences);
        }
    }

    /**
     * Checks a project without asking what is known to have no answer. By default everything is asked.
     *
     * @param known gives what is known for a scope
     * @throws org.loomwright.quantity.Cancelled if it was cancelled
     */
    default Answered check(Project project, Settings settings, Function<String, Silences> known, Cancel cancel,
            Progress progress) {
        return new Answered(check(project, settings, cancel, progress), "", List.of());
    }
}
