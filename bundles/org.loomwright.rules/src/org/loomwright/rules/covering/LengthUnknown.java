// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import org.loomwright.geometry.Spot;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.Case;
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
 * A length that is unknown or not stated although something hangs on it: whether a harness of ours reaches a place, or
 * how long one of our wires is cut. One on which nothing hangs is left alone.
 */
public final class LengthUnknown implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("length-unknown",
            "Is every length known that fit or cutting needs?", Severity.WARNING, Kind.TRANSCRIPTION, Scope.HARNESS,
            "the definition of fit (docs/fit.md): an unknown length is not proved, never guessed");
    private static final String ADVICE = "measure it on a sample and say so (on sample of 1), take it from the sheet,"
            + " or scale it (scaled)";

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
        UnknownLengths lengths = new UnknownLengths(view, target.shapes());
        lengths.needed().forEach((spot, needs) -> dimension(view, spot, needs, lengths, findings));
        if (view.wiring().isHarness()) {
            view.wires().forEach(wire -> wire(wire, findings));
        }
    }

    private static void dimension(WiringView view, Spot spot, UnknownLengths.Needs needs, UnknownLengths lengths,
            Findings findings) {
        Run run = view.run(spot.run()).orElseThrow();
        boolean missing = spot.kind() == Spot.Kind.END && run.length().isEmpty();
        String sort = switch (spot.kind()) {
            case END -> "branch";
            case BREAKOUT -> "breakout";
            default -> "splice";
        };
        String name = spot.kind() == Spot.Kind.STATION ? lengths.spliceAt(spot).orElse(spot.run()) : spot.name();
        findings.about(view.name(), name, sort + " " + name).when(needs.when())
                .at(spot.span(), missing ? "no length" : "not known")
                .says((spot.kind() == Spot.Kind.END ? "the length of " : "the station of ") + sort + " " + name
                        + (missing ? " is not stated: " : " is unknown: ") + needs.words())
                .advise(ADVICE).report();
    }

    /** A wire of ours that states {@code length unknown}. */
    private static void wire(WireView wire, Findings findings) {
        for (Case<Measure> stated : wire.lengths()) {
            if (stated.value().provenance() == Measure.Provenance.UNKNOWN) {
                findings.about(wire).when(stated.when()).at(stated.span(), "not known")
                        .says("the length of wire " + wire.label() + " is unknown: it cannot be cut")
                        .advise("state it, or leave it out so that the way through the harness gives it")
                        .report();
            }
        }
    }
}
