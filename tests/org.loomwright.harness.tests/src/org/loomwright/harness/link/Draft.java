// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Element;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.quantity.ConductorSize;

/** Writes snapshots for tests; every element gets a line of its own, so that spans differ. */
final class Draft {

    static final Expression ALWAYS = new Expression.Always();

    private int line;

    Span span() {
        line++;
        return new Span("a.loom", line * 10, 5, line, 1);
    }

    Name name(String text) {
        return new Name(text, span());
    }

    Ref ref(String text) {
        return Ref.of(text, span());
    }

    <T> List<Fact<T>> facts(T value) {
        return List.of(new Fact<>(value, ALWAYS, span()));
    }

    Platform orrin() {
        return new Platform(name("orrin"), "Orrin 1200", Optional.empty(),
                Optional.of(new Platform.Years(1964, 1967, span())), List.of(),
                List.of(new Platform.Group(name("body"), "", List.of(new Platform.Member(name("saloon"), ""),
                        new Platform.Member(name("estate"), "")), span())),
                List.of(new Platform.Option(name("fan"), "", true, span())), List.of(), List.of(),
                List.of(new Platform.Place(name("bulkhead"), "", Optional.empty(), ALWAYS, span())),
                List.of(), List.of(), List.of(), List.of(), List.of(), span());
    }

    /** A platform of that many pairs of options, each declared far from the one it needs: about 2^pairs nodes. */
    Platform tangled(int pairs) {
        List<Platform.Option> options = new ArrayList<>();
        List<Platform.Constraint> constraints = new ArrayList<>();
        for (int i = 0; i < 2 * pairs; i++) {
            options.add(new Platform.Option(name("o" + i), "", false, span()));
        }
        for (int i = 0; i < pairs; i++) {
            constraints.add(new Platform.Constraint(Name.NONE, new Expression.Choice("o" + i),
                    Optional.of(new Expression.Choice("o" + (i + pairs))), span()));
        }
        Platform plain = orrin();
        return new Platform(plain.name(), plain.title(), plain.supply(), plain.years(), plain.breaks(), plain.groups(),
                options, constraints, plain.zones(), plain.places(), plain.positions(), plain.grounds(),
                plain.straps(), plain.devices(), plain.modes(), plain.span());
    }

    Catalogue catalogue() {
        return new Catalogue(name("parts"), "", List.of(part(Part.Kind.HOUSING, "socket3")), span());
    }

    Part part(Part.Kind kind, String name) {
        return new Part(kind, name(name), "", List.of(), List.of(), List.of(),
                List.of(new Part.Pin(name("1"), ""), new Part.Pin(name("2"), "")), List.of(), List.of(), span());
    }

    Connector connector(String name, String housing, Expression when) {
        return new Connector(name(name), "", Optional.of(ref("bulkhead")), Optional.empty(), facts(ref(housing)),
                List.of(), List.of(), List.of(), when, span());
    }

    Circuit.Wire wire(String name, String from, String to, Expression when) {
        return new Circuit.Wire(name(name), facts(ConductorSize.sae("18")), List.of(), List.of(),
                facts(end(from)), facts(end(to)), List.of(), "", Optional.empty(), when, span());
    }

    private Circuit.End end(String text) {
        int colon = text.indexOf(':');
        return colon < 0 ? new Circuit.End(ref(text), Name.NONE)
                : new Circuit.End(ref(text.substring(0, colon)), name(text.substring(colon + 1)));
    }

    Circuit circuit(String name, Expression when, Circuit.Wire... wires) {
        return new Circuit(name(name), "", facts(new Colour("RD", "")), List.of(wires), List.of(), List.of(),
                Optional.empty(), when, span());
    }

    Wiring wiring(Wiring.Kind kind, String name, Expression when, List<Connector> connectors, List<Circuit> circuits,
            String... covers) {
        List<Ref> covered = new ArrayList<>();
        for (String drawing : covers) {
            covered.add(ref(drawing));
        }
        return new Wiring(kind, name(name), "", ref("orrin"), Optional.empty(), when, List.of(),
                new Wiring.Defaults(List.of(), List.of()), Optional.empty(), List.of(), connectors, List.of(),
                List.of(), circuits, List.of(), new Ours(covered, List.of(), List.of(), List.of()), span());
    }

    static Project link(Element... elements) {
        return Project.link(List.of(source(elements)));
    }

    static Source source(Element... elements) {
        return new Source("a.loom", " ".repeat(2_000), List.of(elements), List.of());
    }

    static List<String> codes(Project project) {
        return project.problems().stream().map(Problem::code).toList();
    }
}
