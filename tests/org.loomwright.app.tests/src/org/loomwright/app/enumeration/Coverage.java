// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Element;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Run;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;
import org.loomwright.rules.Finding;

/**
 * What the rules must say that speak of vehicles that are not there, or of two vehicles at once, and so cannot be asked
 * of one vehicle on its own: computed by counting.
 */
final class Coverage {

    private final List<Map<String, String>> possible;
    private final Platform platform;
    private final List<Wiring> wirings = new ArrayList<>();
    private final Map<String, Set<Map<String, String>>> wanted = new TreeMap<>();

    Coverage(Source source, List<Map<String, String>> possible) {
        this.possible = possible;
        Platform found = null;
        for (Element element : source.elements()) {
            if (element instanceof Platform each) {
                found = each;
            } else if (element instanceof Wiring each) {
                wirings.add(each);
            }
        }
        platform = found;
    }

    /** What is said and should not be, and what should be said and is not. */
    List<String> faults(Map<Finding, Set<Map<String, String>>> said) {
        platform.positions().forEach(this::position);
        for (Wiring wiring : wirings) {
            Set<Map<String, String>> there = there(wiring);
            duplicates(wiring, there);
            if (possible.isEmpty()) {
                continue;
            }
            if (there.isEmpty()) {
                want("never-exists", wiring.name().text(), new HashSet<>(possible));
            } else {
                never(wiring, there);
            }
        }
        Map<String, Set<Map<String, String>>> found = new TreeMap<>();
        said.forEach((finding, which) -> {
            if (Set.of("vehicle-without-drawing", "duplicate-circuit", "never-exists").contains(finding.rule())) {
                found.computeIfAbsent(finding.rule() + " on " + finding.element(), key -> new HashSet<>())
                        .addAll(which);
            }
        });
        Set<String> keys = new TreeSet<>(found.keySet());
        keys.addAll(wanted.keySet());
        return keys.stream()
                .filter(key -> !found.getOrDefault(key, Set.of()).equals(wanted.getOrDefault(key, Set.of())))
                .map(key -> key + ": said of " + found.getOrDefault(key, Set.of()).size() + ", counted "
                        + wanted.getOrDefault(key, Set.of()).size()).toList();
    }

    private void want(String rule, String element, Set<Map<String, String>> which) {
        if (!which.isEmpty()) {
            wanted.computeIfAbsent(rule + " on " + element, key -> new HashSet<>()).addAll(which);
        }
    }

    private static Set<Map<String, String>> only(Set<Map<String, String>> within, Expression when) {
        return within.stream().filter(vehicle -> EveryVehicle.holds(when, vehicle)).collect(Collectors.toSet());
    }

    private Set<Map<String, String>> there(Wiring wiring) {
        Set<Map<String, String>> there = only(new LinkedHashSet<>(possible), wiring.when());
        if (!wiring.ours().covers().isEmpty()) {
            List<String> covers = wiring.ours().covers().stream().map(each -> each.text()).toList();
            there.removeIf(vehicle -> wirings.stream().noneMatch(each -> covers.contains(each.name().text())
                    && EveryVehicle.holds(each.when(), vehicle)));
        }
        return there;
    }

    private void position(Platform.Position position) {
        List<Wiring> filling = wirings.stream().filter(each -> !each.isHarness() && each.position()
                .filter(ref -> ref.text().equals(position.name().text())).isPresent()).toList();
        if (!filling.isEmpty()) {
            Set<Map<String, String>> missing = only(new HashSet<>(possible), position.when());
            filling.forEach(each -> missing.removeAll(there(each)));
            want("vehicle-without-drawing", "orrin:" + position.name().text(), missing);
        }
    }

    private void duplicates(Wiring wiring, Set<Map<String, String>> there) {
        Map<String, Circuit> first = new LinkedHashMap<>();
        for (Circuit circuit : wiring.circuits()) {
            Circuit before = first.putIfAbsent(circuit.name().text(), circuit);
            if (before != null) {
                Set<Map<String, String>> again = only(there, circuit.when());
                Set<Map<String, String>> both = only(again, before.when());
                want("duplicate-circuit", wiring.name() + ":" + circuit.name(), both.isEmpty() ? again : both);
            }
        }
    }

    private void never(Wiring wiring, Set<Map<String, String>> there) {
        String owner = wiring.name() + ":";
        for (Run run : wiring.runs()) {
            Set<Map<String, String>> has = thing(owner + run.name(), there, run.when());
            run.breakouts().forEach(each -> thing(owner + each.name(), has, each.when()));
        }
        for (Connector each : wiring.connectors()) {
            Set<Map<String, String>> has = thing(owner + each.name(), there, each.when());
            facts(owner + each.name(), has, List.of(each.housing(), each.mates()));
        }
        wiring.studs().forEach(each -> thing(owner + each.name(), there, each.when()));
        for (Device each : wiring.devices()) {
            facts(owner + each.name(), thing(owner + each.name(), there, each.when()), List.of(each.part()));
        }
        for (Circuit circuit : wiring.circuits()) {
            Set<Map<String, String>> has = thing(owner + circuit.name(), there, circuit.when());
            circuit.splices().forEach(each -> thing(owner + each.name(), has, each.when()));
            for (Circuit.Wire wire : circuit.wires()) {
                String label = owner + circuit.name() + wire.name();
                facts(label, thing(label, has, wire.when()), List.of(wire.sizes(), wire.colours(), wire.cables(),
                        wire.from(), wire.to(), wire.lengths()));
            }
        }
        wiring.placed().forEach(each -> thing(owner + each.name(), there, each.when()));
        for (Ours.Cap each : wiring.ours().caps()) {
            thing(owner + each.branch().text(), there, each.when());
        }
    }

    /** The vehicles that have it; where there is none although they could, something must be said. */
    private Set<Map<String, String>> thing(String element, Set<Map<String, String>> within, Expression when) {
        Set<Map<String, String>> has = only(within, when);
        if (has.isEmpty()) {
            want("never-exists", element, within);
        }
        return has;
    }

    private void facts(String element, Set<Map<String, String>> within, List<List<? extends Fact<?>>> lists) {
        for (List<? extends Fact<?>> facts : lists) {
            facts.forEach(fact -> thing(element, within, fact.when()));
        }
    }
}
