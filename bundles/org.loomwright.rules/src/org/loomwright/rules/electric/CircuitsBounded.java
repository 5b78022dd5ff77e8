// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.electric;

import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.mode.Mode;
import org.loomwright.rules.Circuits;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** Says of which vehicles a check did not solve the circuits, since there are too many that differ. */
public final class CircuitsBounded implements Rule<Target.OfNetwork> {

    private static final int TOLD = 4;
    private static final RuleInfo INFO = new RuleInfo("circuits-bounded", "Were the circuits of every vehicle solved?",
            Severity.NOTE, Kind.ENGINEERING, Scope.OPERATING_POINTS, "what was not solved is not judged");

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
        Circuits circuits = target.circuits(findings.cancel());
        if (!circuits.isBounded()) {
            return;
        }
        Fitment fitment = target.connections().fitment();
        Draft draft = findings.about(fitment.platform().name(), "", "platform " + fitment.platform().name());
        if (fitment.ours()) {
            draft.ours();
        } else {
            draft.factory();
        }
        String modes = circuits.tooMany() ? "" : words(circuits.bounded());
        draft.when(fitment.domain()).at(fitment.platform().platform().name().span(), "").key("bounded " + modes)
                .says("bounded: not every vehicle's currents and voltages were solved" + (modes.isEmpty() ? ""
                        : " in " + modes))
                .advise("call check --every, which solves all of them and may take many minutes, or electric with"
                        + " --vehicle for one")
                .report();
    }

    private static String words(List<Mode> modes) {
        String names = modes.stream().limit(TOLD).map(Mode::name).collect(Collectors.joining(", "));
        return (modes.size() == 1 ? "mode " : "modes ") + names
                + (modes.size() > TOLD ? " and " + (modes.size() - TOLD) + " more" : "");
    }
}
