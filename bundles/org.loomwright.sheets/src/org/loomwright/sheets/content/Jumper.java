// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * A jumper harness: a lead that plugs into a harness of ours and only makes it longer, so that each of its wires runs
 * from a connector that mates ours to one that does not.
 *
 * @param view       the lead
 * @param connectors names of our connectors that it plugs into
 * @param branches   names of the branches that these are on
 * @param when       the vehicles that have it plugged in, among those of our harness
 */
public record Jumper(WiringView view, Set<String> connectors, Set<String> branches, Condition when) {

    public Jumper {
        connectors = Set.copyOf(connectors);
        branches = Set.copyOf(branches);
    }

    /** The jumpers of a harness, in the order of the project. Linear in the wires of all leads. */
    public static List<Jumper> of(Project project, LaidHarness harness) {
        List<Jumper> jumpers = new ArrayList<>();
        for (WiringView view : project.harnesses()) {
            if (view.platform().vehicles() == harness.view().platform().vehicles() && view.covers().isEmpty()
                    && view.devices().isEmpty() && !view.name().equals(harness.name()) && !view.wires().isEmpty()) {
                of(view, harness, jumpers);
            }
        }
        return List.copyOf(jumpers);
    }

    private static void of(WiringView view, LaidHarness harness, List<Jumper> jumpers) {
        Set<String> inner = new TreeSet<>(new NaturalOrder());
        Set<String> ours = new TreeSet<>(new NaturalOrder());
        Condition when = harness.vehicles().vehicles().none();
        for (ConnectorView connector : view.connectors().values()) {
            for (Case<ConnectorView.Mate> mate : connector.mates()) {
                Condition there = mate.when().and(connector.when()).and(harness.vehicles());
                if (mate.value().owner().equals(harness.name()) && !mate.value().device() && !there.isNever()) {
                    inner.add(connector.name());
                    ours.add(mate.value().element());
                    when = when.or(there);
                }
            }
        }
        boolean through = !inner.isEmpty() && view.wires().stream().allMatch(wire -> goesThrough(wire, inner));
        if (through) {
            Set<String> branches = new TreeSet<>();
            ours.forEach(each -> {
                ConnectorView connector = harness.view().connectors().get(each);
                if (connector != null) {
                    connector.connector().branch().map(Ref::text).ifPresent(branches::add);
                }
            });
            jumpers.add(new Jumper(view, ours, branches, when));
        }
    }

    private static boolean goesThrough(WireView wire, Set<String> inner) {
        List<Node> ends = Stream.concat(wire.from().stream(), wire.to().stream()).map(Case::value).toList();
        return ends.stream().allMatch(each -> each.kind() == Node.Kind.CAVITY)
                && wire.from().stream().allMatch(from -> wire.to().stream().allMatch(to ->
                        inner.contains(from.value().element()) != inner.contains(to.value().element())));
    }

    /** Its title with its name. */
    public String label() {
        String title = view.wiring().title();
        return title.isEmpty() ? view.name() : title + " (" + view.name() + ")";
    }
}
