// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Resolution;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
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
 * A part of a drawing or harness that no possible vehicle has: its condition contradicts the platform's constraints or
 * the condition of what it stands in. Only the outermost such thing is reported.
 */
public final class NeverExists implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("never-exists",
            "Does some vehicle have everything that is written?", Severity.WARNING, Kind.TRANSCRIPTION, Scope.HARNESS,
            "the platform's choices and constraints");

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
        if (view.platform().vehicles().all().isNever()) {
            return;
        }
        if (view.when().isNever()) {
            String words = target.words();
            findings.about(view.name(), "", words).when(view.platform().vehicles().all())
                    .at(view.wiring().name().span(), "for no vehicle")
                    .says(words + " is for no vehicle that can exist")
                    .advise("its condition contradicts the platform's constraints, or the drawings that it covers")
                    .report();
            return;
        }
        Search search = new Search(view, findings);
        search.runs();
        search.ends();
        search.circuits();
        search.rest();
    }

    /** Looks through one drawing or harness. */
    private record Search(WiringView view, Findings findings) {

        void runs() {
            for (Run run : view.wiring().runs()) {
                String words = (run.kind() == Run.Kind.TRUNK ? "trunk " : "branch ") + run.name();
                if (there(words, run.name(), run.when(), run.span(), view.when())) {
                    Condition within = meaning(run.when()).and(view.when());
                    run.breakouts().forEach(each -> there("breakout " + each.name(), each.name(), each.when(),
                            each.span(), within));
                }
            }
        }

        void ends() {
            for (ConnectorView each : view.connectors().values()) {
                String words = "connector " + each.name();
                if (there(words, each.connector().name(), each.connector().when(), each.connector().span(),
                        view.when())) {
                    facts("housing of " + words, each.connector().name(), each.connector().housing(), each.when());
                    facts("mate of " + words, each.connector().name(), each.connector().mates(), each.when());
                }
            }
            view.studs().values().forEach(each -> there("stud " + each.stud().name(), each.stud().name(),
                    each.stud().when(), each.stud().span(), view.when()));
            for (DeviceView each : view.devices().values()) {
                if (there("device " + each.name(), each.device().name(), each.device().when(), each.device().span(),
                        view.when())) {
                    facts("part of device " + each.name(), each.device().name(), each.device().part(), each.when());
                }
            }
        }

        void circuits() {
            for (WiringView.CircuitView each : view.circuits()) {
                there("circuit " + each.circuit().name(), each.circuit().name(), each.circuit().when(),
                        each.circuit().span(), view.when());
            }
            for (WiringView.SpliceView each : view.splices().values()) {
                there("splice " + each.splice().name(), each.splice().name(), each.splice().when(),
                        each.splice().span(), meaning(each.circuit().when()).and(view.when()));
            }
            view.wires().forEach(this::wire);
        }

        private void wire(WireView each) {
            Name name = new Name(each.label(), each.wire().name().span());
            Condition within = meaning(each.circuit().when()).and(view.when());
            if (there("wire " + each.label(), name, each.wire().when(), each.wire().span(), within)) {
                facts("size of wire " + each.label(), name, each.wire().sizes(), each.when());
                facts("colour of wire " + each.label(), name, each.wire().colours(), each.when());
                facts("cable of wire " + each.label(), name, each.wire().cables(), each.when());
                facts("start of wire " + each.label(), name, each.wire().from(), each.when());
                facts("end of wire " + each.label(), name, each.wire().to(), each.when());
                facts("length of wire " + each.label(), name, each.wire().lengths(), each.when());
            }
        }

        void rest() {
            for (Wiring.Placed each : view.wiring().placed()) {
                there("part " + each.name(), each.name(), each.when(), each.span(), view.when());
            }
            for (Ours.Cap each : view.wiring().ours().caps()) {
                there("cap of branch " + each.branch().text(), new Name(each.branch().text(), each.branch().span()),
                        each.when(), each.span(), view.when());
            }
        }

        private <T> void facts(String words, Name element, List<Fact<T>> facts, Condition within) {
            for (Fact<T> fact : facts) {
                there("this " + words, element, fact.when(), within, fact.span(), fact.span());
            }
        }

        private boolean there(String words, Name element, Expression when, Span span, Condition within) {
            Span name = element.span().equals(Span.NONE) ? span : element.span();
            return there(words, element, when, within, name, span);
        }

        /** Reports what stands in vehicles that exist and is itself in none of them; returns whether it is in some. */
        private boolean there(String words, Name element, Expression when, Condition within, Span shown,
                Span whole) {
            if (within.isNever() || when instanceof Expression.Always) {
                return !within.isNever();
            }
            Resolution resolution = view.platform().vehicles().resolve(when);
            if (!resolution.condition().and(within).isNever() || !resolution.isGood()) {
                return true;
            }
            findings.about(view.name(), element.text(), words).when(within).key(words + " " + when.words())
                    .at(shown, "when " + when.words() + ": no vehicle")
                    .says(words + " exists in no vehicle: \"" + when.words() + "\" never holds here")
                    .advise("mend the condition, or remove what it stands on")
                    .guess("remove the line", findings.writing().withoutLine(whole))
                    .report();
            return false;
        }

        private Condition meaning(Expression when) {
            return view.platform().vehicles().resolve(when).condition();
        }
    }
}
