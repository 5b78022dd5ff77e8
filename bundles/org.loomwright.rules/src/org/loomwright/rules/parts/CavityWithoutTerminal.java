// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.LinkedHashMap;
import java.util.Map;
import org.loomwright.condition.Condition;
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

/**
 * A wired cavity of ours for which no terminal is stated in some vehicle, in a connector that states terminals at all.
 * One that states none leaves the choice to the bench and is not asked.
 */
public final class CavityWithoutTerminal implements Rule<Target.OfHousing> {

    private static final RuleInfo INFO = new RuleInfo("cavity-without-terminal",
            "Does every wire get a terminal where terminals are stated?", Severity.WARNING, Kind.ENGINEERING,
            Scope.HOUSING, "common practice: the crimp sheet names a terminal for each wired cavity, or for none");

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
        if (!target.wiring().wiring().isHarness()) {
            return;
        }
        Condition none = target.connector().when().vehicles().none();
        Map<String, Condition> stated = new LinkedHashMap<>();
        for (Connector.CavityFact fact : target.connector().connector().cavities()) {
            if (fact.kind() == Connector.CavityKind.TERMINAL) {
                stated.merge(fact.cavity().text(), FittedPart.when(target, fact), Condition::or);
            }
        }
        if (stated.isEmpty()) {
            return;
        }
        Map<String, Condition> lacking = new LinkedHashMap<>();
        for (WireEnd end : target.ends()) {
            String cavity = end.node().pin();
            lacking.merge(cavity, end.when().minus(stated.getOrDefault(cavity, none)), Condition::or);
        }
        lacking.forEach((cavity, when) -> report(target, cavity, when, findings));
    }

    private static void report(Target.OfHousing target, String cavity, Condition when, Findings findings) {
        String label = cavity.isEmpty() ? target.connector().name() : target.connector().name() + ":" + cavity;
        Draft draft = findings.about(target.wiring().name(), target.connector().name(),
                "connector " + target.connector().name()).when(when).key(cavity)
                .at(target.connector().connector().name().span(), "no terminal for cavity " + cavity)
                .says("cavity " + label + " holds a wire, and no terminal is stated for it")
                .advise("state its terminal: terminal " + (cavity.isEmpty() ? "1" : cavity) + " is ...");
        FittedPart.ends(target, cavity).stream().filter(end -> !end.when().excludes(when))
                .forEach(end -> draft.see(end.span(), "wire " + end.wire().label()));
        draft.report();
    }
}
