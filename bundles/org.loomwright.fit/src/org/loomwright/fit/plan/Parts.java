// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.BitSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/** Problems with less asked of them. */
final class Parts {

    private Parts() {
    }

    /** The same problem for some of its vehicles; the numbers of the vehicles stay. */
    static PlanProblem vehicles(PlanProblem problem, BitSet kept) {
        return onTrunks(problem, branch -> vehicles(branch, kept));
    }

    private static PlanBranch vehicles(PlanBranch branch, BitSet kept) {
        return branch.with(branch.asks().stream().filter(ask -> kept.get(ask.vehicle())).toList(),
                branch.stops().stream().map(stop -> stop.with(
                        stop.branches().stream().map(each -> vehicles(each, kept)).toList())).toList());
    }

    /** The same problem where only some of the branches on trunks have to reach, with all that is on them. */
    static PlanProblem branches(PlanProblem problem, Set<String> kept) {
        return onTrunks(problem, branch -> kept.contains(branch.name()) ? branch : vehicles(branch, new BitSet()));
    }

    /** The same trunk without branches on branches. */
    static PlanTrunk bare(PlanTrunk trunk) {
        return onTrunk(trunk, branch -> branch.with(branch.asks(), List.of()));
    }

    private static PlanProblem onTrunks(PlanProblem problem, UnaryOperator<PlanBranch> change) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> onTrunk(trunk, change)).toList(),
                problem.vehicles(), problem.grid(), problem.order());
    }

    private static PlanTrunk onTrunk(PlanTrunk trunk, UnaryOperator<PlanBranch> change) {
        return new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> stop.with(stop.branches().stream().map(change).toList())).toList(), trunk.lattice());
    }
}
