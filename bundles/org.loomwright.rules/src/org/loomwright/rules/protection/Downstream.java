// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.LinkedHashMap;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;

/**
 * Finds what lies behind a fuse: on the side that the other side feeds; on both where no source feeds either. A
 * side that a source feeds with nothing between that limits an overload is never behind the fuse: what is there has
 * that source before it, whatever the fuse does.
 */
final class Downstream {
    private final Connections connections;
    private final Reach bare;

    Downstream(Connections connections) {
        this.connections = connections;
        this.bare = connections.fed(supply -> !UnfusedRuns.selfLimited(supply),
                edge -> !edge.protection().limitsOverload());
    }

    /** The vehicles in which a source can feed a side of a fuse, the fuse taken out. */
    private Condition fed(Point side, Edge fuse) {
        return connections.feeds(side, fuse.when(), supply -> true, edge -> edge != fuse);
    }

    Reach of(Edge fuse) {
        boolean directA = fuse.when().minus(bare.at(fuse.a())).isNever();
        boolean directB = fuse.when().minus(bare.at(fuse.b())).isNever();
        // with one side fed in all its vehicles by what is no fuse, nobody needs to search for what feeds the other
        Condition a = directA ? fuse.when() : directB ? fuse.when().vehicles().none() : fed(fuse.a(), fuse);
        Condition b = directB ? fuse.when() : directA ? fuse.when().vehicles().none() : fed(fuse.b(), fuse);
        Condition neither = fuse.when().minus(a).minus(b);
        Map<Point, Condition> starts = new LinkedHashMap<>();
        starts.put(fuse.b(), fuse.when().and(a.or(neither)).minus(bare.at(fuse.b())));
        starts.put(fuse.a(), fuse.when().and(b.or(neither)).minus(bare.at(fuse.a())));
        return connections.from(starts, edge -> edge != fuse && !edge.isGround()
                && !edge.protection().limitsOverload());
    }
}
