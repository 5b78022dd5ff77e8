// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A wire that ends where it starts, in all vehicles that have it or in some. */
public final class WireToItself implements Rule<Target.OfCircuit> {

    private static final RuleInfo INFO = new RuleInfo("wire-to-itself",
            "Does every wire lead from one spot to another?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.CIRCUIT,
            "the meaning of the language: a wire has two ends");

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
            if (!meets(wire)) {
                continue;
            }
            List<WireEnd> ends = WireEnd.there(target.wiring(), wire);
            for (WireEnd start : ends.stream().filter(WireEnd::start).toList()) {
                ends.stream().filter(end -> !end.start() && end.node().equals(start.node()))
                        .forEach(end -> report(wire, start, end, findings));
            }
        }
    }

    /** Whether it starts and ends at the same thing, if not at the same spot of it. */
    private static boolean meets(WireView wire) {
        for (Case<Node> from : wire.from()) {
            for (Case<Node> to : wire.to()) {
                if (from.value().element().equals(to.value().element())) {
                    return true;
                }
            }
        }
        return false;
    }

    private static void report(WireView wire, WireEnd start, WireEnd end, Findings findings) {
        String spot = end.node().label();
        Condition when = start.when().and(end.when());
        Draft draft = findings.about(wire).when(when).key(spot)
                .at(end.span(), "ends where it starts")
                .see(start.span(), "starts at " + spot)
                .says("wire " + wire.label() + " leads from " + spot + " to " + spot)
                .advise("say where it really goes, or remove it");
        if (wire.when().minus(when).isNever()) {
            draft.guess("remove the wire", findings.writing().withoutLine(wire.wire().span()));
        }
        draft.report();
    }
}
