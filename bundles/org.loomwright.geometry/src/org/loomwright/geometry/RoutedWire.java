// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;

/**
 * A wire with the way that it runs.
 *
 * @param wire   the wire
 * @param routes its ways, by vehicles; no two for one vehicle
 * @param lost   the vehicles that have the wire but in which one of its ends is nowhere on the tree
 */
public record RoutedWire(WireView wire, List<Run> routes, Condition lost) {

    public RoutedWire {
        routes = List.copyOf(routes);
    }

    /**
     * One way of a wire.
     *
     * @param from  where it starts
     * @param to    where it ends
     * @param route the way between
     * @param when  the vehicles in which it runs like this
     */
    public record Run(Node from, Node to, Route route, Condition when) {
    }

    /**
     * Lays all wires of a drawing or harness along its tree. Linear in wires and the depth of the tree, but for wires
     * whose ends depend on the vehicle.
     */
    public static List<RoutedWire> all(HarnessTree tree, NodeSpots spots) {
        return tree.view().wires().stream().map(wire -> of(wire, tree, spots)).toList();
    }

    /** Lays one wire along a tree. */
    public static RoutedWire of(WireView wire, HarnessTree tree, NodeSpots spots) {
        Condition within = wire.when().and(tree.vehicles());
        Condition rest = within;
        List<Run> runs = new ArrayList<>();
        for (Case<Node> from : wire.from()) {
            for (Case<Node> to : wire.to()) {
                for (Case<Spot> start : spots.of(from.value())) {
                    for (Case<Spot> end : spots.of(to.value())) {
                        Condition when = rest.and(from.when()).and(to.when()).and(start.when()).and(end.when());
                        if (!when.isNever()) {
                            runs.add(new Run(from.value(), to.value(), tree.route(start.value(), end.value()), when));
                            rest = rest.minus(when);
                        }
                    }
                }
            }
        }
        return new RoutedWire(wire, runs, rest);
    }
}
