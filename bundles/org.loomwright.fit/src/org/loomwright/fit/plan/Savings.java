// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/**
 * What drives a plan: what the harness would be without each drawing, planned anew. A drawing that binds no length can
 * still cost, through its excess.
 */
public final class Savings {

    private Savings() {
    }

    /**
     * What would be saved.
     *
     * @param without      by drawing, the plan without it; empty for the only one
     * @param leastCopper  the plan with the least copper that any excess within the limits allows
     */
    public record Answer(List<Optional<HarnessPlan.Solution>> without, Optional<HarnessPlan.Solution> leastCopper) {

        public Answer {
            without = List.copyOf(without);
        }
    }

    /**
     * Plans once for each drawing, and once for copper.
     *
     * @param drawings the vehicles of each drawing, by their numbers
     */
    public static Answer of(PlanProblem problem, List<BitSet> drawings, Planner planner, Cancel cancel) {
        List<Optional<HarnessPlan.Solution>> without = new ArrayList<>();
        for (BitSet drawing : drawings) {
            BitSet rest = new BitSet();
            rest.set(0, problem.vehicles());
            rest.andNot(drawing);
            without.add(rest.isEmpty() ? Optional.empty()
                    : planner.plan(Parts.vehicles(problem, rest), cancel).found());
        }
        PlanProblem copper = new PlanProblem(problem.trunks(), problem.vehicles(), problem.grid(),
                List.of(Objective.COPPER, Objective.EXCESS, Objective.LENGTH));
        return new Answer(without, planner.plan(copper, cancel).found());
    }
}
