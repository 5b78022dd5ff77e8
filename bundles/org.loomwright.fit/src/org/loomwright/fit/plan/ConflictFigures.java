// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * A conflict in figures, where it has one or two branches without breakouts of their own: by how much vehicles differ,
 * against what is allowed. Along a stiff trunk the stations from which one branch serves two vehicles are an interval.
 * O(vehicles² * stations) for a branch.
 */
public final class ConflictFigures {

    private final PlanProblem problem;
    private final Making making;
    private final List<Leaf> leaves = new ArrayList<>();

    /** A branch of the conflict with what its vehicles ask, and where it leaves. */
    private record Leaf(PlanTrunk trunk, int stop, PlanBranch branch, List<Ask> asks) {

        long slack() {
            return trunk.stops().subList(0, stop + 1).stream().mapToLong(PlanStop::slack).sum();
        }
    }

    /**
     * Two vehicles whose branches differ by too much.
     *
     * @param branch   the branch
     * @param longer   the vehicle that needs more
     * @param shorter  the one that needs less
     * @param lengths  by how much, in nanometres
     * @param stations how much of that may lie along the trunk: what is between their stations, and slack
     * @param allowed  by how much the rest may differ: the excess, less all tolerances
     */
    public record Differ(String branch, int longer, int shorter, long lengths, long stations, long allowed) {
    }

    /**
     * The stations from which one branch serves some vehicles.
     *
     * @param first the least, in nanometres
     * @param last  the greatest
     */
    public record Window(String branch, List<Integer> vehicles, long first, long last) {

        public Window {
            vehicles = List.copyOf(vehicles);
        }
    }

    /**
     * Stations that cannot be had together.
     *
     * @param near  those nearer to the datum; of the same branch, or of one before the other
     * @param far   the others
     * @param least how far apart they have to be; 0 for one branch
     * @param most  how far they may be
     */
    public record Apart(Window near, Window far, long least, long most) {
    }

    private ConflictFigures(Conflict conflict, PlanProblem problem) {
        this.problem = problem;
        this.making = new Making(problem.grid());
        for (PlanTrunk trunk : problem.trunks()) {
            for (int k = 0; k < trunk.stops().size(); k++) {
                for (PlanBranch branch : trunk.stops().get(k).branches()) {
                    List<Ask> asks = branch.asks().stream().filter(ask -> conflict.vehicles().contains(ask.vehicle()))
                            .toList();
                    if (conflict.branches().contains(branch.name()) && !asks.isEmpty()) {
                        leaves.add(new Leaf(trunk, k, branch, asks));
                    }
                }
            }
        }
    }

    private boolean isPlain() {
        return leaves.stream().allMatch(leaf -> leaf.branch.stops().isEmpty());
    }

    /** Two vehicles whose branches differ by too much for any station; empty when that is not it. */
    public static Optional<Differ> differ(Conflict conflict, PlanProblem problem) {
        ConflictFigures figures = new ConflictFigures(conflict, problem);
        if (!figures.isPlain() || figures.leaves.size() != 1) {
            return Optional.empty();
        }
        Leaf leaf = figures.leaves.getFirst();
        for (Ask longer : leaf.asks) {
            for (Ask shorter : leaf.asks) {
                long twice = longer.reach() + longer.spare() - shorter.reach() - shorter.spare();
                long along = Math.abs(longer.station() - shorter.station()) + leaf.slack();
                Tolerance made = leaf.branch.made().of(new Length(figures.making.up(Math.max(0, longer.reach()))));
                long tolerances = made.minus().nanometres() + made.plus().nanometres()
                        + (longer.reach() - longer.spare() + shorter.reach() - shorter.spare()) / 2;
                long allowed = leaf.branch.excessLimit() - tolerances;
                if (longer.vehicle() != shorter.vehicle() && twice / 2 - along > allowed) {
                    return Optional.of(new Differ(leaf.branch.name(), longer.vehicle(), shorter.vehicle(), twice / 2,
                            along, allowed));
                }
            }
        }
        return Optional.empty();
    }

