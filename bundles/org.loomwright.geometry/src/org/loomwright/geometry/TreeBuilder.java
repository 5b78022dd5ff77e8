// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/** Puts the tree of one drawing or harness together. One object for each. */
final class TreeBuilder {

    private final WiringView view;
    private final Wiring wiring;
    private final Condition vehicles;
    private final Tolerance usual;
    private final Optional<Spot> datum;
    private final Map<String, Run> present = new LinkedHashMap<>();
    private final Map<String, Condition> whens = new HashMap<>();
    private final Map<String, Spot> breakouts = new LinkedHashMap<>();
    private final Map<String, List<Spot>> onRun = new HashMap<>();
    private final Map<String, Spot> ends = new HashMap<>();
    private final Map<String, Optional<Spot>> starts = new HashMap<>();
    private final List<Problem> problems = new ArrayList<>();

    TreeBuilder(WiringView view, Condition vehicles) {
        this.view = view;
        this.wiring = view.wiring();
        this.vehicles = vehicles;
        this.usual = usual();
        this.datum = wiring.datum().filter(ref -> !ref.text().isEmpty()).map(ref -> new Spot("", ref.text(),
                Spot.Kind.DATUM, Optional.empty(), 0, Distance.ZERO, Distance.ZERO, vehicles, ref.span()));
    }

    HarnessTree build() {
        for (Run run : wiring.runs()) {
            Condition when = condition(run.when(), vehicles);
            if (!when.isNever() && !run.name().text().isEmpty()
                    && present.putIfAbsent(run.name().text(), run) == null) {
                whens.put(run.name().text(), when);
            }
        }
        if (datum.isEmpty() && !present.isEmpty()) {
            problem("datum-missing", wiring.name().span(), "\"" + wiring.name() + "\" has runs but no datum",
                    "state the place where the trunk is pinned: datum bulkhead");
        }
        present.values().forEach(this::stations);
        present.values().forEach(run -> starts.put(run.name().text(), start(run)));
        Map<String, Integer> depths = depths();
        present.values().stream().filter(run -> depths.containsKey(run.name().text()))
                .sorted(Comparator.comparing(run -> depths.get(run.name().text()))).forEach(this::hang);
        Map<String, TreeRun> runs = new LinkedHashMap<>();
        for (Run run : present.values()) {
            Integer depth = depths.get(run.name().text());
            if (depth != null && !whens.get(run.name().text()).isNever()) {
                runs.put(run.name().text(), treeRun(run, depth));
            }
        }
        problems.sort(Comparator.comparing(Problem::span).thenComparing(Problem::code));
        return new HarnessTree(view, vehicles, usual, datum, runs, breakouts, problems);
    }

    private Tolerance usual() {
        Tolerance widest = Tolerance.NONE;
        for (Fact<Tolerance> fact : wiring.defaults().tolerance()) {
            if (!condition(fact.when(), vehicles).isNever()) {
                widest = new Tolerance(widest.minus().max(fact.value().minus()),
                        widest.plus().max(fact.value().plus()));
            }
        }
        return widest;
    }

    private Condition condition(Expression expression, Condition within) {
        return expression instanceof Expression.Always ? within
                : view.platform().vehicles().resolve(expression).condition().and(within);
    }

    /** Gives the breakouts and the end of a run their stations. */
    private void stations(Run run) {
        String name = run.name().text();
        Map<String, Run.Breakout> own = new LinkedHashMap<>();
        for (Run.Breakout breakout : run.breakouts()) {
            if (!breakout.name().text().isEmpty() && !breakouts.containsKey(breakout.name().text())
                    && !condition(breakout.when(), whens.get(name)).isNever()) {
                own.putIfAbsent(breakout.name().text(), breakout);
            }
        }
        Set<String> circular = new HashSet<>();
        for (Run.Breakout breakout : own.values()) {
            Deque<Run.Breakout> open = new ArrayDeque<>();
            Set<String> visiting = new HashSet<>();
            Run.Breakout at = breakout;
            while (at != null && !breakouts.containsKey(at.name().text())) {
                open.push(at);
                if (!visiting.add(at.name().text())) {
                    circular.addAll(visiting);
                    break;
                }
                at = at.after().map(ref -> own.get(ref.text())).orElse(null);
            }
            while (!open.isEmpty()) {
                Run.Breakout next = open.pop();
                breakouts.computeIfAbsent(next.name().text(), key -> spot(run, next, circular.contains(key)));
            }
        }
        circular.stream().sorted().findFirst().ifPresent(first -> problem("breakout-circle",
                own.get(first).at().span(), "breakout \"" + first + "\" is counted from itself in the end",
                "count one breakout of the circle from the start of \"" + name + "\""));
        List<Spot> spots = own.keySet().stream().map(breakouts::get).toList();
        onRun.put(name, spots);
        order(name, spots);
        if (run.kind() == Run.Kind.BRANCH) {
            ends.put(name, end(run, spots));
        }
    }

