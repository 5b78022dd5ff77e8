// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.marking;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Colour;
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

/**
 * Two wires of different circuits that have one colour in one housing in some vehicle. Two circuits that both end at a
 * ground stud of the same drawing or harness are taken for grounds, which may be changed over.
 */
public final class ColoursAlikeInHousing implements Rule<Target.OfHousing> {

    private static final RuleInfo INFO = new RuleInfo("colours-alike-in-housing",
            "Can the wires of each housing be told apart by colour?", Severity.WARNING, Kind.ENGINEERING,
            Scope.HOUSING, "common practice: wires that could be changed over in a housing have different colours");

    /** As many of the other wires are shown beside a finding. */
    private static final int SHOWN = 3;

    /** A wire end in one of its colours. */
    private record Coloured(WireEnd end, Case<Colour> colour, Condition when) {
        String circuit() {
            return end.wire().circuit().name().text();
        }
    }

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
        Map<Colour, List<Coloured>> byColour = new LinkedHashMap<>();
        for (WireEnd end : target.ends()) {
            for (Case<Colour> colour : end.wire().colours()) {
                Condition when = colour.when().and(end.when());
                if (!when.isNever()) {
                    byColour.computeIfAbsent(colour.value(), key -> new ArrayList<>())
                            .add(new Coloured(end, colour, when));
                }
            }
        }
        byColour.forEach((colour, ends) -> colour(target, colour, ends, findings));
    }

    private static void colour(Target.OfHousing target, Colour colour, List<Coloured> ends, Findings findings) {
        for (int later = 1; later < ends.size(); later++) {
            Coloured end = ends.get(later);
            Condition both = end.when().vehicles().none();
            List<Coloured> others = new ArrayList<>();
            for (Coloured before : ends.subList(0, later)) {
                Condition shared = before.when().and(end.when());
                if (!before.circuit().equals(end.circuit()) && !before.end().node().equals(end.end().node())
                        && !shared.isNever()) {
                    shared = shared.minus(grounds(target, before.circuit(), end.circuit()));
                    if (!shared.isNever()) {
                        both = both.or(shared);
                        others.add(before);
                    }
                }
            }
            if (!others.isEmpty()) {
                Coloured other = others.getFirst();
                Draft draft = findings.about(end.end().wire()).when(both)
                        .key(end.end().node().label() + " " + colour)
                        .at(end.end().span(), colour + ", circuit " + end.circuit())
                        .says("wire " + end.end().wire().label() + " in " + end.end().node().label() + " and wire "
                                + other.end().wire().label() + " in " + other.end().node().label() + " are both "
                                + colour)
                        .advise("give one of them another tracer; until then mark both ends");
                others.stream().limit(SHOWN)
                        .forEach(each -> draft.see(each.end().span(), colour + ", circuit " + each.circuit()));
                draft.report();
            }
        }
    }

    /** The vehicles in which both circuits end at a ground stud. */
    private static Condition grounds(Target.OfHousing target, String one, String other) {
        return grounded(target, one).and(grounded(target, other));
    }

    private static Condition grounded(Target.OfHousing target, String circuit) {
        Condition grounded = target.connector().when().vehicles().none();
        for (WireView wire : target.wiring().wires()) {
            if (wire.circuit().name().text().equals(circuit)) {
                for (WireEnd end : WireEnd.there(target.wiring(), wire)) {
                    grounded = end.node().kind() == Node.Kind.STUD ? grounded.or(end.when()) : grounded;
                }
            }
        }
        return grounded;
    }
}
