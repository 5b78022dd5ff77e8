// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sketch;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Tolerance;

/** One drawing or harness of a {@link Sketch}, line by line. Breakouts and slacks go to the last run. */
public final class WiringSketch {

    private static final Expression ALWAYS = new Expression.Always();

    private final Sketch sketch;
    private final Wiring.Kind kind;
    private final Name name;
    private Expression when = ALWAYS;
    private Optional<Ref> datum = Optional.empty();
    private final List<Fact<Tolerance>> tolerances = new ArrayList<>();
    private final List<Run> runs = new ArrayList<>();
    private final List<Connector> connectors = new ArrayList<>();
    private final List<Wiring.Stud> studs = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final Map<String, List<Circuit.Wire>> wires = new LinkedHashMap<>();
    private final Map<String, List<Circuit.Splice>> splices = new LinkedHashMap<>();
    private final List<Ref> covers = new ArrayList<>();
    private final List<Ours.Setting> settings = new ArrayList<>();
    private final List<Ours.Cap> caps = new ArrayList<>();
    private Optional<Ref> cable = Optional.empty();

    public WiringSketch(Sketch sketch, Wiring.Kind kind, String name) {
        this.sketch = sketch;
        this.kind = kind;
        this.name = sketch.name(name);
    }

    public WiringSketch when(Expression expression) {
        when = expression;
        return this;
    }

    public WiringSketch datum(String place) {
        sketch.place(place);
        datum = Optional.of(sketch.ref(place));
        return this;
    }

    public WiringSketch tolerance(String text) {
        tolerances.add(new Fact<>(Sketch.tolerance(text), ALWAYS, sketch.span()));
        return this;
    }

    public WiringSketch cable(String part) {
        cable = Optional.of(sketch.ref(part));
        return this;
    }

    public WiringSketch trunk(String run) {
        return run(Run.Kind.TRUNK, run, Optional.empty(), Optional.empty(), Optional.empty(), ALWAYS);
    }

    public WiringSketch branch(String run, String from, String to, String length) {
        return branch(run, from, to, length, ALWAYS);
    }

    public WiringSketch branch(String run, String from, String to, String length, Expression condition) {
        sketch.place(to);
        return run(Run.Kind.BRANCH, run, Optional.of(sketch.ref(from)), Optional.of(sketch.ref(to)),
                Optional.of(sketch.measure(length)), condition);
    }

    private WiringSketch run(Run.Kind sort, String run, Optional<Ref> from, Optional<Ref> to, Optional<Measure> length,
            Expression condition) {
        runs.add(new Run(sort, sketch.name(run), from, to, length, List.of(), List.of(), List.of(), List.of(),
                condition, sketch.span()));
        return this;
    }

    public WiringSketch breakout(String breakout, String at) {
        return breakout(breakout, Optional.empty(), at, ALWAYS);
    }

    public WiringSketch breakout(String breakout, String at, Expression condition) {
        return breakout(breakout, Optional.empty(), at, condition);
    }

    public WiringSketch breakoutAfter(String breakout, String after, String at) {
        return breakout(breakout, Optional.of(sketch.ref(after)), at, ALWAYS);
    }

    private WiringSketch breakout(String breakout, Optional<Ref> after, String at, Expression condition) {
        Run last = runs.removeLast();
        List<Run.Breakout> all = new ArrayList<>(last.breakouts());
        all.add(new Run.Breakout(sketch.name(breakout), after, sketch.measure(at), condition, sketch.span()));
        runs.add(new Run(last.kind(), last.name(), last.from(), last.to(), last.length(), all, last.barriers(),
                last.slacks(), last.bends(), last.when(), last.span()));
        return this;
    }

    public WiringSketch slack(String before, String atMost) {
        Run last = runs.removeLast();
        List<Run.Slack> all = new ArrayList<>(last.slacks());
        all.add(new Run.Slack(sketch.ref(before), Sketch.quantity(atMost), sketch.span()));
        runs.add(new Run(last.kind(), last.name(), last.from(), last.to(), last.length(), last.breakouts(),
                last.barriers(), all, last.bends(), last.when(), last.span()));
        return this;
    }

    public WiringSketch connector(String connector, String place) {
        sketch.place(place);
        return connector(connector, Optional.of(sketch.ref(place)), Optional.empty(), ALWAYS);
    }

    public WiringSketch connectorOn(String connector, String branch, Expression condition) {
        return connector(connector, Optional.empty(), Optional.of(sketch.ref(branch)), condition);
    }

    private WiringSketch connector(String connector, Optional<Ref> place, Optional<Ref> branch, Expression condition) {
        connectors.add(new Connector(sketch.name(connector), "", place, branch, List.of(), List.of(), List.of(),
                List.of(), condition, sketch.span()));
        return this;
    }

    public WiringSketch stud(String stud, String place) {
        sketch.place(place);
        studs.add(new Wiring.Stud(sketch.name(stud), Optional.of(sketch.ref(place)), Optional.empty(), Optional.empty(),
                ALWAYS, sketch.span()));
        return this;
    }

    public WiringSketch device(String device, String place) {
        sketch.place(place);
        devices.add(new Device(sketch.name(device), "", List.of(), Optional.of(sketch.ref(place)), Optional.empty(),
                false, ALWAYS, sketch.span()));
        return this;
    }

    public WiringSketch splice(String circuit, String splice, String point) {
        return splice(circuit, splice, new Location(Optional.of(sketch.ref(point)), Optional.empty(), Optional
                .empty()));
    }

