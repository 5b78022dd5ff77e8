// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
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

/** A wire of which an end goes nowhere, in all vehicles that have it or in some. */
public final class OrphanWire implements Rule<Target.OfCircuit> {

    private static final RuleInfo INFO = new RuleInfo("orphan-wire", "Does every wire end somewhere at both ends?",
            Severity.ERROR, Kind.TRANSCRIPTION, Scope.CIRCUIT, "the meaning of the language: a wire has two ends");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfCircuit> target() {
        return Target.OfCircuit.class;
    }

    @Override
    public void check(Target.OfCircuit target, Findings findings) {
        for (WireView wire : target.wires()) {
            List<WireEnd> ends = WireEnd.of(wire);
            side(target.wiring(), wire, ends, true, findings);
            side(target.wiring(), wire, ends, false, findings);
        }
    }

    private static void side(WiringView view, WireView wire, List<WireEnd> ends, boolean start, Findings findings) {
        String side = start ? "start" : "end";
        Condition missing = wire.when();
        for (WireEnd end : ends) {
            if (end.start() != start) {
                continue;
            }
            missing = missing.minus(end.when());
            Optional<Presence> there = Presence.of(view, end.node());
            if (there.isEmpty()) {
                nothing(view, wire, end, side, findings);
            } else {
                absent(wire, end, there.get(), side, findings);
            }
        }
        if (missing.isNever()) {
            return;
        }
        findings.about(wire).when(missing).key(side)
                .at(name(wire), "has no " + side)
                .says("wire " + wire.label() + " has no " + side)
                .advise(side.equals("start") ? "say where it starts: from J1:7" : "say where it ends: to S4")
                .report();
    }

    private static void nothing(WiringView view, WireView wire, WireEnd end, String side, Findings findings) {
        String name = end.node().element();
        Span span = new Span(end.target().span().file(), end.target().span().offset(), name.length(),
                end.target().span().line(), end.target().span().column());
        Nearest near = Nearest.of(name, names(view));
        var draft = findings.about(wire).when(end.when()).key(side + " " + name)
                .at(span, "nothing is named " + name)
                .says("the " + side + " of wire " + wire.label() + " goes to \"" + name
                        + "\", and nothing has that name")
                .advise(near.advice("a connector, splice, stud or device of that name is missing"));
        near.offer(draft, span);
        draft.report();
    }

    private static List<String> names(WiringView view) {
        return Stream.of(view.connectors().keySet(), view.splices().keySet(), view.studs().keySet(),
                view.devices().keySet(), view.platform().devices().keySet()).flatMap(Set::stream).toList();
    }

    private static void absent(WireView wire, WireEnd end, Presence there, String side, Findings findings) {
        Condition absent = end.when().minus(there.when());
        if (absent.isNever()) {
            return;
        }
        findings.about(wire).when(absent).key(side + " " + end.node().label())
                .at(end.span(), there.words() + " is not there")
                .see(there.declared(), there.words())
                .says("the " + side + " of wire " + wire.label() + " goes to " + there.words()
                        + ", which these vehicles do not have")
                .advise("put the same condition on the wire, or say where the wire goes in these vehicles")
                .report();
    }

    private static Span name(WireView wire) {
        Span span = wire.wire().name().span();
        return span.equals(Span.NONE) ? wire.wire().span() : span;
    }
}
