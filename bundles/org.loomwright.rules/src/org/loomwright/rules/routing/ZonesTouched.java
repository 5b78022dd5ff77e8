// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Dimension;
import org.loomwright.rules.Shapes;

/**
 * The zones that a wire is known to touch: at its ends, and at the datum and the ends of branches that its way passes.
 * Where it runs between named places nobody has said.
 */
final class ZonesTouched {

    /**
     * A zone with a stated ambient temperature that a wire touches.
     *
     * @param zone     the zone
     * @param ambientC its temperature in C
     * @param place    the first place in it that the wire touches
     * @param when     the vehicles in which it does
     */
    record Touch(Platform.Zone zone, double ambientC, String place, Condition when) {
    }

    private final WiringView view;
    private final Map<String, Condition> places = new LinkedHashMap<>();

    private ZonesTouched(WiringView view) {
        this.view = view;
    }

    /** The zones that a wire touches, hottest first; those that state no temperature are left out. */
    static List<Touch> of(WiringView view, WireView wire, Shapes.Shape shape) {
        ZonesTouched touched = new ZonesTouched(view);
        for (WireEnd end : WireEnd.there(view, wire)) {
            touched.place(end.node(), end.when());
        }
        RoutedWire routed = shape.route(wire);
        for (RoutedWire.Run run : routed == null ? List.<RoutedWire.Run>of() : routed.routes()) {
            for (Route.Leg leg : run.route().legs()) {
                for (Spot spot : List.of(leg.from(), leg.to())) {
                    placeOf(shape.tree(), spot).ifPresent(place -> touched.add(place, run.when()));
                }
            }
        }
        return touched.zones();
    }

    private void add(String place, Condition when) {
        places.merge(place, when, Condition::or);
    }

    private List<Touch> zones() {
        Map<String, Touch> zones = new LinkedHashMap<>();
        places.forEach((place, when) -> view.platform().zoneOf(place).ifPresent(zone -> zone.ambient()
                .filter(ambient -> ambient.unit().dimension() == Dimension.TEMPERATURE)
                .filter(ambient -> !when.isNever())
                .ifPresent(ambient -> zones.merge(zone.name().text(), new Touch(zone, ambient.si(), place, when),
                        (one, other) -> new Touch(one.zone(), one.ambientC(), one.place(),
                                one.when().or(other.when()))))));
        List<Touch> hottest = new ArrayList<>(zones.values());
        hottest.sort(Comparator.comparingDouble(Touch::ambientC).reversed()
                .thenComparing(touch -> touch.zone().name().text()));
        return hottest;
    }

    /** The place at a spot of the tree: the datum's, or the one that a branch goes to. */
    private static Optional<String> placeOf(HarnessTree tree, Spot spot) {
        return switch (spot.kind()) {
            case DATUM -> Optional.of(spot.name());
            case START -> tree.run(spot.run()).map(TreeRun::start).flatMap(start -> placeOf(tree, start));
            case END -> tree.run(spot.run()).flatMap(run -> run.run().to()).map(Ref::text);
            case BREAKOUT, STATION -> Optional.empty();
        };
    }

    private void place(Node node, Condition when) {
        switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element()))
                    .ifPresent(each -> place(each.connector().place(), each.connector().branch(), when));
            case STUD -> Optional.ofNullable(view.studs().get(node.element()))
                    .ifPresent(each -> place(each.stud().place(), each.stud().branch(), when));
            case PIN -> device(node).ifPresent(each -> place(each.device().place(), Optional.empty(), when));
            case SPLICE, NOWHERE -> {
                // its way tells
            }
        }
    }

    private Optional<DeviceView> device(Node node) {
        return Optional.ofNullable((node.owner().equals(view.name()) ? view.devices() : view.platform().devices())
                .get(node.element()));
    }

    /** The place that is named, or the one that a branch goes to in the vehicles that have the branch. */
    private void place(Optional<Ref> place, Optional<Ref> branch, Condition when) {
        place.ifPresent(named -> add(named.text(), when));
        if (place.isEmpty()) {
            branch.flatMap(ref -> view.run(ref.text())).ifPresent(run -> run.to().ifPresent(to -> add(to.text(),
                    when.and(view.platform().vehicles().resolve(run.when()).condition()))));
        }
    }
}
