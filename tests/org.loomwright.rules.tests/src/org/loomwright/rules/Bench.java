// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Element;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Progress;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Tolerance;
import org.loomwright.quantity.Unit;
import org.loomwright.rules.standard.StandardRules;

/**
 * Puts projects together without source text, for tests of rules. Everything gets a place of its own, in the order in
 * which it is added, in a file called {@code bench.loom}. A condition is words joined by {@code and}, each a choice,
 * {@code not} choice, or {@code year <= 1966}; empty means always.
 */
public final class Bench {

    private static final Pattern COMPARED = Pattern.compile("(\\w+) (<=|<|=|>=|>) (\\w+)");

    private int line;
    private final Map<String, Span> spans = new HashMap<>();
    private final List<Platform.Group> groups = new ArrayList<>();
    private final List<Platform.Option> options = new ArrayList<>();
    private final List<Platform.Constraint> constraints = new ArrayList<>();
    private final List<Platform.Zone> zones = new ArrayList<>();
    private final List<Platform.Place> places = new ArrayList<>();
    private final List<Platform.Position> positions = new ArrayList<>();
    private final List<Platform.GroundNode> grounds = new ArrayList<>();
    private final List<Platform.Strap> straps = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final List<Element> elements = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();

    /** A platform orrin with the model years 1964 to 1971. */
    public Bench() {
    }

    /** Moves everything that is added from now on down by some lines. */
    public Bench down(int lines) {
        line += lines;
        return this;
    }

    private Span span() {
        line++;
        return new Span("bench.loom", line * 1000, 10, line, 1);
    }

    private Span span(String label) {
        Span span = span();
        spans.putIfAbsent(label, span);
        return span;
    }

    /** The place that something got: {@code front:12a}, {@code front:J1}, {@code front:12a from J1:1}. */
    public Span at(String label) {
        return Optional.ofNullable(spans.get(label)).orElseThrow(() -> new IllegalArgumentException(label));
    }

    static Expression when(String text) {
        if (text.isEmpty()) {
            return new Expression.Always();
        }
        return Expression.allOf(Arrays.stream(text.split(" and ")).map(Bench::atom).toList());
    }

    private static Expression atom(String text) {
        Matcher compared = COMPARED.matcher(text);
        if (compared.matches()) {
            return new Expression.Compare(compared.group(1), Relation.ofSymbol(compared.group(2)).orElseThrow(),
                    compared.group(3));
        }
        return text.startsWith("not ") ? new Expression.Not(new Expression.Choice(text.substring(4)))
                : new Expression.Choice(text);
    }

    static Quantity quantity(String text) {
        int space = text.lastIndexOf(' ');
        return Quantity.parse(text.substring(0, space), Unit.ofSymbol(text.substring(space + 1)).orElseThrow())
                .optional().orElseThrow();
    }

    private static ConductorSize size(String text) {
        int space = text.lastIndexOf(' ');
        return new ConductorSize(SizeSystem.ofSymbol(text.substring(space + 1)).orElseThrow(),
                text.substring(0, space));
    }

    private Optional<Ref> ref(String text) {
        int of = text.indexOf(" of ");
        Span span = new Span("bench.loom", line * 1000 + 5, text.length(), line, 6);
        return text.isEmpty() ? Optional.empty() : Optional.of(of < 0 ? new Ref(text, "", span)
                : new Ref(text.substring(0, of), text.substring(of + 4), span));
    }

    private List<Fact<Ref>> fact(String text) {
        return ref(text).map(ref -> List.of(new Fact<>(ref, when(""), span()))).orElse(List.of());
    }

    public Bench upgrade(String... names) {
        Arrays.stream(names)
                .forEach(name -> options.add(new Platform.Option(new Name(name, span()), "", true, span())));
        return this;
    }

    public Bench group(String name, String... members) {
        groups.add(new Platform.Group(new Name(name, span()), "",
                Arrays.stream(members).map(member -> new Platform.Member(new Name(member, span()), "")).toList(),
                span()));
        return this;
    }

    public Bench never(String condition) {
        constraints.add(new Platform.Constraint(Name.NONE, when(condition), Optional.empty(), span()));
        return this;
    }

    public Bench zone(String name, String ambient) {
        zones.add(new Platform.Zone(new Name(name, span()), "", Optional.of(quantity(ambient)), false, span()));
        return this;
    }

    public Bench place(String name, String zone) {
        places.add(new Platform.Place(new Name(name, span()), "", ref(zone), when(""), span()));
        return this;
    }

    public Bench position(String name, String condition) {
        positions.add(new Platform.Position(new Name(name, span("orrin:" + name)), "", when(condition), span()));
        return this;
    }

    public Bench ground(String name, boolean none) {
        grounds.add(new Platform.GroundNode(new Name(name, span()), "", none, span()));
        return this;
    }

