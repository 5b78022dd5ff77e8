// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Map;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitProblem;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;

/**
 * What a planner is given of a harness, and what it cannot be given.
 *
 * @param harness the harness
 * @param problem stations and lengths to find; a vehicle is a column of {@code asked}
 * @param asked   what the drawings ask, with provisional figures for what is to be found
 * @param open    what of that could not be handed to the planner
 * @param fixed   stations and lengths that a person has pinned, by breakout and branch
 */
public record PlanModel(WiringView harness, PlanProblem problem, FitProblem asked, List<Open> open,
        Map<String, Length> fixed) {

    public PlanModel {
        open = List.copyOf(open);
        fixed = Map.copyOf(fixed);
    }

    /**
     * Something that the plan does not answer for.
     *
     * @param branch  the branch
     * @param drawing the drawing that asks
     * @param words   why, for people
     * @param place   where it stands
     */
    public record Open(String branch, String drawing, String words, Span place) {
    }

    /**
     * Reads what the covered drawings ask of a harness. Stations and lengths that are not pinned are free, whatever the
     * source says of them. Pure; linear in branches times geometries, but for conditions.
     *
     * @throws org.loomwright.condition.TooManyCombinations if the platform's choices cannot be followed exactly
     */
    public static PlanModel of(WiringView harness, Project project, FitDefaults defaults) {
        return new PlanModelBuilder(harness, project, defaults).build();
    }

}
