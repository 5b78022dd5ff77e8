// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.fit.Requirement.Reason;
import org.loomwright.geometry.Distance;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Measure.MeasuredTo;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/** Works out what the vehicles of one column ask of the harness. One object for each. */
final class ColumnBuilder {

    /** Stands for the unknown end of a factory branch that a branch of ours follows; longer than any harness. */
    private static final long FAR = Distance.LONGEST.nanometres() * 1_000;

    private final ProblemBuilder problem;
    private final WiringView drawing;
    private final Condition vehicles;
    private final HarnessTree ours;
    private final HarnessTree factory;
    private final FactoryPaths ourPaths;
    private final FactoryPaths factoryPaths;
    private final FitSettings settings;
    private final Map<String, String> trunks;
    private final Map<String, List<Run>> factoryBranches;
    /** By branch of ours, where it goes in these vehicles when not to its own place. */
    private final Map<String, String> moved;
    private final boolean oneDatum;

    ColumnBuilder(ProblemBuilder problem, WiringView drawing, Condition vehicles) {
        this.problem = problem;
        this.drawing = drawing;
        this.vehicles = vehicles;
        this.ours = HarnessTree.of(problem.harness(), vehicles);
        this.factory = HarnessTree.of(drawing, vehicles);
        this.ourPaths = new FactoryPaths(ours);
        this.factoryPaths = new FactoryPaths(factory);
        this.settings = new FitSettings(ours, problem.defaults());
        this.trunks = correspondence(trunks(ours), trunks(factory));
        this.factoryBranches = present(drawing).stream().filter(run -> !place(run).isEmpty())
                .collect(Collectors.groupingBy(ColumnBuilder::place, LinkedHashMap::new, Collectors.toList()));
        this.moved = MovedPlaces.of(problem.harness(), drawing, vehicles, present(problem.harness()).stream()
                .filter(run -> cap(run.name().text()).isEmpty()).toList(), present(drawing));
        this.oneDatum = ours.datum().isPresent()
                && ours.datum().map(Spot::name).equals(factory.datum().map(Spot::name));
    }

    private static List<String> trunks(HarnessTree tree) {
        return tree.runs().stream().filter(run -> run.run().kind() == Run.Kind.TRUNK).map(TreeRun::name).toList();
    }

    private static Map<String, String> correspondence(List<String> ours, List<String> theirs) {
        Map<String, String> pairs = ours.stream().filter(theirs::contains)
                .collect(Collectors.toMap(name -> name, name -> name));
        return pairs.isEmpty() && ours.size() == 1 && theirs.size() == 1
                ? Map.of(ours.getFirst(), theirs.getFirst()) : pairs;
    }

    /** The harness's trunks with their stops. Slack before a breakout nobody can place goes to the next one. */
    List<FitColumn.Trunk> trunks() {
        List<FitColumn.Trunk> all = new ArrayList<>();
        for (TreeRun run : ours.runs()) {
            if (run.run().kind() != Run.Kind.TRUNK) {
                continue;
            }
            Map<String, Length> slacks = new HashMap<>();
            run.run().slacks().forEach(each -> Distance.usable(each.atMost())
                    .ifPresent(length -> slacks.merge(each.before().text(), length, Length::max)));
            List<FitColumn.Stop> stops = new ArrayList<>();
            Length before = Length.ZERO;
            Length slack = Length.ZERO;
            for (Spot point : run.points()) {
                slack = slack.plus(slacks.getOrDefault(point.name(), Length.ZERO));
                if (point.station().isKnown()) {
                    Length station = point.station().length().orElseThrow();
                    stops.add(new FitColumn.Stop(point.name(), station, slack.min(station.minus(before))));
                    before = station;
                    slack = Length.ZERO;
                }
            }
            all.add(new FitColumn.Trunk(run.name(), stops));
        }
        return all;
    }

    /** What is asked, by row. */
    Map<FitRow, List<Requirement>> requirements() {
        if (!oneDatum) {
            problem.problem("fit-datum", problem.coverSpan(drawing.name()), "drawing \"" + drawing.name()
                    + "\" is pinned at " + words(factory) + ", harness \"" + problem.harness().name() + "\" at "
                    + words(ours) + ": they are not on one axis", "let both have the same datum");
        }
        Map<FitRow, List<Requirement>> asked = new LinkedHashMap<>();
        Set<String> served = new HashSet<>();
        for (Run branch : present(problem.harness())) {
            String place = goal(branch);
            served.add(place(branch));
            served.add(place);
            FitRow row = problem.branchRow(branch.name().text());
            if (row != null && !asked.containsKey(row)) {
                asked.put(row, requirements(branch, place));
            }
        }
        ours.datum().ifPresent(spot -> served.add(spot.name()));
        factoryBranches.forEach((place, branches) -> {
            if (!served.contains(place)) {
                Span span = branches.getFirst().span();
                asked.put(problem.unservedRow(place, span), List.of(new Requirement.Unserved(span)));
            }
        });
        return asked;
    }

