// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.electric;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.network.Boundary;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.network.Usual;
import org.loomwright.harness.Name;
import org.loomwright.harness.link.Node;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** Says what was assumed behind connectors whose other half nobody describes, where circuits were solved. */
public final class OtherHalfAssumed implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("other-half-assumed",
            "Is what lies behind every connector described?", Severity.NOTE, Kind.ENGINEERING,
            Scope.OPERATING_POINTS, "common practice: a supply in good order behind what feeds loads, ground behind"
                    + " their returns, and nothing that draws current behind the rest");

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
        target.circuits(findings.cancel()).survey().ifPresent(survey -> {
            Map<Node, List<Boundary>> by = new LinkedHashMap<>();
            for (Boundary each : survey.schematic().boundaries()) {
                if (each.point() instanceof Point.Spot spot) {
                    Node node = spot.node();
                    by.computeIfAbsent(new Node(node.kind(), node.owner(), node.element(), ""),
                            key -> new ArrayList<>()).add(each);
                }
            }
            by.forEach((node, list) -> report(survey.schematic(), node, list, findings));
        });
    }

    private static void report(Schematic schematic, Node node, List<Boundary> boundaries, Findings findings) {
        Fitment fitment = schematic.fitment();
        if (fitment.ours() && !fitment.isOurs(node.owner())) {
            return; // said where the vehicle is as the factory wired it
        }
        Name name = fitment.fitted().get(node.owner()).view().connectors().get(node.element()).connector().name();
        Condition when = boundaries.stream().map(Boundary::when).reduce(Condition::or).orElseThrow();
        Map<Boundary.Kind, List<String>> cavities = new EnumMap<>(Boundary.Kind.class);
        boundaries.forEach(each -> cavities.computeIfAbsent(each.kind(), key -> new ArrayList<>())
                .add(((Point.Spot) each.point()).node().pin()));
        List<String> words = new ArrayList<>();
        cavities.forEach((kind, list) -> words.add(words(kind) + " behind " + (list.size() == 1 ? "cavity "
                : "cavities ") + String.join(", ", list.stream().distinct().toList())));
        Draft draft = findings.about(node.owner(), node.element(), "connector " + node.element());
        if (fitment.ours()) {
            draft.ours();
        } else {
            draft.factory();
        }
        draft.when(when).at(name.span(), "mates nothing that is described").key("assumed")
                .says("connector " + node.element() + " is looked at without its other half: "
                        + String.join("; ", words))
                .advise("describe the other half and let the connector mate it; a drawing with that connector and"
                        + " what stands behind it is enough");
        if (cavities.containsKey(Boundary.Kind.FEED)) {
            double scale = schematic.nominal() / 12;
            draft.step("the supply: the vehicle's battery through " + Figure.of(1000 * Usual.ASSUMED_OHMS * scale)
                    + " mohm; without one " + Figure.of(Usual.ASSUMED_VOLTS * scale, 1) + " V behind "
                    + Figure.of(1000 * Usual.ASSUMED_OHMS * scale) + " mohm, with the engine turning "
                    + Figure.of(Usual.REGULATED * scale, 1) + " V up to " + Figure.of(Usual.ASSUMED_AMPS) + " A")
                    .step("it is on in every mode but those with the key off");
        }
        draft.report();
    }

    private static String words(Boundary.Kind kind) {
        return switch (kind) {
            case FEED -> "a supply is assumed";
            case GROUND -> "ground is assumed";
            case NOTHING -> "nothing that draws current is assumed";
        };
    }
}
