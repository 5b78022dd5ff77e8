// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.compare.matrix.Alike;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * What a written harness has for each thing of a draft. An end of a wire is had where some wire of the harness meets
 * the same pin of the same thing; connectors that mate no device are told as in the
 * {@linkplain org.loomwright.compare.matrix.Matrix matrix}.
 */
final class Twins {

    private final WiringView ours;
    private final WiringView theirs;
    private final Pins mine;
    private final Pins wanted;
    private final Map<String, String> connectors = new HashMap<>();
    private final Map<String, String> studs = new HashMap<>();
    private final Map<String, String> devices = new HashMap<>();

    Twins(Project project, WiringView ours, WiringView theirs, Cancel cancel) {
        this.ours = ours;
        this.theirs = theirs;
        this.mine = new Pins(ours);
        this.wanted = new Pins(theirs);
        Alike alike = Alike.of(project, List.of(ours, theirs), cancel);
        alike.studs().forEach(row -> pair(row, studs));
        alike.devices().forEach(row -> {
            if (row.size() == 2) {
                devices.put(row.get(1).name().text(), row.get(0).name().text());
            }
        });
        Map<String, String> rows = new HashMap<>();
        alike.connectors().forEach(row -> pair(row, rows));
        for (ConnectorView each : theirs.connectors().values()) {
            twin(each, rows).ifPresent(name -> connectors.put(each.name(), name));
        }
    }

    private static void pair(Map<Integer, String> row, Map<String, String> pairs) {
        if (row.size() == 2) {
            pairs.put(row.get(1), row.get(0));
        }
    }

    private Optional<String> twin(ConnectorView connector, Map<String, String> rows) {
        Set<ConnectorView.Mate> mates = mates(connector);
        Optional<String> same = ours.connectors().values().stream().filter(each -> mates(each).stream()
                .anyMatch(mates::contains)).map(ConnectorView::name).findFirst();
        return same.or(() -> Optional.ofNullable(rows.get(connector.name())).filter(name -> isFace(connector)
                || isFace(ours.connectors().get(name)) ? isFace(connector) == isFace(ours.connectors().get(name))
                        : mates.isEmpty() || ours.connectors().get(name).mates().isEmpty()));
    }

    private static Set<ConnectorView.Mate> mates(ConnectorView connector) {
        Set<ConnectorView.Mate> mates = new HashSet<>();
        connector.mates().forEach(each -> mates.add(each.value()));
        return mates;
    }

    /** A connector to other wiring. */
    private static boolean isFace(ConnectorView connector) {
        return !connector.mates().isEmpty() && connector.mates().stream().noneMatch(each -> each.value().device());
    }

    Optional<String> connector(String theirs) {
        return Optional.ofNullable(connectors.get(theirs));
    }

    Optional<String> device(String theirs) {
        return Optional.ofNullable(devices.get(theirs));
    }

    Optional<String> stud(String theirs) {
        return Optional.ofNullable(studs.get(theirs));
    }

    /** The ends of ours that are what an end of the draft is, and the vehicles in which each is. */
    Map<Node, Condition> of(Node node, Condition when) {
        Map<Node, Condition> all = new LinkedHashMap<>();
        switch (node.kind()) {
            case STUD -> stud(node.element()).map(name -> ours.studs().get(name)).ifPresent(stud -> add(all,
                    stud.node(), when.and(stud.when())));
            case PIN, CAVITY -> {
                wanted.outside(node, when).forEach((pin, in) -> mine.at(pin).forEach((each, has) -> add(all, each,
                        in.and(has))));
                if (node.kind() == Node.Kind.PIN) {
                    device(node.element()).filter(name -> node.owner().equals(theirs.name()))
                            .map(name -> ours.devices().get(name)).ifPresent(device -> add(all,
                                    device.pin(node.pin()), when.and(device.when())));
                } else {
                    connector(node.element()).map(name -> ours.connectors().get(name).cavity(node.pin()))
                            .ifPresent(each -> Optional.ofNullable(mine.wired().get(each)).ifPresent(has -> add(all,
                                    each, when.and(has).minus(any(all, when)))));
                }
            }
            default -> {
                // a splice is told by its neighbours
            }
        }
        return all;
    }

    private static Condition any(Map<Node, Condition> all, Condition when) {
        return when.vehicles().anyOf(all.values());
    }

    private static void add(Map<Node, Condition> all, Node node, Condition when) {
        if (!when.isNever()) {
            all.merge(node, when, Condition::or);
        }
    }

    /** The vehicles in which ours lacks what the draft has at an end; never for what is not at the outside. */
    Condition lacking(Node node) {
        Condition when = wanted.wired().get(node).and(ours.when());
        boolean outside = node.kind() == Node.Kind.CAVITY || node.kind() == Node.Kind.PIN && !node.owner().equals(
                theirs.name());
        return outside ? when.minus(any(of(node, when), when)) : when.vehicles().none();
    }

    /** Whether a wire of ours ends there, at one of its ends. */
    static boolean endsAt(WireView wire, Node node) {
        return wire.from().stream().map(Case::value).anyMatch(node::equals)
                || wire.to().stream().map(Case::value).anyMatch(node::equals);
    }
}
