// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;
import org.loomwright.fit.Demand;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitSettings;
import org.loomwright.fit.Requirement;
import org.loomwright.fit.TuckLattice;
import org.loomwright.fit.VehiclePath;
import org.loomwright.fit.Way;
import org.loomwright.geometry.CutSettings;
import org.loomwright.geometry.Distance;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;

/** Puts a {@link PlanModel} together. One object for each. */
final class PlanModelBuilder {

    /** Stands for no limit; longer than any harness. */
    private static final long FREE = 1_000_000_000_000L;

    private final WiringView harness;
    private final Project project;
    private final FitDefaults defaults;
    private final HarnessTree tree;
    private final FitSettings settings;
    private final FitProblem asked;
    private final Weights weights;
    private final Map<String, List<Ask>> asks = new HashMap<>();
    private final Map<String, Long> parked = new HashMap<>();
    /** Limits by branch: where a branch goes to several places, the least of theirs. */
    private final Map<String, Long> excess = new HashMap<>();
    private final Map<String, Long> back = new HashMap<>();
    private final List<PlanModel.Open> open = new ArrayList<>();
    private final Map<String, Length> fixed = new HashMap<>();

    PlanModelBuilder(WiringView harness, Project project, FitDefaults defaults) {
        WiringView provisional = Provisional.of(harness);
        this.harness = harness;
        this.project = project;
        this.defaults = defaults.with(harness.platform().limits());
        this.tree = HarnessTree.of(provisional);
        this.settings = new FitSettings(tree, this.defaults);
        this.asked = FitProblem.of(provisional, project, this.defaults);
        this.weights = new Weights(tree);
    }

    PlanModel build() {
        for (int v = 0; v < asked.columns().size(); v++) {
            for (FitColumn.Asked each : asked.columns().get(v).requirements()) {
                take(v, asked.rows().get(each.row()).branch(), each.requirement());
            }
        }
        asked.problems().forEach(each -> open.add(new PlanModel.Open("", "", each.message(), each.span())));
        harness.covers().forEach(name -> project.wiring(name).ifPresent(this::twice));
        List<PlanTrunk> trunks = new ArrayList<>();
        List<PlanBranch> atDatum = branches(each -> each.start().kind() == Spot.Kind.DATUM);
        if (!atDatum.isEmpty()) {
            trunks.add(new PlanTrunk("", List.of(new PlanStop("", 0, 0, 0, 0, 0, 0, atDatum))));
        }
        for (TreeRun run : tree.runs()) {
            if (run.run().kind() == Run.Kind.TRUNK) {
                List<PlanStop> stops = stops(run);
                trunks.add(new PlanTrunk(run.name(), stops, TuckLattice.step(stops.stream()
                        .map(each -> new Length(each.slack())).toList())));
            }
        }
        List<Objective> order = harness.wiring().ours().order();
        long grid = CutSettings.usual().of(harness).grid().nanometres();
        return new PlanModel(harness, new PlanProblem(trunks, asked.columns().size(), grid, order.isEmpty()
                ? List.of(Objective.EXCESS, Objective.COPPER, Objective.LENGTH) : order), asked, open, fixed);
    }

    /** A drawing with two branches to one place in one vehicle, of which ours serve by name only one. */
    private void twice(WiringView drawing) {
        for (Run one : drawing.wiring().runs(Run.Kind.BRANCH)) {
            String place = one.to().map(Ref::text).orElse("");
            List<Run> ours = harness.wiring().runs(Run.Kind.BRANCH).stream()
                    .filter(each -> each.to().map(Ref::text).orElse("").equals(place)).toList();
            boolean left = !ours.isEmpty() && ours.stream().noneMatch(each -> each.name().text().equals(one.name()
                    .text()));
            drawing.wiring().runs(Run.Kind.BRANCH).stream().filter(other -> left && other != one
                    && other.to().map(Ref::text).orElse("").equals(place)
                    && ours.stream().anyMatch(each -> each.name().text().equals(other.name().text()))
                    && !resolved(drawing, one).excludes(resolved(drawing, other))).findFirst()
                    .ifPresent(other -> open.add(new PlanModel.Open(one.name().text(), drawing.name(), "it serves "
                            + place + " besides branch " + other.name().text() + ", and the harness has one branch"
                            + " to the place only", one.span())));
        }
    }

    private static Condition resolved(WiringView drawing, Run run) {
        return drawing.platform().vehicles().resolve(run.when()).condition().and(drawing.when());
    }

    private void take(int vehicle, String branch, Requirement requirement) {
        String drawing = asked.columns().get(vehicle).label();
        switch (requirement) {
            case Requirement.Reach reach -> ask(vehicle, branch, drawing, reach.demand());
            case Requirement.Parked each -> each.within()
                    .ifPresent(within -> parked.merge(branch, within.nanometres(), Math::min));
            case Requirement.Unproved each -> open.add(new PlanModel.Open(branch, drawing, each.reason().words(),
                    each.factorySpan()));
            case Requirement.Unserved each -> open.add(new PlanModel.Open("", drawing,
                    "the harness has no branch to the place", each.factorySpan()));
            case Requirement.Elsewhere each -> { }
        }
    }

    private void ask(int vehicle, String branch, String drawing, Demand demand) {
        Optional<Long> station = switch (demand.way()) {
            case Way.Direct direct -> Optional.of(direct.station());
            case Way.OffBranch off -> onParent(off);
        };
        if (station.isEmpty()) {
            open.add(new PlanModel.Open(branch, drawing, "the factory's branch does not leave the run along which its"
                    + " parent lies", demand.factorySpan()));
            return;
        }
        excess.merge(branch, demand.excessLimit().nanometres(), Math::min);
        back.merge(branch, demand.backLimit().nanometres(), Math::min);
        long needed = demand.factory().plus(demand.extra()).nanometres();
        asks.computeIfAbsent(branch, key -> new ArrayList<>()).add(new Ask(vehicle, station.get(),
                needed + demand.reachAllowance().nanometres(), needed - demand.excessAllowance().nanometres()));
    }

