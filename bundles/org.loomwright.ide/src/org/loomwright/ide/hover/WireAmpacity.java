// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.electric.ampacity.AircraftTable;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.geometry.Bundles;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.NodeSpots;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Section;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;

/**
 * What current a wire may carry, by the table that the rules use, for the hottest zone that it touches and the most
 * wires that can lie beside it. Where a figure is not known it is not guessed: the line says what is missing. The rule
 * {@code fuse-exceeds-wire} judges by vehicles; this is for the worst of them.
 */
final class WireAmpacity {

    private WireAmpacity() {
    }

    /**
     * One line for each size of each cable.
     *
     * @param second whether another line says what the second table allows, which no rule judges by
     */
    static List<String> of(Moment moment, WiringView view, WireView wire, boolean second) {
        List<String> lines = new ArrayList<>();
        HarnessTree tree = moment.layout(view).tree();
        List<RoutedWire> routed = RoutedWire.all(tree, NodeSpots.of(tree));
        Optional<Platform.Zone> zone = hottest(routed, view, wire);
        int wires = beside(routed, moment, view, wire);
        for (Case<ConductorSize> size : wire.sizes()) {
            for (Case<Part> cable : wire.cables()) {
                if (!size.when().excludes(cable.when())) {
                    line(size.value(), cable.value(), zone, wires).ifPresent(lines::add);
                    if (second) {
                        compared(size.value(), cable.value(), zone).ifPresent(lines::add);
                    }
                }
            }
        }
        return lines.stream().distinct().toList();
    }

    private static Optional<String> compared(ConductorSize size, Part cable, Optional<Platform.Zone> zone) {
        return zone.flatMap(hottest -> rating(cable).flatMap(rating -> new AircraftTable().allowed(size, rating,
                hottest.ambient().orElseThrow().si()))).map(allowed -> "for comparison " + allowed.derivation());
    }

    private static Optional<Double> rating(Part cable) {
        return cable.figure(Part.FigureKind.TEMPERATURE).map(Part.Figure::from)
                .filter(figure -> figure.unit().dimension() == Dimension.TEMPERATURE).map(figure -> figure.si());
    }

    private static Optional<String> line(ConductorSize size, Part cable, Optional<Platform.Zone> zone, int wires) {
        Optional<Double> rating = rating(cable);
        if (rating.isEmpty()) {
            return Optional.of("not known: " + cable.name() + " states no temperature class");
        }
        if (zone.isEmpty()) {
            return Optional.of("not known: no zone on its way states a temperature");
        }
        double ambient = zone.get().ambient().orElseThrow().si();
        return Ampacity.cfr().allowed(size, rating.get(), ambient, Math.max(1, wires))
                .map(allowed -> allowed.derivation() + (wires > 1 ? "; up to " + wires + " wires lie together"
                        : "") + ", hottest zone " + zone.get().name());
    }

    /** The most wires in any stretch of its way, whatever the vehicle: never fewer than in any one of them. */
    private static int beside(List<RoutedWire> routed, Moment moment, WiringView view, WireView wire) {
        try {
            int most = 0;
            for (Section section : new Bundles().of(moment.layout(view).tree(), routed, wire.when()).sections()) {
                if (section.wires().stream().anyMatch(each -> each.wire() == wire)) {
                    Set<WireView> together = Collections.newSetFromMap(new IdentityHashMap<>());
                    section.wires().forEach(each -> together.add(each.wire()));
                    most = Math.max(most, together.size());
                }
            }
            return most;
        } catch (TooManyCombinations e) {
            return 0;
        }
    }

    private static Optional<Platform.Zone> hottest(List<RoutedWire> routed, WiringView view, WireView wire) {
        Set<String> places = new LinkedHashSet<>();
        wire.from().forEach(end -> place(view, end.value()).ifPresent(places::add));
        wire.to().forEach(end -> place(view, end.value()).ifPresent(places::add));
        routed.stream().filter(each -> each.wire() == wire).flatMap(each -> each.routes().stream())
                .flatMap(run -> run.route().legs().stream())
                .flatMap(leg -> Stream.of(leg.from().name(), leg.to().name()))
                .forEach(name -> along(view, name).ifPresent(places::add));
        return places.stream().flatMap(place -> view.platform().zoneOf(place).stream())
                .filter(zone -> zone.ambient().filter(each -> each.unit().dimension() == Dimension.TEMPERATURE)
                        .isPresent())
                .max(Comparator.comparingDouble(zone -> zone.ambient().orElseThrow().si()));
    }

    /** The place of a name on the way: its own, or the one that the branch of this name goes to. */
    private static Optional<String> along(WiringView view, String name) {
        return view.platform().place(name).isPresent() ? Optional.of(name)
                : view.run(name).flatMap(Run::to).map(Ref::text);
    }

    private static Optional<String> place(WiringView view, Node node) {
        return switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element())).map(ConnectorView::connector)
                    .flatMap(each -> place(view, each.place(), each.branch()));
            case STUD -> Optional.ofNullable(view.studs().get(node.element())).map(WiringView.StudView::stud)
                    .flatMap(each -> place(view, each.place(), each.branch()));
            case PIN -> Optional.ofNullable(view.devices().getOrDefault(node.element(),
                            view.platform().devices().get(node.element())))
                    .flatMap(each -> each.device().place()).map(Ref::text);
            case SPLICE, NOWHERE -> Optional.empty();
        };
    }

    private static Optional<String> place(WiringView view, Optional<Ref> place, Optional<Ref> branch) {
        return place.map(Ref::text).or(() -> branch.flatMap(ref -> view.run(ref.text())).flatMap(Run::to)
                .map(Ref::text));
    }
}