    private static String words(HarnessTree tree) {
        return tree.datum().map(spot -> "\"" + spot.name() + "\"").orElse("no place");
    }

    private static String place(Run branch) {
        return branch.to().map(Ref::text).orElse("");
    }

    /** The place that a branch of ours goes to in these vehicles. */
    private String goal(Run branch) {
        return moved.getOrDefault(branch.name().text(), place(branch));
    }

    /** The branches that some of the vehicles have, those that hang on nothing too. */
    private List<Run> present(WiringView view) {
        return view.wiring().runs(Run.Kind.BRANCH).stream().filter(run -> !run.name().text().isEmpty())
                .filter(run -> !problem.resolved(run.when()).excludes(vehicles)).toList();
    }

    private List<Requirement> requirements(Run branch, String place) {
        Optional<Ours.Cap> cap = cap(branch.name().text());
        if (cap.isPresent()) {
            return List.of(parked(branch, cap));
        }
        List<Run> theirs = counterparts(branch, place);
        if (theirs.isEmpty() && factory.datum().filter(spot -> spot.name().equals(place)).isPresent()) {
            return List.of(reach(branch, place, Optional.empty()));
        }
        if (theirs.isEmpty()) {
            return List.of(problem.isElsewhere(drawing, place, vehicles)
                    ? new Requirement.Elsewhere(branch.span()) : parked(branch, cap));
        }
        return theirs.stream().map(each -> reach(branch, place, Optional.of(each))).toList();
    }

    private Optional<Ours.Cap> cap(String branch) {
        return problem.harness().wiring().ours().caps().stream()
                .filter(cap -> cap.branch().text().equals(branch))
                .filter(cap -> vehicles.implies(problem.resolved(cap.when()))).findFirst();
    }

    private Requirement parked(Run branch, Optional<Ours.Cap> cap) {
        return new Requirement.Parked(length(branch), cap.flatMap(Ours.Cap::within).flatMap(Distance::usable),
                branch.span(), cap.map(Ours.Cap::span).orElse(branch.span()), cap.isPresent());
    }

    private static Optional<Length> length(Run branch) {
        return branch.length().flatMap(measure -> Distance.of(measure, Tolerance.NONE).length());
    }

    /** The drawing's branches to a place: of several the one of the same name, else all. */
    private List<Run> counterparts(Run branch, String place) {
        List<Run> there = factoryBranches.getOrDefault(place, List.of());
        List<Run> named = there.stream().filter(run -> run.name().text().equals(branch.name().text())).toList();
        return named.isEmpty() ? there : named;
    }

    private Requirement reach(Run branch, String place, Optional<Run> theirs) {
        Span span = theirs.map(Run::span).orElse(drawing.wiring().datum().map(Ref::span).orElse(branch.span()));
        Optional<Spot> end = theirs.isPresent() ? factory.run(theirs.get().name().text()).flatMap(TreeRun::end)
                : factory.datum();
        List<Spot> way = end.map(factoryPaths::exits).orElse(List.of());
        way.forEach(spot -> factoryPaths.dimensions(spot).forEach(each -> problem.used(drawing, each)));
        TreeRun run = ours.run(branch.name().text()).orElse(null);
        Reason reason = null;
        if (!oneDatum) {
            reason = Reason.DATUM;
        } else if (run == null || !FactoryPaths.isKnown(ourPaths.exits(run.start()))) {
            reason = Reason.HARNESS_STATION;
        } else if (length(branch).isEmpty()) {
            reason = Reason.HARNESS_LENGTH;
        } else if (way.isEmpty() || !FactoryPaths.isKnown(way.subList(0, way.size() - 1))) {
            reason = Reason.FACTORY_STATION;
        } else if (!FactoryPaths.isKnown(way)) {
            reason = Reason.FACTORY_LENGTH;
        }
        return reason != null ? new Requirement.Unproved(reason, branch.span(), span)
                : reach(branch, place, theirs, way, ourPaths.exits(run.start()), span);
    }

