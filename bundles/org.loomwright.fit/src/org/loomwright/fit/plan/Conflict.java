// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.loomwright.quantity.Cancel;

/**
 * Why no harness fits: vehicles and branches that cannot be served by one, so few that without any one of them one can.
 *
 * @param vehicles the vehicles, rising
 * @param branches the branches on trunks, each with all that is on it, in the order of the harness
 * @param minimal  true when it is proved that without any one of them a harness fits; false when for some that was not
 *                 found out
 */
public record Conflict(List<Integer> vehicles, List<String> branches, boolean minimal) {

    public Conflict {
        vehicles = List.copyOf(vehicles);
        branches = List.copyOf(branches);
    }

    /**
     * Finds one by leaving out one after the other what is not needed for it; empty when a harness fits, or
     * when that none does was not proved. One plan's
     * work for each vehicle and branch, without the search for the least excess.
     */
    public static Optional<Conflict> of(PlanProblem problem, HarnessPlanner planner, Cancel cancel) {
        return planner.fits(problem, cancel).filter(fits -> !fits).map(none -> within(problem, planner, cancel));
    }

    /** The same for a problem of which it is proved that no harness fits. */
    public static Conflict within(PlanProblem problem, HarnessPlanner planner, Cancel cancel) {
        boolean minimal = true;
        BitSet vehicles = new BitSet();
        vehicles.set(0, problem.vehicles());
        for (int v = 0; v < problem.vehicles(); v++) {
            vehicles.clear(v);
            Optional<Boolean> fits = fits(Parts.vehicles(problem, vehicles), planner, cancel);
            minimal &= fits.isPresent();
            vehicles.set(v, fits.orElse(true));
        }
        PlanProblem less = Parts.vehicles(problem, vehicles);
        Set<String> branches = new LinkedHashSet<>();
        onTrunks(less).filter(each -> !each.asks().isEmpty()).forEach(each -> branches.add(each.name()));
        for (String branch : List.copyOf(branches)) {
            branches.remove(branch);
            Optional<Boolean> fits = fits(Parts.branches(less, branches), planner, cancel);
            minimal &= fits.isPresent();
            if (fits.orElse(true)) {
                branches.add(branch);
            }
        }
        List<String> order = onTrunks(less).map(PlanBranch::name).filter(branches::contains).toList();
        return new Conflict(vehicles.stream().boxed().toList(), order, minimal);
    }

    /** With so much work at most; what was not found out then is kept. */
    private static Optional<Boolean> fits(PlanProblem problem, HarnessPlanner planner, Cancel cancel) {
        return planner.counting(new AtomicInteger(), FewestHarnesses.MOST_PROGRAMS).fits(problem, cancel);
    }

    /**
     * Two fixed breakouts, or a fixed one and the datum, between which what stands there has no room, whatever the
     * drawings ask: by name, empty for the datum. Empty when there are none.
     */
    public static Optional<List<String>> pins(PlanProblem problem) {
        for (PlanTrunk trunk : problem.trunks()) {
            String from = "";
            long least = 0;
            long fixed = 0;
            for (PlanStop stop : trunk.stops()) {
                least += stop.leastGap();
                if (stop.first() == stop.last()) {
                    if (fixed + least > stop.last()) {
                        return Optional.of(List.of(from, stop.name()));
                    }
                    from = stop.name();
                    fixed = stop.last();
                    least = 0;
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Two breakouts of this conflict that one of its vehicles has the other way round than the harness.
     *
     * @param vehicle the vehicle
     * @param first   the breakout that the harness has first
     * @param second  the one behind it
     */
    public record Turned(int vehicle, String first, String second) {
    }

    /** Finds the breakouts of this conflict whose order differs. */
    public List<Turned> turned(PlanProblem problem) {
        List<Turned> turned = new ArrayList<>();
        for (PlanTrunk trunk : problem.trunks()) {
            for (int j = 1; j < trunk.stops().size(); j++) {
                for (int v : vehicles) {
                    PlanStop first = trunk.stops().get(j - 1);
                    PlanStop second = trunk.stops().get(j);
                    long before = stations(first, v).max().orElse(Long.MIN_VALUE);
                    long behind = stations(second, v).min().orElse(Long.MAX_VALUE);
                    if (before != Long.MIN_VALUE && behind != Long.MAX_VALUE && before > behind) {
                        turned.add(new Turned(v, first.name(), second.name()));
                    }
                }
            }
        }
        return turned;
    }

    private LongStream stations(PlanStop stop, int vehicle) {
        return stop.branches().stream().filter(each -> branches.contains(each.name()))
                .flatMap(each -> each.asks().stream()).filter(ask -> ask.vehicle() == vehicle)
                .mapToLong(Ask::station);
    }

    private static Stream<PlanBranch> onTrunks(PlanProblem problem) {
        return problem.trunks().stream().flatMap(trunk -> trunk.stops().stream())
                .flatMap(stop -> stop.branches().stream());
    }
}
