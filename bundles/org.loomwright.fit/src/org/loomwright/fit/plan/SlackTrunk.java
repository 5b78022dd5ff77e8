// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/**
 * A trunk with slack and without branches on branches, planned exactly: the least excess by bisection over the values
 * that it can have, the sums by {@link SlackSearch}.
 */
final class SlackTrunk implements TrunkSearch {

    private static final int NEAR = 16;

    private final SlackRun run;
    private final Branching branching;
    private final LinearProgram.Solver solver;
    private final Cancel cancel;
    private final Cancel enough;
    private final long unit;
    private final long most;
    private final StiffTrunk stiff;
    private final PlanWatch watch;
    private long[] best;
    /** The largest excess that was found, and what it is at least, while the least one is looked for. */
    private long value;
    private long least;
    private long programs;
    private long nodes;
    private long layings;

    /**
     * @param stiff the same trunk without slack, for a harness to start from
     */
    SlackTrunk(PlanTrunk trunk, StiffTrunk stiff, PlanProblem problem, LinearProgram.Solver solver, Cancel cancel,
            Cancel enough, PlanWatch watch) {
        this.watch = watch;
        this.run = new SlackRun(Parts.sorted(trunk, problem.vehicles()), problem.vehicles(), problem.grid());
        this.branching = new Branching(run.asks.size(), run.unknowns());
        this.stiff = stiff;
        this.solver = solver;
        this.cancel = cancel;
        this.enough = enough;
        this.unit = unit();
        this.most = run.legs.stream().mapToLong(leg -> leg.branch().excessLimit()).max().orElse(0);
    }

    @Override
    public HarnessPlan.Work work() {
        return new HarnessPlan.Work(0, layings, programs, nodes).plus(stiff.work());
    }

    /**
     * Every least largest excess is a multiple of this: where two bounds of a tuck meet, the excess stands in one of
     * them or, with opposite signs, in both; so it is a multiple of half of what all figures are multiples of. Where
     * tucks cannot be as fine as that, of what tucks and figures are multiples of.
     */
    private long unit() {
        long unit = run.grid;
        for (long base : run.base) {
            unit = SlackSearch.divisor(unit, base);
        }
        for (long slack : run.slack) {
            unit = SlackSearch.divisor(unit, slack);
        }
        for (SlackRun.Leg leg : run.legs) {
            for (int i = 0; i < leg.minus().length; i++) {
                unit = SlackSearch.divisor(unit, leg.plus()[i]);
                unit = SlackSearch.divisor(unit, leg.minus()[i]);
            }
        }
        for (SlackRun.Asked each : run.asks) {
            unit = SlackSearch.divisor(unit, each.ask().station());
            unit = SlackSearch.divisor(unit, each.ask().reach());
            unit = SlackSearch.divisor(unit, each.ask().spare());
        }
        return unit % 2 == 0 && unit / 2 % run.lattice == 0 ? unit / 2
                : run.aligned ? SlackSearch.divisor(unit, run.lattice) : 1;
    }

    /** The weights of a sum by unknown, for each grid step; the same divided by the grid is its value in figures. */
    private long[] weights(Objective sum) {
        long[] weights = new long[run.unknowns()];
        if (sum == Objective.COPPER) {
            for (int k = 0; k < run.stops.size(); k++) {
                weights[k] = run.stops.get(k).weight()
                        - (k + 1 < run.stops.size() ? run.stops.get(k + 1).weight() : 0);
            }
        }
        for (SlackRun.Leg leg : run.legs) {
            weights[leg.unknown()] = sum == Objective.COPPER ? leg.branch().weight() : leg.branch().count();
        }
        return weights;
    }

    private long sum(Objective sum, long[] x) {
        long[] weights = weights(sum);
        long total = 0;
        for (int i = 0; i < x.length; i++) {
            total = Math.addExact(total, Math.multiplyExact(weights[i], x[i]));
        }
        return total;
    }

    private SlackSearch search(long limit, Objective sum, List<Row> sums) {
        return new SlackSearch(run, limit, weights(sum), sums, solver, branching, cancel, enough,
                (best, bound, parts) -> told(sum, best, bound, parts));
    }

    /** Tells of a sum in figures; what is pinned counts in it. */
    private void told(Objective sum, long best, long bound, long parts) {
        long[] weights = weights(sum);
        long fixed = 0;
        for (int i = 0; i < weights.length; i++) {
            fixed += weights[i] * run.base[i];
        }
        watch.sum(sum, best == Long.MAX_VALUE ? best : fixed + run.grid * best,
                bound == Long.MIN_VALUE ? bound : fixed + run.grid * bound, parts);
    }

    private SlackSearch.Result search(long limit, Objective sum, List<Row> sums, List<long[]> starts,
            boolean first) {
        SlackSearch search = search(limit, sum, sums);
        starts.forEach(search::start);
        SlackSearch.Result result = search.find(first);
        count(search);
        return result;
    }

    private void count(SlackSearch search) {
        programs += search.programs();
        nodes += search.nodes();
        layings += search.layings();
    }

    private Row atMost(Objective sum, long value) {
        RowSum row = new RowSum();
        long[] weights = weights(sum);
        for (int i = 0; i < weights.length; i++) {
            row.add(i, weights[i]);
        }
        return row.atMost(value, 1, false);
    }