    /**
     * @param way   where the factory's way to the place leaves each of its runs
     * @param exits where our way to the start of the branch leaves each of its runs
     */
    private Requirement reach(Run branch, String place, Optional<Run> theirs, List<Spot> way, List<Spot> exits,
            Span span) {
        Spot stop = exits.getFirst();
        boolean onDatum = stop.kind() == Spot.Kind.DATUM;
        String trunk = onDatum ? "" : trunks.get(stop.run());
        if (trunk == null) {
            problem.problem("fit-trunk", problem.coverSpan(drawing.name()), "no trunk of drawing \"" + drawing.name()
                    + "\" corresponds to trunk \"" + stop.run() + "\" of harness \"" + problem.harness().name() + "\"",
                    "give the trunks that take the same way the same name");
            return new Requirement.Unproved(Reason.TRUNK, branch.span(), span);
        }
        List<Way.Hop> hops = new ArrayList<>();
        List<Spot> followed = new ArrayList<>();
        int shared = 1;
        for (Spot exit : exits.subList(1, exits.size())) {
            Optional<List<Spot>> parent = parentWay(exit.run());
            if (parent.isEmpty()) {
                return new Requirement.Unproved(Reason.PARENT, branch.span(), span);
            }
            List<Spot> spots = parent.get();
            followed.addAll(spots.subList(0, spots.size() - 1));
            hops.add(new Way.Hop(open(spots), exit.station().length().orElseThrow().nanometres()));
            shared = Math.max(1, FactoryPaths.path(way).shared(open(spots)));
        }
        followed.addAll(way.subList(0, shared));
        Spot leave = way.getFirst();
        long station = leave.station().length().orElseThrow().nanometres();
        Way along = hops.isEmpty() ? new Way.Direct(leave.run().equals(trunk) ? station : -station)
                : new Way.OffBranch(trunk, hops, FactoryPaths.path(way).first(shared));
        Distance off = FactoryPaths.sum(way.subList(shared, way.size()));
        Length spread = FactoryPaths.spread(followed).plus(made(exits, place));
        Optional<Measure> measure = theirs.flatMap(Run::length);
        Length extra = measure.filter(Measure::path).isPresent()
                ? settings.serviceLoop(place).plus(settings.movement(place)) : Length.ZERO;
        Length length = length(branch).orElseThrow();
        List<Spot> all = new ArrayList<>(followed);
        all.addAll(way);
        return new Requirement.Reach(new Demand(place, theirs.map(run -> run.name().text()).orElse(""),
                onDatum ? "" : stop.run(), onDatum ? "" : stop.name(), along, length,
                settings.made(branch, length), off.length().orElseThrow(),
                extra, spread.plus(off.tolerance().plus()), spread.plus(off.tolerance().minus()),
                settings.excess(place), settings.doublingBack(place), FactoryPaths.worst(all), branch.span(), span,
                endsDiffer(branch.length(), measure)));
    }

    /** How far the breakouts on our way to a branch may be made from their stations. */
    private Length made(List<Spot> exits, String place) {
        Length sum = Length.ZERO;
        for (Spot exit : exits) {
            sum = sum.plus(switch (exit.kind()) {
                case BREAKOUT -> settings.breakout(exit, place, ours);
                case END -> FitSettings.wider(settings.made(ours.run(exit.run()).orElseThrow().run(),
                        exit.station().length().orElseThrow()));
                default -> Length.ZERO;
            });
        }
        return sum;
    }

    /**
     * The vehicle's way to the place of a branch of ours that others leave; empty when there is none or no single one.
     */
    private Optional<List<Spot>> parentWay(String branch) {
        Run parent = ours.run(branch).map(TreeRun::run).orElseThrow();
        List<Run> theirs = cap(branch).isPresent() ? List.of()
                : counterparts(parent, goal(parent));
        if (theirs.size() != 1) {
            return Optional.empty();
        }
        Optional<List<Spot>> way = factory.run(theirs.getFirst().name().text()).flatMap(TreeRun::end)
                .map(factoryPaths::exits).filter(spots -> FactoryPaths.isKnown(spots.subList(0, spots.size() - 1)));
        way.ifPresent(spots -> spots.subList(0, spots.size() - 1).forEach(
                spot -> factoryPaths.dimensions(spot).forEach(each -> problem.used(drawing, each))));
        return way;
    }

    /** A way in figures whose last run may be of unknown length. */
    private static VehiclePath open(List<Spot> spots) {
        List<VehiclePath.Step> steps = new ArrayList<>();
        for (Spot spot : spots) {
            steps.add(new VehiclePath.Step(spot.run(),
                    spot.station().length().map(Length::nanometres).orElse(FAR)));
        }
        return new VehiclePath(steps);
    }

    private static boolean endsDiffer(Optional<Measure> ours, Optional<Measure> theirs) {
        MeasuredTo one = ours.map(Measure::end).orElse(MeasuredTo.UNSTATED);
        MeasuredTo other = theirs.map(Measure::end).orElse(MeasuredTo.UNSTATED);
        return one != MeasuredTo.UNSTATED && other != MeasuredTo.UNSTATED && one != other;
    }
}
