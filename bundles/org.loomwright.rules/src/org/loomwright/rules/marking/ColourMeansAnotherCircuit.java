// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.marking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A wire of ours in a colour that the factory's drawing of the same vehicle gives to another circuit. Asked of circuits
 * that say which of the factory's they stand for; a colour that the factory itself used for that circuit, too, is no
 * news to anybody who works by its drawing.
 */
public final class ColourMeansAnotherCircuit implements Rule<Target.OfProject> {

    private static final RuleInfo INFO = new RuleInfo("colour-means-another-circuit",
            "Does each colour of ours mean what it means in the factory's drawing?", Severity.WARNING,
            Kind.ENGINEERING, Scope.PROJECT,
            "common practice: whoever works on the car works by the factory's diagram");

    /** Where a colour is used, and in which vehicles. */
    private record Use(Circuit circuit, Colour colour, Span span, Condition when) {
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfProject> target() {
        return Target.OfProject.class;
    }

    @Override
    public void check(Target.OfProject target, Findings findings) {
        Project project = target.project();
        Map<String, List<Use>> factory = new LinkedHashMap<>();
        for (WiringView harness : project.harnesses()) {
            findings.checkCancelled();
            List<Use> ours = uses(harness);
            for (String name : harness.covers()) {
                WiringView drawing = project.wirings().get(name);
                if (drawing != null && drawing.platform().vehicles() == harness.platform().vehicles()) {
                    List<Use> theirs = factory.computeIfAbsent(name, key -> uses(drawing));
                    ours.forEach(use -> use(harness, drawing, use, theirs, findings));
                }
            }
        }
    }

    /** The colours of the circuits of a drawing or harness: an entry for each circuit and place where one is stated. */
    private static List<Use> uses(WiringView view) {
        Map<List<Object>, Use> uses = new LinkedHashMap<>();
        for (WireView wire : view.wires()) {
            for (Case<Colour> colour : wire.colours()) {
                Condition when = colour.when().and(wire.when());
                if (!when.isNever()) {
                    uses.merge(List.of(wire.circuit().name().text(), colour.value(), colour.span()),
                            new Use(wire.circuit(), colour.value(), colour.span(), when),
                            (a, b) -> new Use(a.circuit(), a.colour(), a.span(), a.when().or(b.when())));
                }
            }
        }
        return new ArrayList<>(uses.values());
    }

    private static void use(WiringView harness, WiringView drawing, Use ours, List<Use> theirs, Findings findings) {
        Set<String> same = new LinkedHashSet<>();
        for (Circuit.Origin origin : ours.circuit().origins()) {
            if (origin.drawing().text().equals(drawing.name())) {
                same.add(origin.number());
            }
        }
        if (same.isEmpty()) {
            return;
        }
        Condition when = ours.when().and(drawing.when());
        for (Use each : theirs) {
            if (same.contains(number(each)) && each.colour().equals(ours.colour())) {
                when = when.minus(each.when());
            }
        }
        Condition all = when.vehicles().none();
        List<Use> others = new ArrayList<>();
        for (Use each : theirs) {
            Condition both = when.and(each.when());
            if (!same.contains(number(each)) && each.colour().equals(ours.colour()) && !both.isNever()) {
                all = all.or(both);
                others.add(each);
            }
        }
        others.sort(Comparator.comparing(each -> !isOwn(each)));
        if (!others.isEmpty()) {
            report(harness, drawing, ours, String.join(", ", same), others, all, findings);
        }
    }

    /** Whether a colour is that of the circuit, not only of one of its wires. */
    private static boolean isOwn(Use use) {
        return use.circuit().colours().stream().anyMatch(fact -> fact.value().equals(use.colour()));
    }

    private static void report(WiringView harness, WiringView drawing, Use ours, String same, List<Use> others,
            Condition when, Findings findings) {
        Use first = others.getFirst();
        Draft draft = findings.about(harness.name(), number(ours), "circuit " + number(ours)).when(when)
                .key(ours.colour() + " " + drawing.name())
                .at(ours.span(), ours.colour() + " for the factory's circuit " + same)
                .says("circuit " + number(ours) + " is " + ours.colour() + ", which in " + drawing.name()
                        + " is the colour of circuit " + number(first)
                        + (first.circuit().title().isEmpty() ? "" : " \"" + first.circuit().title() + "\"")
                        + "; it stands for circuit " + same + " there")
                .advise("give it the factory's colour or a free one in these vehicles, or say so on their sheets and"
                        + " accept it");
        others.forEach(each -> draft.see(each.span(), each.colour() + " is circuit " + number(each) + " here"));
        draft.report();
    }

    private static String number(Use use) {
        return use.circuit().name().text();
    }
}
