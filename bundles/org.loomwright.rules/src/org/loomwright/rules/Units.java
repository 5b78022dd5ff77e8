// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/** Lists what there is to look at in a project, in a fixed order. One object for each check. */
final class Units {

    private static final Runnable NOTHING = () -> { };

    private final Project project;
    private final Memory memory;
    private final boolean every;
    private final Map<String, Wired> wired = new HashMap<>();
    private final List<Unit> units = new ArrayList<>();

    /**
     * @param every whether circuits are solved however many vehicles there are
     */
    Units(Project project, Memory memory, boolean every) {
        this.project = project;
        this.memory = memory;
        this.every = every;
    }

    /**
     * Lists the units. The networks of a platform whose conditions cannot be followed are left out.
     *
     * @param tooMany told which platform, and why
     */
    List<Unit> list(Cancel cancel, BiConsumer<PlatformView, String> tooMany) {
        for (PlatformView platform : project.platforms().values()) {
            List<WiringView> wirings = project.wirings().values().stream()
                    .filter(view -> view.platform().vehicles() == platform.vehicles()).toList();
            List<Object> inputs = new ArrayList<>(wirings);
            inputs.add(platform);
            units.add(new Unit("platform " + platform.name(), inputs,
                    shapes -> new Target.OfPlatform(platform, wirings), List.of(), NOTHING));
            try {
                networks(platform, cancel);
            } catch (TooManyCombinations e) {
                tooMany.accept(platform, e.getMessage());
            }
        }
        for (WiringView view : project.wirings().values()) {
            units.add(new Unit("wiring " + view.name(), List.of(view),
                    shapes -> new Target.OfHarness(view, shapes), List.of(() -> circuits(view), () -> housings(view)),
                    NOTHING));
        }
        units.add(new Unit("project", List.of(project), shapes -> new Target.OfProject(project, shapes), List.of(),
                NOTHING));
        return units;
    }

    /** The connections that were listed, by name. */
    Map<String, Wired> wired() {
        return wired;
    }

    private void networks(PlatformView platform, Cancel cancel) {
        List<Wired> factory = new ArrayList<>();
        for (Fitment fitment : Fitment.of(project, platform)) {
            cancel.check();
            for (Fitment part : fitment.parts()) {
                String name = "connections " + platform.name() + " " + part.words() + " "
                        + part.fitted().keySet().stream().findFirst().orElse("");
                Wired here = memory.wired(name, part, every, wired);
                List<Wired> before = fitment.ours() ? meeting(factory, part.domain()) : List.of();
                List<Object> inputs = new ArrayList<>(here.inputs());
                before.forEach(each -> inputs.addAll(each.inputs()));
                units.add(new Unit(name, inputs, shapes -> new Target.OfNetwork(here, before, shapes), List.of(),
                        here::release));
                if (!fitment.ours()) {
                    factory.add(here);
                }
            }
        }
    }

    private static List<Wired> meeting(List<Wired> factory, Condition domain) {
        return factory.stream().filter(each -> !each.fitment().domain().excludes(domain)).toList();
    }

    private static List<Target> circuits(WiringView view) {
        List<Target> targets = new ArrayList<>();
        Map<Circuit, List<WireView>> wires = new IdentityHashMap<>();
        view.wires().forEach(wire -> wires.computeIfAbsent(wire.circuit(), key -> new ArrayList<>()).add(wire));
        for (WiringView.CircuitView circuit : view.circuits()) {
            targets.add(new Target.OfCircuit(view, circuit, wires.getOrDefault(circuit.circuit(), List.of())));
        }
        return targets;
    }

    private List<Target> housings(WiringView view) {
        List<Target> targets = new ArrayList<>();
        Map<String, List<WireEnd>> ends = new HashMap<>();
        WireEnd.there(view).stream().filter(end -> end.node().kind() == Node.Kind.CAVITY)
                .forEach(end -> ends.computeIfAbsent(end.node().element(), key -> new ArrayList<>()).add(end));
        for (ConnectorView connector : view.connectors().values()) {
            targets.add(new Target.OfHousing(view, connector, ends.getOrDefault(connector.name(), List.of()),
                    project.parts()));
        }
        return targets;
    }
}
