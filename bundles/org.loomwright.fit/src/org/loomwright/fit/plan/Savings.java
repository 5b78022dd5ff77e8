// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/**
 * What drives a plan: what the harness would be without each drawing, and what copper it would need if a few grid
 * steps more might be dressed back, planned anew each time. A drawing that binds no length can still cost, through its
 * excess.
 */
public final class Savings {

    /** So many grid steps more are allowed. */
    private static final List<Integer> STEPS = List.of(1, 2, 4, 8);

    private Savings() {
    }

    /**
     * What comes of allowing more excess.
     *
     * @param limit  the largest excess that is allowed, in nanometres
     * @param more   how much more that is than the plan has, or than its limits allow where copper counts more
     * @param beyond whether that is more than the limits of the harness allow
     * @param plan   the plan with the least copper under it; empty when none was found in time
     */
    public record Allowed(long limit, long more, boolean beyond, Optional<HarnessPlan.Solution> plan) {
    }

    /**
     * What would be saved.
     *
     * @param without      by drawing, the plan without it; empty for the only one
     * @param allowing     the plans under ever more excess
     * @param leastCopper  the plan with the least copper that any excess within the limits allows
     */
    public record Answer(List<Optional<HarnessPlan.Solution>> without, List<Allowed> allowing,
            Optional<HarnessPlan.Solution> leastCopper) {

        public Answer {
            without = List.copyOf(without);
            allowing = List.copyOf(allowing);
        }
    }

    /**
     * Plans once for each drawing, some times with more excess, and once for copper.
     *
     * @param plan     the plan that is looked at
     * @param drawings the vehicles of each drawing, by their numbers
     */
    public static Answer of(PlanProblem problem, HarnessPlan.Solution plan, List<BitSet> drawings, Planner planner,
            Cancel cancel) {
        List<Optional<HarnessPlan.Solution>> without = new ArrayList<>();
        for (BitSet drawing : drawings) {
            BitSet rest = new BitSet();
            rest.set(0, problem.vehicles());
            rest.andNot(drawing);
            without.add(rest.isEmpty() ? Optional.empty()
                    : planner.plan(Parts.vehicles(problem, rest), cancel).found());
        }
        return new Answer(without, allowing(problem, plan, planner, cancel),
                planner.plan(copperFirst(problem), cancel).found());
    }

    private static List<Allowed> allowing(PlanProblem problem, HarnessPlan.Solution plan, Planner planner,
            Cancel cancel) {
        long most = problem.trunks().stream().flatMap(trunk -> Stations.branches(trunk.stops()))
                .filter(branch -> !branch.asks().isEmpty()).mapToLong(PlanBranch::excessLimit).max().orElse(0);
        int copper = problem.order().indexOf(Objective.COPPER);
        int excess = problem.order().indexOf(Objective.EXCESS);
        // where copper counts more than excess, all that the limits allow is used already
        long from = copper >= 0 && (excess < 0 || copper < excess) ? Math.max(most, plan.excess()) : plan.excess();
        List<Allowed> allowing = new ArrayList<>();
        for (int steps : STEPS) {
            long more = steps * problem.grid();
            long limit = from + more;
            PlanProblem allowed = Parts.excessAtMost(copperFirst(problem), from, limit);
            allowing.add(new Allowed(limit, more, limit > most, planner.plan(allowed, cancel).found()));
        }
        return allowing;
    }

    private static PlanProblem copperFirst(PlanProblem problem) {
        return new PlanProblem(problem.trunks(), problem.vehicles(), problem.grid(),
                List.of(Objective.COPPER, Objective.EXCESS, Objective.LENGTH));
    }
}
