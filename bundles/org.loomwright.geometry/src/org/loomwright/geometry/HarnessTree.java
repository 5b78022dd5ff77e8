// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Tolerance;

/**
 * The tree of a drawing or harness: trunks from the datum, branches from their breakouts, each point with its station.
 *
 * <p>Holds what may exist in some of the vehicles that it was made for. A run that does not hang together with the
 * datum is reported and left out; everything else stays usable. Immutable; safe for use by several threads.
 */
public final class HarnessTree {

    private final WiringView view;
    private final Condition vehicles;
    private final Tolerance usual;
    private final Optional<Spot> datum;
    private final Map<String, TreeRun> runs;
    private final Map<String, Spot> breakouts;
    private final List<Problem> problems;
    /** By place, the branches that go there. */
    private final Map<String, List<TreeRun>> byPlace = new HashMap<>();

    HarnessTree(WiringView view, Condition vehicles, Tolerance usual, Optional<Spot> datum, Map<String, TreeRun> runs,
            Map<String, Spot> breakouts, List<Problem> problems) {
        this.view = view;
        this.vehicles = vehicles;
        this.usual = usual;
        this.datum = datum;
        this.runs = Collections.unmodifiableMap(runs);
        this.breakouts = Collections.unmodifiableMap(breakouts);
        this.problems = List.copyOf(problems);
        for (TreeRun run : runs.values()) {
            run.run().to().ifPresent(to -> byPlace.computeIfAbsent(to.text(), any -> new ArrayList<>()).add(run));
        }
    }

    /** The tree of all that may exist in the vehicles of a drawing or harness. */
    public static HarnessTree of(WiringView view) {
        return of(view, view.when());
    }

    /**
     * The tree of all that may exist in some vehicles. Linear in the number of points, but for conditions.
     *
     * @param vehicles the vehicles, on the platform of the view
     */
    public static HarnessTree of(WiringView view, Condition vehicles) {
        return new TreeBuilder(view, view.when().and(vehicles)).build();
    }

    /** The drawing or harness. */
    public WiringView view() {
        return view;
    }

    /** The vehicles that the tree was made for. */
    public Condition vehicles() {
        return vehicles;
    }

    /**
     * The tolerance of a dimension that states none: the widest of the defaults that may hold; none without a default.
     */
    public Tolerance usualTolerance() {
        return usual;
    }

    /** The datum; empty when the source states none. */
    public Optional<Spot> datum() {
        return datum;
    }

    /** Trunks and branches that hang together with the datum, in source order. */
    public List<TreeRun> runs() {
        return List.copyOf(runs.values());
    }

    /** The trunk or branch of that name. */
    public Optional<TreeRun> run(String name) {
        return Optional.ofNullable(runs.get(name));
    }

    /** The breakout of that name. */
    public Optional<Spot> breakout(String name) {
        return Optional.ofNullable(breakouts.get(name));
    }

    /** True when neither trunk nor branch is stated, so that nothing is said about the shape. */
    public boolean isShapeless() {
        return view.wiring().runs().isEmpty();
    }

    /** What is wrong with the shape, ordered by place in the source. */
    public List<Problem> problems() {
        return problems;
    }

    /** All segments, run by run in source order. */
    public List<Segment> segments() {
        List<Segment> all = new ArrayList<>();
        for (TreeRun run : runs.values()) {
            Spot from = run.origin();
            for (Spot to : run.points()) {
                all.add(new Segment(run.name(), from, to, between(from, to).abs()));
                from = to;
            }
        }
        return all;
    }

    /** The branches that go to a place, in source order. Constant but for their number. */
    public List<TreeRun> branchesTo(String place) {
        return List.copyOf(byPlace.getOrDefault(place, List.of()));
    }