    private Spot spot(Run run, Run.Breakout breakout, boolean circular) {
        checked(breakout.at(), "breakout \"" + breakout.name() + "\"");
        Optional<Spot> base = breakout.after().map(ref -> breakouts.get(ref.text()))
                .filter(spot -> spot.run().equals(run.name().text()) && !circular);
        boolean lost = circular || breakout.after().isPresent() && base.isEmpty();
        if (lost && !circular) {
            problem("breakout-base-unknown", breakout.after().get().span(), "breakout \"" + breakout.name()
                    + "\" is counted from \"" + breakout.after().get().text() + "\", which is no breakout of \""
                    + run.name() + "\" in the same vehicles", "count it from a breakout of the same run");
        }
        Distance step = lost ? Distance.UNKNOWN : Distance.of(breakout.at(), usual);
        return new Spot(run.name().text(), breakout.name().text(), Spot.Kind.BREAKOUT, base.map(Spot::name),
                base.map(Spot::links).orElse(0) + 1, step, base.map(Spot::station).orElse(Distance.ZERO).plus(step),
                condition(breakout.when(), whens.get(run.name().text())), breakout.at().span());
    }

    private Spot end(Run run, List<Spot> spots) {
        run.length().ifPresent(measure -> checked(measure, "branch \"" + run.name() + "\""));
        Distance length = run.length().map(measure -> Distance.of(measure, usual)).orElse(Distance.UNKNOWN);
        for (Spot spot : spots) {
            if (length.isKnown() && spot.station().isKnown() && nominal(spot).compareTo(length.length().get()) > 0) {
                problem("breakout-past-end", spot.span(), "breakout \"" + spot.name() + "\" lies "
                        + nominal(spot).minus(length.length().get()) + " past the end of branch \"" + run.name() + "\"",
                        "correct its station or the length of the branch");
            }
        }
        return new Spot(run.name().text(), run.name().text(), Spot.Kind.END, Optional.empty(), 1, length, length,
                whens.get(run.name().text()), run.length().map(Measure::span).orElse(run.name().span()));
    }

    /** Along a run order counts: a breakout that comes later in the source lies further out in every vehicle. */
    private void order(String run, List<Spot> spots) {
        Spot furthest = null;
        for (Spot spot : spots) {
            if (!spot.station().isKnown()) {
                continue;
            }
            if (furthest == null || nominal(spot).compareTo(nominal(furthest)) >= 0) {
                furthest = spot;
                continue;
            }
            for (Spot before : spots.subList(0, spots.indexOf(spot))) {
                if (before.station().isKnown() && nominal(spot).compareTo(nominal(before)) < 0
                        && !before.when().excludes(spot.when())) {
                    problem("breakout-order", spot.span(), "breakout \"" + spot.name() + "\" lies "
                            + nominal(before).minus(nominal(spot)) + " before \"" + before.name()
                            + "\", which comes first along \"" + run + "\"",
                            "write breakouts in order along the run, or correct the station");
                    break;
                }
            }
        }
    }

    private static Length nominal(Spot spot) {
        return spot.station().length().orElseThrow();
    }

    private void checked(Measure measure, String what) {
        if (measure.value().isEmpty()) {
            return;
        }
        if (measure.value().get().signum() < 0) {
            problem("length-negative", measure.span(), what + " has a negative length, " + measure.value().get(),
                    "a trunk that runs the other way from the datum is a trunk of its own");
        } else if (!Distance.of(measure, usual).isKnown() && measure.provenance() != Measure.Provenance.UNKNOWN) {
            problem("length-absurd", measure.span(), what + " has a length beyond " + Distance.LONGEST.toMetres()
                    + " m", "correct the number or its unit");
        }
    }

    private Optional<Spot> start(Run run) {
        if (run.kind() == Run.Kind.TRUNK) {
            return Optional.of(datumOrNowhere());
        }
        String from = run.from().map(Ref::text).orElse("");
        Spot breakout = breakouts.get(from);
        if (breakout != null) {
            return Optional.of(breakout);
        }
        if (ends.containsKey(from)) {
            return Optional.of(ends.get(from));
        }
        if (datum.filter(spot -> spot.name().equals(from)).isPresent()) {
            return datum;
        }
        List<Spot> there = present.values().stream().filter(each -> each.to().filter(to -> !from.isEmpty()
                && to.text().equals(from)).isPresent()).map(each -> ends.get(each.name().text())).toList();
        if (there.size() == 1) {
            return Optional.of(there.getFirst());
        }
        Span span = run.from().map(Ref::span).orElse(run.name().span());
        if (there.isEmpty()) {
            problem("branch-start-unknown", span, "branch \"" + run.name() + "\" starts at "
                    + (from.isEmpty() ? "no point" : "\"" + from + "\", which is no point of \"" + wiring.name()
                            + "\""),
                    "name the breakout, the branch end or the datum that it leaves");
        } else {
            problem("branch-ambiguous", span, "branch \"" + run.name() + "\" starts at \"" + from + "\", where "
                    + there.size() + " branches end", "name the branch at whose end it starts");
        }
        return Optional.empty();
    }

