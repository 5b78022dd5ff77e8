// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * What a written harness lacks of what its drawings connect, as changes of its text: connectors with the branches to
 * them, the other half of a year, wires with what they join, and thicker conductors. Everything that is written stays
 * as it is, but for a conductor that is too thin, and for a plug or cap of what is used now.
 *
 * <p>An end is lacking where a drawing has a wire at a pin in some vehicles and ours has none there in them. How ours
 * joins ends, through which fuses and relays, is the engineer's, so nothing is said about ends that it has.
 *
 * @param edits   the changes
 * @param choices what was taken over, and what was left to the engineer
 */
public record TakeOver(List<TextEdit> edits, List<Choice> choices) {

    public TakeOver {
        edits = List.copyOf(edits);
        choices = List.copyOf(choices);
    }

    /**
     * Finds it. Pure; grows with the number of elements, but for conditions.
     *
     * @param project  with the draft in it
     * @param ours     the written harness
     * @param draft    a draft from the drawings that it covers
     * @param drawings these drawings
     * @param text     the text of the file that the harness is in
     */
    public static TakeOver of(Project project, WiringView ours, WiringView draft, List<WiringView> drawings,
            String text, Cancel cancel) {
        List<Choice> choices = new ArrayList<>();
        Additions additions = new Additions(text);
        Cover cover = new Cover(List.of(draft));
        Twins twins = new Twins(project, ours, draft, cancel);
        TakingOver job = new TakingOver(ours, draft, drawings, cover, names(ours), additions, choices);
        TakenRuns runs = new TakenRuns(job);
        Map<Node, Condition> lacking = new LinkedHashMap<>();
        for (Node node : new Pins(draft).wired().keySet()) {
            Condition when = twins.lacking(node);
            if (!when.isNever()) {
                lacking.put(node, when);
            }
        }
        TakenConnectors connectors = new TakenConnectors(job, twins, runs);
        Set<String> branches = new LinkedHashSet<>();
        lacking.keySet().stream().filter(node -> node.kind() == Node.Kind.CAVITY).map(node -> draft.connectors().get(
                node.element()).connector()).forEach(each -> each.branch().ifPresent(ref -> branches.add(ref.text())));
        runs.prepare(branches);
        for (ConnectorView each : draft.connectors().values()) {
            Map<Node, Condition> here = new LinkedHashMap<>();
            lacking.forEach((node, when) -> {
                if (node.kind() == Node.Kind.CAVITY && node.element().equals(each.name())) {
                    here.put(node, when);
                }
            });
            connectors.take(each, here);
        }
        new TakenWires(job, twins, runs).take(lacking, connectors.added());
        runs.uncap();
        LargerSizes.raise(job);
        return new TakeOver(additions.edits(), choices);
    }

    private static NameBook names(WiringView ours) {
        NameBook names = new NameBook();
        ours.wiring().datum().ifPresent(ref -> names.take(ref.text()));
        ours.wiring().runs().forEach(run -> {
            names.take(run.name().text());
            run.breakouts().forEach(each -> names.take(each.name().text()));
            run.barriers().forEach(each -> names.take(each.name().text()));
        });
        ours.connectors().keySet().forEach(names::take);
        ours.splices().keySet().forEach(names::take);
        ours.studs().keySet().forEach(names::take);
        ours.devices().keySet().forEach(names::take);
        ours.wiring().placed().forEach(each -> names.take(each.name().text()));
        return names;
    }
}
