// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.app.VehicleWords;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.HarnessLayout.LaidWire;
import org.loomwright.geometry.HarnessLayout;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.Ways;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector.CavityFact;
import org.loomwright.harness.Connector.CavityKind;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;

/**
 * The parts list of a harness: what goes into it, how much of it, where, and for which vehicles. What the source leaves
 * open (the terminal in a cavity, a length that is not known) has a row that says so.
 */
public final class PartsList {

    private static final List<String> HEADERS = List.of("quantity", "unit", "sort", "part", "title", "size", "colour",
            "where", "vehicles");
    private static final String PIECES = "pc";
    private static final String METRES = "m";
    private static final String OPEN = "(not stated)";

    private final HarnessLayout layout;
    private final Map<Key, Amount> amounts = new LinkedHashMap<>();

    private PartsList(HarnessLayout layout) {
        this.layout = layout;
    }

    /** The order of rows. */
    private enum Block {
        HOUSING, TERMINAL, SEAL, PLUG, DEVICE, SPLICE, CABLE, PIECE, LENGTH
    }

    /** What shares a row. */
    private record Key(Block block, String sort, String part, String title, String size, String colour, String unit,
            Condition when) {
    }

    /** How much of it, and where. */
    private static final class Amount {
        private int pieces;
        private Length length = Length.ZERO;
        private boolean unknown;
        private final Set<String> where = new LinkedHashSet<>();
    }

    /** The parts list of a harness: sort by sort, in the natural order of names. */
    public static Table of(HarnessLayout layout) {
        PartsList list = new PartsList(layout);
        WiringView view = layout.view();
        view.connectors().values().forEach(list::connector);
        view.devices().values().forEach(list::device);
        view.splices().values().forEach(list::splice);
        list.openEnds();
        layout.wires().forEach(list::wire);
        view.wiring().placed().forEach(list::placed);
        return new Table(view.name() + "-parts.csv", HEADERS, list.rows());
    }

    private void connector(ConnectorView connector) {
        for (Case<Part> housing : connector.housings()) {
            piece(Block.HOUSING, "housing", housing.value().name().text(), connector.name(), housing.when());
        }
        for (CavityFact fact : connector.connector().cavities()) {
            Condition when = resolve(fact.when()).and(connector.when());
            String where = connector.name() + ":" + fact.cavity().text();
            switch (fact.kind()) {
                case TERMINAL -> piece(Block.TERMINAL, "terminal", fact.value().text(), where, when);
                case SEAL -> piece(Block.SEAL, "seal", fact.value().text(), where, when);
                case PLUG -> piece(Block.PLUG, "plug", fact.value().text(), where, when);
                case MAP -> { }
            }
        }
    }

    /** Cavities that hold a wire for vehicles for which no terminal is stated. */
    private void openEnds() {
        Map<Node, Condition> open = new TreeMap<>();
        for (LaidWire laid : layout.wires()) {
            for (List<Case<Node>> ends : List.of(laid.wire().from(), laid.wire().to())) {
                ends.stream().filter(end -> end.value().kind() == Node.Kind.CAVITY)
                        .forEach(end -> open.merge(end.value(), end.when().and(laid.wire().when()), Condition::or));
            }
        }
        open.forEach((node, when) -> {
            Condition rest = when;
            ConnectorView connector = layout.view().connectors().get(node.element());
            for (CavityFact fact : connector == null ? List.<CavityFact>of() : connector.connector().cavities()) {
                if (fact.kind() == CavityKind.TERMINAL && fact.cavity().text().equals(node.pin())) {
                    rest = rest.minus(resolve(fact.when()));
                }
            }
            piece(Block.TERMINAL, "terminal", OPEN, node.label(), rest);
        });
    }

    private void device(DeviceView device) {
        for (Case<Part> part : device.parts()) {
            piece(Block.DEVICE, sort(part.value().kind()), part.value().name().text(), device.name(), part.when());
        }
    }

    private void splice(WiringView.SpliceView splice) {
        String method = splice.splice().method().map(Ref::text).orElse(OPEN);
        piece(Block.SPLICE, "splice", method, splice.splice().name().text(), splice.when());
    }

