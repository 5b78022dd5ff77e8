// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * Lists every harness with stations and lengths on the grid, and keeps the best. Written from the inequalities alone:
 * every vehicle is laid in by itself, and lengths are tried one after the other. Only what is nowhere better is
 * dropped.
 */
final class BruteForce {

    private static final long REACHES_TO = 120;

    private final PlanProblem problem;
    private final Comparator<long[]> better;
    private long[] best;
    private List<long[]> every;

    private BruteForce(PlanProblem problem) {
        this.problem = problem;
        this.better = (one, other) -> {
            for (Objective each : problem.order()) {
                int order = Long.compare(one[each.ordinal()], other[each.ordinal()]);
                if (order != 0) {
                    return order;
                }
            }
            return 0;
        };
    }

    /** Excess, copper and length of the best harness. */
    static Optional<long[]> best(PlanProblem problem) {
        BruteForce search = new BruteForce(problem);
        search.trunks(0, new long[] {0, 0, 0});
        return Optional.ofNullable(search.best);
    }

    /**
     * Excess, copper and length of every harness of one trunk in which so much of it is taken up by each vehicle before
     * its breakouts; some of those that are nowhere better than another may be missing.
     */
    static List<long[]> every(PlanProblem problem, long[] tucks) {
        BruteForce search = new BruteForce(problem);
        search.every = new ArrayList<>();
        search.stops(0, 0, 0, tucks, new long[] {0, 0, 0});
        return search.every;
    }

    private void trunks(int trunk, long[] sum) {
        if (trunk == problem.trunks().size()) {
            if (every != null) {
                every.add(sum);
            }
            best = best == null || better.compare(sum, best) < 0 ? sum : best;
        } else {
            stops(trunk, 0, 0, new long[problem.vehicles()], sum);
        }
    }

    private void stops(int trunk, int k, long before, long[] shifts, long[] sum) {
        List<PlanStop> stops = problem.trunks().get(trunk).stops();
        if (k == stops.size()) {
            trunks(trunk + 1, sum);
            return;
        }
        PlanStop stop = stops.get(k);
        for (long at : positions(stop)) {
            if (at - before >= stop.leastGap() && at - before <= stop.mostGap()) {
                long[] with = sum.clone();
                with[1] += stop.weight() * (at - before);
                List<List<long[]>> choices = new ArrayList<>();
                stop.branches().forEach(branch -> choices.add(branch(branch, at, shifts)));
                combine(choices, 0, with, all -> stops(trunk, k + 1, at, shifts, all));
            }
        }
    }

    private long[] positions(PlanStop stop) {
        if (stop.first() == stop.last()) {
            return new long[] {stop.first()};
        }
        long[] all = new long[(int) (REACHES_TO / problem.grid()) + 1];
        Arrays.setAll(all, i -> i * problem.grid());
        return Arrays.stream(all).filter(at -> at >= stop.first() && at <= stop.last()).toArray();
    }

    private static void combine(List<List<long[]>> choices, int i, long[] sum,
            Consumer<long[]> then) {
        if (i == choices.size()) {
            then.accept(sum);
            return;
        }
        for (long[] each : choices.get(i)) {
            combine(choices, i + 1, join(sum, each), then);
        }
    }

    private static long[] join(long[] one, long[] other) {
        return new long[] {Math.max(one[0], other[0]), one[1] + other[1], one[2] + other[2]};
    }

    /** Every way to make a branch and what it carries, as excess, copper and length. */
    private List<long[]> branch(PlanBranch branch, long at, long[] shifts) {
        List<long[]> ways = new ArrayList<>();
        for (long length = 0; length <= REACHES_TO; length += problem.grid()) {
            long[] used = new long[shifts.length];
            Optional<long[]> own = made(branch, at, branch.pinned().orElse(length), shifts, used);
            if (own.isPresent() && branch.stops().isEmpty()) {
                ways.add(own.get());
            } else if (own.isPresent()) {
                PlanStop child = branch.stops().getFirst();
                for (long on = 0; on <= branch.pinned().orElse(length); on += problem.grid()) {
                    long[] with = own.get().clone();
                    with[1] += child.weight() * on;
                    for (long[] each : branch(child.branches().getFirst(), on, used)) {
                        ways.add(join(with, each));
                    }
                }
            }
            if (branch.pinned().isPresent()) {
                break;
            }
        }
        return ways.stream().filter(way -> ways.stream().noneMatch(other -> beats(other, way))).toList();
    }

    /** True when a way is nowhere worse and somewhere better, so that the other is in no best harness. */
    private static boolean beats(long[] one, long[] other) {
        return one[0] <= other[0] && one[1] <= other[1] && one[2] <= other[2] && !Arrays.equals(one, other);
    }

    private static Optional<long[]> made(PlanBranch branch, long at, long length, long[] shifts, long[] used) {
        if (length > branch.longest()) {
            return Optional.empty();
        }
        Tolerance made = branch.made().of(new Length(length));
        long excess = 0;
        for (Ask ask : branch.asks()) {
            long along = Math.abs(at - shifts[ask.vehicle()] - ask.station());
            used[ask.vehicle()] = along;
            long over = length + made.plus().nanometres() - along - ask.spare();
            if (length - made.minus().nanometres() - along - ask.reach() < 0 || over > branch.excessLimit()
                    || along > branch.backLimit()) {
                return Optional.empty();
            }
            excess = Math.max(excess, over);
        }
        return Optional.of(new long[] {excess, branch.weight() * length, branch.count() * length});
    }
}