    public Bench strap(String name, String from, String to, String condition) {
        straps.add(new Platform.Strap(new Name(name, span()), ref(from).orElseThrow(), ref(to).orElseThrow(),
                Optional.empty(), when(condition), span()));
        return this;
    }

    /** A device of the platform: part, place and ground node may be empty. */
    public Bench device(String name, String part, String place, String ground, String condition) {
        devices.add(makeDevice("orrin", name, part, place, ground, condition));
        return this;
    }

    private Device makeDevice(String owner, String name, String part, String place, String ground, String condition) {
        return new Device(new Name(name, span(owner + ":" + name)), "", fact(part), ref(place), ref(ground), false,
                when(condition), span());
    }

    public Bench part(Part.Kind kind, String name, Consumer<PartBench> filling) {
        PartBench part = new PartBench();
        filling.accept(part);
        parts.add(new Part(kind, new Name(name, span(name)), "", part.figures, part.words, part.sizes, part.pins,
                part.joins, List.of(), span()));
        return this;
    }

    /** A part with pins only. */
    public Bench part(Part.Kind kind, String name, String... pins) {
        return part(kind, name, part -> part.pins(pins));
    }

    /** Collects what a part states. */
    public final class PartBench {
        private final List<Fact<Part.Figure>> figures = new ArrayList<>();
        private final List<Fact<Part.Word>> words = new ArrayList<>();
        private final List<Part.Size> sizes = new ArrayList<>();
        private final List<Part.Pin> pins = new ArrayList<>();
        private final List<Part.Join> joins = new ArrayList<>();

        public PartBench pins(String... names) {
            Arrays.stream(names).forEach(name -> pins.add(new Part.Pin(new Name(name, span()), "")));
            return this;
        }

        public PartBench figure(Part.FigureKind kind, String quantity, String condition) {
            figures.add(new Fact<>(new Part.Figure(kind, Bench.quantity(quantity), Optional.empty(), ""),
                    when(condition), span()));
            return this;
        }

        public PartBench word(Part.WordKind kind, String text) {
            words.add(new Fact<>(new Part.Word(kind, text), when(""), span()));
            return this;
        }

        public PartBench pin(String name, String title) {
            pins.add(new Part.Pin(new Name(name, span()), title));
            return this;
        }

        public PartBench size(String size, String diameter) {
            sizes.add(new Part.Size(Bench.size(size), Optional.of(Bench.quantity(diameter)), Optional.empty(), "",
                    span()));
            return this;
        }

        public PartBench size(String size) {
            sizes.add(new Part.Size(Bench.size(size), Optional.empty(), Optional.empty(), "", span()));
            return this;
        }

        /** A connection; {@code through} and {@code states} may be empty. */
        public PartBench joins(boolean protective, String from, String to, String through, String states) {
            joins.add(new Part.Join(ref(from).orElseThrow(), ref(to).orElseThrow(),
                    through.isEmpty() ? Optional.empty() : Optional.of(Bench.quantity(through)),
                    states.isEmpty() ? List.of() : List.of(new Name(states, span())), protective, when(""), span()));
            return this;
        }
    }

    public Bench drawing(String name, String position, String condition, Consumer<WiringBench> filling) {
        return wiring(Wiring.Kind.DRAWING, name, position, condition, filling);
    }

    public Bench harness(String name, Consumer<WiringBench> filling) {
        return wiring(Wiring.Kind.HARNESS, name, "", "", filling);
    }

    public Bench wiring(Wiring.Kind kind, String name, String position, String condition,
            Consumer<WiringBench> filling) {
        Span span = span(name);
        WiringBench wiring = new WiringBench(name);
        filling.accept(wiring);
        elements.add(new Wiring(kind, new Name(name, span), "", ref("orrin").orElseThrow(), ref(position),
                when(condition), List.of(), new Wiring.Defaults(wiring.tolerance, wiring.cable), wiring.datum,
                wiring.runs,
                wiring.connectors, wiring.studs, wiring.devices, wiring.circuits, wiring.placed,
                kind == Wiring.Kind.DRAWING ? Ours.NONE
                        : new Ours(wiring.covers, wiring.settings, wiring.caps, List.of()),
                span));
        return this;
    }

    /** Collects what a drawing or harness states. */
    public final class WiringBench {
        private final String owner;
        private Optional<Ref> datum = Optional.empty();
        private List<Fact<Ref>> cable = List.of();
        private final List<Run> runs = new ArrayList<>();
        private final List<Connector> connectors = new ArrayList<>();
        private final List<Wiring.Stud> studs = new ArrayList<>();
        private final List<Device> devices = new ArrayList<>();
        private final List<Circuit> circuits = new ArrayList<>();
        private final List<Ref> covers = new ArrayList<>();
        private List<Fact<Tolerance>> tolerance = List.of();
        private final List<Wiring.Placed> placed = new ArrayList<>();
        private final List<Ours.Setting> settings = new ArrayList<>();
        private final List<Ours.Cap> caps = new ArrayList<>();

