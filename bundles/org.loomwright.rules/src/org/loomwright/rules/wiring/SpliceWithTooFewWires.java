// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Counting;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A splice that joins fewer than three wires in some vehicle. */
public final class SpliceWithTooFewWires implements Rule<Target.OfHarness> {

    private static final int LEAST = 3;
    private static final RuleInfo INFO = new RuleInfo("splice-with-too-few-wires",
            "Does every splice join three wires?", Severity.WARNING, Kind.TRANSCRIPTION, Scope.HARNESS,
            "the meaning of the word: a splice is where three or more wires of a circuit join");

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
        Map<String, List<WireEnd>> ends = new LinkedHashMap<>();
        WireEnd.of(view).stream().filter(end -> end.node().kind() == Node.Kind.SPLICE)
                .forEach(end -> ends.computeIfAbsent(end.node().element(), key -> new ArrayList<>()).add(end));
        view.splices().forEach((name, splice) -> splice(splice, name, ends.getOrDefault(name, List.of()), findings));
    }

    private static void splice(WiringView.SpliceView splice, String name, List<WireEnd> ends, Findings findings) {
        List<Condition> there = ends.stream().map(WireEnd::when).toList();
        Condition atLeast = splice.when();
        for (int count = 0; count < LEAST; count++) {
            Condition more = Counting.atLeast(count + 1, there, splice.when());
            report(splice, name, ends, atLeast.minus(more), count, findings);
            atLeast = more;
        }
    }

    private static void report(WiringView.SpliceView splice, String name, List<WireEnd> ends, Condition when, int count,
            Findings findings) {
        Draft draft = findings.about(splice.owner(), name, "splice " + name).when(when).key(Integer.toString(count))
                .at(splice.splice().name().span(), words(count))
                .says("splice " + name + " joins " + words(count))
                .advise(count == 2 ? "run one wire through, or end the splice in these vehicles"
                        : "give the splice the condition of its wires, or the wires that it lacks");
        ends.stream().filter(end -> !end.when().and(when).isNever())
                .forEach(end -> draft.see(end.span(), "wire " + end.wire().label()));
        draft.report();
    }

    private static String words(int count) {
        return switch (count) {
            case 0 -> "no wire";
            case 1 -> "one wire only";
            default -> count + " wires only";
        };
    }
}
