// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
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
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Progress;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Unit;
import org.loomwright.rules.standard.StandardRules;

/**
 * Puts projects together from facts of one line each, spelt as the language does: {@code terminal 1 is tab63 when fan}.
 * For tests of rules about parts, mates and marks. The platform orrin has the model years 1964 to 1971.
 */
public final class WrittenBench {

    private int line;
    private Optional<Platform.Supply> supply = Optional.empty();
    private final List<Platform.Option> options = new ArrayList<>();
    private final List<Platform.Zone> zones = new ArrayList<>();
    private final List<Platform.Place> places = new ArrayList<>();
    private final List<Platform.GroundNode> grounds = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final List<Element> elements = new ArrayList<>();

    /** A fact without its condition, and the condition. */
    private record Line(String fact, Expression when) {
        static Line of(String text) {
            int at = text.startsWith("when ") ? 0 : text.indexOf(" when ");
            return at < 0 ? new Line(text, Bench.when(""))
                    : new Line(text.substring(0, at), Bench.when(text.substring(text.indexOf("when ") + 5)));
        }

        String word(int index) {
            return fact.split(" ")[index];
        }

        String from(int index) {
            return String.join(" ", Arrays.asList(fact.split(" ")).subList(index, fact.split(" ").length));
        }
    }

    private Span span() {
        line++;
        return new Span("bench.loom", line * 1000, 10, line, 1);
    }

    private Name name(String text) {
        return new Name(text, span());
    }

    private Ref ref(String text) {
        int of = text.indexOf(" of ");
        return of < 0 ? Ref.of(text, span()) : new Ref(text.substring(0, of), text.substring(of + 4), span());
    }

    private static Quantity quantity(String text) {
        int space = text.lastIndexOf(' ');
        return Quantity.parse(text.substring(0, space), Unit.ofSymbol(text.substring(space + 1)).orElseThrow())
                .optional().orElseThrow();
    }

    private static ConductorSize size(String text) {
        int space = text.lastIndexOf(' ');
        return new ConductorSize(SizeSystem.ofSymbol(text.substring(space + 1)).orElseThrow(),
                text.substring(0, space));
    }

    private static Colour colour(String text) {
        int slash = text.indexOf('/');
        return slash < 0 ? new Colour(text, "") : new Colour(text.substring(0, slash), text.substring(slash + 1));
    }

    public WrittenBench supply(String voltage, boolean negativeGround) {
        supply = Optional.of(new Platform.Supply(quantity(voltage), negativeGround, span()));
        return this;
    }

    public WrittenBench upgrade(String name) {
        options.add(new Platform.Option(name(name), "", true, span()));
        return this;
    }

    public WrittenBench zone(String name, boolean wet) {
        zones.add(new Platform.Zone(name(name), "", Optional.empty(), wet, span()));
        return this;
    }

    public WrittenBench place(String name, String zone) {
        places.add(new Platform.Place(name(name), "", Optional.of(zone).filter(each -> !each.isEmpty()).map(this::ref),
                Bench.when(""), span()));
        return this;
    }

    public WrittenBench ground(String name) {
        grounds.add(new Platform.GroundNode(name(name), "", false, span()));
        return this;
    }

    /** {@code is part}, {@code at place}, {@code on ground}, {@code when condition}. */
    public WrittenBench device(String name, String... facts) {
        devices.add(makeDevice(name, facts));
        return this;
    }

    private Device makeDevice(String name, String... facts) {
        List<Fact<Ref>> is = new ArrayList<>();
        Optional<Ref> place = Optional.empty();
        Optional<Ref> ground = Optional.empty();
        Expression when = Bench.when("");
        for (String text : facts) {
            Line fact = Line.of(text);
            switch (text.split(" ")[0]) {
                case "is" -> is.add(new Fact<>(ref(fact.word(1)), fact.when(), span()));
                case "at" -> place = Optional.of(ref(fact.word(1)));
                case "on" -> ground = Optional.of(ref(fact.word(1)));
                case "when" -> when = fact.when();
                default -> throw new IllegalArgumentException(text);
            }
        }
        return new Device(name(name), "", is, place, ground, false, when, span());
    }

