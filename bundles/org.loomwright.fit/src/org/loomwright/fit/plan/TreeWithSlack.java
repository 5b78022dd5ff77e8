// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.harness.Ours.Objective;

/**
 * A trunk with slack that has branches on branches. Planned as if it were stiff, which any harness of slack can be laid
 * as; the same without the branches on branches, planned exactly with slack, bounds it from below. To the sums that has
 * least, what is on branches adds at least the distances of its breakouts and the lengths that reach with nothing used
 * up on the way.
 */
final class TreeWithSlack implements TrunkSearch {

    private final TrunkSearch stiff;
    private final TrunkSearch without;
    private final PlanTrunk trunk;
    private final Making making;
    /** The sums that count more than the excess, and whether the trunk without branches on branches was planned. */
    private List<Objective> before = List.of();
    private boolean isBounded;

    /**
     * @param without the search for the trunk without branches on branches
     * @param grid    the cutting grid, in nanometres
     */
    TreeWithSlack(PlanTrunk trunk, TrunkSearch stiff, TrunkSearch without, long grid) {
        this.trunk = trunk;
        this.stiff = stiff;
        this.without = without;
        this.making = new Making(grid);
    }

    @Override
    public Optional<Boolean> fits() {
        if (stiff.fits().equals(Optional.of(true))) {
            return Optional.of(true);
        }
        return without.fits().filter(fits -> !fits);
    }

    @Override
    public Optional<Excess> leastExcess(List<Objective> before) {
        Optional<Excess> least = without.leastExcess(List.of());
        this.before = List.copyOf(before);
        this.isBounded = least.isPresent();
        return stiff.leastExcess(before).map(found -> new Excess(found.value(),
                Math.min(found.value(), least.map(Excess::bound).orElse(Long.MIN_VALUE))));
    }

    @Override
    public Part best(long limit, List<Objective> sums) {
        Part found = stiff.best(limit, sums);
        Map<Objective, Long> gaps = new TreeMap<>();
        for (Objective each : sums) {
            long bound = isBounded ? bound(each, limit) : Long.MIN_VALUE;
            long value = sum(each, trunk, found);
            if (bound < value) {
                gaps.put(each, bound == Long.MIN_VALUE ? Long.MAX_VALUE : value - bound);
            }
        }
        return new Part(found.stations(), found.lengths(), found.excess(), gaps);
    }

    /** No harness whose excess is within a limit has a lesser sum; without the limit where the sum counts more. */
    private long bound(Objective sum, long limit) {
        Part bare = without.best(before.contains(sum) ? Long.MAX_VALUE : limit, List.of(sum));
        long gap = bare.gaps().getOrDefault(sum, 0L);
        return gap == Long.MAX_VALUE ? Long.MIN_VALUE : sum(sum, Parts.bare(trunk), bare) - gap
                + trunk.stops().stream().flatMap(stop -> stop.branches().stream())
                        .mapToLong(branch -> least(sum, branch.stops())).sum();
    }

    private static long sum(Objective sum, PlanTrunk trunk, Part part) {
        return sum == Objective.COPPER ? Stations.copper(trunk.stops(), part.stations(), part.lengths())
                : Stations.length(trunk.stops(), part.lengths());
    }

    /** What breakouts on a branch and all that leaves them add to a sum at least. */
    private long least(Objective sum, List<PlanStop> stops) {
        long least = 0;
        for (PlanStop stop : stops) {
            least += sum == Objective.COPPER ? stop.weight() * stop.leastGap() : 0;
            for (PlanBranch branch : stop.branches()) {
                long reach = branch.asks().stream().mapToLong(Ask::reach).max().orElse(Long.MIN_VALUE);
                long length = reach == Long.MIN_VALUE ? 0 : branch.pinned().orElse(making.least(branch.made(), reach));
                least += (sum == Objective.COPPER ? branch.weight() : branch.count()) * length
                        + least(sum, branch.stops());
            }
        }
        return least;
    }

    @Override
    public HarnessPlan.Work work() {
        return stiff.work().plus(without.work());
    }
}
