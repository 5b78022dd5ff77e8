// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * Lists every harness with stations and lengths on the grid, lays it into every vehicle with every tuck on the lattice,
 * and keeps the best. Written from the inequalities alone.
 */
final class SlackBruteForce {


    private final PlanProblem problem;
    private final List<PlanStop> stops;
    private final List<PlanBranch> branches = new ArrayList<>();
    private final List<Integer> stopOf = new ArrayList<>();
    private final long lattice;
    private final long reachesTo;
    private long[] best;

    private SlackBruteForce(PlanProblem problem) {
        this.problem = problem;
        this.stops = problem.trunks().getFirst().stops();
        this.lattice = problem.trunks().getFirst().lattice();
        this.reachesTo = problem.grid() * (problem.trunks().getFirst().stops().size() == 3 ? 6 : 12);
        for (int k = 0; k < stops.size(); k++) {
            for (PlanBranch branch : stops.get(k).branches()) {
                branches.add(branch);
                stopOf.add(k);
            }
        }
    }

    /** Excess, copper and length of the best harness. */
    static Optional<long[]> best(PlanProblem problem) {
        SlackBruteForce search = new SlackBruteForce(problem);
        search.stations(0, new long[search.stops.size()]);
        return Optional.ofNullable(search.best);
    }

    private void stations(int k, long[] at) {
        if (k == stops.size()) {
            lengths(0, at, new long[branches.size()]);
            return;
        }
        PlanStop stop = stops.get(k);
        long before = k == 0 ? 0 : at[k - 1];
        for (long t = 0; t <= reachesTo; t += stop.first() == stop.last() ? 1 : problem.grid()) {
            long gap = t - before;
            if (t >= stop.first() && t <= stop.last() && gap >= stop.leastGap() && gap <= stop.mostGap()) {
                at[k] = t;
                stations(k + 1, at);
            }
        }
    }

    private void lengths(int i, long[] at, long[] lengths) {
        if (i == branches.size()) {
            judge(at, lengths);
            return;
        }
        PlanBranch branch = branches.get(i);
        if (branch.pinned().isPresent()) {
            lengths[i] = branch.pinned().getAsLong();
            lengths(i + 1, at, lengths);
            return;
        }
        for (long c = 0; c <= Math.min(reachesTo, branch.longest()); c += problem.grid()) {
            lengths[i] = c;
            boolean some = true;
            for (Ask ask : branch.asks()) {
                some &= c - made(branch, c).minus().nanometres() >= ask.reach();
            }
            if (some) {
                lengths(i + 1, at, lengths);
            }
        }
    }

    private static Tolerance made(PlanBranch branch, long length) {
        return branch.made().of(new Length(length));
    }

    private void judge(long[] at, long[] lengths) {
        long copper = 0;
        long length = 0;
        for (int k = 0; k < at.length; k++) {
            copper += stops.get(k).weight() * (at[k] - (k == 0 ? 0 : at[k - 1]));
        }
        for (int i = 0; i < lengths.length; i++) {
            copper += branches.get(i).weight() * lengths[i];
            length += branches.get(i).count() * lengths[i];
            if (branches.get(i).pinned().isPresent() && lengths[i] > branches.get(i).longest()) {
                return;
            }
        }
        long excess = 0;
        for (int v = 0; v < problem.vehicles(); v++) {
            long least = laid(v, 0, 0, at, lengths);
            if (least == Long.MAX_VALUE) {
                return;
            }
            excess = Math.max(excess, least);
        }
        long[] found = {excess, copper, length};
        if (best == null || isBetter(found)) {
            best = found;
        }
    }

    private boolean isBetter(long[] found) {
        for (Objective each : problem.order()) {
            if (found[each.ordinal()] != best[each.ordinal()]) {
                return found[each.ordinal()] < best[each.ordinal()];
            }
        }
        return false;
    }

    /** The least largest excess of the breakouts from one on, with so much tuck before it. */
    private long laid(int vehicle, int k, long tuck, long[] at, long[] lengths) {
        if (k == stops.size()) {
            return 0;
        }
        long least = Long.MAX_VALUE;
        for (long more = 0; more <= stops.get(k).slack(); more += lattice) {
            long here = here(vehicle, k, at[k] - tuck - more, lengths);
            if (here < least) {
                least = Math.min(least, Math.max(here, laid(vehicle, k + 1, tuck + more, at, lengths)));
            }
        }
        return least;
    }

    private long here(int vehicle, int k, long position, long[] lengths) {
        long excess = 0;
        for (int i = 0; i < lengths.length; i++) {
            for (Ask ask : branches.get(i).asks()) {
                if (stopOf.get(i) == k && ask.vehicle() == vehicle) {
                    Tolerance made = made(branches.get(i), lengths[i]);
                    long along = Math.abs(position - ask.station());
                    long over = lengths[i] + made.plus().nanometres() - along - ask.spare();
                    if (lengths[i] - made.minus().nanometres() - along < ask.reach()
                            || over > branches.get(i).excessLimit() || along > branches.get(i).backLimit()) {
                        return Long.MAX_VALUE;
                    }
                    excess = Math.max(excess, over);
                }
            }
        }
        return excess;
    }
}
