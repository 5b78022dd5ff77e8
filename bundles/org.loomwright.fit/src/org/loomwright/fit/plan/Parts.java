// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.BitSet;
import java.util.List;
import java.util.Set;

/** Problems with less asked of them. */
final class Parts {

    private Parts() {
    }

    /** The same problem for some of its vehicles; the numbers of the vehicles stay. */
    static PlanProblem vehicles(PlanProblem problem, BitSet kept) {
        return map(problem, branch -> branch.asks().stream().filter(ask -> kept.get(ask.vehicle())).toList());
    }

    /** The same problem where only some of the branches on trunks have to reach, with all that is on them. */
    static PlanProblem branches(PlanProblem problem, Set<String> kept) {
        Less nothing = branch -> List.of();
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> new PlanStop(stop.name(), stop.first(), stop.last(), stop.leastGap(), stop.mostGap(),
                        stop.slack(), stop.weight(), stop.branches().stream().map(each -> kept.contains(each.name()) ? each
                                : branch(each, nothing)).toList())).toList(), trunk.lattice())).toList(), problem.vehicles(),
                problem.grid(), problem.order());
    }

    /** The same trunk without branches on branches. */
    static PlanTrunk bare(PlanTrunk trunk) {
        return new PlanTrunk(trunk.name(), trunk.stops().stream().map(stop -> new PlanStop(stop.name(), stop.first(),
                stop.last(), stop.leastGap(), stop.mostGap(), stop.slack(), stop.weight(), stop.branches().stream()
                        .map(each -> new PlanBranch(each.name(), each.made(), each.pinned(), each.excessLimit(),
                                each.backLimit(), each.longest(), each.weight(), each.count(), each.asks(), List.of()))
                        .toList())).toList(), trunk.lattice());
    }

    /** What a branch is still asked. */
    private interface Less {
        List<Ask> of(PlanBranch branch);
    }

    private static PlanProblem map(PlanProblem problem, Less less) {
        return new PlanProblem(problem.trunks().stream()
                .map(trunk -> new PlanTrunk(trunk.name(), stops(trunk.stops(), less), trunk.lattice())).toList(), problem.vehicles(),
                problem.grid(), problem.order());
    }

    private static List<PlanStop> stops(List<PlanStop> stops, Less less) {
        return stops.stream().map(stop -> new PlanStop(stop.name(), stop.first(), stop.last(), stop.leastGap(),
                stop.mostGap(), stop.slack(), stop.weight(), stop.branches().stream().map(each -> branch(each, less)).toList()))
                .toList();
    }

    private static PlanBranch branch(PlanBranch branch, Less less) {
        return new PlanBranch(branch.name(), branch.made(), branch.pinned(), branch.excessLimit(), branch.backLimit(),
                branch.longest(), branch.weight(), branch.count(), less.of(branch), stops(branch.stops(), less));
    }
}
