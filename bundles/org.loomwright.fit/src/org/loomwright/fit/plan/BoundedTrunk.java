// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.harness.Ours.Objective;

/**
 * A trunk of which one search finds harnesses, and another says what none is below.
 *
 * <p>With branches on branches of a trunk with slack, the first plans it as if it were stiff, which any harness with
 * slack can be laid as, and the second plans exactly, with slack, what is left without them. To the sums that has
 * least, what is on branches adds at least the distances of its breakouts and the lengths that reach with nothing used
 * up on the way. Where the grid is no multiple of the steps in which slack is taken up, the first takes a step off what
 * each vehicle leaves to a tuck, and the second takes slack up by the nanometre.
 */
final class BoundedTrunk implements TrunkSearch {

    private final TrunkSearch above;
    private final TrunkSearch below;
    private final PlanTrunk trunk;
    private final Making making;
    /** The sums that count more than the excess, and whether there was something to bound it with. */
    private List<Objective> before = List.of();
    private boolean isBounded;

    /**
     * @param above finds harnesses
     * @param below the search for the trunk without branches on branches, of which less is asked
     * @param grid  the cutting grid, in nanometres
     */
    BoundedTrunk(PlanTrunk trunk, TrunkSearch above, TrunkSearch below, long grid) {
        this.trunk = trunk;
        this.above = above;
        this.below = below;
        this.making = new Making(grid);
    }

    @Override
    public Optional<Boolean> fits() {
        if (above.fits().equals(Optional.of(true))) {
            return Optional.of(true);
        }
        return below.fits().filter(fits -> !fits);
    }

    @Override
    public Optional<Excess> leastExcess(List<Objective> before) {
        Optional<Excess> least = below.leastExcess(List.of());
        this.before = List.copyOf(before);
        this.isBounded = least.isPresent();
        return above.leastExcess(before).map(found -> new Excess(found.value(),
                Math.min(found.value(), least.map(Excess::bound).orElse(Long.MIN_VALUE))));
    }

    @Override
    public Part best(long limit, List<Objective> sums) {
        Part found = above.best(limit, sums);
        Map<Objective, Long> gaps = new TreeMap<>();
        for (int i = 0; i < sums.size(); i++) {
            Objective sum = sums.get(i);
            // while every sum before it is proved the least, it is bounded under these
            List<Objective> under = gaps.isEmpty() ? sums.subList(0, i + 1) : List.of(sum);
            long bound = isBounded ? bound(under, limit) : Long.MIN_VALUE;
            long value = sum(sum, trunk, found);
            if (bound < value) {
                gaps.put(sum, bound == Long.MIN_VALUE ? Long.MAX_VALUE : value - bound);
            }
        }
        return new Part(found.stations(), found.lengths(), found.excess(), gaps);
    }

    /** No harness whose excess is within a limit has less of the last sum; without the limit where it counts more. */
    private long bound(List<Objective> under, long limit) {
        Objective sum = under.getLast();
        Part bare = below.best(before.contains(sum) ? Long.MAX_VALUE : limit, under);
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
        return above.work().plus(below.work());
    }
}