    /**
     * What a point's name means: a breakout, else the end of the branch of that name, else the datum or the ends of the
     * branches that go to the place of that name. Several branches may go to one place; empty when nothing has the
     * name.
     */
    public List<Case<Spot>> spots(String point) {
        Spot breakout = breakouts.get(point);
        if (breakout != null) {
            return runs.containsKey(breakout.run()) ? List.of(caseOf(breakout)) : List.of();
        }
        TreeRun branch = runs.get(point);
        if (branch != null && branch.end().isPresent()) {
            return List.of(caseOf(branch.end().get()));
        }
        return ends(point);
    }

    /** What a place means: the datum, else the ends of the branches that go there. */
    List<Case<Spot>> ends(String place) {
        if (datum.filter(spot -> !place.isEmpty() && spot.name().equals(place)).isPresent()) {
            return List.of(caseOf(datum.get()));
        }
        return branchesTo(place).stream().map(run -> caseOf(run.end().orElseThrow())).toList();
    }

    private static Case<Spot> caseOf(Spot spot) {
        return new Case<>(spot, spot.when(), spot.span());
    }

    /** Where on the tree a location is; a station on a run is a spot of its own. Empty when its name means nothing. */
    public List<Case<Spot>> spots(Location location) {
        if (location.point().isPresent()) {
            return spots(location.point().get().text());
        }
        TreeRun run = location.run().map(ref -> runs.get(ref.text())).orElse(null);
        if (run == null) {
            return List.of();
        }
        Span span = location.station().map(Measure::span).orElse(location.run().get().span());
        Distance station = location.station().map(measure -> Distance.of(measure, usual)).orElse(Distance.ZERO);
        return List.of(caseOf(new Spot(run.name(), "", Spot.Kind.STATION, Optional.empty(), 1, station, station,
                run.when(), span)));
    }

    /** The distance of a spot from the datum, along the tree. */
    public Distance fromDatum(Spot spot) {
        Distance sum = spot.station();
        for (TreeRun run = runs.get(spot.run()); run != null; run = runs.get(run.start().run())) {
            sum = sum.plus(run.start().station());
        }
        return sum;
    }

    /**
     * The way between two spots of this tree. Tolerances are those of the dimensions between the two, so two breakouts
     * of one chain do not pay for the links that they share. Linear in the depth of the tree and the length of the
     * chains.
     */
    public Route route(Spot from, Spot to) {
        List<Route.Leg> up = new ArrayList<>();
        List<Route.Leg> down = new ArrayList<>();
        Spot a = from;
        Spot b = to;
        while (!a.run().equals(b.run())) {
            if (depth(a) >= depth(b)) {
                TreeRun run = runs.get(a.run());
                up.add(new Route.Leg(run.name(), a, run.origin(), a.station()));
                a = run.start();
            } else {
                TreeRun run = runs.get(b.run());
                down.add(new Route.Leg(run.name(), run.origin(), b, b.station()));
                b = run.start();
            }
        }
        if (!a.equals(b)) {
            up.add(new Route.Leg(a.run(), a, b, between(a, b).abs()));
        }
        Collections.reverse(down);
        up.addAll(down);
        up.removeIf(leg -> leg.from().equals(leg.to()));
        return new Route(from, to, up, up.stream().map(Route.Leg::length).reduce(Distance.ZERO, Distance::plus));
    }

    private int depth(Spot spot) {
        TreeRun run = runs.get(spot.run());
        return run == null ? -1 : run.depth();
    }

    /** The distance from one spot to another of the same run, negative when it goes back. */
    Distance between(Spot from, Spot to) {
        Spot a = from;
        Spot b = to;
        Distance forth = Distance.ZERO;
        Distance back = Distance.ZERO;
        while (!a.equals(b)) {
            if (a.links() >= b.links()) {
                back = back.plus(a.step());
                a = base(a);
            } else {
                forth = forth.plus(b.step());
                b = base(b);
            }
        }
        return forth.minus(back);
    }

    private Spot base(Spot spot) {
        return spot.after().isPresent() ? breakouts.get(spot.after().get()) : runs.get(spot.run()).origin();
    }
}
