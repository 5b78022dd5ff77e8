// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;

/**
 * The judge: for each vehicle geometry and each trunk the best tuck along the trunk by dynamic programming, see
 * {@link TuckSearch}; a trunk without slack lies as it is made. Slack of a branch is left alone, which can only make
 * the judgement harsher. Where drawings share vehicles and there is slack, a laying suits what all of them ask.
 *
 * <p>O(columns * breakouts * total slack). Stateless; safe for use by several threads.
 */
public final class ChainJudge implements FitJudge {

    @Override
    public FitReport judge(FitProblem problem, Cancel cancel) {
        return new Judgement(problem, cancel).report();
    }

    /** Where a breakout comes to lie. */
    private record Lie(Length position, Length tuck) {
    }

    /** One run of the judge. */
    private static final class Judgement {

        private static final Lie AT_DATUM = new Lie(Length.ZERO, Length.ZERO);

        private final FitProblem problem;
        private final Cancel cancel;
        private final List<FitCell> cells = new ArrayList<>();
        private long evaluations;
        private long points;
        private long coarsest = TuckLattice.HALF_UNIT;

        Judgement(FitProblem problem, Cancel cancel) {
            this.problem = problem;
            this.cancel = cancel;
        }

        FitReport report() {
            for (int i = 0; i < problem.columns().size(); i++) {
                cancel.check();
                column(i);
            }
            cells.sort(Comparator.comparingInt(FitCell::row).thenComparingInt(FitCell::column));
            return new FitReport(problem, cells, bindings(),
                    new FitReport.Work(evaluations, points, new Length(coarsest)));
        }

        private void column(int index) {
            FitColumn column = problem.columns().get(index);
            Map<String, Lie> lies = new HashMap<>();
            column.trunks().forEach(trunk -> lay(column, trunk, lies));
            Map<Integer, FitCell> worst = new LinkedHashMap<>();
            for (FitColumn.Asked asked : column.requirements()) {
                worst.merge(asked.row(), cell(asked, index, lies),
                        (one, other) -> FitReport.isWorse(other, one) ? other : one);
            }
            cells.addAll(worst.values());
        }

        private void lay(FitColumn column, FitColumn.Trunk trunk, Map<String, Lie> lies) {
            Map<String, List<Demand>> demands = new HashMap<>();
            boolean slack = !trunk.slack().isZero();
            for (FitColumn other : problem.columns()) {
                if (other == column || slack && !other.drawing().equals(column.drawing())
                        && !other.vehicles().excludes(column.vehicles())) {
                    reaches(other).filter(each -> each.trunk().equals(trunk.name())).forEach(
                            each -> demands.computeIfAbsent(each.stop(), key -> new ArrayList<>()).add(each));
                }
            }
            TuckSearch search = new TuckSearch(trunk.stops(),
                    trunk.stops().stream().map(stop -> demands.getOrDefault(stop.breakout(), List.of())).toList(),
                            cancel);
            long[] tucks = search.tucks();
            for (int k = 0; k < tucks.length; k++) {
                FitColumn.Stop stop = trunk.stops().get(k);
                Length tuck = new Length(tucks[k]);
                lies.put(stop.breakout(), new Lie(stop.station().minus(tuck), tuck));
            }
            evaluations += search.evaluations();
            points += search.points();
            coarsest = Math.max(coarsest, search.step());
        }

        private static Stream<Demand> reaches(FitColumn column) {
            return column.requirements().stream().map(FitColumn.Asked::requirement)
                    .filter(Requirement.Reach.class::isInstance).map(each -> ((Requirement.Reach) each).demand());
        }

        private FitCell cell(FitColumn.Asked asked, int column, Map<String, Lie> lies) {
            Optional<FitCell.Figures> figures = Optional.empty();
            FitStatus status = switch (asked.requirement()) {
                case Requirement.Reach reach -> {
                    Demand demand = reach.demand();
                    Lie lie = demand.stop().isEmpty() ? AT_DATUM : lies.get(demand.stop());
                    figures = Optional.of(figures(demand, lie));
                    yield status(demand, lie.position().nanometres());
                }
                case Requirement.Unproved unproved -> FitStatus.NOT_PROVED;
                case Requirement.Parked parked -> status(parked);
                case Requirement.Elsewhere elsewhere -> FitStatus.ELSEWHERE;
                case Requirement.Unserved unserved -> FitStatus.NOT_SERVED;
            };
            return new FitCell(asked.row(), column, status, asked.requirement(), figures);
        }

        private static FitCell.Figures figures(Demand demand, Lie lie) {
            long position = lie.position().nanometres();
            return new FitCell.Figures(new Length(demand.margin(position)), new Length(demand.excess(position)),
                    new Length(demand.way().along(position)), lie.position(), lie.tuck(), demand);
        }

        private static FitStatus status(Demand demand, long position) {
            if (demand.margin(position) < 0) {
                return FitStatus.TOO_SHORT;
            }
            if (demand.back(position) > 0) {
                return FitStatus.DOUBLES_BACK;
            }
            return demand.over(position) > 0 ? FitStatus.TOO_LONG : FitStatus.FITS;
        }

        private static FitStatus status(Requirement.Parked parked) {
            if (parked.within().isEmpty()) {
                return FitStatus.CAPPED;
            }
            if (parked.made().isEmpty()) {
                return FitStatus.NOT_PROVED;
            }
            return parked.made().get().compareTo(parked.within().get()) > 0 ? FitStatus.TOO_LONG_TO_PARK
                    : FitStatus.CAPPED;
        }

        private List<FitBinding> bindings() {
            Map<String, FitBinding> branches = new LinkedHashMap<>();
            Map<String, FitBinding> breakouts = new LinkedHashMap<>();
            for (FitCell cell : cells) {
                cell.figures().ifPresent(figures -> {
                    String branch = problem.rows().get(cell.row()).branch();
                    bind(branches, FitBinding.Kind.BRANCH, branch, cell, figures.margin());
                    if (!figures.demand().stop().isEmpty()) {
                        bind(breakouts, FitBinding.Kind.BREAKOUT, figures.demand().stop(), cell, figures.margin());
                    }
                });
            }
            List<FitBinding> all = new ArrayList<>(branches.values());
            all.addAll(breakouts.values());
            return all;
        }

        private static void bind(Map<String, FitBinding> bound, FitBinding.Kind kind, String name, FitCell cell,
                Length margin) {
            bound.merge(name, new FitBinding(kind, name, cell.row(), cell.column(), margin),
                    (one, other) -> other.margin().compareTo(one.margin()) < 0 ? other : one);
        }
    }
}
