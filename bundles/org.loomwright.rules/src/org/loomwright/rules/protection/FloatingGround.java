// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.electric.connection.Supply;
import org.loomwright.harness.Platform;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A ground node that loads return to, and that no strap and no wire joins to the return of a battery in some vehicle
 * that has one. Every vehicle is looked at; nothing is solved for that.
 */
public final class FloatingGround implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("floating-ground",
            "Is every ground that loads return to joined to the battery?", Severity.ERROR, Kind.TRANSCRIPTION,
            Scope.PROTECTION_TREE, "a current flows in a closed circuit only");

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
        Condition none = connections.fitment().platform().vehicles().none();
        Map<Point, Condition> poles = poles(connections);
        Condition known = poles.values().stream().reduce(none, Condition::or);
        Reach home = connections.from(poles, edge -> true);
        String platform = connections.fitment().platform().name();
        for (Platform.GroundNode ground : connections.fitment().platform().platform().grounds()) {
            findings.checkCancelled();
            Point point = new Point.Ground(platform, ground.name().text());
            Condition apart = known.and(connections.grounds().getOrDefault(point, none)).minus(home.at(point));
            if (apart.isNever()) {
                continue;
            }
            Reach near = connections.from(Map.of(point, apart), edge -> true);
            Condition used = none;
            Optional<Load> first = Optional.empty();
            for (Load load : connections.loads()) {
                Condition here = load.pins().stream().map(near::at).reduce(none, Condition::or).and(load.when());
                first = first.isEmpty() && !here.isNever() ? Optional.of(load) : first;
                used = used.or(here);
            }
            if (first.isPresent()) {
                report(platform, ground, first.get(), used, findings);
            }
        }
    }

    /** Where current returns to the batteries, and in which vehicles. */
    private static Map<Point, Condition> poles(Connections connections) {
        Map<Point, Condition> poles = new LinkedHashMap<>();
        String platform = connections.fitment().platform().name();
        for (Supply supply : connections.supplies()) {
            if (supply.type().equals("battery")) {
                supply.returns().forEach(pin -> poles.merge(pin, supply.when(), Condition::or));
                supply.device().device().grounded().ifPresent(node -> poles.merge(
                        new Point.Ground(platform, node.text()), supply.when(), Condition::or));
            }
        }
        return poles;
    }

    private static void report(String platform, Platform.GroundNode ground, Load load, Condition used,
            Findings findings) {
        String name = ground.name().text();
        findings.about(platform, name, "ground " + name).when(used).key("floating-ground " + name)
                .at(ground.name().span(), "joined to no battery")
                .see(load.device().device().name().span(), "returns there")
                .says("ground " + name + " is joined to no battery, and loads return to it")
                .step("from " + load.device().name() + " by way of " + name
                        + " no strap and no wire leads to the return of a battery")
                .advise("write the strap that joins it, or a wire to a stud of a ground that is joined")
                .report();
    }
}
