// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * The planner for stiff trunks, exact at every level; slack is not taken up.
 *
 * <p>For given stations the least length of each branch that reaches is the best at every level, so only stations are
 * searched: by a dynamic programme along each run. The least largest excess is found by bisection, in whole nanometres,
 * over the limits under which what counts more is not made worse. Trunks separate but for the excess, which is the
 * largest over all of them and is allowed to each.
 *
 * <p>O(log(excess) * breakouts * positions); positions are the multiples of the grid between the farthest stations from
 * which no branch runs back too far. Stateless; safe for use by several threads.
 */
public final class RigidPlanner implements Planner {

    @Override
    public HarnessPlan plan(PlanProblem problem, Cancel cancel) {
        PlanWatch nobody = new PlanWatch(Progress.NONE, "");
        List<TrunkSearch> searches = problem.trunks().stream()
                .map(trunk -> new StiffTrunk(trunk, problem, cancel, nobody)).collect(Collectors.toUnmodifiableList());
        return new Trunks(problem, searches).plan();
    }
}
