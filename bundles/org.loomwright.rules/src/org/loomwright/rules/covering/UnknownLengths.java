// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.fit.Requirement;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Shapes;

/**
 * Finds the dimensions of a drawing or harness that nobody knows and on which something hangs: the proof that a harness
 * of ours reaches a place, or the cut length of a wire of ours.
 */
final class UnknownLengths {

    /** What hangs on a dimension: what cannot be said, in words, and for which vehicles. */
    static final class Needs {
        private final Map<String, Set<String>> places = new LinkedHashMap<>();
        private final Set<String> wires = new LinkedHashSet<>();
        private Condition when;

        private Needs(Condition none) {
            this.when = none;
        }

        Condition when() {
            return when;
        }

        /** {@code nobody can say whether front reaches headlampLeft; wire 12b cannot be cut}. */
        String words() {
            List<String> words = new ArrayList<>();
            places.forEach((harness, names) -> words.add("nobody can say whether " + harness + " reaches "
                    + Listing.of(names)));
            if (!wires.isEmpty()) {
                words.add((wires.size() == 1 ? "wire " : "wires ") + Listing.of(wires) + " cannot be cut");
            }
            return String.join("; ", words);
        }
    }

    private final WiringView view;
    private final Shapes shapes;
    private final Shapes.Shape shape;
    private final Dimensions dimensions;
    private final Map<Span, Measure> stated = new HashMap<>();
    private final Map<Spot, Needs> needed = new LinkedHashMap<>();

    UnknownLengths(WiringView view, Shapes shapes) {
        this.view = view;
        this.shapes = shapes;
        this.shape = shapes.of(view);
        this.dimensions = new Dimensions(shape.tree());
        for (Run run : view.wiring().runs()) {
            run.length().ifPresent(each -> stated.put(each.span(), each));
            run.breakouts().forEach(each -> stated.put(each.at().span(), each.at()));
        }
        view.splices().values().forEach(each -> each.splice().at().station()
                .ifPresent(measure -> stated.put(measure.span(), measure)));
    }

    /** The unknown dimensions that something hangs on, in the order of the source. */
    Map<Spot, Needs> needed() {
        boolean ours = view.wiring().isHarness();
        for (WiringView harness : isAnyUnknown() ? shapes.harnesses() : List.<WiringView>of()) {
            if (ours ? harness == view : harness.covers().contains(view.name())) {
                fit(harness);
            }
        }
        if (ours) {
            view.wires().forEach(this::cut);
        }
        Map<Spot, Needs> ordered = new TreeMap<>((one, other) -> one.span().compareTo(other.span()));
        ordered.putAll(needed);
        return ordered;
    }

    /** Most have none; then nobody need judge how harnesses fit. */
    private boolean isAnyUnknown() {
        return shape.tree().runs().stream().filter(run -> run.run().kind() == Run.Kind.BRANCH)
                .anyMatch(run -> dimensions.toEnd(run).stream().anyMatch(this::isUnknown));
    }

    private void fit(WiringView harness) {
        Map<String, Condition> open = harness == view ? openBranches(harness) : openPlaces(harness);
        if (open.isEmpty()) {
            return;
        }
        for (TreeRun run : shape.tree().runs()) {
            String place = run.run().to().map(Ref::text).orElse("");
            Optional<Condition> when = Optional.ofNullable(open.get(harness == view ? run.name() : place))
                    .map(run.when()::and).filter(both -> run.run().kind() == Run.Kind.BRANCH && !both.isNever());
            when.ifPresent(both -> dimensions.toEnd(run).stream().filter(this::isUnknown)
                    .forEach(spot -> needs(spot, both).places
                            .computeIfAbsent(harness.name(), key -> new LinkedHashSet<>()).add(place)));
        }
    }

    /** The places that cannot be judged because this drawing lacks a length, and in which vehicles. */
    private Map<String, Condition> openPlaces(WiringView harness) {
        return open(harness, cell -> cell.reason().filter(reason -> reason == Requirement.Reason.FACTORY_LENGTH
                || reason == Requirement.Reason.FACTORY_STATION).isPresent(), FitRow::place, view.name());
    }

    /** The branches of a harness that cannot be judged because it lacks a length, and in which vehicles. */
    private Map<String, Condition> openBranches(WiringView harness) {
        return open(harness, cell -> cell.requirement() instanceof Requirement.Parked
                || cell.reason().filter(reason -> reason == Requirement.Reason.HARNESS_LENGTH
                        || reason == Requirement.Reason.HARNESS_STATION).isPresent(), FitRow::branch, "");
    }

    private Map<String, Condition> open(WiringView harness, Predicate<FitCell> wanted,
            Function<FitRow, String> name, String drawing) {
        Map<String, Condition> open = new HashMap<>();
        if (harness.covers().isEmpty()) {
            return open;
        }
        FitReport report = shapes.fit(harness);
        for (FitCell cell : report.cells()) {
            var column = report.problem().columns().get(cell.column());
            if (cell.status() == FitStatus.NOT_PROVED && wanted.test(cell)
                    && (drawing.isEmpty() || drawing.equals(column.drawing()))) {
                open.merge(name.apply(report.problem().rows().get(cell.row())), column.vehicles(), Condition::or);
            }
        }
        return open;
    }

    private void cut(WireView wire) {
        RoutedWire routed = shape.route(wire);
        Condition rest = wire.when();
        for (Case<Measure> each : wire.lengths()) {
            rest = rest.minus(each.when());
        }
        for (RoutedWire.Run run : routed == null ? List.<RoutedWire.Run>of() : routed.routes()) {
            Condition when = run.when().and(rest);
            if (!run.route().length().isKnown() && !when.isNever()) {
                dimensions.along(run.route()).stream().filter(this::isUnknown)
                        .forEach(spot -> needs(spot, when).wires.add(wire.label()));
            }
        }
    }

    private Needs needs(Spot spot, Condition when) {
        Needs needs = needed.computeIfAbsent(spot, key -> new Needs(when.vehicles().none()));
        needs.when = needs.when.or(when);
        return needs;
    }

    /** True for a dimension that nobody knows; false for one that is wrong and was reported as such. */
    private boolean isUnknown(Spot spot) {
        return !spot.step().isKnown() && Optional.ofNullable(stated.get(spot.span()))
                .map(measure -> measure.provenance() == Measure.Provenance.UNKNOWN).orElse(true);
    }

    /** The splice that sits at a station of its own. */
    Optional<String> spliceAt(Spot spot) {
        return view.splices().values().stream().filter(each -> each.splice().at().station()
                .map(Measure::span).filter(spot.span()::equals).isPresent())
                .map(each -> each.splice().name().text()).findFirst();
    }
}
