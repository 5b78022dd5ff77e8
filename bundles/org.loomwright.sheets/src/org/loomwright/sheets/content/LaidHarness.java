// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.CutLengths;
import org.loomwright.geometry.CutSettings;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.NodeSpots;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Ways;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector.CavityFact;
import org.loomwright.harness.Connector.CavityKind;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;

/**
 * A harness for some vehicles, its wires laid along its tree and taken apart into pieces. Immutable; safe for use by
 * several threads.
 *
 * @param view     the harness
 * @param parts    catalogue parts by name
 * @param vehicles the vehicles that it is made for, within those of the harness
 * @param tree     its shape
 * @param spots    where everything is on it
 * @param routed   its wires
 * @param pieces   the pieces of wire, in the natural order of their numbers
 */
public record LaidHarness(WiringView view, Map<String, Part> parts, Condition vehicles, HarnessTree tree,
        NodeSpots spots, List<RoutedWire> routed, List<Piece> pieces) {

    /** Print is repeated in steps of this, which common practice leaves free: a legend is read where it is bent. */
    private static final Length PITCH_STEP = Length.ofMillimetres(25);

    /** Lays a harness out. Linear in its wires and their routes, but for conditions. */
    public static LaidHarness of(WiringView view, Map<String, Part> parts, Condition vehicles) {
        Condition within = view.when().and(vehicles);
        HarnessTree tree = HarnessTree.of(view, within);
        NodeSpots spots = NodeSpots.of(tree);
        List<RoutedWire> routed = RoutedWire.all(tree, spots);
        CutLengths lengths = new CutLengths(tree, parts, CutSettings.usual());
        List<Piece> pieces = new ArrayList<>();
        for (RoutedWire each : routed) {
            if (!each.wire().when().excludes(within)) {
                pieces(view, within, each.wire(), lengths.of(each), pieces);
            }
        }
        pieces.sort(Comparator.comparing(Piece::wire, new NaturalOrder()));
        return new LaidHarness(view, parts, within, tree, spots, routed, List.copyOf(pieces));
    }

    /** Name of the harness. */
    public String name() {
        return view.name();
    }

    /** Its title, else its name. */
    public String title() {
        return view.wiring().title().isEmpty() ? view.name() : view.wiring().title();
    }

    /** The part of that name. */
    public Optional<Part> part(String name) {
        return Optional.ofNullable(parts.get(name));
    }

    /** The vehicles in words, {@code all} for all that the harness is made for here. */
    public String words(Condition when) {
        return Words.of(when, vehicles);
    }

    /** The vehicles of an expression, among those that the harness is made for here. */
    public Condition resolve(org.loomwright.condition.Expression when) {
        return vehicles.vehicles().resolve(when).condition().and(vehicles);
    }

    /** The title of a place, else its name. */
    public String place(String name) {
        return view.platform().place(name).map(Platform.Place::title).filter(each -> !each.isEmpty()).orElse(name);
    }

    /** The same for some of its vehicles. */
    public LaidHarness within(Condition some) {
        Condition fewer = vehicles.and(some);
        return new LaidHarness(view, parts, fewer, tree, spots, routed, pieces.stream()
                .filter(each -> !each.when().excludes(fewer)).map(each -> each.within(fewer)).toList());
    }

    /** Everything of a piece but its vehicles. */
    private record Make(String colour, Optional<ConductorSize> size, String cable, Optional<CutLength> length,
            PieceEnd from, PieceEnd to) {
    }

    /** What sits in a cavity, or what a connector's housing is. */
    private record At(Node node, String part) {
    }

    private static void pieces(WiringView view, Condition within, WireView wire, List<CutLength> lengths,
            List<Piece> pieces) {
        Ways ways = new Ways(wire.when().and(within));
        Ways.Fact<CutLength> cut = ways.fact(
                lengths.stream().map(each -> new Case<>(each, each.when(), wire.wire().span())).toList());
        Ways.Fact<Node> from = ways.fact(wire.from());
        Ways.Fact<Node> to = ways.fact(wire.to());
        Ways.Fact<ConductorSize> sizes = ways.fact(wire.sizes());
        Ways.Fact<Part> cables = ways.fact(wire.cables());
        Ways.Fact<Colour> colours = ways.fact(wire.colours());
        List<Node> nodes = new ArrayList<>();
        wire.from().forEach(each -> nodes.add(each.value()));
        wire.to().forEach(each -> nodes.add(each.value()));
        List<Node> apart = nodes.stream().distinct().toList();
        Ways.Fact<At> terminals = ways.fact(apart.stream()
                .flatMap(each -> facts(view, each, CavityKind.TERMINAL).stream()).toList());
        Ways.Fact<At> seals = ways.fact(apart.stream()
                .flatMap(each -> facts(view, each, CavityKind.SEAL).stream()).toList());
        Ways.Fact<At> housings = ways.fact(apart.stream().flatMap(each -> housings(view, each).stream()).toList());
        Map<Make, Condition> alike = new LinkedHashMap<>();
        for (Ways.Way way : ways.list()) {
            Inside inside = new Inside(view, way.all(housings), way.all(terminals), way.all(seals));
            alike.merge(new Make(way.first(colours).map(Colour::toString).orElse(""), way.first(sizes),
                    way.first(cables).map(part -> part.name().text()).orElse(""),
                    way.first(cut).map(LaidHarness::timeless), inside.end(way.first(from)),
                    inside.end(way.first(to))), way.when(), Condition::or);
        }
        alike.forEach((make, when) -> pieces.add(piece(view, wire, make, when)));
    }

    /** The same length without its vehicles, so that equal ones are equal. */
    private static CutLength timeless(CutLength each) {
        return new CutLength(each.from(), each.to(), each.when().vehicles().all(), each.stated(), each.pinned(),
                each.length(), each.cut(), each.tolerance(), each.provenance(), each.terms());
    }

    private static Piece piece(WiringView view, WireView wire, Make make, Condition when) {
        Optional<CutLength> length = make.length().filter(each -> each.cut().isPresent());
        String legend = wire.wire().legend().isEmpty() ? wire.label() : wire.wire().legend();
        return new Piece(wire.label(), wire.circuit().name().text(), wire.circuit().title(), make.colour(),
                make.size(), make.cable(), length.flatMap(CutLength::length), length.flatMap(CutLength::cut),
                length.map(CutLength::tolerance).orElse(org.loomwright.quantity.Tolerance.NONE),
                length.map(each -> each.pinned() ? "stated, never cut to fit" : each.stated() ? "stated" : "route")
                        .orElse(Measure.Provenance.UNKNOWN.words()),
                legend, length.flatMap(CutLength::cut).map(cut -> pitch(legend, cut, view.platform().limits())),
                make.from(), make.to(), when);
    }

    /** The legend and the gap behind it, in steps; on a short wire once in all that can be seen of it. */
    private static Length pitch(String legend, Length cut, Limits limits) {
        Length needed = limits.length(Limit.LEGEND_PITCH).times(legend.codePointCount(0, legend.length()))
                .roundedUpTo(PITCH_STEP);
        Length hidden = limits.length(Limit.LEGEND_HIDDEN).times(2);
        Length seen = cut.compareTo(hidden) > 0 ? cut.minus(hidden) : cut;
        return needed.compareTo(seen) <= 0 ? needed : seen;
    }

    private static List<Case<At>> facts(WiringView view, Node node, CavityKind kind) {
        ConnectorView connector = connector(view, node);
        List<Case<At>> found = new ArrayList<>();
        for (CavityFact fact : connector == null ? List.<CavityFact>of() : connector.connector().cavities()) {
            if (fact.kind() == kind && fact.cavity().text().equals(node.pin())) {
                found.add(new Case<>(new At(node, fact.value().text()),
                        connector.when().vehicles().resolve(fact.when()).condition(), fact.span()));
            }
        }
        return found;
    }

    private static List<Case<At>> housings(WiringView view, Node node) {
        ConnectorView connector = connector(view, node);
        return connector == null ? List.of() : connector.housings().stream().map(each -> new Case<>(
                new At(node, each.value().name().text()), each.when(), each.span())).toList();
    }

    private static ConnectorView connector(WiringView view, Node node) {
        return node.kind() == Node.Kind.CAVITY && node.owner().equals(view.name())
                ? view.connectors().get(node.element()) : null;
    }

    /** What is at the ends of a piece in one way. */
    private record Inside(WiringView view, List<At> housings, List<At> terminals, List<At> seals) {

        PieceEnd end(Optional<Node> there) {
            if (there.isEmpty()) {
                return new PieceEnd(new Node(Node.Kind.NOWHERE, view.name(), "", ""), "", "", "", "", "");
            }
            Node node = there.get();
            return new PieceEnd(node, title(view, node), of(housings, node), of(terminals, node), of(seals, node),
                    node.kind() == Node.Kind.SPLICE ? Optional.ofNullable(view.splices().get(node.element()))
                            .flatMap(each -> each.splice().method()).map(Ref::text).orElse("") : "");
        }

        private static String of(List<At> facts, Node node) {
            return facts.stream().filter(each -> each.node().equals(node)).map(At::part).findFirst().orElse("");
        }
    }

    private static String title(WiringView view, Node node) {
        return switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(connector(view, node)).map(each -> each.connector().title()).orElse("");
            case SPLICE -> "Splice";
            case STUD -> Optional.ofNullable(view.studs().get(node.element())).flatMap(each -> each.stud().place())
                    .flatMap(place -> view.platform().place(place.text())).map(Platform.Place::title)
                    .orElse("Ground stud");
            case PIN -> Optional.ofNullable(view.devices().get(node.element()))
                    .or(() -> Optional.ofNullable(view.platform().devices().get(node.element())))
                    .map(DeviceView::device).map(each -> each.title()).orElse("");
            case NOWHERE -> "";
        };
    }
}
