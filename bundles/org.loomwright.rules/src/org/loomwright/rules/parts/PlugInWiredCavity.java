// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Connector;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A blind plug in a cavity that holds a wire in the same vehicle. */
public final class PlugInWiredCavity implements Rule<Target.OfHousing> {

    private static final RuleInfo INFO = new RuleInfo("plug-in-wired-cavity",
            "Is every cavity that is plugged free of wires?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.HOUSING,
            "the meaning of the word: a plug closes a cavity that holds no terminal");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHousing> target() {
        return Target.OfHousing.class;
    }

    @Override
    public void check(Target.OfHousing target, Findings findings) {
        for (Connector.CavityFact fact : target.connector().connector().cavities()) {
            if (fact.kind() == Connector.CavityKind.PLUG) {
                plug(target, fact, findings);
            }
        }
    }

    private static void plug(Target.OfHousing target, Connector.CavityFact fact, Findings findings) {
        Condition plugged = FittedPart.when(target, fact);
        Condition both = plugged.vehicles().none();
        Draft draft = findings.about(target.wiring().name(), target.connector().name(),
                "connector " + target.connector().name());
        String wire = "";
        for (WireEnd end : FittedPart.ends(target, fact.cavity().text())) {
            Condition here = plugged.and(end.when());
            if (!here.isNever()) {
                both = both.or(here);
                wire = wire.isEmpty() ? end.wire().label() : wire;
                draft.see(end.span(), "wire " + end.wire().label());
            }
        }
        if (!both.isNever()) {
            Condition free = plugged.minus(both);
            if (free.isNever()) {
                draft.guess("leave out the plug", findings.writing().withoutLine(fact.span()));
            } else if (fact.when() instanceof Expression.Always) {
                draft.guess("plug it only when " + free.words(),
                        findings.writing().behind(fact.span(), " when " + free.words()));
            }
        }
        draft.when(both).key(fact.cavity() + " " + fact.value())
                .at(fact.value().span(), "closes cavity " + fact.cavity())
                .says("plug " + fact.value() + " closes cavity " + target.connector().name() + ":" + fact.cavity()
                        + ", which holds wire " + wire)
                .advise("give the plug the condition of the vehicles that do not have the wire, or correct the cavity")
                .report();
    }
}
