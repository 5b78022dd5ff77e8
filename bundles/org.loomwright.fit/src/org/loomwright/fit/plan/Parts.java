// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/** Problems with less asked of them. */
final class Parts {

    private static final Comparator<Ask> BY_FIGURES = Comparator.comparingLong(Ask::station)
            .thenComparingLong(Ask::reach).thenComparingLong(Ask::spare);

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

    /** The same problem with another limit of the excess; a branch with a limit below {@code from} keeps its own. */
    static PlanProblem excessAtMost(PlanProblem problem, long from, long limit) {
        return onTrunks(problem, branch -> excessAtMost(branch, from, limit));
    }

    private static PlanBranch excessAtMost(PlanBranch branch, long from, long limit) {
        return new PlanBranch(branch.name(), branch.made(), branch.pinned(), branch.excessLimit() < from
                ? branch.excessLimit() : limit, branch.backLimit(), branch.longest(), branch.weight(), branch.count(),
                branch.asks(), branch.stops().stream().map(stop -> stop.with(stop.branches().stream()
                        .map(each -> excessAtMost(each, from, limit)).toList())).toList());
    }

    /** The same trunk without branches on branches. */
    static PlanTrunk bare(PlanTrunk trunk) {
        return onTrunk(trunk, branch -> branch.with(branch.asks(), List.of()));
    }

    /** The same trunk with its vehicles in an order that does not depend on their numbers. */
    static PlanTrunk sorted(PlanTrunk trunk, int vehicles) {
        List<StringBuilder> asked = IntStream.range(0, vehicles).mapToObj(v -> new StringBuilder()).toList();
        trunk.stops().stream().flatMap(stop -> stop.branches().stream()).forEach(branch -> branch.asks().stream()
                .sorted(BY_FIGURES).forEach(ask -> asked.get(ask.vehicle()).append(branch.name()).append(' ')
                        .append(ask.station()).append(' ').append(ask.reach()).append(' ').append(ask.spare())
                        .append('\n')));
        List<Integer> order = IntStream.range(0, vehicles).boxed()
                .sorted(Comparator.comparing(v -> asked.get(v).toString())).toList();
        int[] place = new int[vehicles];
        IntStream.range(0, vehicles).forEach(i -> place[order.get(i)] = i);
        return onTrunk(trunk, branch -> branch.with(branch.asks().stream()
                .map(ask -> new Ask(place[ask.vehicle()], ask.station(), ask.reach(), ask.spare()))
                .sorted(Comparator.comparingInt(Ask::vehicle).thenComparing(BY_FIGURES)).toList(), branch.stops()));
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
