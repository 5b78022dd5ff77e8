// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A cavity with wires of two circuits in one vehicle. A cavity holds one terminal; wires of one circuit may share it,
 * wires of two circuits would be joined by it.
 */
public final class CavityTakenTwice implements Rule<Target.OfHousing> {

    private static final RuleInfo INFO = new RuleInfo("cavity-taken-twice",
            "Does each cavity hold one circuit at a time?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.HOUSING,
            "common practice: a cavity holds one terminal, and a terminal joins all wires that are crimped in it");

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
        Map<String, List<WireEnd>> byCavity = new LinkedHashMap<>();
        for (WireEnd end : target.ends()) {
            byCavity.computeIfAbsent(end.node().pin(), key -> new ArrayList<>()).add(end);
        }
        byCavity.values().forEach(ends -> cavity(ends, findings));
    }

    private static void cavity(List<WireEnd> ends, Findings findings) {
        for (int later = 1; later < ends.size(); later++) {
            WireEnd end = ends.get(later);
            Condition both = end.when().vehicles().none();
            List<WireEnd> others = new ArrayList<>();
            for (WireEnd before : ends.subList(0, later)) {
                Condition shared = before.when().and(end.when());
                if (!sameCircuit(before, end) && !shared.isNever()) {
                    both = both.or(shared);
                    others.add(before);
                }
            }
            if (!others.isEmpty()) {
                WireEnd other = others.getFirst();
                Draft draft = findings.about(end.wire()).when(both).key(end.node().label())
                        .at(end.span(), "circuit " + circuit(end))
                        .says("cavity " + end.node().label() + " holds wire " + end.wire().label() + " of circuit "
                                + circuit(end) + " and wire " + other.wire().label() + " of circuit " + circuit(other))
                        .advise("give one of them a cavity of its own, or join the two in one circuit if they are one");
                others.forEach(each -> draft.see(each.span(), "circuit " + circuit(each)));
                draft.report();
            }
        }
    }

    private static boolean sameCircuit(WireEnd a, WireEnd b) {
        return circuit(a).equals(circuit(b));
    }

    private static String circuit(WireEnd end) {
        return end.wire().circuit().name().text();
    }
}
