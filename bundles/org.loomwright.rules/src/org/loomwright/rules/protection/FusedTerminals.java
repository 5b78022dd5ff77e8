// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.electric.network.Terminals;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.quantity.Dimension;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * Holds terminals against the rating of the fuse before them, where nobody computes what flows in them: as much as the
 * fuse carries may flow.
 */
public final class FusedTerminals {

    private FusedTerminals() {
    }

    /** Tells of each contact that may carry less than a fuse before it. */
    public static void check(Target.OfNetwork target, Findings findings) {
        Connections connections = target.connections();
        Map<String, Part> parts = target.parts();
        Downstream downstream = new Downstream(connections);
        for (Edge edge : connections.edges()) {
            FuseView.of(edge).ifPresent(fuse -> {
                findings.checkCancelled();
                behind(connections, parts, fuse, downstream.of(fuse.edge()), findings);
            });
        }
    }

    private static void behind(Connections connections, Map<String, Part> parts, FuseView fuse, Reach behind,
            Findings findings) {
        for (Edge edge : connections.edges()) {
            if (!(edge.link() instanceof Link.Mated)) {
                continue;
            }
            Condition when = behind.at(edge.a()).or(behind.at(edge.b())).and(edge.when());
            Optional<Double> rating = when.isNever() ? Optional.empty() : Terminals.least(connections, parts, edge,
                    Part.FigureKind.RATING, Dimension.CURRENT);
            for (Case<Double> each : rating.isPresent() ? fuse.ratings() : List.<Case<Double>>of()) {
                double carried = fuse.carried(each.value());
                if (fuse.basis() != FuseView.Basis.UNSTATED && carried > rating.get()) {
                    report(connections, edge, fuse, each.value(), rating.get(), when.and(each.when()), findings);
                }
            }
        }
    }

    private static void report(Connections connections, Edge edge, FuseView fuse, double rating, double terminal,
            Condition when, Findings findings) {
        Point.Spot spot = (Point.Spot) List.of(edge.a(), edge.b()).stream().filter(each ->
                each instanceof Point.Spot one && one.node().kind() == Node.Kind.CAVITY).findFirst().orElseThrow();
        var fitted = connections.fitment().fitted().get(spot.node().owner());
        Draft draft = findings.about(spot.node().owner(), spot.node().element(), "contact " + spot)
                .when(when).weighs(Severity.WARNING).key(spot + " behind " + fuse.label())
                .at(fitted.view().connectors().get(spot.node().element()).connector().name().span(), "contact " + spot)
                .see(fuse.inside().holder().name().span(), fuse.label())
                .says("contact " + spot + " of " + Figure.of(terminal) + " A stands behind " + fuse.label() + " of "
                        + Figure.of(rating) + " A, and what flows in it was not computed")
                .step(fuse.meaning(rating))
                .step("without modes and sources nobody knows less than what the fuse carries")
                .advise("state what currents need, then the terminal is judged by what flows in it; else fit a larger"
                        + " terminal or a smaller fuse");
        if (fuse.inside().holder().ours()) {
            draft.ours();
        }
        draft.report();
    }
}
