// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.List;
import java.util.Locale;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
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
        LoadWays.tell(target, findings, NoReturnPath::lost, (load, lost) -> report(target.connections(), load, lost,
                findings));
    }

    /** In which vehicles a load is wired and has no way back. */
    private static Condition lost(Load load, LoadWays ways) {
        Condition none = load.when().vehicles().none();
        if (load.grounded()) {
            return none;
        }
        Condition wired = none;
        Condition back = none;
        boolean through = load.device().device().returns();
        for (Point pin : load.pins()) {
            Condition here = ways.wired(pin);
            // Declared to return through other devices, as a tell-tale between two feeds: two pins lead somewhere.
            back = through ? back.or(wired.and(here)) : back;
            wired = wired.or(here);
            if (load.feed().filter(pin::equals).isEmpty()) {
                back = back.or(ways.ground().at(pin));
            }
            for (Point other : load.pins()) {
                if (!other.equals(pin)) {
                    back = back.or(ways.open().at(pin)
                            .and(ways.open().at(other).or(ways.fed().at(other))));
                }
            }
        }
        return load.when().and(wired).minus(back);
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

    private static String pins(Load load) {
        List<String> pins = load.pins().stream().filter(pin -> load.feed().filter(pin::equals).isEmpty())
                .map(Point::toString).toList();
        return "from " + String.join(", ", pins)
                + " no connection leads to a ground node, a stud or the return of a source";
    }
}
