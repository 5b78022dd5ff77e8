// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A cavity or pin that the housing or device does not have, or none where there are several. */
public final class UnknownCavity implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("unknown-cavity", "Does the part have each cavity that is named?",
            Severity.ERROR, Kind.TRANSCRIPTION, Scope.HARNESS, "the catalogue's list of cavities and pins");

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
        for (WireEnd end : WireEnd.of(view)) {
            Presence.of(view, end.node()).ifPresent(there -> end(end, there, findings));
        }
        for (ConnectorView connector : view.connectors().values()) {
            for (Connector.CavityFact fact : connector.connector().cavities()) {
                Condition when = view.platform().vehicles().resolve(fact.when()).condition().and(connector.when());
                fact(connector, fact, when, findings);
            }
        }
    }

    private static void end(WireEnd end, Presence there, Findings findings) {
        String cavity = end.node().pin();
        for (Case<Part> each : there.parts()) {
            Condition when = end.when().and(each.when());
            Part part = each.value();
            if (part.pins().isEmpty() || part.hasPin(cavity) || cavity.isEmpty() && part.pins().size() == 1) {
                continue;
            }
            Draft draft = findings.about(end.wire()).when(when).key(end.node().label() + " " + part.name());
            if (cavity.isEmpty()) {
                draft.at(end.span(), "which cavity?")
                        .says("wire " + end.wire().label() + " names no cavity of " + there.words() + ", which has "
                                + part.pins().size())
                        .advise("name one: " + end.target().text() + ":" + part.pins().getFirst().name());
            } else {
                misspelt(draft, end.cavity(), end.span(), part, there.words());
            }
            draft.see(part.name().span(), "part " + part.name()).report();
        }
    }

    private static void fact(ConnectorView connector, Connector.CavityFact fact, Condition within, Findings findings) {
        for (Case<Part> each : connector.housings()) {
            Part part = each.value();
            if (part.pins().isEmpty() || part.hasPin(fact.cavity().text())) {
                continue;
            }
            Draft draft = findings.about(connector.owner(), connector.name(), "connector " + connector.name())
                    .when(within.and(each.when())).key(fact.kind() + " " + fact.cavity() + " " + part.name());
            misspelt(draft, fact.cavity(), fact.span(), part, "connector " + connector.name());
            draft.see(part.name().span(), "part " + part.name()).report();
        }
    }

    private static void misspelt(Draft draft, Name cavity, Span otherwise, Part part, String words) {
        Span span = cavity.span().equals(Span.NONE) ? otherwise : cavity.span();
        List<String> pins = part.pins().stream().map(pin -> pin.name().text()).toList();
        Nearest near = Nearest.of(cavity.text(), pins);
        draft.at(span, "no such cavity")
                .says(words + " has no cavity " + cavity + ": part " + part.name() + " has " + list(pins))
                .advise(near.advice("name one of its cavities, or mend the part in the catalogue"));
        near.offer(draft, span);
    }

    private static String list(List<String> pins) {
        return pins.size() <= 4 ? String.join(", ", pins)
                : pins.getFirst() + ", " + pins.get(1) + " ... " + pins.getLast();
    }
}
