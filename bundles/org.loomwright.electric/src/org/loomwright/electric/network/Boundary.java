// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.harness.Part;

/**
 * What is taken to lie behind a cavity whose other half nobody describes, so that a harness can be looked at alone. A
 * cavity that leads to the feed side of loads, and to no source, is fed; one that leads to their return side alone is
 * ground; of one that a source leads to nothing is drawn. Where the same cavity leads to both sides of loads nothing
 * is assumed, and it stays open.
 *
 * @param point a cavity
 * @param when  the vehicles in which its connector mates nothing that is described
 * @param kind  what is assumed
 */
public record Boundary(Point point, Condition when, Kind kind) {

    /** What lies behind a cavity. */
    public enum Kind {
        /** The insulated pole, but not with the key off. */
        FEED,
        /** Ground. */
        GROUND,
        /** Nothing that draws current. */
        NOTHING
    }

    /**
     * Finds what is assumed. The order is that of the open cavities.
     *
     * <p>Costs the reach of all loads, and nothing where no cavity is open.
     */
    public static List<Boundary> of(Connections connections) {
        if (connections.open().isEmpty()) {
            return List.of();
        }
        Map<Point, Condition> feeds = new LinkedHashMap<>();
        Map<Point, Condition> returns = new LinkedHashMap<>();
        connections.loads().forEach(each -> sides(each, feeds, returns));
        Reach fed = connections.from(feeds, edge -> !edge.isGround());
        Reach back = connections.from(returns, edge -> !edge.isGround());
        List<Boundary> all = new ArrayList<>();
        connections.open().forEach((point, free) -> {
            Condition live = connections.live().at(point);
            Condition held = live.or(connections.grounded().at(point));
            add(all, point, free.and(fed.at(point)).minus(back.at(point)).minus(held), Kind.FEED);
            add(all, point, free.and(back.at(point)).minus(fed.at(point)).minus(held), Kind.GROUND);
            add(all, point, free.and(live), Kind.NOTHING);
        });
        return List.copyOf(all);
    }

    private static void add(List<Boundary> all, Point point, Condition when, Kind kind) {
        if (!when.isNever()) {
            all.add(new Boundary(point, when, kind));
        }
    }

    /** The pins by which the current of a load enters and leaves, but for its case on a ground node. */
    private static void sides(Load load, Map<Point, Condition> feeds, Map<Point, Condition> returns) {
        Part part = load.part();
        if (part.word(Part.WordKind.TYPE).filter("cranking"::equals).isPresent()) {
            load.pins().forEach(pin -> feeds.merge(pin, load.when(), Condition::or));
            return;
        }
        boolean led = part.word(Part.WordKind.TYPE).filter("led"::equals).isPresent();
        List<LoadModels.Inside> inside = LoadModels.of(part, 1, load.grounded());
        Optional<String> common = inside.size() > 1 ? LoadModels.common(inside) : Optional.empty();
        Optional<String> polarity = part.word(Part.WordKind.POLARITY);
        for (LoadModels.Inside each : inside) {
            boolean turned = common.or(() -> polarity.filter(each.to()::equals)).filter(common.isPresent()
                    ? each.from()::equals : each.to()::equals).isPresent();
            String feed = turned ? each.to() : each.from();
            String back = turned ? each.from() : each.to();
            add(load, feed, feeds);
            if (!load.grounded() || led || part.hasPin(LoadModels.CASE)) {
                add(load, back, returns);
            }
        }
    }

    private static void add(Load load, String pin, Map<Point, Condition> side) {
        if (load.part().hasPin(pin)) {
            side.merge(new Point.Spot(load.device().pin(pin)), load.when(), Condition::or);
        }
    }
}
