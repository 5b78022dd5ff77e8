// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.List;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Reach;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A wire in a branch of ours that is capped in some vehicles and that a source can feed in them. Without a protective
 * device before it that is an error, behind one a warning.
 */
public final class CappedBranchIsLive implements Rule<Target.OfNetwork> {

    private static final Predicate<Edge> OPEN = edge -> edge.protection() == Protection.NONE;
    private static final RuleInfo INFO = new RuleInfo("capped-branch-is-live", "Is every capped branch dead?",
            Severity.ERROR, Kind.ENGINEERING, Scope.PROTECTION_TREE,
            "common practice: a branch that a vehicle does not use is never live and unfused");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfNetwork> target() {
        return Target.OfNetwork.class;
    }

    @Override
    public void check(Target.OfNetwork target, Findings findings) {
        Connections connections = target.connections();
        boolean capped = connections.fitment().fitted().values().stream()
                .anyMatch(each -> !each.view().wiring().ours().caps().isEmpty());
        if (!capped) {
            return;
        }
        Reach live = connections.live();
        Reach bare = connections.fed(supply -> true, OPEN);
        for (Edge edge : connections.edges()) {
            if (edge.link() instanceof Link.OfWire wire && connections.fitment().isOurs(wire.wire().owner())) {
                Condition fed = live.at(edge.a()).or(live.at(edge.b())).and(edge.when());
                if (!fed.isNever()) {
                    Condition unfused = bare.at(edge.a()).or(bare.at(edge.b())).and(fed);
                    wire(target, edge, wire.wire(), fed, unfused, findings);
                }
            }
        }
    }

    private static void wire(Target.OfNetwork target, Edge edge, WireView wire, Condition fed, Condition unfused,
            Findings findings) {
        Fitment.Fitted fitted = target.connections().fitment().fitted().get(wire.owner());
        for (Ours.Cap cap : fitted.view().wiring().ours().caps()) {
            Condition capped = fed.vehicles().resolve(cap.when()).condition().and(fitted.when())
                    .and(runsIn(target, fitted.view(), wire, cap.branch().text()));
            report(target, edge, wire, cap, unfused.and(capped), true, findings);
            report(target, edge, wire, cap, fed.minus(unfused).and(capped), false, findings);
        }
    }

    /** The vehicles in which a wire runs in a branch. */
    private static Condition runsIn(Target.OfNetwork target, WiringView view, WireView wire, String branch) {
        RoutedWire routed = target.shapes().of(view).route(wire);
        return wire.when().vehicles().anyOf(routed == null ? List.of() : routed.routes().stream()
                .filter(run -> run.route().legs().stream().anyMatch(leg -> leg.run().equals(branch)))
                .map(RoutedWire.Run::when).toList());
    }

    private static void report(Target.OfNetwork target, Edge edge, WireView wire, Ours.Cap cap, Condition when,
            boolean unfused, Findings findings) {
        if (when.isNever()) {
            return;
        }
        String branch = cap.branch().text();
        Span name = wire.wire().name().span();
        findings.about(wire).when(when).key(branch + (unfused ? " unfused" : " fused"))
                .weighs(unfused ? Severity.ERROR : Severity.WARNING)
                .at(name.equals(Span.NONE) ? wire.wire().span() : name, "live in a capped branch")
                .see(cap.branch().span(), "capped here")
                .says("wire " + wire.label() + " in branch " + branch + ", which is capped, can be live"
                        + (unfused ? " without a fuse" : ", though fused"))
                .step(FeedPath.words(target.connections(), edge, when, supply -> true,
                        unfused ? OPEN : each -> true))
                .advise(unfused ? "leave the wire out of the board for these vehicles, or feed the branch through a"
                        + " connector that is left open, behind a fuse"
                        : "leave the wire out of the board for these vehicles, or take its fuse out and say so on the"
                                + " sheet")
                .report();
    }
}
