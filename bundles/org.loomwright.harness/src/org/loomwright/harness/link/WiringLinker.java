// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;

/** Finds what the names of one drawing or harness mean. One object for each. */
final class WiringLinker {

    private final Problems problems;
    private final Facts facts;
    private final Wiring wiring;
    private final String owner;
    private final PlatformView platform;
    private final Condition when;
    private final List<String> covers;
    private final Map<String, Wiring> wirings;
    private final Set<String> colours;
    private final Map<String, Node.Kind> ends = new HashMap<>();
    private final Map<String, Name> endNames = new HashMap<>();
    private final Set<String> places;
    private final Set<String> runNames;
    private Set<String> points;

    WiringLinker(Problems problems, Facts facts, Wiring wiring, PlatformView platform, Condition when,
            List<String> covers, Map<String, Wiring> wirings, Set<String> colours) {
        this.problems = problems;
        this.facts = facts;
        this.wiring = wiring;
        this.owner = wiring.name().text();
        this.platform = platform;
        this.when = when;
        this.covers = covers;
        this.wirings = wirings;
        this.colours = colours;
        this.places = platform.platform().places().stream().map(place -> place.name().text())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        this.runNames = wiring.runs().stream().map(run -> run.name().text())
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    WiringView link() {
        wiring.connectors().forEach(each -> declare(each.name(), Node.Kind.CAVITY));
        wiring.studs().forEach(each -> declare(each.name(), Node.Kind.STUD));
        wiring.devices().forEach(each -> declare(each.name(), Node.Kind.PIN));
        wiring.circuits().forEach(circuit -> circuit.splices().forEach(each -> declare(each.name(), Node.Kind.SPLICE)));
        runs();
        Map<String, ConnectorView> connectors = new LinkedHashMap<>();
        wiring.connectors().forEach(each -> connectors.putIfAbsent(each.name().text(), connector(each)));
        Map<String, WiringView.StudView> studs = new LinkedHashMap<>();
        wiring.studs().forEach(each -> studs.putIfAbsent(each.name().text(), stud(each)));
        Map<String, DeviceView> devices = new LinkedHashMap<>();
        for (Device each : wiring.devices()) {
            facts.known("place", each.place(), places);
            devices.putIfAbsent(each.name().text(), facts.device(owner, each, when));
        }
        Map<String, WiringView.SpliceView> splices = new LinkedHashMap<>();
        List<WiringView.CircuitView> circuits = new ArrayList<>();
        List<WireView> wires = new ArrayList<>();
        for (Circuit circuit : wiring.circuits()) {
            Condition inCircuit = facts.condition(circuit.when(), circuit.span(), when);
            circuits.add(new WiringView.CircuitView(circuit, inCircuit));
            for (Circuit.Splice splice : circuit.splices()) {
                location(splice.at());
                splice.method().ifPresent(facts::part);
                splices.putIfAbsent(splice.name().text(), new WiringView.SpliceView(owner, circuit, splice,
                        facts.condition(splice.when(), splice.span(), inCircuit)));
            }
            wires(circuit, inCircuit, wires);
        }
        for (Wiring.Placed placed : wiring.placed()) {
            facts.part(placed.part());
            facts.condition(placed.when(), placed.span(), when);
            location(placed.from());
            placed.to().ifPresent(this::location);
        }
        ours();
        return new WiringView(wiring, platform, when, Collections.unmodifiableMap(connectors),
                Collections.unmodifiableMap(splices), Collections.unmodifiableMap(studs),
                Collections.unmodifiableMap(devices), List.copyOf(circuits), List.copyOf(wires), covers);
    }

    private void declare(Name name, Node.Kind kind) {
        if (name.text().isEmpty()) {
            return;
        }
        Name before = endNames.putIfAbsent(name.text(), name);
        if (before == null) {
            ends.put(name.text(), kind);
        } else {
            problems.twice("things where wires can end", name, before);
        }
    }

    private List<String> branches() {
        return wiring.runs(Run.Kind.BRANCH).stream().map(run -> run.name().text()).toList();
    }

    /** The names that a place along the harness can be counted from. Put together once: every splice asks for them. */
    private Set<String> points() {
        if (points == null) {
            points = listPoints();
        }
        return points;
    }

    private Set<String> listPoints() {
        Set<String> names = new LinkedHashSet<>();
        wiring.runs().forEach(run -> run.breakouts().forEach(each -> names.add(each.name().text())));
        names.addAll(branches());
        wiring.runs().forEach(run -> run.to().ifPresent(to -> names.add(to.text())));
        wiring.datum().map(Ref::text).ifPresent(datum -> names.addAll(places.contains(datum) ? List.of(datum)
                : places)); // a slip in the datum is reported there, and not again wherever its right name stands
        return names;
    }

    private void runs() {
        facts.known("place", wiring.datum(), places);
        facts.known("position", wiring.position(),
                platform.platform().positions().stream().map(each -> each.name().text()).toList());
        Map<String, Name> seen = new HashMap<>();
        for (Run run : wiring.runs()) {
            facts.condition(run.when(), run.span(), when);
            Stream.concat(Stream.of(run.name()), run.breakouts().stream().map(Run.Breakout::name)).forEach(name -> {
                Name before = name.text().isEmpty() ? null : seen.putIfAbsent(name.text(), name);
                if (before != null) {
                    problems.twice("points or runs", name, before);
                }
            });
            facts.known("point", run.from(), points());
            facts.known("place", run.to(), places);
            List<String> own = run.breakouts().stream().map(each -> each.name().text()).toList();
            run.breakouts().forEach(each -> facts.known("breakout", each.after(), own));
            run.slacks().forEach(each -> facts.known("breakout", Optional.of(each.before()), own));
        }
    }

    private void location(org.loomwright.harness.Location location) {
        facts.known("point", location.point(), points());
        facts.known("trunk or branch", location.run(), runNames);
    }

    private ConnectorView connector(Connector connector) {
        Condition present = facts.condition(connector.when(), connector.span(), when);
        facts.known("place", connector.place(), places);
        facts.known("branch", connector.branch(), branches());
        connector.covers().forEach(ref -> facts.known("drawing", Optional.of(ref), wirings.keySet()));
        connector.cavities().forEach(each -> {
            facts.condition(each.when(), each.span(), present);
            if (each.kind() != Connector.CavityKind.MAP) {
                facts.part(each.value());
            }
        });
        return new ConnectorView(owner, connector, present,
                facts.cases("housing", connector.housing(), present, facts::part),
                facts.cases("mate", connector.mates(), present, this::mate));
    }

    private Optional<ConnectorView.Mate> mate(Ref ref) {
        if (ref.owner().isEmpty()) {
            if (platform.devices().containsKey(ref.text())) {
                return Optional.of(new ConnectorView.Mate(platform.name(), ref.text(), true));
            }
            Node.Kind kind = ends.get(ref.text());
            if (kind == Node.Kind.PIN || kind == Node.Kind.CAVITY) {
                return Optional.of(new ConnectorView.Mate(owner, ref.text(), kind == Node.Kind.PIN));
            }
            Set<String> known = new LinkedHashSet<>(platform.devices().keySet());
            known.addAll(ends.keySet());
            problems.unknown("device or connector", ref, known);
            return Optional.empty();
        }
        Wiring other = wirings.get(ref.owner());
        if (other == null) {
            problems.unknown("drawing or harness", new Ref(ref.owner(), "", ref.span()), wirings.keySet());
            return Optional.empty();
        }
        List<String> known = other.connectors().stream().map(each -> each.name().text()).toList();
        if (!known.contains(ref.text())) {
            problems.unknown("connector", ref, known);
            return Optional.empty();
        }
        return Optional.of(new ConnectorView.Mate(ref.owner(), ref.text(), false));
    }

    private WiringView.StudView stud(Wiring.Stud stud) {
        facts.known("place", stud.place(), places);
        facts.known("branch", stud.branch(), branches());
        facts.known("ground", stud.ground(),
                platform.platform().grounds().stream().map(each -> each.name().text()).toList());
        return new WiringView.StudView(owner, stud, facts.condition(stud.when(), stud.span(), when));
    }

    private void wires(Circuit circuit, Condition inCircuit, List<WireView> wires) {
        List<Case<Colour>> ofCircuit = colours(circuit.colours(), inCircuit);
        Map<String, Name> seen = new HashMap<>();
        for (Circuit.Wire wire : circuit.wires()) {
            Name before = wire.name().text().isEmpty() ? null : seen.putIfAbsent(wire.name().text(), wire.name());
            if (before != null) {
                problems.twice("wires of circuit " + circuit.name(), wire.name(), before);
            }
            Condition present = facts.condition(wire.when(), wire.span(), inCircuit);
            List<Case<Part>> cables = facts.cases("cable", wire.cables(), present, facts::part);
            Condition uncabled = left(present, cables);
            List<Case<Colour>> own = colours(wire.colours(), present);
            wires.add(new WireView(owner, circuit, wire, present,
                    facts.cases("size", wire.sizes(), present, Optional::of),
                    joined(cables, uncabled.isNever() ? List.of()
                            : facts.cases("cable", wiring.defaults().cable(), uncabled, facts::part)),
                    joined(own, within(ofCircuit, left(present, own))),
                    facts.cases("start", wire.from(), present, this::end),
                    facts.cases("end", wire.to(), present, this::end),
                    facts.cases("length", wire.lengths(), present, Optional::of)));
        }
    }

    /** The vehicles for which none of the cases says anything, so that what holds otherwise does. */
    private static <T> Condition left(Condition present, List<Case<T>> cases) {
        Condition left = present;
        for (Case<T> each : cases) {
            left = left.minus(each.when());
        }
        return left;
    }

    private static <T> List<Case<T>> joined(List<Case<T>> own, List<Case<T>> otherwise) {
        return own.isEmpty() ? otherwise : otherwise.isEmpty() ? own
                : Stream.concat(own.stream(), otherwise.stream()).toList();
    }

    private static <T> List<Case<T>> within(List<Case<T>> cases, Condition present) {
        return present.isNever() ? List.of()
                : cases.stream().map(each -> new Case<>(each.value(), each.when().and(present), each.span())).toList();
    }

    private List<Case<Colour>> colours(List<Fact<Colour>> stated, Condition present) {
        for (Fact<Colour> fact : stated) {
            for (String code : List.of(fact.value().base(), fact.value().tracer())) {
                if (!code.isEmpty() && !colours.contains(code)) {
                    problems.unknown("colour", Ref.of(code, problems.find(code, fact.span())), colours);
                }
            }
        }
        return facts.cases("colour", stated, present, Optional::of);
    }

    private Optional<Node> end(Circuit.End end) {
        String name = end.target().text();
        if (name.isEmpty()) {
            return Optional.empty();
        }
        Node.Kind kind = ends.get(name);
        if (kind != null) {
            return Optional.of(new Node(kind, owner, name, end.cavity().text()));
        }
        if (platform.devices().containsKey(name)) {
            return Optional.of(new Node(Node.Kind.PIN, platform.name(), name, end.cavity().text()));
        }
        return Optional.of(new Node(Node.Kind.NOWHERE, owner, name, end.cavity().text()));
    }

    private void ours() {
        wiring.ours().settings().forEach(each -> facts.known("place", each.place(), places));
        wiring.ours().caps().forEach(each -> {
            facts.known("branch", Optional.of(each.branch()), branches());
            facts.known("place", each.parkedAt(), places);
            facts.condition(each.when(), each.span(), when);
        });
        for (Circuit circuit : wiring.circuits()) {
            circuit.origins().forEach(each -> facts.known("drawing", Optional.of(each.drawing()), wirings.keySet()));
        }
    }
}