    /** Trunks of a source without a datum hang together all the same, at a spot without a name. */
    private Spot datumOrNowhere() {
        return datum.orElseGet(() -> new Spot("", "", Spot.Kind.DATUM, Optional.empty(), 0, Distance.ZERO,
                Distance.ZERO, vehicles, wiring.name().span()));
    }

    /** Number of runs between each run and the datum; a run that hangs on itself or on nothing is left out. */
    private Map<String, Integer> depths() {
        Map<String, Integer> depths = new HashMap<>();
        Set<String> cut = new HashSet<>();
        for (String name : present.keySet()) {
            List<String> path = new ArrayList<>();
            Set<String> onPath = new HashSet<>();
            String at = name;
            while (!at.isEmpty() && !depths.containsKey(at) && !cut.contains(at) && onPath.add(at)) {
                path.add(at);
                Optional<Spot> start = starts.get(at);
                if (start.isEmpty()) {
                    cut.add(at);
                } else {
                    at = start.get().run();
                }
            }
            if (onPath.contains(at) && !cut.contains(at)) {
                String first = path.get(path.indexOf(at));
                problem("branch-circle", present.get(first).span(), "branch \"" + first
                        + "\" starts on a run that in the end starts on it", "let one of them start at the trunk");
                cut.addAll(path);
            }
            int depth = at.isEmpty() ? -1 : depths.getOrDefault(at, -1);
            for (int i = path.size() - 1; i >= 0; i--) {
                if (cut.contains(at) || cut.contains(path.get(i))) {
                    cut.add(path.get(i));
                } else {
                    depths.put(path.get(i), ++depth);
                }
            }
        }
        return depths;
    }

    /**
     * Cuts a run to the vehicles that have what it starts at: where that is missing it hangs on nothing. Asked of runs
     * nearer to the datum first.
     */
    private void hang(Run run) {
        String name = run.name().text();
        Spot written = starts.get(name).orElseThrow();
        Spot start = switch (written.kind()) {
            case BREAKOUT -> breakouts.get(written.name());
            case END -> ends.get(written.run());
            default -> written;
        };
        starts.put(name, Optional.of(start));
        Condition stated = whens.get(name);
        Condition when = stated.and(start.when());
        if (stated.minus(when).isNever()) {
            return;
        }
        Condition loose = stated.minus(written.when());
        if (!loose.isNever()) {
            problem("branch-start-missing", run.from().map(Ref::span).orElse(run.name().span()), "branch \"" + name
                    + "\" starts at \"" + written.label() + "\", which is not there"
                    + (loose.isAlways() ? "" : " (" + loose.words() + ")"),
                    "give the branch the condition of what it starts at, or correct one of the two");
        }
        whens.put(name, when);
        List<Spot> spots = onRun.get(name).stream().map(spot -> spot.in(when)).toList();
        onRun.put(name, spots);
        spots.forEach(spot -> breakouts.put(spot.name(), spot));
        ends.computeIfPresent(name, (key, end) -> end.in(when));
    }

    private TreeRun treeRun(Run run, int depth) {
        String name = run.name().text();
        Spot start = starts.get(name).orElseThrow();
        Spot origin = new Spot(name, start.name(), Spot.Kind.START, Optional.empty(), 0, Distance.ZERO, Distance.ZERO,
                whens.get(name), start.span());
        List<Spot> points = new ArrayList<>(inOrder(onRun.get(name)));
        if (run.kind() == Run.Kind.BRANCH) {
            points.add(ends.get(name));
        }
        return new TreeRun(run, start, origin, points, whens.get(name), depth);
    }

    /** By station; a spot with an unknown station stays behind the one before it in the source. */
    private static List<Spot> inOrder(List<Spot> source) {
        List<List<Spot>> groups = new ArrayList<>();
        groups.add(new ArrayList<>());
        for (Spot spot : source) {
            if (spot.station().isKnown()) {
                groups.add(new ArrayList<>());
            }
            groups.getLast().add(spot);
        }
        List<Spot> leading = groups.removeFirst();
        groups.sort(Comparator.comparing(group -> nominal(group.getFirst())));
        List<Spot> all = new ArrayList<>(leading);
        groups.forEach(all::addAll);
        return all;
    }

    private void problem(String code, Span span, String message, String advice) {
        problems.add(new Problem(code, span, message, advice, List.of()));
    }
}