        private WiringBench(String owner) {
            this.owner = owner;
        }

        public WiringBench covers(String... drawings) {
            Arrays.stream(drawings).forEach(name -> covers.add(ref(name).orElseThrow()));
            return this;
        }

        public WiringBench cable(String name) {
            cable = fact(name);
            return this;
        }

        public WiringBench datum(String place) {
            datum = ref(place);
            return this;
        }

        public WiringBench tolerance(Tolerance usual) {
            tolerance = List.of(new Fact<>(usual, when(""), span()));
            return this;
        }

        public WiringBench add(Run... added) {
            runs.addAll(List.of(added));
            return this;
        }

        public WiringBench add(Wiring.Placed... added) {
            placed.addAll(List.of(added));
            return this;
        }

        public WiringBench add(Ours.Setting... added) {
            settings.addAll(List.of(added));
            return this;
        }

        public WiringBench add(Ours.Cap... added) {
            caps.addAll(List.of(added));
            return this;
        }

        /** A branch from the datum or a breakout to a place; the length may be empty. */
        public WiringBench branch(String name, String from, String to, String length) {
            runs.add(new Run(Run.Kind.BRANCH, new Name(name, span()), ref(from), ref(to), measure(length), List.of(),
                    List.of(), List.of(), List.of(), when(""), span()));
            return this;
        }

        public WiringBench connector(String name, String housing, String place, String mates, String condition,
                Connector.CavityFact... cavities) {
            connectors.add(new Connector(new Name(name, span(owner + ":" + name)), "", ref(place), Optional.empty(),
                    fact(housing), fact(mates), List.of(cavities), List.of(), when(condition), span()));
            return this;
        }

        public Connector.CavityFact map(String cavity, String mate) {
            return new Connector.CavityFact(Connector.CavityKind.MAP, new Name(cavity, span()), ref(mate).orElseThrow(),
                    when(""), span());
        }

        public WiringBench stud(String name, String place, String ground, String condition) {
            studs.add(new Wiring.Stud(new Name(name, span(owner + ":" + name)), ref(place), Optional.empty(),
                    ref(ground), when(condition), span()));
            return this;
        }

        public WiringBench device(String name, String part, String place, String ground, String condition) {
            devices.add(makeDevice(owner, name, part, place, ground, condition));
            return this;
        }

        public WiringBench circuit(String name, String condition, Consumer<CircuitBench> filling) {
            Span span = span(owner + ":" + name);
            spans.put(owner + ":" + name + "#" + circuits.size(), span);
            CircuitBench circuit = new CircuitBench(owner, name);
            filling.accept(circuit);
            circuits.add(new Circuit(new Name(name, span), "", List.of(), circuit.wires, circuit.splices, List.of(),
                    circuit.asFactory, when(condition), span()));
            return this;
        }
    }

    private Optional<Measure> measure(String length) {
        return length.isEmpty() ? Optional.empty() : Optional.of(new Measure(Optional.of(quantity(length)),
                Optional.empty(), Measure.Provenance.SHEET, 0, Measure.MeasuredTo.UNSTATED, false, false, span()));
    }

    /** Collects what a circuit states. */
    public final class CircuitBench {
        private final String owner;
        private final String circuit;
        private final List<Circuit.Wire> wires = new ArrayList<>();
        private final List<Circuit.Splice> splices = new ArrayList<>();
        private Optional<Fact<String>> asFactory = Optional.empty();

        private CircuitBench(String owner, String circuit) {
            this.owner = owner;
            this.circuit = circuit;
        }

        public CircuitBench splice(String name, String point, String condition) {
            splices.add(new Circuit.Splice(new Name(name, span(owner + ":" + name)),
                    new Location(ref(point), Optional.empty(), Optional.empty()), Optional.empty(), when(condition),
                    span()));
            return this;
        }

        public CircuitBench splice(String name, Location at, String condition) {
            splices.add(new Circuit.Splice(new Name(name, span(owner + ":" + name)), at, Optional.empty(),
                    when(condition), span()));
            return this;
        }

        public CircuitBench asFactory(String reason, String condition) {
            asFactory = Optional.of(new Fact<>(reason, when(condition), span()));
            return this;
        }

        /** A wire; size and ends may be empty. */
        public CircuitBench wire(String name, String size, String from, String to, String condition) {
            return wire(name, condition, wire -> {
                if (!size.isEmpty()) {
                    wire.size(size, "");
                }
                if (!from.isEmpty()) {
                    wire.from(from, "");
                }
                if (!to.isEmpty()) {
                    wire.to(to, "");
                }
            });
        }

