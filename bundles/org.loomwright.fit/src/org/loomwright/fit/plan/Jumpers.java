// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;

/**
 * One harness for all with the fewest jumpers. A jumper is a short lead between a branch and its place in one vehicle:
 * there the branch need not reach, but it must not be too long either, nor run back too far.
 *
 * <p>For a given station the longest branch that is nowhere too long needs the fewest jumpers, so a dynamic programme
 * along each trunk, as for a stiff trunk, finds the least number of all. Exact for stiff trunks; O(breakouts *
 * positions²). With slack it is where {@link SlackJumpers} start from. Branches with breakouts of their own get none,
 * and each branch reaches in some vehicle.
 */
public final class Jumpers {

    /** The harness that goes with jumpers is the best that is found with so many linear programs. */
    private static final int MOST_PROGRAMS = 10_000;
    /** Stands for no limit; sums with it do not overflow. */
    private static final long FAR = Long.MAX_VALUE / 8;

    private final PlanProblem problem;
    private final Making making;
    private final Cancel cancel;
    private final Set<Waived> waived = new HashSet<>();

    /** An ask by branch and its number among the branch's. */
    record Waived(String branch, int ask) {

        static final Comparator<Waived> ORDER = Comparator.comparing(Waived::branch).thenComparingInt(Waived::ask);
    }

    /**
     * A jumper.
     *
     * @param vehicle number of the vehicle geometry
     * @param branch  the branch that it lengthens
     * @param length  how long it is at least, in nanometres
     */
    public record Jumper(int vehicle, String branch, long length) {
    }

    /**
     * The answer.
     *
     * @param jumpers the jumpers, by branch in the order of the harness
     * @param plan    the harness that goes with them
     * @param atLeast there is no way with fewer than so many
     */
    public record Answer(List<Jumper> jumpers, HarnessPlan.Solution plan, int atLeast) {

        public Answer {
            jumpers = List.copyOf(jumpers);
        }

        /** True when it is proved that there is no way with fewer. */
        public boolean isFewest() {
            return jumpers.size() <= atLeast;
        }
    }

    private Jumpers(PlanProblem problem, Cancel cancel) {
        this.problem = problem;
        this.making = new Making(problem.grid());
        this.cancel = cancel;
    }

    /** Finds them; empty when jumpers do not help. */
    public static Optional<Answer> of(PlanProblem problem, HarnessPlanner planner, Cancel cancel) {
        Jumpers search = new Jumpers(problem, cancel);
        int atLeast = 0;
        for (PlanTrunk trunk : problem.trunks()) {
            Optional<Set<Waived>> own = search.trunk(trunk);
            if (trunk.stops().stream().anyMatch(stop -> stop.slack() >= trunk.lattice())) {
                Optional<SlackJumpers.Found> found = new SlackJumpers(new PlanProblem(List.of(trunk),
                        problem.vehicles(), problem.grid(), problem.order()), planner, cancel).find(own);
                atLeast += found.map(SlackJumpers.Found::atLeast).orElse(0);
                own = found.map(SlackJumpers.Found::waived);
            } else {
                atLeast += own.map(Set::size).orElse(0);
            }
            if (own.isEmpty()) {
                return Optional.empty();
            }
            search.waived.addAll(own.get());
        }
        int least = atLeast;
        return planner.counting(new AtomicInteger(), MOST_PROGRAMS).plan(eased(problem, search.waived), cancel).found()
                .map(plan -> new Answer(search.jumpers(plan), plan, least));
    }

    static boolean mayHave(PlanBranch branch) {
        return branch.stops().isEmpty() && !branch.asks().isEmpty();
    }

    /** What a branch costs at a station: jumpers, and all that is missing; null when it cannot be made. */
    private record Choice(Cost cost, List<Integer> without) {
    }

    private Choice choice(PlanBranch branch, long at) {
        long most = FAR;
        for (Ask ask : branch.asks()) {
            long run = Math.abs(at - ask.station());
            if (run > branch.backLimit()) {
                return null;
            }
            most = Math.min(most, run + ask.spare() + branch.excessLimit());
        }
        long length = branch.pinned().orElse(Math.floorDiv(Math.min(most, branch.longest()), problem.grid())
                * problem.grid());
        while (branch.pinned().isEmpty() && length >= 0 && Making.longest(branch.made(), length) > most) {
            length -= problem.grid();
        }
        if (length < 0 || length > branch.longest() || Making.longest(branch.made(), length) > most) {
            return null;
        }
        long made = length - branch.made().of(new Length(length)).minus().nanometres();
        List<Integer> without = new ArrayList<>();
        long missing = 0;
        for (int i = 0; i < branch.asks().size(); i++) {
            long needed = Math.abs(at - branch.asks().get(i).station()) + branch.asks().get(i).reach();
            if (needed > made) {
                without.add(i);
                missing += needed - made;
            }
        }
        return without.size() == branch.asks().size() ? null : new Choice(new Cost(without.size(), missing), without);
    }