    private void wire(LaidWire laid) {
        Ways ways = new Ways(laid.wire().when());
        Ways.Fact<CutLength> lengths = ways.fact(laid.lengths().stream()
                .map(each -> new Case<>(each, each.when(), laid.wire().wire().span())).toList());
        Ways.Fact<ConductorSize> sizes = ways.fact(laid.wire().sizes());
        Ways.Fact<Part> cables = ways.fact(laid.wire().cables());
        Ways.Fact<Colour> colours = ways.fact(laid.wire().colours());
        record Piece(String cable, String size, String colour, Optional<Length> cut) {
        }
        Map<Piece, Condition> pieces = new LinkedHashMap<>();
        for (Ways.Way way : ways.list()) {
            pieces.merge(new Piece(way.first(cables).map(part -> part.name().text()).orElse(OPEN),
                    way.first(sizes).map(ConductorSize::written).orElse(""),
                    way.first(colours).map(Colour::toString).orElse(""),
                    way.first(lengths).flatMap(CutLength::cut)), way.when(), Condition::or);
        }
        pieces.forEach((piece, when) -> length(new Key(Block.CABLE, "cable", piece.cable(), title(piece.cable()),
                piece.size(), piece.colour(), METRES, when), laid.wire().label(), piece.cut()));
    }

    private void placed(Wiring.Placed placed) {
        Condition when = resolve(placed.when()).and(layout.view().when());
        String part = placed.part().text();
        String sort = Optional.ofNullable(layout.parts().get(part)).map(each -> sort(each.kind())).orElse("part");
        if (placed.to().isEmpty()) {
            piece(Block.PIECE, sort, part, placed.name().text(), when);
            return;
        }
        List<Case<Spot>> from = layout.tree().spots(placed.from());
        List<Case<Spot>> to = layout.tree().spots(placed.to().get());
        Optional<Length> length = from.isEmpty() || to.isEmpty() ? Optional.empty()
                : layout.tree().route(from.getFirst().value(), to.getFirst().value()).length().length();
        length(new Key(Block.LENGTH, sort, part, title(part), "", "", METRES, when), placed.name().text(), length);
    }

    private void piece(Block block, String sort, String part, String where, Condition when) {
        if (!when.isNever()) {
            Amount amount = amount(new Key(block, sort, part, title(part), "", "", PIECES, when));
            amount.pieces++;
            amount.where.add(where);
        }
    }

    private void length(Key key, String where, Optional<Length> length) {
        if (!key.when().isNever()) {
            Amount amount = amount(key);
            amount.length = amount.length.plus(length.orElse(Length.ZERO));
            amount.unknown |= length.isEmpty();
            amount.where.add(where);
        }
    }

    private Amount amount(Key key) {
        return amounts.computeIfAbsent(key, any -> new Amount());
    }

    private Condition resolve(Expression when) {
        return layout.view().when().vehicles().resolve(when).condition();
    }

    private String title(String part) {
        return Optional.ofNullable(layout.parts().get(part)).map(Part::title).orElse("");
    }

    /** {@code fusible link} for {@code FUSIBLE_LINK}. */
    private static String sort(Part.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private List<List<String>> rows() {
        NaturalOrder natural = new NaturalOrder();
        Comparator<Key> order = Comparator.comparing(Key::block).thenComparing(Key::sort)
                .thenComparing(Key::part, natural).thenComparing(Key::size, natural).thenComparing(Key::colour)
                .thenComparing(key -> !key.when().equals(layout.view().when()));
        List<List<String>> rows = new ArrayList<>();
        amounts.entrySet().stream().sorted(Map.Entry.comparingByKey(order)).forEach(each -> {
            Key key = each.getKey();
            Amount amount = each.getValue();
            String quantity = key.unit().equals(PIECES) ? Integer.toString(amount.pieces)
                    : Figures.metres(amount.length);
            rows.add(List.of(amount.unknown ? quantity + " and an unknown length" : quantity, key.unit(), key.sort(),
                    key.part(), key.title(), key.size(), key.colour(), String.join(" ", amount.where),
                    VehicleWords.of(key.when(), layout.view().when())));
        });
        return rows;
    }
}