        public CircuitBench wire(String name, String condition, Consumer<WireBench> filling) {
            String label = owner + ":" + circuit + name;
            Span span = span(label);
            WireBench wire = new WireBench(label);
            filling.accept(wire);
            wires.add(new Circuit.Wire(new Name(name, span), wire.sizes, wire.cables, List.of(), wire.from, wire.to,
                    wire.lengths, "", wire.asFactory, when(condition), span()));
            return this;
        }
    }

    /** Collects what a wire states. */
    public final class WireBench {
        private final String label;
        private final List<Fact<ConductorSize>> sizes = new ArrayList<>();
        private final List<Fact<Ref>> cables = new ArrayList<>();
        private final List<Fact<Circuit.End>> from = new ArrayList<>();
        private final List<Fact<Circuit.End>> to = new ArrayList<>();
        private final List<Fact<Measure>> lengths = new ArrayList<>();
        private Optional<Fact<String>> asFactory = Optional.empty();

        private WireBench(String label) {
            this.label = label;
        }

        public WireBench size(String size, String condition) {
            sizes.add(new Fact<>(Bench.size(size), when(condition), span(label + " size " + size)));
            return this;
        }

        public WireBench cable(String name) {
            cables.addAll(fact(name));
            return this;
        }

        public WireBench cable(String name, String condition) {
            cables.add(new Fact<>(ref(name).orElseThrow(), when(condition), span()));
            return this;
        }

        public WireBench length(Measure length) {
            lengths.add(new Fact<>(length, when(""), span()));
            return this;
        }

        public WireBench length(String length) {
            lengths.add(new Fact<>(measure(length).orElseThrow(), when(""), span()));
            return this;
        }

        public WireBench from(String end, String condition) {
            from.add(end(end, condition, "from"));
            return this;
        }

        public WireBench to(String end, String condition) {
            to.add(end(end, condition, "to"));
            return this;
        }

        public WireBench asFactory(String reason, String condition) {
            asFactory = Optional.of(new Fact<>(reason, when(condition), span()));
            return this;
        }

        private Fact<Circuit.End> end(String text, String condition, String side) {
            Span fact = span();
            int colon = text.indexOf(':');
            String element = colon < 0 ? text : text.substring(0, colon);
            Span target = new Span("bench.loom", fact.offset() + 20, element.length(), fact.line(), 21);
            Name cavity = colon < 0 ? Name.NONE : new Name(text.substring(colon + 1),
                    new Span("bench.loom", target.end() + 1, text.length() - colon - 1, fact.line(),
                            22 + element.length()));
            spans.put(label + " " + side + " " + text, new Span("bench.loom", target.offset(), text.length(),
                    fact.line(), 21));
            spans.put(label + " " + side + " " + text + " cavity", cavity.span());
            return new Fact<>(new Circuit.End(new Ref(element, "", target), cavity), when(condition), fact);
        }
    }

    public Bench kit(String name, String... harnesses) {
        elements.add(new Kit(new Name(name, span()), "", "A", ref("orrin"), Optional.empty(),
                Arrays.stream(harnesses).map(each -> new Kit.Content(ref(each).orElseThrow(), 1, when(""), span()))
                        .toList(), List.of(), when(""), span()));
        return this;
    }

    public Bench add(Element element) {
        elements.add(element);
        return this;
    }

    public Bench waive(String rule, String target, String element, String until, String condition) {
        Optional<LocalDate> last = until.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(until));
        elements.add(new Waiver(Name.NONE, new Name(rule, span()), ref(target).orElseThrow(), element, "accepted", last,
                when(condition), span("waiver of " + rule)));
        return this;
    }

    public Bench problem(String code, String message) {
        problems.add(new Problem(code, span(code), message, "", List.of()));
        return this;
    }

    /** The project, joined. */
    public Project project() {
        Platform platform = new Platform(new Name("orrin", new Span("bench.loom", 0, 5, 1, 1)), "", Optional.empty(),
                Optional.of(new Platform.Years(1964, 1971, Span.NONE)), List.of(), groups, options, constraints, zones,
                places, positions, grounds, straps, devices, List.of(), new Span("bench.loom", 0, 10, 1, 1));
        List<Element> all = new ArrayList<>();
        all.add(platform);
        all.add(new Catalogue(new Name("parts", Span.NONE), "", parts, Span.NONE));
        all.addAll(elements);
        return Project.link(List.of(new Source("bench.loom", "", all, problems)));
    }

    /** What all rules find in it. */
    public Report check() {
        return check(Settings.TIMELESS);
    }

    public Report check(Settings settings) {
        return StandardRules.engine().check(project(), settings, Cancel.NEVER, Progress.NONE);
    }

    /** What one rule finds in it. */
    public List<Finding> check(String rule) {
        return check().of(rule);
    }
}