    /** Figures, words, {@code pins 1 2}, {@code size 14 ga 2.7 mm}, {@code joins a to b through 4 ohm}. */
    public WrittenBench part(Part.Kind kind, String name, String... facts) {
        List<Fact<Part.Figure>> figures = new ArrayList<>();
        List<Fact<Part.Word>> words = new ArrayList<>();
        List<Part.Size> sizes = new ArrayList<>();
        List<Part.Pin> pins = new ArrayList<>();
        List<Part.Join> joins = new ArrayList<>();
        Name named = name(name);
        for (String text : facts) {
            Line fact = Line.of(text);
            String first = fact.word(0);
            switch (first) {
                case "pins" -> Arrays.stream(fact.from(1).split(" ")).forEach(pin -> pins.add(new Part.Pin(name(pin),
                        "")));
                case "size" -> sizes.add(new Part.Size(size(fact.word(1) + " " + fact.word(2)),
                        Optional.of(fact.fact().split(" ").length).filter(length -> length > 3)
                                .map(length -> quantity(fact.from(3))), Optional.empty(), "", span()));
                case "joins", "protects" -> joins.add(new Part.Join(ref(fact.word(1)), ref(fact.word(3)),
                        Optional.of(text.indexOf(" through ")).filter(at -> at >= 0)
                                .map(at -> quantity(text.substring(at + 9))), List.of(), first.equals("protects"),
                        fact.when(), span()));
                case "family", "basis", "gender", "keying", "type", "polarity" -> words.add(new Fact<>(new Part.Word(
                        Part.WordKind.valueOf(first.toUpperCase(Locale.ROOT)), fact.word(1)), fact.when(), span()));
                default -> {
                    String[] ends = fact.from(1).split(" \\.\\. ");
                    figures.add(new Fact<>(new Part.Figure(Part.FigureKind.valueOf(first.toUpperCase(Locale.ROOT)),
                            quantity(ends[0]), ends.length > 1 ? Optional.of(quantity(ends[1])) : Optional.empty(), ""),
                            fact.when(), span()));
                }
            }
        }
        parts.add(new Part(kind, named, "", figures, words, sizes, pins, joins, List.of(), span()));
        return this;
    }

    public WrittenBench drawing(String name, String when, Consumer<Wires> filling) {
        return wiring(Wiring.Kind.DRAWING, name, when, filling);
    }

    public WrittenBench harness(String name, Consumer<Wires> filling) {
        return wiring(Wiring.Kind.HARNESS, name, "", filling);
    }

    private WrittenBench wiring(Wiring.Kind kind, String name, String when, Consumer<Wires> filling) {
        Name named = name(name);
        Wires wires = new Wires();
        filling.accept(wires);
        elements.add(new Wiring(kind, named, "", ref("orrin"), Optional.empty(), Bench.when(when), List.of(),
                new Wiring.Defaults(List.of(), wires.cable), Optional.empty(), List.of(), wires.connectors, wires.studs,
                wires.devices, wires.circuits, wires.placed,
                kind == Wiring.Kind.DRAWING ? Ours.NONE : new Ours(wires.covers, List.of(), List.of(), List.of()),
                span()));
        return this;
    }

    public WrittenBench kit(String name, String... contents) {
        elements.add(new Kit(name(name), "", "A", Optional.of(ref("orrin")), Optional.empty(), Arrays.stream(contents)
                .map(each -> new Kit.Content(ref(each), 1, Bench.when(""), span())).toList(), List.of(),
                Bench.when(""), span()));
        return this;
    }

    /** Collects what a drawing or harness states. */
    public final class Wires {
        private List<Fact<Ref>> cable = List.of();
        private final List<Ref> covers = new ArrayList<>();
        private final List<Connector> connectors = new ArrayList<>();
        private final List<Wiring.Stud> studs = new ArrayList<>();
        private final List<Device> devices = new ArrayList<>();
        private final List<Circuit> circuits = new ArrayList<>();
        private final List<Wiring.Placed> placed = new ArrayList<>();

        public Wires covers(String... drawings) {
            Arrays.stream(drawings).forEach(each -> covers.add(ref(each)));
            return this;
        }

        public Wires cable(String name) {
            cable = List.of(new Fact<>(ref(name), Bench.when(""), span()));
            return this;
        }

        public Wires stud(String name, String ground) {
            studs.add(new Wiring.Stud(name(name), Optional.empty(), Optional.empty(), Optional.of(ref(ground)),
                    Bench.when(""), span()));
            return this;
        }

        public Wires device(String name, String... facts) {
            devices.add(makeDevice(name, facts));
            return this;
        }

        public Wires fit(String name, String part) {
            placed.add(new Wiring.Placed(name(name), ref(part),
                    new Location(Optional.empty(), Optional.empty(), Optional.empty()), Optional.empty(),
                    Bench.when(""), span()));
            return this;
        }

        /** {@code is}, {@code at}, {@code mates}, {@code map}, {@code terminal}, {@code seal}, {@code plug}. */
        public Wires connector(String name, String... facts) {
            List<Fact<Ref>> is = new ArrayList<>();
            List<Fact<Ref>> mates = new ArrayList<>();
            List<Connector.CavityFact> cavities = new ArrayList<>();
            Optional<Ref> place = Optional.empty();
            Expression when = Bench.when("");
            for (String text : facts) {
                Line fact = Line.of(text);
                switch (text.split(" ")[0]) {
                    case "is" -> is.add(new Fact<>(ref(fact.word(1)), fact.when(), span()));
                    case "at" -> place = Optional.of(ref(fact.word(1)));
                    case "mates" -> mates.add(new Fact<>(ref(fact.from(1)), fact.when(), span()));
                    case "when" -> when = fact.when();
                    default -> cavities.add(new Connector.CavityFact(Connector.CavityKind.valueOf(
                            fact.word(0).toUpperCase(Locale.ROOT)), name(fact.word(1)), ref(fact.word(3)), fact.when(),
                            span()));
                }
            }
            connectors.add(new Connector(name(name), "", place, Optional.empty(), is, mates, cavities, List.of(), when,
                    span()));
            return this;
        }

