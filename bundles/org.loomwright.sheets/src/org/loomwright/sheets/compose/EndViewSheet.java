// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.CavityMap;
import org.loomwright.harness.Connector.CavityFact;
import org.loomwright.harness.Connector.CavityKind;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.page.Typeface;

/**
 * The connector end views. The catalogue says which cavities a housing has and not where they are, so the view is a
 * scheme in the order of the catalogue, and says so; it is always the wire side.
 */
final class EndViewSheet {

    private static final int COLUMNS = 9;

    private final LaidHarness harness;
    private final Typeface face;
    private final List<Block> blocks = new ArrayList<>();

    private EndViewSheet(LaidHarness harness, Typeface face) {
        this.harness = harness;
        this.face = face;
    }

    static Document of(LaidHarness harness, Typeface face) {
        EndViewSheet sheet = new EndViewSheet(harness, face);
        sheet.blocks.add(new Block.Words("Every view is the WIRE SIDE: the side on which the wires go in, the mating"
                + " face turned away. The catalogue does not say where in a housing a cavity is, so the views show"
                + " the cavities in its order: find each by the number moulded into the housing."));
        harness.view().connectors().values().stream()
                .filter(each -> !each.when().and(harness.vehicles()).isNever()).forEach(sheet::connector);
        return new Document(harness.name() + "-end-views", "Connector end views",
                harness.title() + " (" + harness.name() + ")", false, sheet.blocks, List.of());
    }

    private void connector(ConnectorView connector) {
        Condition within = connector.when().and(harness.vehicles());
        String vehicles = harness.words(within);
        blocks.add(new Block.Heading(connector.name() + "  " + connector.connector().title()
                + (vehicles.equals("all") ? "" : "  (" + vehicles + ")")));
        List<String> words = new ArrayList<>();
        for (Case<Part> housing : connector.housings()) {
            Condition when = housing.when().and(within);
            if (!when.isNever()) {
                words.add(housing.value().title() + " (" + housing.value().name() + ")"
                        + housing.value().word(Part.WordKind.GENDER).map(each -> ", " + each + " side").orElse("")
                        + housing.value().word(Part.WordKind.KEYING).map(each -> ", keying " + each).orElse("")
                        + suffix(when, within));
            }
        }
        for (Case<ConnectorView.Mate> mate : connector.mates()) {
            Condition when = mate.when().and(within);
            if (!when.isNever()) {
                words.add("mates " + mate.value().element() + " of " + mate.value().owner() + suffix(when, within));
            }
        }
        blocks.add(new Block.Words(words.isEmpty() ? "no housing stated" : Words.capital(String.join("; ", words))));
        List<String> cavities = cavities(connector);
        List<EndPicture.Hole> holes = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        for (String cavity : cavities) {
            rows(connector, cavity, within, holes, rows);
        }
        blocks.add(new Block.Picture(EndPicture.of(holes, face), ""));
        blocks.add(new Grid(connector.name(), Tables.columns("Cavity", "Function", "Wire", "Colour", "Size",
                "Terminal, seal, plug", "To", "Meets", "Vehicles"), rows));
    }

    private String suffix(Condition when, Condition within) {
        return within.implies(when) ? "" : " when " + Words.of(when);
    }

    private List<String> cavities(ConnectorView connector) {
        Set<String> names = new LinkedHashSet<>();
        connector.housings().forEach(each -> each.value().pins().forEach(pin -> names.add(pin.name().text())));
        harness.pieces().stream().flatMap(each -> each.ends().stream()).map(PieceEnd::node)
                .filter(node -> node.kind() == Node.Kind.CAVITY && node.element().equals(connector.name()))
                .forEach(node -> names.add(node.pin()));
        return List.copyOf(names);
    }

    private void rows(ConnectorView connector, String cavity, Condition within, List<EndPicture.Hole> holes,
            List<Row> rows) {
        Node node = connector.cavity(cavity);
        String function = connector.housings().stream().flatMap(each -> each.value().pins().stream())
                .filter(each -> each.name().text().equals(cavity)).map(Part.Pin::title).findFirst().orElse("");
        String meets = meets(connector, cavity, within);
        List<Piece> pieces = harness.pieces().stream()
                .filter(each -> each.ends().stream().anyMatch(end -> end.node().equals(node))).toList();
        for (Piece piece : pieces) {
            PieceEnd end = piece.from().node().equals(node) ? piece.from() : piece.to();
            PieceEnd other = piece.other(node);
            rows.add(Tables.row(Cell.of(cavity), Cell.of(function.isEmpty() ? piece.function() : function),
                    Cell.of(piece.wire()), Cell.colour(piece.colour()), Cell.of(piece.written()),
                    Cell.of(String.join(", ", Stream.of(end.terminal(), end.seal()).filter(each -> !each.isEmpty())
                            .toList())), Cell.of((other.label() + " " + other.title()).strip()), Cell.of(meets),
                    Cell.of(harness.words(piece.when()))));
        }
        for (CavityFact fact : connector.connector().cavities()) {
            Condition when = harness.resolve(fact.when()).and(within);
            if (fact.kind() == CavityKind.PLUG && fact.cavity().text().equals(cavity) && !when.isNever()) {
                rows.add(Tables.row(Cell.of(cavity), Cell.of(function), Cell.of("-"), Cell.of(""), Cell.of(""),
                        Cell.of("plug " + fact.value().text()), Cell.of(""), Cell.of(""),
                        Cell.of(harness.words(when))));
            }
        }
        if (rows.isEmpty() || !rows.getLast().cells().getFirst().text().equals(cavity)) {
            rows.add(Tables.row(Cell.of(cavity), Cell.of(function), Cell.of("empty"), Cell.of(""), Cell.of(""),
                    Cell.of(""), Cell.of(""), Cell.of(""), Cell.of("all")));
        }
        if (rows.getLast().cells().size() != COLUMNS) {
            throw new IllegalStateException("a row of " + rows.getLast().cells().size() + " cells");
        }
        holes.add(new EndPicture.Hole(cavity, pieces.stream().map(Piece::wire).distinct().toList(),
                pieces.stream().map(Piece::colour).distinct().toList()));
    }

    private String meets(ConnectorView connector, String cavity, Condition within) {
        Set<String> met = new LinkedHashSet<>();
        for (Case<ConnectorView.Mate> mate : connector.mates()) {
            if (mate.when().excludes(within)) {
                continue;
            }
            Optional<ConnectorView> other = mate.value().device() ? Optional.empty() : harness.view().name()
                    .equals(mate.value().owner()) ? Optional.ofNullable(harness.view().connectors()
                            .get(mate.value().element())) : Optional.empty();
            CavityMap.of(connector, other).meets(cavity).forEach((pin, when) -> {
                if (!when.and(mate.when()).excludes(within)) {
                    met.add(mate.value().element() + ":" + pin);
                }
            });
        }
        return String.join(", ", met);
    }
}
