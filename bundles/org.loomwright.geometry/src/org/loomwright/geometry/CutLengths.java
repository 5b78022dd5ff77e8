// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Part;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * Works out cut lengths: route, plus what each end needs, plus the shortfall of the machine, rounded up to the grid. A
 * length that the source states for the wire takes the place of route and allowances; a pinned one, and that of a
 * resistor cable, is cut as it stands.
 *
 * <p>Immutable; safe for use by several threads. Linear in the routes of the wires.
 */
public final class CutLengths {

    private final HarnessTree tree;
    private final Map<String, Part> parts;
    private final CutSettings settings;

    /**
     * Prepares the cut lengths of one drawing or harness.
     *
     * @param parts catalogue parts by name, for allowances that terminals and splice methods state as {@code length}
     */
    public CutLengths(HarnessTree tree, Map<String, Part> parts, CutSettings settings) {
        this.tree = tree;
        this.parts = Map.copyOf(parts);
        this.settings = settings.of(tree.view());
    }

    /** The lengths of a wire, by vehicles; none for vehicles in which it has neither a route nor a stated length. */
    public List<CutLength> of(RoutedWire routed) {
        List<CutLength> all = new ArrayList<>();
        Condition rest = routed.wire().when().and(tree.vehicles());
        for (Case<Measure> stated : routed.wire().lengths()) {
            for (Case<Node> from : routed.wire().from()) {
                for (Case<Node> to : routed.wire().to()) {
                    Condition when = rest.and(stated.when()).and(from.when()).and(to.when());
                    if (!when.isNever()) {
                        all.add(stated(routed, from.value(), to.value(), when, stated.value()));
                        rest = rest.minus(when);
                    }
                }
            }
        }
        for (RoutedWire.Run run : routed.routes()) {
            Condition when = run.when().and(rest);
            if (!when.isNever()) {
                all.add(routed(run, when));
            }
        }
        return all;
    }

    private CutLength stated(RoutedWire routed, Node from, Node to, Condition when, Measure measure) {
        boolean pinned = measure.pinned() || routed.wire().cables().stream()
                .anyMatch(each -> each.value().kind() == Part.Kind.RESISTOR_CABLE && !each.when().excludes(when));
        Distance distance = Distance.of(measure, tree.usualTolerance());
        List<CutLength.Term> terms = new ArrayList<>();
        distance.length().ifPresent(length -> terms.add(new CutLength.Term("stated", length)));
        return finish(from, to, when, true, pinned, distance, measure.tolerance(), terms);
    }

    private CutLength routed(RoutedWire.Run run, Condition when) {
        List<CutLength.Term> terms = new ArrayList<>();
        run.route().length().length().ifPresent(length -> terms.add(new CutLength.Term("route", length)));
        terms.add(allowance(run.from(), run.route().from(), when));
        terms.add(allowance(run.to(), run.route().to(), when));
        return finish(run.from(), run.to(), when, false, false, run.route().length(), Optional.empty(), terms);
    }

    private CutLength finish(Node from, Node to, Condition when, boolean stated, boolean pinned, Distance distance,
            Optional<Tolerance> tolerance, List<CutLength.Term> terms) {
        if (!distance.isKnown()) {
            return new CutLength(from, to, when, stated, pinned, Optional.empty(), Optional.empty(), Tolerance.NONE,
                    Provenance.UNKNOWN, List.of());
        }
        Length length = sum(terms);
        Length cut = length;
        if (!pinned) {
            terms.add(new CutLength.Term("machine shortfall", settings.shortfall()));
            cut = sum(terms).roundedUpTo(settings.grid());
            terms.add(new CutLength.Term("rounding up to " + settings.grid(), cut.minus(sum(terms))));
        }
        return new CutLength(from, to, when, stated, pinned, Optional.of(length), Optional.of(cut),
                tolerance.orElseGet(() -> settings.tolerance().of(length)), distance.provenance(), terms);
    }

    private static Length sum(List<CutLength.Term> terms) {
        return terms.stream().map(CutLength.Term::length).reduce(Length.ZERO, Length::plus);
    }

    private CutLength.Term allowance(Node node, Spot spot, Condition when) {
        WiringView view = tree.view();
        Length usual = switch (node.kind()) {
            case CAVITY -> settings.cavity(measuredTo(spot));
            case SPLICE -> settings.splice();
            case STUD -> settings.stud();
            case PIN -> settings.device();
            case NOWHERE -> Length.ZERO;
        };
        Optional<Part> part = switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element()))
                    .flatMap(connector -> terminal(connector, node.pin(), when));
            case SPLICE -> Optional.ofNullable(view.splices().get(node.element()))
                    .flatMap(splice -> splice.splice().method()).map(ref -> parts.get(ref.text()));
            default -> Optional.empty();
        };
        Optional<Length> own = part.flatMap(each -> each.figure(Part.FigureKind.LENGTH))
                .flatMap(figure -> Distance.usable(figure.from()));
        return new CutLength.Term("at " + node.label(), own.orElse(usual));
    }

    private Optional<Part> terminal(ConnectorView connector, String cavity, Condition when) {
        return connector.connector().cavities().stream()
                .filter(fact -> fact.kind() == Connector.CavityKind.TERMINAL && fact.cavity().text().equals(cavity))
                .filter(fact -> !tree.view().platform().vehicles().resolve(fact.when()).condition().excludes(when))
                .map(fact -> parts.get(fact.value().text())).filter(part -> part != null).findFirst();
    }

    private Measure.MeasuredTo measuredTo(Spot spot) {
        return tree.run(spot.run()).map(TreeRun::run).filter(run -> spot.kind() == Spot.Kind.END)
                .flatMap(Run::length).map(Measure::end).orElse(Measure.MeasuredTo.UNSTATED);
    }
}