    /** Where the factory's branch leaves the vehicle's branch along which our parent lies; empty when it does not. */
    private static Optional<Long> onParent(Way.OffBranch off) {
        List<VehiclePath.Step> parent = off.hops().getLast().place().steps();
        List<VehiclePath.Step> leave = off.leave().steps();
        boolean same = off.hops().size() == 1 && leave.size() == parent.size() && parent.size() == 2
                && leave.getFirst().equals(parent.getFirst())
                && leave.getLast().run().equals(parent.getLast().run());
        return same ? Optional.of(leave.getLast().offset()) : Optional.empty();
    }

    private List<PlanBranch> branches(Predicate<TreeRun> wanted) {
        return tree.runs().stream().filter(run -> run.run().kind() == Run.Kind.BRANCH).filter(wanted)
                .map(this::branch).toList();
    }

    private PlanBranch branch(TreeRun run) {
        String place = run.run().to().map(Ref::text).orElse("");
        List<Ask> own = asks.getOrDefault(run.name(), List.of());
        Optional<Measure> measure = harness.run(run.name()).flatMap(Run::length).filter(Provisional::isFixed);
        measure.flatMap(Measure::length).ifPresent(length -> fixed.put(run.name(), length));
        return new PlanBranch(run.name(), made(run.run()), measure.flatMap(Measure::length)
                .map(length -> OptionalLong.of(length.nanometres())).orElse(OptionalLong.empty()),
                excess.getOrDefault(run.name(), settings.excess(place).nanometres()),
                back.getOrDefault(run.name(), settings.doublingBack(place).nanometres()),
                parked.getOrDefault(run.name(), FREE), weights.last(run.name()), own.size(), own, stops(run));
    }

    /** The tolerance of a branch by its length: one that is stated holds for every length, else the table does. */
    private CutTolerance made(Run branch) {
        boolean inch = branch.length().flatMap(Measure::value)
                .filter(each -> each.unit() == Unit.IN || each.unit() == Unit.FT).isPresent();
        CutTolerance table = inch ? defaults.branchInch() : defaults.branchMetric();
        Length probe = Length.ofMetres(1);
        return settings.made(branch, probe).equals(table.of(probe)) ? table : new CutTolerance(List.of(
                new CutTolerance.Band(new Length(FREE), settings.made(branch, probe))), 0, "stated");
    }

    private List<PlanStop> stops(TreeRun run) {
        List<PlanStop> stops = new ArrayList<>();
        Map<String, Long> slacks = new HashMap<>();
        if (run.run().kind() == Run.Kind.TRUNK) {
            run.run().slacks().forEach(each -> Distance.usable(each.atMost())
                    .ifPresent(length -> slacks.merge(each.before().text(), length.nanometres(), Math::max)));
        }
        List<Spot> breakouts = run.points().stream().filter(each -> each.kind() == Spot.Kind.BREAKOUT).toList();
        for (int k = 0; k < breakouts.size(); k++) {
            Spot spot = breakouts.get(k);
            List<PlanBranch> branches = branches(each -> each.start().name().equals(spot.name())
                    && each.start().kind() == Spot.Kind.BREAKOUT);
            long[] range = range(run, spot, branches);
            long gap = k == 0 ? 0 : settings.spacing().nanometres();
            long slack = slacks.getOrDefault(spot.name(), 0L);
            if (range[0] == range[1] && (k == 0 || stops.get(k - 1).first() == stops.get(k - 1).last())) {
                slack = Math.clamp(range[0] - (k == 0 ? 0 : stops.get(k - 1).first()), 0, slack);
            }
            stops.add(new PlanStop(spot.name(), range[0], range[1], Math.max(gap, slack), FREE, slack,
                    weights.before(run.name(), run.points().indexOf(spot)), branches));
        }
        return stops;
    }

    /** A breakout stays on its side of each barrier of its run: the side where the vehicles' are. */
    private long[] range(TreeRun run, Spot spot, List<PlanBranch> branches) {
        Run source = harness.run(run.name()).orElse(run.run());
        Optional<Measure> at = source.breakouts().stream().filter(each -> each.name().text().equals(spot.name()))
                .map(Run.Breakout::at).filter(Provisional::isFixed).findFirst();
        if (at.isPresent()) {
            Length station = HarnessTree.of(harness).breakout(spot.name()).flatMap(each -> each.station().length())
                    .orElse(at.get().length().orElseThrow());
            fixed.put(spot.name(), station);
            return new long[] {station.nanometres(), station.nanometres()};
        }
        long first = 0;
        long last = FREE;
        for (Run.Barrier barrier : source.barriers()) {
            long station = barrier.at().length().map(Length::nanometres).orElse(-1L);
            List<Long> theirs = branches.stream().flatMap(each -> each.asks().stream()).map(Ask::station).toList();
            if (station < 0 || theirs.isEmpty()) {
                continue;
            }
            if (theirs.stream().allMatch(each -> each >= station)) {
                first = Math.max(first, station);
            } else if (theirs.stream().allMatch(each -> each <= station)) {
                last = Math.min(last, station);
            } else {
                open.add(new PlanModel.Open(spot.name(), "", "vehicles have it on both sides of barrier "
                        + barrier.name(), barrier.span()));
            }
        }
        return new long[] {first, last};
    }
}
