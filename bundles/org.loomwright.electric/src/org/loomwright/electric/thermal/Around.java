// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.thermal;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Dimension;

/**
 * What a wire has around it.
 *
 * @param ambientC the ambient temperature in C of the hottest zone that it touches; empty when none is stated
 * @param classC   the temperature class of its insulation in C; empty when its cable states none
 * @param shortC   the short-time limit in C that its cable states; empty when it states none
 */
public record Around(Optional<Double> ambientC, Optional<Double> classC, Optional<Double> shortC) {

    /** Looks around a wire along the ways that it has in some vehicles. */
    public static Around of(WiringView view, WireView wire, Optional<Part> cable, RoutedWire routed, Condition when) {
        Set<String> places = new LinkedHashSet<>();
        wire.from().stream().filter(each -> !each.when().excludes(when))
                .forEach(each -> place(view, each.value()).ifPresent(places::add));
        wire.to().stream().filter(each -> !each.when().excludes(when))
                .forEach(each -> place(view, each.value()).ifPresent(places::add));
        if (routed != null) {
            routed.routes().stream().filter(run -> !run.when().excludes(when))
                    .flatMap(run -> run.route().legs().stream()).forEach(leg -> along(view, leg, places));
        }
        Optional<Double> hottest = places.stream().flatMap(place -> view.platform().zoneOf(place).stream())
                .flatMap(zone -> zone.ambient().stream())
                .filter(each -> each.unit().dimension() == Dimension.TEMPERATURE)
                .map(each -> each.si()).reduce(Math::max);
        return new Around(hottest, celsius(cable, Part.FigureKind.TEMPERATURE),
                celsius(cable, Part.FigureKind.SHORT_TIME));
    }

    private static void along(WiringView view, Route.Leg leg, Set<String> places) {
        for (String name : new String[] {leg.from().name(), leg.to().name()}) {
            if (view.platform().place(name).isPresent()) {
                places.add(name);
            } else {
                ofBranch(view, name).ifPresent(places::add);
            }
        }
    }

    private static Optional<Double> celsius(Optional<Part> cable, Part.FigureKind kind) {
        return cable.flatMap(part -> part.figure(kind)).map(Part.Figure::from)
                .filter(each -> each.unit().dimension() == Dimension.TEMPERATURE).map(each -> each.si());
    }

    private static Optional<String> place(WiringView view, Node node) {
        return switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element())).map(ConnectorView::connector)
                    .flatMap(each -> each.place().map(Ref::text)
                            .or(() -> each.branch().flatMap(ref -> ofBranch(view, ref.text()))));
            case STUD -> Optional.ofNullable(view.studs().get(node.element())).map(WiringView.StudView::stud)
                    .flatMap(each -> each.place().map(Ref::text)
                            .or(() -> each.branch().flatMap(ref -> ofBranch(view, ref.text()))));
            case PIN -> device(view, node).flatMap(each -> each.device().place()).map(Ref::text);
            case SPLICE -> Optional.ofNullable(view.splices().get(node.element()))
                    .flatMap(each -> each.splice().at().point()).map(Ref::text)
                    .flatMap(point -> view.platform().place(point).isPresent() ? Optional.of(point)
                            : ofBranch(view, point));
            case NOWHERE -> Optional.empty();
        };
    }

    private static Optional<DeviceView> device(WiringView view, Node node) {
        return Optional.ofNullable(node.owner().equals(view.name()) ? view.devices().get(node.element())
                : view.platform().devices().get(node.element()));
    }

    private static Optional<String> ofBranch(WiringView view, String branch) {
        return view.run(branch).flatMap(run -> run.to()).map(Ref::text);
    }
}
