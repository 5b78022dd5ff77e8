// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Link;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Section;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Dimension;
import org.loomwright.rules.Shapes;

/**
 * What a wire has around it: the hottest zone that its way is known to touch, and the wires that lie beside it. Until
 * currents are computed every wire beside it counts.
 *
 * @param ambientC  ambient temperature in C; empty when no zone at its ends states one
 * @param zone      where that temperature is
 * @param classC    temperature class of its insulation in C; empty when its cable states none
 * @param shortTime short-time temperature limit in C that its cable states; empty when it states none
 * @param bundles   the stretches that it runs through; empty when its way is not known
 */
record Circumstances(Optional<Double> ambientC, String zone, Optional<Double> classC, Optional<Double> shortTime,
        Optional<List<Bundle>> bundles) {

    static Circumstances of(WiringView view, Link.OfWire wire, Condition when, Bundles known) {
        Shapes.Shape shape = known.shape(view);
        Set<String> places = new LinkedHashSet<>();
        place(view, wire.from().node()).ifPresent(places::add);
        place(view, wire.to().node()).ifPresent(places::add);
        along(view, shape.route(wire.wire()), when, known, places);
        Optional<Platform.Zone> hottest = Optional.empty();
        for (String place : places) {
            Optional<Platform.Zone> zone = known.zone(view, place);
            if (zone.isPresent() && (hottest.isEmpty()
                    || ambient(zone.get(), known) > ambient(hottest.get(), known))) {
                hottest = zone;
            }
        }
        return new Circumstances(hottest.map(zone -> ambient(zone, known)),
                hottest.map(zone -> zone.name().text()).orElse(""),
                figure(wire.cable(), Part.FigureKind.TEMPERATURE, known),
                figure(wire.cable(), Part.FigureKind.SHORT_TIME, known),
                bundles(shape, wire.wire(), when, known));
    }

    /** Adds the places that a route passes: the datum, and ends of branches. */
    private static void along(WiringView view, RoutedWire routed, Condition when, Bundles known,
            Set<String> places) {
        for (RoutedWire.Run run : routed == null ? List.<RoutedWire.Run>of() : routed.routes()) {
            if (!run.when().excludes(when)) {
                for (Route.Leg leg : run.route().legs()) {
                    for (String name : List.of(leg.from().name(), leg.to().name())) {
                        known.place(view, name).ifPresent(places::add);
                    }
                }
            }
        }
    }

    private static double ambient(Platform.Zone zone, Bundles known) {
        return known.si(zone.ambient().orElseThrow());
    }

    private static Optional<Double> figure(Optional<Part> cable, Part.FigureKind kind, Bundles known) {
        return cable.flatMap(part -> part.figure(kind)).map(Part.Figure::from)
                .filter(figure -> figure.unit().dimension() == Dimension.TEMPERATURE).map(known::si);
    }

    /** The place where a wire end is: that of its connector, stud or device, or the one that its branch goes to. */
    private static Optional<String> place(WiringView view, Node node) {
        return switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element())).map(ConnectorView::connector)
                    .flatMap(each -> place(view, each.place(), each.branch()));
            case STUD -> Optional.ofNullable(view.studs().get(node.element())).map(WiringView.StudView::stud)
                    .flatMap(each -> place(view, each.place(), each.branch()));
            case PIN -> device(view, node).flatMap(each -> place(view, each.device().place(), Optional.empty()));
            case SPLICE -> Optional.ofNullable(view.splices().get(node.element()))
                    .flatMap(each -> each.splice().at().point()).map(Ref::text)
                    .flatMap(point -> view.platform().place(point).isPresent() ? Optional.of(point)
                            : ofBranch(view, point));
            case NOWHERE -> Optional.empty();
        };
    }

    private static Optional<DeviceView> device(WiringView view, Node node) {
        PlatformView platform = view.platform();
        return Optional.ofNullable(node.owner().equals(view.name()) ? view.devices().get(node.element())
                : platform.devices().get(node.element()));
    }

    private static Optional<String> place(WiringView view, Optional<Ref> place, Optional<Ref> branch) {
        return place.map(Ref::text).or(() -> branch.flatMap(ref -> ofBranch(view, ref.text())));
    }

    private static Optional<String> ofBranch(WiringView view, String branch) {
        return view.run(branch).flatMap(run -> run.to()).map(Ref::text);
    }

    private static Optional<List<Bundle>> bundles(Shapes.Shape shape, WireView wire, Condition when,
            Bundles known) {
        RoutedWire routed = shape.route(wire);
        if (routed == null || !routed.lost().excludes(when)) {
            return Optional.empty();
        }
        List<Bundle> bundles = new ArrayList<>();
        for (Section section : shape.sections(wire)) {
            Condition here = known.at(section, wire).orElse(when.vehicles().none()).and(when);
            if (!here.isNever()) {
                bundles.add(known.of(section, here));
            }
        }
        return Optional.of(bundles);
    }

    /** What is not known, in words; empty when everything is. */
    List<String> unknown() {
        List<String> unknown = new ArrayList<>();
        if (classC.isEmpty()) {
            unknown.add("temperature class of the cable");
        }
        if (ambientC.isEmpty()) {
            unknown.add("ambient temperature");
        }
        if (bundles.isEmpty()) {
            unknown.add("way through the harness");
        }
        return unknown;
    }
}
