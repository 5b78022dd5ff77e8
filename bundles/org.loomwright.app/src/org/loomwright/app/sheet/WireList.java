// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.app.VehicleWords;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.HarnessLayout.LaidWire;
import org.loomwright.geometry.HarnessLayout;
import org.loomwright.geometry.Ways;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector.CavityKind;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;

/**
 * The wire list: what the bench cuts, prints and crimps. A wire that is made otherwise for some vehicles has a row for
 * each way; together its rows are for the vehicles that have the wire, and no vehicle has two of them.
 */
public final class WireList {

    private static final List<String> HEADERS = List.of("wire", "circuit", "function", "colour", "size", "cable",
            "cut length mm", "tolerance minus mm", "tolerance plus mm", "length from", "print legend", "from",
            "from cavity", "from terminal", "to", "to cavity", "to terminal", "vehicles");

    private final HarnessLayout layout;
    private final List<List<String>> rows = new ArrayList<>();

    private WireList(HarnessLayout layout) {
        this.layout = layout;
    }

    /** The wire list of a harness, in the natural order of wire numbers. */
    public static Table of(HarnessLayout layout) {
        WireList list = new WireList(layout);
        Comparator<LaidWire> byNumber = Comparator.comparing(laid -> laid.wire().label(), new NaturalOrder());
        layout.wires().stream().sorted(byNumber).forEach(list::add);
        return new Table(layout.view().name() + "-wires.csv", HEADERS, list.rows);
    }

    /** What is crimped on the wires in a cavity. */
    private record Crimped(Node cavity, String terminal) {
    }

    private void add(LaidWire laid) {
        WireView wire = laid.wire();
        Ways ways = new Ways(wire.when());
        Ways.Fact<CutLength> lengths = ways.fact(
                laid.lengths().stream().map(each -> new Case<>(each, each.when(), wire.wire().span())).toList());
        Ways.Fact<Node> from = ways.fact(wire.from());
        Ways.Fact<Node> to = ways.fact(wire.to());
        Ways.Fact<ConductorSize> sizes = ways.fact(wire.sizes());
        Ways.Fact<Part> cables = ways.fact(wire.cables());
        Ways.Fact<Colour> colours = ways.fact(wire.colours());
        Ways.Fact<Crimped> crimped = ways.fact(Stream.concat(wire.from().stream(), wire.to().stream())
                .map(Case::value).distinct().flatMap(this::crimped).toList());
        Map<List<String>, Condition> alike = new LinkedHashMap<>();
        for (Ways.Way way : ways.list()) {
            List<String> cells = new ArrayList<>(List.of(wire.label(), wire.circuit().name().text(),
                    wire.circuit().title(), way.first(colours).map(Colour::toString).orElse(""),
                    way.first(sizes).map(ConductorSize::written).orElse(""),
                    way.first(cables).map(part -> part.name().text()).orElse("")));
            length(way.first(lengths), cells);
            cells.add(wire.wire().legend().isEmpty() ? wire.label() : wire.wire().legend());
            end(way.first(from), way.all(crimped), cells);
            end(way.first(to), way.all(crimped), cells);
            alike.merge(cells, way.when(), Condition::or);
        }
        alike.forEach((cells, when) -> {
            cells.add(VehicleWords.of(when, layout.view().when()));
            rows.add(List.copyOf(cells));
        });
    }

    private Stream<Case<Crimped>> crimped(Node node) {
        ConnectorView connector = node.kind() == Node.Kind.CAVITY
                ? layout.view().connectors().get(node.element()) : null;
        if (connector == null) {
            return Stream.of();
        }
        return connector.connector().cavities().stream()
                .filter(fact -> fact.kind() == CavityKind.TERMINAL && fact.cavity().text().equals(node.pin()))
                .map(fact -> new Case<>(new Crimped(node, fact.value().text()),
                        connector.when().vehicles().resolve(fact.when()).condition(), fact.span()));
    }

    private static void length(Optional<CutLength> length, List<String> cells) {
        if (length.flatMap(CutLength::cut).isEmpty()) {
            cells.addAll(List.of("", "", "", Measure.Provenance.UNKNOWN.words()));
            return;
        }
        CutLength known = length.get();
        cells.add(Figures.millimetres(known.cut().orElseThrow()));
        cells.add(Figures.millimetres(known.tolerance().minus()));
        cells.add(Figures.millimetres(known.tolerance().plus()));
        cells.add(known.pinned() ? "stated, never cut to fit" : known.stated() ? "stated" : "route");
    }

    private static void end(Optional<Node> node, List<Crimped> crimped, List<String> cells) {
        cells.add(node.map(Node::element).orElse(""));
        cells.add(node.map(Node::pin).orElse(""));
        cells.add(crimped.stream().filter(each -> node.filter(each.cavity()::equals).isPresent())
                .map(Crimped::terminal).findFirst().orElse(""));
    }
}