        /** A circuit of a colour, which may be empty. */
        public Wires circuit(String name, String colour, Consumer<Cut> filling) {
            Cut cut = new Cut();
            if (!colour.isEmpty()) {
                cut.colour(colour);
            }
            filling.accept(cut);
            circuits.add(new Circuit(name(name), "", cut.colours, cut.wires, cut.splices, cut.origins,
                    Optional.empty(), Bench.when(""), span()));
            return this;
        }
    }

    /** Collects what a circuit states. */
    public final class Cut {
        private final List<Fact<Colour>> colours = new ArrayList<>();
        private final List<Circuit.Wire> wires = new ArrayList<>();
        private final List<Circuit.Splice> splices = new ArrayList<>();
        private final List<Circuit.Origin> origins = new ArrayList<>();

        public Cut colour(String text) {
            Line fact = Line.of(text);
            colours.add(new Fact<>(WrittenBench.colour(fact.fact()), fact.when(), span()));
            return this;
        }

        public Cut splice(String name, String method) {
            splices.add(new Circuit.Splice(name(name), new Location(Optional.empty(), Optional.empty(),
                    Optional.empty()), Optional.of(ref(method)), Bench.when(""), span()));
            return this;
        }

        public Cut standsFor(String number, String drawing) {
            origins.add(new Circuit.Origin(number, Optional.empty(), ref(drawing), span()));
            return this;
        }

        /** {@code size}, {@code colour}, {@code from}, {@code to}, {@code length}, {@code cable}, {@code legend}. */
        public Cut wire(String name, String... facts) {
            List<Fact<ConductorSize>> sizes = new ArrayList<>();
            List<Fact<Colour>> own = new ArrayList<>();
            List<Fact<Ref>> cables = new ArrayList<>();
            List<Fact<Circuit.End>> from = new ArrayList<>();
            List<Fact<Circuit.End>> to = new ArrayList<>();
            List<Fact<Measure>> lengths = new ArrayList<>();
            String legend = "";
            Expression when = Bench.when("");
            for (String text : facts) {
                Line fact = Line.of(text);
                switch (text.split(" ")[0]) {
                    case "size" -> sizes.add(new Fact<>(size(fact.from(1)), fact.when(), span()));
                    case "colour" -> own.add(new Fact<>(WrittenBench.colour(fact.word(1)), fact.when(), span()));
                    case "cable" -> cables.add(new Fact<>(ref(fact.word(1)), fact.when(), span()));
                    case "from" -> from.add(new Fact<>(end(fact.word(1)), fact.when(), span()));
                    case "to" -> to.add(new Fact<>(end(fact.word(1)), fact.when(), span()));
                    case "length" -> lengths.add(new Fact<>(new Measure(Optional.of(quantity(fact.from(1))),
                            Optional.empty(), Measure.Provenance.SHEET, 0, Measure.MeasuredTo.UNSTATED, false, false,
                            span()), fact.when(), span()));
                    case "legend" -> legend = fact.from(1);
                    case "when" -> when = fact.when();
                    default -> throw new IllegalArgumentException(text);
                }
            }
            wires.add(new Circuit.Wire(name(name), sizes, cables, own, from, to, lengths, legend, Optional.empty(),
                    when, span()));
            return this;
        }

        private Circuit.End end(String text) {
            int colon = text.indexOf(':');
            return colon < 0 ? new Circuit.End(ref(text), Name.NONE)
                    : new Circuit.End(ref(text.substring(0, colon)), name(text.substring(colon + 1)));
        }
    }

    /** The project, joined. */
    public Project project() {
        Span span = new Span("bench.loom", 0, 5, 1, 1);
        Platform platform = new Platform(new Name("orrin", span), "", supply,
                Optional.of(new Platform.Years(1964, 1971, Span.NONE)), List.of(), List.of(), options, List.of(),
                zones, places, List.of(), grounds, List.of(), devices, List.of(), span);
        List<Element> all = new ArrayList<>(List.of(platform,
                new Catalogue(new Name("parts", Span.NONE), "", parts, Span.NONE)));
        all.addAll(elements);
        return Project.link(List.of(new Source("bench.loom", "", all, List.of())));
    }

    /** What one rule finds in it, in words: severity, element, sentence and vehicles. */
    public List<String> check(String rule) {
        return findings(rule).stream().map(each -> each.severity().words() + " " + each.element() + ": "
                + each.sentence() + each.affected().map(affected -> " when " + affected.words()).orElse("")).toList();
    }

    /** What one rule finds in it. */
    public List<Finding> findings(String rule) {
        return StandardRules.engine().check(project(), Settings.TIMELESS, Cancel.NEVER, Progress.NONE).of(rule);
    }
}
