// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.electric.connection.Supply;
import org.loomwright.harness.Part;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A load that is fed from the battery's side of an ammeter alone, while the machine feeds the other side: all its
 * current passes the ammeter, which shows it as charge. Cranking motors belong there. Every vehicle is looked at;
 * nothing is solved for that.
 */
public final class BatterySideOfAmmeter implements Rule<Target.OfNetwork> {

    private static final Set<String> CRANKING = Set.of("cranking", "starter");
    private static final RuleInfo INFO = new RuleInfo("load-on-battery-side-of-ammeter",
            "Does no load take its current between battery and ammeter?", Severity.WARNING, Kind.ENGINEERING,
            Scope.PROTECTION_TREE, "common practice: all but the cranking motor is fed from the machine's side");

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
        Condition metered = connections.fitment().platform().vehicles().none();
        Optional<Edge> meter = Optional.empty();
        for (Edge edge : connections.edges()) {
            if (isAmmeter(edge)) {
                meter = meter.or(() -> Optional.of(edge));
                metered = metered.or(edge.when());
            }
        }
        if (meter.isEmpty()) {
            return;
        }
        Reach battery = connections.fed(BatterySideOfAmmeter::isBattery, edge -> !isAmmeter(edge));
        Reach machine = connections.fed(each -> !isBattery(each), edge -> !isAmmeter(edge));
        // A machine that feeds the battery's side itself sends nothing through the ammeter for what is fed there.
        for (Supply supply : connections.supplies()) {
            if (isBattery(supply)) {
                for (Point pin : supply.live()) {
                    metered = metered.minus(machine.at(pin).and(supply.when()));
                }
            }
        }
        Condition charged = connections.supplies().stream().filter(each -> !isBattery(each)).map(Supply::when)
                .reduce(metered.vehicles().none(), Condition::or);
        for (Load load : connections.loads()) {
            findings.checkCancelled();
            Condition before = load.when().vehicles().none();
            for (Point pin : load.pins()) {
                before = before.or(battery.at(pin).minus(machine.at(pin)));
            }
            before = before.and(load.when()).and(metered).and(charged);
            if (connections.fitment().ours()) {
                before = before.and(ours(connections, load));
            }
            if (!before.isNever() && load.part().word(Part.WordKind.TYPE).filter(CRANKING::contains).isEmpty()) {
                report(connections, load, ((Link.Inside) meter.get().link()).holder(), before, findings);
            }
        }
    }

    private static boolean isAmmeter(Edge edge) {
        return edge.link() instanceof Link.Inside inside
                && inside.part().word(Part.WordKind.TYPE).filter("ammeter"::equals).isPresent();
    }

    private static boolean isBattery(Supply supply) {
        return supply.type().equals("battery");
    }

    /** In which vehicles a wire of ours is connected with a load. */
    private static Condition ours(Connections connections, Load load) {
        Map<Point, Condition> pins = new LinkedHashMap<>();
        load.pins().forEach(pin -> pins.put(pin, load.when()));
        Reach near = connections.from(pins, edge -> !edge.isGround());
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

    private static void report(Connections connections, Load load, Link.Holder meter, Condition before,
            Findings findings) {
        String name = load.device().name();
        Draft draft = findings.about(load.device().owner(), name, name);
        if (connections.fitment().ours()) {
            draft.ours();
        } else {
            draft.factory();
        }
        draft.when(before).key("load-on-battery-side-of-ammeter " + name)
                .at(load.device().device().name().span(), "fed ahead of the ammeter")
                .see(meter.name().span(), "ammeter " + meter.name().text())
                .says(name + " takes its current between the battery and ammeter " + meter.name().text()
                        + ": while the machine turns the ammeter carries it, and shows it as charge")
                .step("the battery feeds it without the ammeter, the machine only through it; "
                        + connections.fitment().words())
                .advise("feed it from the machine's side of the ammeter")
                .report();
    }
}