    /** The dynamic programme along one trunk, as if it were stiff; empty when jumpers do not help. */
    private Optional<Set<Waived>> trunk(PlanTrunk trunk) {
        long[] grid = LongStream.rangeClosed(0, Stations.farthest(trunk.stops(), problem.grid()) / problem.grid())
                .map(step -> step * problem.grid()).toArray();
        RunTable table = new RunTable(trunk.stops(), new long[problem.vehicles()], making, grid);
        RunTable rest = new RunTable(trunk.stops().stream().map(stop -> stop.with(stop.branches().stream()
                .map(each -> mayHave(each) ? each.with(List.of(), List.of()) : each).toList())).toList(),
                new long[problem.vehicles()], making, grid);
        RunProgramme programme = new RunProgramme(FAR, List.of(), making, cancel);
        int count = trunk.stops().size();
        int[][] from = new int[count][];
        Cost[] before = {Cost.NONE};
        long[] beforeAt = {0};
        for (int k = 0; k < count; k++) {
            cancel.check();
            RunTable.Stop stop = table.stops.get(k);
            Cost[] here = new Cost[stop.at().length];
            from[k] = new int[here.length];
            for (int q = 0; q < here.length; q++) {
                long at = stop.at()[q];
                int same = Arrays.binarySearch(rest.stops.get(k).at(), at);
                Cost own = same >= 0 && programme.isPossible(rest.stops.get(k), same) ? cost(stop.stop(), at) : null;
                int best = own == null ? -1 : best(stop.stop(), at, before, beforeAt);
                from[k][q] = best;
                here[q] = best < 0 ? null : own.plus(before[best]);
            }
            before = here;
            beforeAt = stop.at();
        }
        Cost[] ends = before;
        int last = IntStream.range(0, ends.length).filter(q -> ends[q] != null).boxed()
                .min((one, other) -> ends[one].compareTo(ends[other])).orElse(-1);
        Set<Waived> own = new HashSet<>();
        if (count > 0 && last < 0) {
            return Optional.empty();
        }
        for (int k = count - 1; k >= 0; k--) {
            RunTable.Stop stop = table.stops.get(k);
            waive(stop.stop(), stop.at()[last], own);
            last = from[k][last];
        }
        return Optional.of(own);
    }

    private Cost cost(PlanStop stop, long at) {
        Cost sum = Cost.NONE;
        for (PlanBranch branch : stop.branches()) {
            if (mayHave(branch)) {
                Choice choice = choice(branch, at);
                if (choice == null) {
                    return null;
                }
                sum = sum.plus(choice.cost);
            }
        }
        return sum;
    }

    private static int best(PlanStop stop, long at, Cost[] before, long[] beforeAt) {
        int best = -1;
        for (int p = 0; p < before.length; p++) {
            long gap = at - beforeAt[p];
            if (before[p] != null && gap >= stop.leastGap() && gap <= stop.mostGap()
                    && (best < 0 || before[p].compareTo(before[best]) < 0)) {
                best = p;
            }
        }
        return best;
    }

    private void waive(PlanStop stop, long at, Set<Waived> own) {
        stop.branches().stream().filter(Jumpers::mayHave).forEach(branch -> choice(branch, at).without
                .forEach(ask -> own.add(new Waived(branch.name(), ask))));
    }