    @Override
    public Optional<Boolean> fits() {
        if (stiff.fits().equals(Optional.of(true))) {
            return Optional.of(true);
        }
        SlackSearch.Result result = search(most, Objective.COPPER, List.of(), List.of(), true);
        return result.best().isPresent() ? Optional.of(true)
                : result.complete() ? Optional.of(false) : Optional.empty();
    }

    @Override
    public Optional<Excess> leastExcess(List<Objective> before) {
        best = stiff.leastExcess(before).flatMap(own -> figures(stiff.best(own.value(), before))).orElse(null);
        List<Row> sums = new ArrayList<>();
        for (Objective each : before) {
            best = search(most, each, sums, starts(best), false).best().orElse(null);
            if (best == null) {
                return Optional.empty();
            }
            sums.add(atMost(each, sum(each, best)));
        }
        if (best == null) {
            best = search(most, Objective.COPPER, sums, List.of(), true).best().orElse(null);
        }
        return best == null ? Optional.empty() : Optional.of(leastExcess(new SlackRoot(run, most).leastExcess(), sums));
    }

    /** Lowers the excess from both sides until nothing is between them; keeps the figures. */
    private Excess leastExcess(long atLeast, List<Row> sums) {
        Laying laying = new Laying(run);
        long high = laying.excess(best, most, unit);
        long low = Math.ceilDiv(atLeast, unit) * unit - unit;
        value = high;
        least = low + unit;
        long next = low + unit;
        SlackSearch search = null;
        while (high - low > unit && !enough.cancelled()) {
            if (search == null) {
                // short branches are what leaves little to dress back
                search = new SlackSearch(run, next, weights(Objective.LENGTH), sums, solver, branching, cancel, enough,
                        (sum, bound, parts) -> watch.excess(value, least, nodes + parts));
            } else {
                search.lower(next);
            }
            watch.excess(value, least, nodes + search.nodes());
            SlackSearch.Result found = search.find(true);
            if (found.best().isPresent()) {
                best = found.best().get();
                high = laying.excess(best, next, unit);
                value = high;
            } else if (found.complete()) {
                low = next;
                least = low + unit;
                count(search);
                search = null;
            }
            // that none fits is the harder to prove the nearer the limit is to the least one, so it is asked seldom
            next = high - Math.max(1, high - low > NEAR * unit ? (high - low) / unit / 8 : 1) * unit;
        }
        if (search != null) {
            count(search);
        }
        watch.excess(high, Math.min(high, low + unit), nodes);
        return new Excess(high, Math.min(high, low + unit));
    }

    private static List<long[]> starts(long[] one) {
        return one == null ? List.of() : List.of(one);
    }

    @Override
    public Part best(long limit, List<Objective> sums) {
        List<Row> rows = new ArrayList<>();
        List<long[]> starts = new ArrayList<>(starts(best));
        if (stiff.leastExcess(List.of()).filter(own -> own.value() <= limit).isPresent()) {
            figures(stiff.best(limit, sums)).ifPresent(starts::add);
        }
        Map<Objective, Long> gaps = new EnumMap<>(Objective.class);
        for (Objective each : sums) {
            SlackSearch.Result result = search(Math.min(limit, most), each, rows, starts, false);
            best = result.best().orElse(best);
            long sum = sum(each, best);
            told(each, sum, result.bound(), nodes);
            if (result.bound() < sum) {
                gaps.put(each, result.bound() == Long.MIN_VALUE ? Long.MAX_VALUE : run.grid * (sum - result.bound()));
            }
            rows.add(atMost(each, sum));
            starts = List.of(best);
        }
        Map<String, Long> stations = new HashMap<>();
        Map<String, Long> lengths = new HashMap<>();
        write(best, stations, lengths);
        return new Part(stations, lengths, new Laying(run).excess(best, Math.min(limit, most), unit), gaps);
    }

    /** Figures from stations and lengths that are on the grid or pinned; empty when they are not. */
    private Optional<long[]> figures(Part part) {
        long[] x = new long[run.unknowns()];
        Map<Integer, Long> values = new HashMap<>();
        for (int k = 0; k < run.stops.size(); k++) {
            values.put(k, part.stations().get(run.stops.get(k).name()));
        }
        run.legs.forEach(leg -> values.put(leg.unknown(), part.lengths().get(leg.branch().name())));
        for (int i = 0; i < x.length; i++) {
            Long value = values.get(i);
            if (value != null) {
                x[i] = (value - run.base[i]) / run.grid;
                if (run.value(i, x[i]) != value || x[i] < run.low[i] || x[i] > run.high[i]) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(x);
    }

    private void write(long[] x, Map<String, Long> stations, Map<String, Long> lengths) {
        for (int k = 0; k < run.stops.size(); k++) {
            stations.put(run.stops.get(k).name(), run.value(k, x[k]));
        }
        for (SlackRun.Leg leg : run.legs) {
            if (!leg.branch().asks().isEmpty() || leg.branch().pinned().isPresent()) {
                lengths.put(leg.branch().name(), run.value(leg.unknown(), x[leg.unknown()]));
            }
        }
    }
}
