// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Target;

/**
 * What the loads of a network are connected with.
 *
 * @param connections the network
 * @param ground      what is connected with a ground node
 * @param open        what is connected with something that is not described
 * @param beyond      what is connected with that otherwise than by ground
 * @param fed         what is connected with the insulated pole of a source
 */
record LoadWays(Connections connections, Reach ground, Reach open, Reach beyond, Reach fed) {

    static LoadWays of(Connections connections) {
        return new LoadWays(connections, connections.grounded(), connections.undescribed(),
                connections.from(connections.open(), edge -> !edge.isGround()), connections.live());
    }

    /**
     * Tells of loads that lack something. What the factory's connections lacked already is not told again of ours,
     * unless a wire of ours is connected with the load.
     *
     * @param lacks in which vehicles a load lacks it
     */
    static void tell(Target.OfNetwork target, Findings findings, BiFunction<Load, LoadWays, Condition> lacks,
            BiConsumer<Load, Condition> report) {
        Connections connections = target.connections();
        LoadWays ways = of(connections);
        List<LoadWays> factory = new ArrayList<>();
        boolean asked = false;
        for (Load load : connections.loads()) {
            findings.checkCancelled();
            Condition lost = lacks.apply(load, ways);
            if (!lost.isNever()) {
                if (!asked) {
                    target.factory().forEach(each -> factory.add(of(each)));
                    asked = true;
                }
                Condition before = lost.vehicles().none();
                for (LoadWays each : factory) {
                    before = before.or(lostBefore(load, each, lacks));
                }
                lost = lost.minus(before.minus(ours(connections, load)));
            }
            report.accept(load, lost);
        }
    }

    private static Condition lostBefore(Load load, LoadWays factory, BiFunction<Load, LoadWays, Condition> lacks) {
        return factory.connections().loads().stream()
                .filter(each -> each.device() == load.device() && each.part() == load.part())
                .map(each -> lacks.apply(each, factory)).reduce(load.when().vehicles().none(), Condition::or);
    }

    /** In which vehicles a wire of ours is connected with a load. */
    private static Condition ours(Connections connections, Load load) {
        Map<Point, Condition> pins = new LinkedHashMap<>();
        load.pins().forEach(pin -> pins.put(pin, load.when()));
        Reach near = connections.from(pins, edge -> true);
        Condition ours = load.when().vehicles().none();
        for (Map.Entry<Point, Condition> each : near.points().entrySet()) {
            for (Edge edge : connections.edgesAt(each.getKey())) {
                if (edge.link() instanceof Link.OfWire wire && connections.fitment().isOurs(wire.wire().owner())) {
                    ours = ours.or(each.getValue().and(edge.when()));
                }
            }
        }
        return ours;
    }

    /** In which vehicles a wire ends at a pin, or in the cavity that is plugged onto it. */
    Condition wired(Point pin) {
        Condition wired = connections.fitment().platform().vehicles().none();
        for (Edge edge : connections.edgesAt(pin)) {
            if (edge.isWire()) {
                wired = wired.or(edge.when());
            } else if (edge.link() instanceof Link.Mated) {
                for (Edge behind : connections.edgesAt(edge.other(pin))) {
                    if (behind.isWire()) {
                        wired = wired.or(edge.when().and(behind.when()));
                    }
                }
            }
        }
        return wired;
    }
}