    /** The problem without the reach that jumpers make up for. */
    static PlanProblem eased(PlanProblem problem, Set<Waived> waived) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> stop.with(stop.branches().stream().map(each -> each.with(eased(each, waived),
                        each.stops())).toList())).toList(), trunk.lattice())).toList(), problem.vehicles(),
                problem.grid(), problem.order());
    }

    private static List<Ask> eased(PlanBranch branch, Set<Waived> waived) {
        return IntStream.range(0, branch.asks().size()).mapToObj(i -> {
            Ask ask = branch.asks().get(i);
            return waived.contains(new Waived(branch.name(), i)) ? eased(ask, branch) : ask;
        }).toList();
    }

    /** The same ask without its reach. */
    static Ask eased(Ask ask, PlanBranch branch) {
        return new Ask(ask.vehicle(), ask.station(), Math.min(ask.reach(), -branch.backLimit()), ask.spare());
    }

    private List<Jumper> jumpers(HarnessPlan.Solution plan) {
        List<Jumper> jumpers = new ArrayList<>();
        for (PlanTrunk trunk : problem.trunks()) {
            Map<Waived, Long> missing = new LinkedHashMap<>();
            for (PlanStop stop : trunk.stops()) {
                for (PlanBranch branch : stop.branches()) {
                    for (int i = 0; i < branch.asks().size(); i++) {
                        if (waived.contains(new Waived(branch.name(), i))) {
                            missing.put(new Waived(branch.name(), i), missing(plan, stop, branch,
                                    branch.asks().get(i)));
                        }
                    }
                }
            }
            if (trunk.stops().stream().anyMatch(stop -> stop.slack() >= trunk.lattice())) {
                shorten(trunk, plan, missing);
            }
            trunk.stops().stream().flatMap(stop -> stop.branches().stream()).forEach(branch -> missing.forEach((each,
                    length) -> {
                if (each.branch().equals(branch.name()) && length > 0) {
                    jumpers.add(new Jumper(branch.asks().get(each.ask()).vehicle(), branch.name(), making.up(length)));
                }
            }));
        }
        return jumpers;
    }

    /** What a branch lacks in a vehicle where nothing of the trunk is taken up, with the most that may be. */
    private static long missing(HarnessPlan.Solution plan, PlanStop stop, PlanBranch branch, Ask ask) {
        long length = plan.lengths().get(branch.name());
        long made = length - branch.made().of(new Length(length)).minus().nanometres();
        return Math.abs(plan.stations().get(stop.name()) - ask.station()) + ask.reach() - made;
    }

    /** With slack, each jumper as short as some laying of its vehicle allows beside the others; by bisection. */
    private void shorten(PlanTrunk trunk, HarnessPlan.Solution plan, Map<Waived, Long> missing) {
        long all = trunk.stops().stream().mapToLong(PlanStop::slack).sum();
        // whatever is taken up, so much will do
        missing.replaceAll((each, length) -> making.up(Math.max(0, length + all)));
        for (Waived each : List.copyOf(missing.keySet())) {
            long low = -problem.grid();
            long high = missing.get(each);
            while (high - low > problem.grid()) {
                long middle = low + (high - low) / problem.grid() / 2 * problem.grid();
                missing.put(each, middle);
                if (isLaid(trunk, plan, missing)) {
                    high = middle;
                } else {
                    low = middle;
                }
            }
            missing.put(each, high);
        }
    }

    /** Whether a plan can be laid into all vehicles with jumpers of some lengths. */
    private boolean isLaid(PlanTrunk trunk, HarnessPlan.Solution plan, Map<Waived, Long> lengths) {
        List<PlanStop> stops = trunk.stops().stream().map(stop -> stop.with(stop.branches().stream()
                .map(branch -> branch.with(IntStream.range(0, branch.asks().size()).mapToObj(i -> {
                    Ask ask = branch.asks().get(i);
                    return new Ask(ask.vehicle(), ask.station(), ask.reach() - lengths.getOrDefault(new Waived(branch
                            .name(), i), 0L), ask.spare());
                }).toList(), List.of())).toList())).toList();
        SlackRun run = new SlackRun(new PlanTrunk(trunk.name(), stops, trunk.lattice()), problem.vehicles(),
                problem.grid());
        long[] x = new long[run.unknowns()];
        for (int k = 0; k < stops.size(); k++) {
            x[k] = (plan.stations().get(stops.get(k).name()) - run.base[k]) / problem.grid();
        }
        for (SlackRun.Leg leg : run.legs) {
            if (!leg.branch().asks().isEmpty()) {
                int unknown = leg.unknown();
                x[unknown] = (plan.lengths().get(leg.branch().name()) - run.base[unknown]) / problem.grid();
                if (x[unknown] < run.low[unknown] || x[unknown] > run.high[unknown]) {
                    return false;
                }
            }
        }
        return new Laying(run).fits(x, FAR);
    }
}
