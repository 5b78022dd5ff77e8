// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.LinkedHashMap;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** Two circuits of one drawing or harness with the same number. */
public final class DuplicateCircuit implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("duplicate-circuit",
            "Does each circuit number stand for one circuit?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.HARNESS,
            "the meaning of the language: a name is unique in its drawing or harness whatever the conditions");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHarness> target() {
        return Target.OfHarness.class;
    }

    @Override
    public void check(Target.OfHarness target, Findings findings) {
        WiringView view = target.wiring();
        Map<String, WiringView.CircuitView> seen = new LinkedHashMap<>();
        for (WiringView.CircuitView again : view.circuits()) {
            String name = again.circuit().name().text();
            WiringView.CircuitView first = name.isEmpty() ? null : seen.putIfAbsent(name, again);
            if (first == null) {
                continue;
            }
            Condition both = first.when().and(again.when());
            Draft draft = findings.about(view.name(), name, "circuit " + name)
                    .at(again.circuit().name().span(), "second circuit " + name)
                    .see(first.circuit().name().span(), "first circuit " + name);
            if (both.isNever()) {
                draft.when(again.when()).key("apart")
                        .says("circuit " + name + " is declared twice, for vehicles that have nothing in common")
                        .advise("keep one circuit and put the conditions on what differs: size, colour, ends");
            } else {
                draft.when(both).key("together").says("two circuits have the number " + name)
                        .advise("give one of them another number, or join them");
            }
            draft.report();
        }
    }
}
