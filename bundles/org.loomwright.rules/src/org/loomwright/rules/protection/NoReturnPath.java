// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
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
 * A load that is wired, and whose current finds no way back to ground or to the source's return in some vehicle. A way
 * that leaves through a connector whose mate is not described may lead back; a load of which only one pin is wired has
 * none.
 */
public final class NoReturnPath implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("no-return-path", "Does every load have a way back to ground?",
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
        Reaches reaches = Reaches.of(connections);
        List<Reaches> factory = new ArrayList<>();
        boolean asked = false;
        for (Load load : connections.loads()) {
            findings.checkCancelled();
            Condition lost = lost(load, reaches);
            if (!lost.isNever()) {
                if (!asked) {
                    target.factory().forEach(each -> factory.add(Reaches.of(each)));
                    asked = true;
                }
                Condition before = lost.vehicles().none();
                for (Reaches each : factory) {
                    before = before.or(lostBefore(load, each));
                }
                lost = lost.minus(before.minus(ours(connections, load)));
            }
            report(connections, load, lost, findings);
        }
    }

    /** In which vehicles the factory left a load without a way back. */
    private static Condition lostBefore(Load load, Reaches factory) {
        return factory.connections().loads().stream()
                .filter(each -> each.device() == load.device() && each.part() == load.part())
                .map(each -> lost(each, factory)).reduce(load.when().vehicles().none(), Condition::or);
    }

    /** What is connected with ground, with what is not described, and with the insulated pole. */
    private record Reaches(Connections connections, Reach ground, Reach open, Reach fed) {

        static Reaches of(Connections connections) {
            return new Reaches(connections, connections.grounded(), connections.undescribed(), connections.live());
        }
    }

    /** In which vehicles a load is wired and has no way back. */
    private static Condition lost(Load load, Reaches reaches) {
        Condition none = load.when().vehicles().none();
        if (load.grounded()) {
            return none;
        }
        Condition wired = none;
        Condition back = none;
        boolean through = load.device().device().returns();
        for (Point pin : load.pins()) {
            Condition here = wired(reaches.connections(), pin);
            // Declared to return through other devices, as a tell-tale between two feeds: two pins lead somewhere.
            back = through ? back.or(wired.and(here)) : back;
            wired = wired.or(here);
            if (load.feed().filter(pin::equals).isEmpty()) {
                back = back.or(reaches.ground().at(pin));
            }
            for (Point other : load.pins()) {
                if (!other.equals(pin)) {
                    back = back.or(reaches.open().at(pin)
                            .and(reaches.open().at(other).or(reaches.fed().at(other))));
                }
            }
        }
        return load.when().and(wired).minus(back);
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

    private static void report(Connections connections, Load load, Condition lost, Findings findings) {
        String name = load.device().name();
        String kind = load.part().kind().name().toLowerCase(Locale.ROOT);
        findings.about(load.device().owner(), name, kind + " " + name)
                .when(lost).key(connections.fitment().words())
                .at(load.device().device().name().span(), "no way back")
                .see(load.part().name().span(), "part " + load.part().name())
                .says(name + " has no way back to ground " + connections.fitment().words())
                .step(pins(load))
                .advise("wire its return to a ground stud, or say which ground node its case is on")
                .report();
    }

    /** In which vehicles a wire ends at a pin, or in the cavity that is plugged onto it. */
    private static Condition wired(Connections connections, Point pin) {
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

    private static String pins(Load load) {
        List<String> pins = load.pins().stream().filter(pin -> load.feed().filter(pin::equals).isEmpty())
                .map(Point::toString).toList();
        return "from " + String.join(", ", pins)
                + " no connection leads to a ground node, a stud or the return of a source";
    }
}
