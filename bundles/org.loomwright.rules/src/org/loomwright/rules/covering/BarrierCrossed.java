// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.fit.Demand;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.Way;
import org.loomwright.geometry.Distance;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Shapes;
import org.loomwright.rules.Target;

/**
 * A breakout of ours that lies on the other side of a barrier (a grommet, hole or hinge) than where the factory's
 * branch to the same place leaves the trunk. Such a branch would have to go back through the barrier.
 */
public final class BarrierCrossed implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("barrier-crossed",
            "Does every breakout lie on its side of each barrier?", Severity.ERROR, Kind.ENGINEERING, Scope.HARNESS,
            "the meaning of the language: a barrier is a grommet, hole or hinge that a breakout may not cross");

    /** A barrier on a trunk: where it is in ours and in the drawing, which may be the same figure. */
    private record Barrier(String name, Span span, Length ours, Length theirs) {
    }

    /** A breakout of ours and a barrier between it and a station of a drawing. */
    private record Crossing(String drawing, String stop, Barrier barrier, boolean beyond) {
    }

    /** What belongs to a crossing. */
    private record Seen(Condition when, Set<String> places, Length position, Length station, Span factory) {
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHarness> target() {
        return Target.OfHarness.class;
    }

    @Override
    public void check(Target.OfHarness target, Findings findings) {
        WiringView harness = target.wiring();
        if (harness.covers().isEmpty()) {
            return;
        }
        FitReport report = target.shapes().fit(harness);
        Map<Crossing, Seen> crossings = new LinkedHashMap<>();
        for (FitCell cell : report.cells()) {
            if (cell.figures().isPresent() && !cell.figures().get().demand().stop().isEmpty()
                    && cell.figures().get().demand().way() instanceof Way.Direct direct && direct.station() >= 0) {
                FitColumn column = report.problem().columns().get(cell.column());
                cell(target.shapes(), harness, column, cell.figures().get(), new Length(direct.station()),
                        report.problem().rows().get(cell.row()).place(), crossings);
            }
        }
        crossings.forEach((crossing, seen) -> report(harness, crossing, seen, findings));
    }

    private static void cell(Shapes shapes, WiringView harness, FitColumn column, FitCell.Figures figures,
            Length station, String place, Map<Crossing, Seen> crossings) {
        Demand demand = figures.demand();
        for (Barrier barrier : barriers(harness, shapes.wiring(column.drawing()), demand.trunk())) {
            int ours = figures.position().compareTo(barrier.ours());
            int theirs = station.compareTo(barrier.theirs());
            if (ours * theirs < 0) {
                Crossing crossing = new Crossing(column.drawing(), demand.stop(), barrier, ours > 0);
                Seen seen = new Seen(column.vehicles(), new LinkedHashSet<>(List.of(place)), figures.position(),
                        station, demand.factorySpan());
                crossings.merge(crossing, seen, (one, other) -> {
                    Set<String> places = new LinkedHashSet<>(one.places());
                    places.addAll(other.places());
                    return new Seen(one.when().or(other.when()), places, one.position(), one.station(), one.factory());
                });
            }
        }
    }

    /** The barriers of our trunk and of the drawing's; two of one name are one barrier, seen twice. */
    private static List<Barrier> barriers(WiringView harness, Optional<WiringView> drawing, String trunk) {
        Optional<Run> mine = harness.run(trunk);
        Optional<Run> other = drawing.flatMap(view -> view.run(trunk).or(() -> view.wiring().runs(Run.Kind.TRUNK)
                .stream().findFirst()));
        List<Run.Barrier> theirs = other.map(Run::barriers).orElse(List.of());
        List<Barrier> all = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (Run.Barrier each : mine.map(Run::barriers).orElse(List.of())) {
            Optional<Length> twin = theirs.stream().filter(one -> one.name().text().equals(each.name().text()))
                    .flatMap(one -> station(one).stream()).findFirst();
            station(each).ifPresent(at -> all.add(new Barrier(each.name().text(), each.name().span(), at,
                    twin.orElse(at))));
            seen.add(each.name().text());
        }
        theirs.stream().filter(each -> !seen.contains(each.name().text())).forEach(each -> station(each)
                .ifPresent(at -> all.add(new Barrier(each.name().text(), each.name().span(), at, at))));
        return all;
    }

    private static Optional<Length> station(Run.Barrier barrier) {
        return barrier.at().value().flatMap(Distance::usable);
    }

    private static void report(WiringView harness, Crossing crossing, Seen seen, Findings findings) {
        Barrier barrier = crossing.barrier();
        Span span = harness.wiring().runs().stream().flatMap(run -> run.breakouts().stream())
                .filter(each -> each.name().text().equals(crossing.stop())).map(each -> each.name().span()).findFirst()
                .orElse(harness.wiring().name().span());
        findings.about(harness.name(), crossing.stop(), "breakout " + crossing.stop()).when(seen.when())
                .key(crossing.drawing() + " " + barrier.name())
                .at(span, (crossing.beyond() ? "beyond " : "before ") + barrier.name())
                .see(barrier.span(), "barrier " + barrier.name())
                .see(seen.factory(), "the factory's branch")
                .says("breakout " + crossing.stop() + " lies " + (crossing.beyond() ? "beyond" : "before")
                        + " barrier " + barrier.name() + ", and " + crossing.drawing() + " leaves the trunk for "
                        + Listing.of(seen.places()) + (crossing.beyond() ? " before" : " beyond") + " it")
                .step("ours: " + seen.position() + ", barrier at " + barrier.ours())
                .step(crossing.drawing() + ": " + seen.station() + ", barrier at " + barrier.theirs())
                .advise("move the breakout to the other side of the barrier, or cover this drawing with another"
                        + " harness")
                .report();
    }
}
