// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.List;
import org.loomwright.harness.Problem;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/**
 * A harness and all that the covered drawings ask of it.
 *
 * @param harness  name of the harness
 * @param rows     its branches in source order, then the places that it does not serve
 * @param columns  the covered drawings in the order of {@code covers}, each with its different geometries
 * @param unjudged covered drawings that have no column: unknown ones, ones of another platform or without a vehicle
 * @param evidence the drawings' lengths that went into it
 * @param problems what stands in the way of a judgement, ordered by place in the source
 */
public record FitProblem(String harness, List<FitRow> rows, List<FitColumn> columns, List<String> unjudged,
        Evidence evidence, List<Problem> problems) {

    /** The most geometries of one drawing; past it all its vehicles are taken together, with everything in them. */
    public static final int MOST_GEOMETRIES = 64;

    public FitProblem {
        rows = List.copyOf(rows);
        columns = List.copyOf(columns);
        unjudged = List.copyOf(unjudged);
        problems = List.copyOf(problems);
    }

    /**
     * Puts the problem of a harness together. A trunk of a drawing corresponds to the harness's trunk of the same name;
     * where no names agree and each has one trunk, to that. A branch of a drawing corresponds to the branch of the
     * harness that serves the same place; of several to the one of the same name, else each to each. Pure; linear in
     * branches times geometries, but for conditions.
     *
     * @param harness the harness
     * @param project the project, for the covered drawings
     * @throws org.loomwright.condition.TooManyCombinations if the platform's choices cannot be followed exactly
     */
    public static FitProblem of(WiringView harness, Project project, FitDefaults defaults) {
        return new ProblemBuilder(harness, project, defaults).build();
    }
}
