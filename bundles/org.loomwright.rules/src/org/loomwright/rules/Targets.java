// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.connection.Connections;
import org.loomwright.rules.connection.Fitment;
import org.loomwright.rules.connection.WireEnd;

/** Lists what there is to look at in a project, in a fixed order. */
final class Targets {

    private Targets() {
    }

    /**
     * Returns the targets of a project. A network whose conditions cannot be followed is left out.
     *
     * @param tooMany told which, and why
     */
    static List<Target> of(Project project, Shapes shapes, Cancel cancel, BiConsumer<PlatformView, String> tooMany) {
        List<Target> targets = new ArrayList<>();
        for (PlatformView platform : project.platforms().values()) {
            List<WiringView> wirings = project.wirings().values().stream()
                    .filter(view -> view.platform().vehicles() == platform.vehicles()).toList();
            targets.add(new Target.OfPlatform(platform, wirings));
            try {
                networks(project, platform, shapes, cancel, targets);
            } catch (TooManyCombinations e) {
                tooMany.accept(platform, e.getMessage());
            }
        }
        for (WiringView view : project.wirings().values()) {
            targets.add(new Target.OfHarness(view, shapes));
            circuits(view, targets);
            housings(view, project, targets);
        }
        targets.add(new Target.OfProject(project, shapes));
        return targets;
    }

    private static void networks(Project project, PlatformView platform, Shapes shapes, Cancel cancel,
            List<Target> targets) {
        Optional<Connections> factory = Optional.empty();
        for (Fitment fitment : Fitment.of(project, platform)) {
            cancel.check();
            Connections connections = Connections.of(fitment);
            targets.add(new Target.OfNetwork(connections, factory, shapes));
            factory = fitment.ours() ? factory : Optional.of(connections);
        }
    }

    private static void circuits(WiringView view, List<Target> targets) {
        Map<Circuit, List<WireView>> wires = new IdentityHashMap<>();
        view.wires().forEach(wire -> wires.computeIfAbsent(wire.circuit(), key -> new ArrayList<>()).add(wire));
        for (WiringView.CircuitView circuit : view.circuits()) {
            targets.add(new Target.OfCircuit(view, circuit, wires.getOrDefault(circuit.circuit(), List.of())));
        }
    }

    private static void housings(WiringView view, Project project, List<Target> targets) {
        Map<String, List<WireEnd>> ends = new HashMap<>();
        WireEnd.of(view).stream().filter(end -> end.node().kind() == Node.Kind.CAVITY)
                .forEach(end -> ends.computeIfAbsent(end.node().element(), key -> new ArrayList<>()).add(end));
        for (ConnectorView connector : view.connectors().values()) {
            targets.add(new Target.OfHousing(view, connector, ends.getOrDefault(connector.name(), List.of()),
                    project.parts()));
        }
    }
}
