// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.loomwright.compare.matrix.RowMatcher.MatchedRow;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.WiringView;

/**
 * The rows of circuits: number, colour, splices, and for each wire its size and what else is stated of it. Circuits are
 * alike as far as they connect the same cavities and pins; an equal title counts as one of these. Wires of a circuit
 * are alike as far as they have the same ends.
 */
final class CircuitRows {

    private final Ends ends;
    private final List<WiringView> views = new ArrayList<>();
    private final RowMatcher<Circuit> matcher = new RowMatcher<>(true);
    private long wiresCompared;

    /** @param ends knows the connectors and devices of all drawings */
    CircuitRows(Ends ends) {
        this.ends = ends;
    }

    void add(int column, WiringView view) {
        views.add(view);
        List<Item<Circuit>> items = new ArrayList<>();
        for (Circuit each : view.wiring().circuits()) {
            Set<String> features = new LinkedHashSet<>();
            each.wires().forEach(wire -> features.addAll(ends(column, wire)));
            features.remove(Ends.SPLICE);
            if (!each.title().isEmpty()) {
                features.add("for " + each.title().toLowerCase(Locale.ROOT));
            }
            items.add(new Item<>(column, each.name().text(), features, each));
        }
        matcher.add(items);
    }

    private Set<String> ends(int column, Circuit.Wire wire) {
        return Stream.concat(wire.from().stream(), wire.to().stream())
                .map(fact -> ends.key(column, views.get(column), fact.value()))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    void write(RowList rows) {
        for (MatchedRow<Circuit> row : matcher.rows()) {
            rows.element(Section.CIRCUITS, RowList.title(row, Circuit::title));
            rows.add("", "number", row, item -> Stated.one(item.name(), item.element().when()));
            rows.add("", "colour", row, item -> Stated.cell(item.element().colours(), "",
                    colour -> Value.of(colour.toString(), "")));
            rows.add("", "spliced at", row, item -> new Cell(item.element().splices().stream()
                    .map(splice -> Value.of(spot(splice.at()), Stated.words(splice.when()))).distinct().toList()));
            wires(row, rows);
        }
    }

    private static String spot(Location at) {
        return at.point().map(Ref::text).orElseGet(() -> at.run().map(Ref::text).orElse("")
                + at.station().map(station -> " at " + Stated.length("", station, station.length()).written())
                        .orElse(""));
    }

    /** By row and column the circuits, each with the rows of its wires. */
    List<AlikeCircuits> elements() {
        return matcher.rows().stream().map(row -> new AlikeCircuits(row.byColumn(), wires(row).rows().stream()
                .map(MatchedRow::byColumn).toList())).toList();
    }

    private void wires(MatchedRow<Circuit> circuit, RowList rows) {
        RowMatcher<Circuit.Wire> wires = wires(circuit);
        wires.rows().forEach(wire -> wire(wire, rows));
        wiresCompared += wires.compared();
    }

    private RowMatcher<Circuit.Wire> wires(MatchedRow<Circuit> circuit) {
        RowMatcher<Circuit.Wire> wires = new RowMatcher<>(false);
        for (Item<Circuit> item : circuit.items()) {
            List<Item<Circuit.Wire>> all = new ArrayList<>();
            for (Circuit.Wire wire : item.element().wires()) {
                Set<String> features = ends(item.column(), wire);
                if (features.size() > 1) {
                    features.remove(Ends.SPLICE);
                }
                all.add(new Item<>(item.column(), wire.name().text(), features, wire));
            }
            wires.add(all);
        }
        return wires;
    }

    private void wire(MatchedRow<Circuit.Wire> row, RowList rows) {
        Circuit.Wire first = row.items().getFirst().element();
        String part = written(first.from()) + " - " + written(first.to());
        rows.add(part, "size", row, item -> size(item.element()));
        rows.add(part, "colour", row, item -> Stated.cell(item.element().colours(), "",
                colour -> Value.of(colour.toString(), "")));
        rows.add(part, "cable", row, item -> Stated.cell(item.element().cables(), "",
                cable -> Value.of(cable.text(), "")));
        rows.add(part, "length", row, item -> Stated.cell(item.element().lengths(), "", CircuitRows::length));
        Set<String> ofFirst = ends(row.items().getFirst().column(), first);
        if (row.items().stream().anyMatch(item -> !ofFirst.equals(ends(item.column(), item.element())))) {
            end("from", Circuit.Wire::from, row, part, rows);
            end("to", Circuit.Wire::to, row, part, rows);
        }
    }

    /** An end that is the same wherever the wire is there is told by the name of the row already. */
    private void end(String fact, Function<Circuit.Wire, List<Fact<Circuit.End>>> facts, MatchedRow<Circuit.Wire> row,
            String part, RowList rows) {
        Function<Item<Circuit.Wire>, Cell> cell = item -> end(item, facts.apply(item.element()));
        if (row.items().stream().map(cell).anyMatch(each -> !each.says(cell.apply(row.items().getFirst())))) {
            rows.add(part, fact, row, cell);
        }
    }

    /** A wire without a size is there all the same. */
    private static Cell size(Circuit.Wire wire) {
        String when = Stated.words(wire.when());
        return wire.sizes().isEmpty() ? Stated.one("no size", wire.when())
                : Stated.cell(wire.sizes(), when, size -> Value.of(size.written(), ""));
    }

    private static Value length(Measure measure) {
        return Stated.length("", measure, measure.length());
    }

    private Cell end(Item<Circuit.Wire> item, List<Fact<Circuit.End>> facts) {
        return Stated.cell(facts, "", end -> Value.named(end.toString(), "",
                ends.key(item.column(), views.get(item.column()), end)));
    }

    private static String written(List<Fact<Circuit.End>> facts) {
        return facts.isEmpty() ? "?" : facts.getFirst().value().toString();
    }

    long compared() {
        return matcher.compared() + wiresCompared;
    }
}