    /** Stations of a stiff trunk that cannot be had together; of several, those farthest apart. */
    public static Optional<Apart> apart(Conflict conflict, PlanProblem problem) {
        ConflictFigures figures = new ConflictFigures(conflict, problem);
        if (!figures.isPlain() || figures.leaves.stream().anyMatch(leaf -> leaf.slack() > 0)) {
            return Optional.empty();
        }
        return switch (figures.leaves.size()) {
            case 1 -> figures.ofOne(figures.leaves.getFirst());
            case 2 -> figures.leaves.get(0).trunk == figures.leaves.get(1).trunk
                    ? figures.ofTwo(figures.leaves.get(0), figures.leaves.get(1)) : Optional.empty();
            default -> Optional.empty();
        };
    }

    private Optional<Apart> ofOne(Leaf leaf) {
        List<Window> windows = new ArrayList<>();
        for (Ask one : leaf.asks) {
            window(leaf, List.of(one)).ifPresent(windows::add);
            for (Ask other : leaf.asks) {
                if (one.vehicle() < other.vehicle()) {
                    window(leaf, List.of(one, other)).ifPresent(windows::add);
                }
            }
        }
        Apart best = null;
        for (Window near : windows) {
            for (Window far : windows) {
                if (near.last < far.first
                        && (best == null || far.first - near.last > best.far.first - best.near.last)) {
                    best = new Apart(near, far, 0, 0);
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private Optional<Apart> ofTwo(Leaf one, Leaf other) {
        Optional<Window> near = window(one, one.asks);
        Optional<Window> far = window(other, other.asks);
        if (near.isEmpty() || far.isEmpty()) {
            return Optional.empty();
        }
        long least = 0;
        long most = 0;
        for (PlanStop stop : one.trunk.stops().subList(one.stop + 1, other.stop + 1)) {
            least += stop.leastGap();
            most = Math.min(Long.MAX_VALUE / 2, most + Math.min(Long.MAX_VALUE / 2, stop.mostGap()));
        }
        return far.get().last - near.get().first < least || far.get().first - near.get().last > most
                ? Optional.of(new Apart(near.get(), far.get(), least, most)) : Optional.empty();
    }

    /** The stations from which a branch does all that some vehicles ask; empty for none. */
    private Optional<Window> window(Leaf leaf, List<Ask> asks) {
        PlanStop stop = leaf.trunk.stops().get(leaf.stop);
        long farthest = Math.min(stop.last(), Stations.farthest(leaf.trunk.stops(), problem.grid()));
        long first = Long.MAX_VALUE;
        long last = Long.MIN_VALUE;
        for (long at = stop.first() == stop.last() ? stop.first() : making.up(stop.first()); at <= farthest;
                at += problem.grid()) {
            if (serves(leaf.branch, asks, at)) {
                first = Math.min(first, at);
                last = at;
            }
        }
        return first > last ? Optional.empty() : Optional.of(new Window(leaf.branch.name(),
                asks.stream().map(Ask::vehicle).distinct().toList(), first, last));
    }

    private boolean serves(PlanBranch branch, List<Ask> asks, long at) {
        long need = 0;
        for (Ask ask : asks) {
            need = Math.max(need, Math.abs(at - ask.station()) + ask.reach());
        }
        long length = branch.pinned().orElse(making.least(branch.made(), need));
        if (length > branch.longest() || length - branch.made().of(new Length(length)).minus().nanometres() < need) {
            return false;
        }
        long made = Making.longest(branch.made(), length);
        return asks.stream().allMatch(ask -> Math.abs(at - ask.station()) <= branch.backLimit()
                && made - Math.abs(at - ask.station()) - ask.spare() <= branch.excessLimit());
    }
}
