// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * The planner: stiff trunks by {@link RigidPlanner}'s dynamic programme, trunks with slack by branch and bound over the
 * projected model, both exact at every level; trees with slack, and grids that are no multiple of the steps in which
 * slack is taken up, as far as can be, with what it may fall short. Each question ends after {@value #MOST_PROGRAMS}
 * linear programs with the best that was found and what none is below. Stateless but for the question whether to end
 * with the best that was found; safe for use by several threads if that is.
 */
public final class HarnessPlanner implements Planner {

    static final int MOST_PROGRAMS = 500_000;

    private final Cancel enough;
    private final LinearProgram.Solver solver;

    /** A planner that is not told to end before it has done all it does. */
    public HarnessPlanner() {
        this(Cancel.NEVER);
    }

    /**
     * A planner that is told when to end.
     *
     * @param enough asked now and then whether to end with the best that was found
     */
    public HarnessPlanner(Cancel enough) {
        this(enough, DualSimplex::new);
    }

    HarnessPlanner(Cancel enough, LinearProgram.Solver solver) {
        this.enough = enough;
        this.solver = solver;
    }

    /** The same planner, which counts its linear programs and ends after so many. */
    HarnessPlanner counting(AtomicInteger programs, int most) {
        return new HarnessPlanner(() -> programs.get() >= most || enough.cancelled(), weights -> {
            LinearProgram program = solver.minimise(weights);
            return (low, high, rows) -> {
                programs.incrementAndGet();
                return program.solve(low, high, rows);
            };
        });
    }

    /** Whether it is to end with the best that was found. */
    boolean isToEnd() {
        return enough.cancelled();
    }

    @Override
    public HarnessPlan plan(PlanProblem problem, Cancel cancel) {
        return plan(problem, cancel, Progress.NONE);
    }

    /** The same, telling at each level what was found and what it is at least, with the parts that were searched. */
    public HarnessPlan plan(PlanProblem problem, Cancel cancel, Progress progress) {
        return new Trunks(problem, searches(problem, cancel, progress)).plan();
    }

    /** Returns whether a harness fits all vehicles; empty when that was not found out. */
    public Optional<Boolean> fits(PlanProblem problem, Cancel cancel) {
        return Trunks.fits(searches(problem, cancel, Progress.NONE));
    }

    private List<TrunkSearch> searches(PlanProblem problem, Cancel cancel, Progress progress) {
        return counting(new AtomicInteger(), MOST_PROGRAMS).counted(problem, cancel, progress);
    }

    private List<TrunkSearch> counted(PlanProblem problem, Cancel cancel, Progress progress) {
        boolean one = problem.trunks().size() == 1;
        return problem.trunks().stream().map(trunk -> search(trunk, problem, cancel, progress, one ? "" : trunk.name()))
                .toList();
    }

    private TrunkSearch search(PlanTrunk trunk, PlanProblem problem, Cancel cancel, Progress progress, String name) {
        if (trunk.stops().stream().allMatch(stop -> stop.slack() < trunk.lattice())) {
            return new StiffTrunk(trunk, problem, cancel, new PlanWatch(progress, name));
        }
        StiffTrunk stiff = new StiffTrunk(trunk, problem, cancel, new PlanWatch(Progress.NONE, name));
        boolean tree = trunk.stops().stream().flatMap(stop -> stop.branches().stream())
                .anyMatch(branch -> !branch.stops().isEmpty());
        return tree ? new BoundedTrunk(trunk, stiff, slack(Parts.bare(trunk), problem, cancel, new PlanWatch(progress,
                "bare trunk")), problem.grid()) : slack(trunk, problem, cancel, new PlanWatch(progress, name));
    }

    /** The search for a trunk with slack and without branches on branches. */
    private TrunkSearch slack(PlanTrunk trunk, PlanProblem problem, Cancel cancel, PlanWatch watch) {
        if (problem.grid() % trunk.lattice() == 0) {
            return exact(trunk, problem, cancel, watch);
        }
        PlanTrunk fine = new PlanTrunk(trunk.name(), trunk.stops());
        return new BoundedTrunk(trunk, exact(trunk, problem, cancel, watch), exact(fine, problem, cancel, watch),
                problem.grid());
    }

    private SlackTrunk exact(PlanTrunk trunk, PlanProblem problem, Cancel cancel, PlanWatch watch) {
        return new SlackTrunk(trunk, new StiffTrunk(trunk, problem, cancel, new PlanWatch(Progress.NONE, "")), problem,
                solver, cancel, enough, watch);
    }
}
