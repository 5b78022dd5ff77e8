// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A load that is wired, and to which no source leads in some vehicle, whatever is switched on. A way that leaves
 * through a connector whose mate is not described may lead to one, and another load may pass its current on.
 */
public final class NoFeedPath implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("no-feed-path", "Does a source lead to every load?",
            Severity.ERROR, Kind.TRANSCRIPTION, Scope.PROTECTION_TREE, "a current flows in a closed circuit only");

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
        if (!connections.supplies().isEmpty()) { // else nothing can be fed, which is told once
            LoadWays.tell(target, findings, NoFeedPath::lost, (load, lost) -> report(connections, load, lost,
                    findings));
        }
    }

    /** In which vehicles a load is wired and nothing feeds it. */
    private static Condition lost(Load load, LoadWays ways) {
        Condition wired = load.when().vehicles().none();
        for (Point pin : load.pins()) {
            wired = wired.or(ways.wired(pin));
        }
        Condition lost = load.when().and(wired).minus(fed(load, ways.fed())).minus(fed(load, ways.beyond()));
        return lost.isNever() ? lost : lost.minus(through(load, ways));
    }

    private static Condition fed(Load load, Reach reach) {
        Condition fed = load.when().vehicles().none();
        for (Point pin : load.feed().map(List::of).orElse(load.pins())) {
            fed = fed.or(reach.at(pin));
        }
        return fed;
    }

    /** In which vehicles other loads pass on what feeds them: a gauge to its sender, a tell-tale to a field. */
    private static Condition through(Load load, LoadWays ways) {
        Map<Point, Condition> starts = new LinkedHashMap<>();
        for (Load other : ways.connections().loads()) {
            Condition fed = other == load ? load.when().vehicles().none()
                    : fed(other, ways.fed()).or(fed(other, ways.beyond())).and(other.when());
            if (!fed.isNever()) {
                other.pins().forEach(pin -> starts.merge(pin, fed, Condition::or));
            }
        }
        return starts.isEmpty() ? load.when().vehicles().none()
                : fed(load, ways.connections().from(starts, edge -> !edge.isGround()));
    }

    private static void report(Connections connections, Load load, Condition lost, Findings findings) {
        String name = load.device().name();
        findings.about(load.device().owner(), name, load.part().kind().name().toLowerCase(Locale.ROOT) + " " + name)
                .when(lost).key(connections.fitment().words())
                .at(load.device().device().name().span(), "not fed")
                .see(load.part().name().span(), "part " + load.part().name())
                .says("no source leads to " + name + " " + connections.fitment().words())
                .step("from " + String.join(", ", load.feed().map(List::of).orElse(load.pins()).stream()
                        .map(Point::toString).toList()) + " no connection leads to a source, with every switch"
                        + " and relay closed")
                .advise("wire its feed, or give it the condition of the vehicles that have its wires")
                .report();
    }
}
