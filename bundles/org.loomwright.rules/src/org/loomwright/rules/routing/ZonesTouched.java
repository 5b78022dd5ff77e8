// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
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
 * The zones that wires of a drawing or harness are known to touch: at their ends, and at the datum and the ends of
 * branches that their ways pass. Where they run between named places nobody has said. For one thread.
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

    /** A zone and its temperature in C. */
    private record Ambient(Platform.Zone zone, double temperature) {
    }

    private final WiringView view;
    private final Shapes.Shape shape;
    private final Map<Spot, Optional<String>> spots = new IdentityHashMap<>();
    private final Map<String, Optional<Ambient>> zones = new HashMap<>();

    ZonesTouched(WiringView view, Shapes.Shape shape) {
        this.view = view;
        this.shape = shape;
    }

    /** The zones that a wire touches, hottest first; those that state no temperature are left out. */
    List<Touch> of(WireView wire) {
        Map<String, Condition> places = new LinkedHashMap<>();
        for (WireEnd end : WireEnd.there(view, wire)) {
            place(end.node(), end.when(), places);
        }
        RoutedWire routed = shape.route(wire);
        for (RoutedWire.Run run : routed == null ? List.<RoutedWire.Run>of() : routed.routes()) {
            for (Route.Leg leg : run.route().legs()) {
                for (Spot spot : List.of(leg.from(), leg.to())) {
                    spots.computeIfAbsent(spot, key -> placeOf(shape.tree(), key))
                            .ifPresent(place -> places.merge(place, run.when(), Condition::or));
                }
            }
        }
        return zones(places);
    }

    private Optional<Ambient> ambient(String place) {
        return zones.computeIfAbsent(place, key -> view.platform().zoneOf(key).flatMap(zone -> zone.ambient()
                .filter(each -> each.unit().dimension() == Dimension.TEMPERATURE)
                .map(each -> new Ambient(zone, each.si()))));
    }

    private List<Touch> zones(Map<String, Condition> places) {
        Map<String, Touch> touched = new LinkedHashMap<>();
        places.forEach((place, when) -> ambient(place).filter(each -> !when.isNever())
                .ifPresent(each -> touched.merge(each.zone().name().text(),
                        new Touch(each.zone(), each.temperature(), place, when),
                        (one, other) -> new Touch(one.zone(), one.ambientC(), one.place(),
                                one.when().or(other.when())))));
        List<Touch> hottest = new ArrayList<>(touched.values());
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

    private void place(Node node, Condition when, Map<String, Condition> places) {
        switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element()))
                    .ifPresent(each -> place(each.connector().place(), each.connector().branch(), when, places));
            case STUD -> Optional.ofNullable(view.studs().get(node.element()))
                    .ifPresent(each -> place(each.stud().place(), each.stud().branch(), when, places));
            case PIN -> device(node).ifPresent(each -> place(each.device().place(), Optional.empty(), when, places));
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
    private void place(Optional<Ref> place, Optional<Ref> branch, Condition when, Map<String, Condition> places) {
        place.ifPresent(named -> places.merge(named.text(), when, Condition::or));
        if (place.isEmpty()) {
            branch.flatMap(ref -> view.run(ref.text())).ifPresent(run -> run.to().ifPresent(to -> places.merge(
                    to.text(), when.and(view.platform().vehicles().resolve(run.when()).condition()), Condition::or)));
        }
    }
}