    public WiringSketch spliceOn(String circuit, String splice, String run, String station) {
        return splice(circuit, splice, new Location(Optional.empty(), Optional.of(sketch.ref(run)),
                Optional.of(sketch.measure(station))));
    }

    public WiringSketch spliceBy(String circuit, String splice, String point, String method) {
        return splice(circuit, splice, new Location(Optional.of(sketch.ref(point)), Optional.empty(), Optional.empty()),
                Optional.of(sketch.ref(method)));
    }

    private WiringSketch splice(String circuit, String splice, Location at) {
        return splice(circuit, splice, at, Optional.empty());
    }

    private WiringSketch splice(String circuit, String splice, Location at, Optional<Ref> method) {
        wires.computeIfAbsent(circuit, key -> new ArrayList<>());
        splices.computeIfAbsent(circuit, key -> new ArrayList<>()).add(new Circuit.Splice(sketch.name(splice), at,
                method, ALWAYS, sketch.span()));
        return this;
    }

    public WiringSketch wire(String circuit, String wire, String size, String from, String to) {
        return wire(circuit, wire, size, from, to, List.of(), ALWAYS);
    }

    public WiringSketch wire(String circuit, String wire, String size, String from, String to, Expression condition) {
        return wire(circuit, wire, size, from, to, List.of(), condition);
    }

    public WiringSketch wireOf(String circuit, String wire, String size, String from, String to, String length) {
        return wire(circuit, wire, size, from, to,
                List.of(new Fact<>(sketch.measure(length), ALWAYS, sketch.span())), ALWAYS);
    }

    /** Gives the last wire another size in some vehicles. */
    public WiringSketch largerWhen(String size, Expression condition) {
        List<Circuit.Wire> all = wires.values().stream().reduce((first, second) -> second).orElseThrow();
        Circuit.Wire last = all.removeLast();
        List<Fact<ConductorSize>> sizes = List.of(
                new Fact<>(last.sizes().getFirst().value(), new Expression.Not(condition), sketch.span()),
                new Fact<>(size(size), condition, sketch.span()));
        all.add(new Circuit.Wire(last.name(), sizes, last.cables(), last.colours(), last.from(), last.to(),
                last.lengths(), last.legend(), last.asFactory(), last.when(), last.span()));
        return this;
    }

    private WiringSketch wire(String circuit, String wire, String size, String from, String to,
            List<Fact<Measure>> lengths, Expression condition) {
        List<Fact<ConductorSize>> sizes = size.isEmpty() ? List.of()
                : List.of(new Fact<>(size(size), ALWAYS, sketch.span()));
        wires.computeIfAbsent(circuit, key -> new ArrayList<>())
                .add(new Circuit.Wire(sketch.name(wire), sizes, List.of(),
                List.of(), List.of(end(from)), List.of(end(to)), lengths, "", Optional.empty(), condition,
                sketch.span()));
        return this;
    }

    public static ConductorSize size(String text) {
        String[] words = text.split(" ");
        SizeSystem system = switch (words[1]) {
            case "awg" -> SizeSystem.AWG;
            case "ga" -> SizeSystem.SAE;
            default -> SizeSystem.METRIC;
        };
        return new ConductorSize(system, words[0]);
    }

    private Fact<Circuit.End> end(String text) {
        String[] words = text.split(":");
        return new Fact<>(new Circuit.End(sketch.ref(words[0]), words.length < 2 ? Name.NONE : sketch.name(words[1])),
                ALWAYS, sketch.span());
    }

    public WiringSketch covers(String... drawings) {
        for (String drawing : drawings) {
            covers.add(sketch.ref(drawing));
        }
        return this;
    }

    public WiringSketch set(Ours.SettingKind setting, String value) {
        settings.add(new Ours.Setting(setting, Optional.of(Sketch.quantity(value)), Optional.empty(), Optional.empty(),
                sketch.span()));
        return this;
    }

    public WiringSketch setAt(String place, Ours.SettingKind setting, String value) {
        settings.add(new Ours.Setting(setting, Optional.of(Sketch.quantity(value)), Optional.empty(),
                Optional.of(sketch.ref(place)), sketch.span()));
        return this;
    }

    public WiringSketch made(Ours.SettingKind setting, String tolerance) {
        settings.add(new Ours.Setting(setting, Optional.empty(), Optional.of(Sketch.tolerance(tolerance)),
                Optional.empty(), sketch.span()));
        return this;
    }

    public WiringSketch cap(String branch, String within, Expression condition) {
        caps.add(new Ours.Cap(sketch.ref(branch), Optional.empty(),
                within.isEmpty() ? Optional.empty() : Optional.of(Sketch.quantity(within)), condition, sketch.span()));
        return this;
    }

    public Wiring wiring() {
        List<Circuit> circuits = wires.entrySet().stream().map(each -> new Circuit(sketch.name(each.getKey()), "",
                List.of(), List.copyOf(each.getValue()), splices.getOrDefault(each.getKey(), List.of()), List.of(),
                Optional.empty(), ALWAYS, sketch.span())).toList();
        List<Fact<Ref>> cables = cable.map(each -> List.of(new Fact<>(each, ALWAYS, each.span()))).orElse(List.of());
        Ours ours = kind == Wiring.Kind.HARNESS ? new Ours(covers, settings, caps, List.of()) : Ours.NONE;
        return new Wiring(kind, name, "", sketch.ref("orrin"), Optional.empty(), when, List.of(),
                new Wiring.Defaults(tolerances, cables), datum, List.copyOf(runs), connectors, studs, devices, circuits,
                List.of(), ours, sketch.span());
    }
}
