// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * Where on the tree each connector, splice, stud and device sits. A connector, stud or device sits at the end of the
 * branch that it names, else at the end of the one branch that goes to its place, or at the datum. Where different
 * branches go there in different vehicles, it has one spot for each. A device is asked for in the vehicles in which a
 * wire ends at it.
 *
 * <p>Immutable; safe for use by several threads. Linear in the number of elements and of branches to each place.
 */
public final class NodeSpots {

    private final HarnessTree tree;
    private final Map<Node, List<Case<Spot>>> spots = new HashMap<>();
    private final List<Problem> problems = new ArrayList<>();

    private NodeSpots(HarnessTree tree) {
        this.tree = tree;
    }

    /** Finds the spots of everything in the drawing or harness of a tree. */
    public static NodeSpots of(HarnessTree tree) {
        NodeSpots found = new NodeSpots(tree);
        found.locate(tree.view());
        found.problems.sort(Comparator.comparing(Problem::span).thenComparing(Problem::code)
                .thenComparing(Problem::message));
        return found;
    }

    /**
     * The spots of the element that a node belongs to; no two for one vehicle. Empty when it has none, and for an
     * element of another drawing or harness.
     */
    public List<Case<Spot>> of(Node node) {
        return spots.getOrDefault(element(node), List.of());
    }

    /** What has no place, no branch, or more than one. Nothing is reported of a source without runs. */
    public List<Problem> problems() {
        return List.copyOf(problems);
    }

    private static Node element(Node node) {
        return new Node(node.kind(), node.owner(), node.element(), "");
    }

    private void locate(WiringView view) {
        for (ConnectorView each : view.connectors().values()) {
            put(each.cavity(""), end("connector", each.name(), each.connector().place(), each.connector().branch(),
                    each.when(), each.connector().name().span()));
        }
        for (WiringView.StudView each : view.studs().values()) {
            put(each.node(), end("stud", each.stud().name().text(), each.stud().place(), each.stud().branch(),
                    each.when(), each.stud().name().span()));
        }
        for (WiringView.SpliceView each : view.splices().values()) {
            String label = "splice \"" + each.splice().name() + "\"";
            List<Case<Spot>> there = tree.spots(each.splice().at());
            put(each.node(), apart(label, there, each.when(), each.splice().name().span(),
                    "the branch at whose end it is"));
        }
        Map<String, DeviceView> devices = new HashMap<>(view.platform().devices());
        devices.values().removeIf(each -> view.devices().containsKey(each.name()));
        devices.putAll(view.devices());
        Map<Node, Case<Node>> wired = new LinkedHashMap<>();
        for (WireView wire : view.wires()) {
            for (List<Case<Node>> ends : List.of(wire.from(), wire.to())) {
                for (Case<Node> end : ends) {
                    if (end.value().kind() == Node.Kind.PIN && devices.containsKey(end.value().element())) {
                        Node node = element(end.value());
                        wired.merge(node, new Case<>(node, end.when().and(wire.when()), end.span()),
                                (first, next) -> new Case<>(node, first.when().or(next.when()), first.span()));
                    }
                }
            }
        }
        for (Case<Node> each : wired.values()) {
            DeviceView device = devices.get(each.value().element());
            put(each.value(), end("device", device.name(), device.device().place(), Optional.empty(),
                    device.when().and(each.when()), device.owner().equals(view.name())
                            ? device.device().name().span() : each.span()));
        }
    }

    private void put(Node node, List<Case<Spot>> found) {
        spots.put(node, found);
    }

    private List<Case<Spot>> end(String sort, String name, Optional<Ref> place, Optional<Ref> branch, Condition when,
            Span span) {
        String label = sort + " \"" + name + "\"";
        if (branch.isPresent()) {
            List<Case<Spot>> there = tree.run(branch.get().text()).flatMap(TreeRun::end)
                    .map(spot -> List.of(new Case<>(spot, spot.when(), spot.span()))).orElse(List.of());
            return apart(label, there, when, branch.get().span(), "one branch");
        }
        if (place.isEmpty() || place.get().text().isEmpty()) {
            if (!tree.isShapeless()) {
                problem("end-unplaced", span, label + " has neither a place nor a branch", "state where it is");
            }
            return List.of();
        }
        return apart(label, tree.ends(place.get().text()), when, span, "its branch: on ...");
    }

    /** Cuts the spots to the vehicles of an element and to each other, and reports what is missing or doubled. */
    private List<Case<Spot>> apart(String label, List<Case<Spot>> there, Condition when, Span span, String name) {
        Condition within = when.and(tree.vehicles());
        Condition rest = within;
        List<Case<Spot>> found = new ArrayList<>();
        for (Case<Spot> each : there) {
            Condition both = each.when().and(within);
            Condition own = both.and(rest);
            if (!both.minus(own).isNever()) {
                problem("branch-ambiguous", span, label + " may be at the end of \"" + found.getFirst().value().label()
                        + "\" or of \"" + each.value().label() + "\"" + words(both.minus(own)), "name " + name);
            }
            if (!own.isNever()) {
                found.add(new Case<>(each.value(), own, each.span()));
                rest = rest.minus(own);
            }
        }
        if (!rest.isNever() && !tree.isShapeless()) {
            problem("end-unreached", span, "no trunk or branch reaches " + label + words(rest),
                    "add a branch to its place, or correct the place");
        }
        return List.copyOf(found);
    }

    private static String words(Condition condition) {
        return condition.isAlways() ? "" : " (" + condition.words() + ")";
    }

    private void problem(String code, Span span, String message, String advice) {
        problems.add(new Problem(code, span, message, advice, List.of()));
    }
}
