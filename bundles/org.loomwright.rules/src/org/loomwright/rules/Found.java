// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.link.Project;

/**
 * What was found in the targets of a unit.
 *
 * @param inputs  what the targets were made of
 * @param answers what rules found, in order
 */
record Found(List<Object> inputs, List<Answer> answers) {

    /**
     * What one or more rules found.
     *
     * @param reads   what else they asked for
     * @param outcome what came of it
     */
    record Answer(Reads reads, Outcome outcome) {
    }

    /** Returns an answer, if it still holds for a unit of a project. */
    Optional<Answer> answer(int index, Unit unit, Project project) {
        return Optional.of(answers.get(index))
                .filter(answer -> Identity.same(inputs, unit.inputs()) && answer.reads().hold(project));
    }
}
