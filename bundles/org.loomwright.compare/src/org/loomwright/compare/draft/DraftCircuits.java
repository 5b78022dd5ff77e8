// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.loomwright.compare.matrix.AlikeCircuits;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Location;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.quantity.ConductorSize;

/** The circuits of a draft. */
final class DraftCircuits {

    private final Cover cover;
    private final DraftRuns runs;
    private final NameBook names;
    private final List<Choice> choices;
    private final List<Map<String, String>> ends;
    private final NameBook numbers = new NameBook();

    /** @param ends by drawing, what its connectors, studs and devices are called in the draft */
    DraftCircuits(Cover cover, DraftRuns runs, NameBook names, List<Choice> choices, List<Map<String, String>> ends) {
        this.cover = cover;
        this.runs = runs;
        this.names = names;
        this.choices = choices;
        this.ends = ends;
    }

    void write(List<AlikeCircuits> all, StringBuilder out) {
        out.append('\n');
        List<OneCircuit> circuits = all.stream().map(OneCircuit::new).toList();
        circuits.forEach(OneCircuit::findSplices);
        circuits.forEach(each -> each.write(out));
    }

    /** One circuit while it is put together. */
    private final class OneCircuit {

        private final Map<Integer, Circuit> theirs;
        private final AlikeCircuits alike;
        private final Condition own;
        private final List<String> splices = new ArrayList<>();
        private final Cover.Values colours = new Cover.Values();
        private final NameBook wires = new NameBook();
        private String number;

        OneCircuit(AlikeCircuits alike) {
            this.alike = alike;
            this.theirs = new TreeMap<>(alike.circuits());
            this.own = cover.whole.vehicles().anyOf(theirs.entrySet().stream()
                    .map(each -> cover.in(each.getKey(), each.getValue().when())).toList());
        }

        void write(StringBuilder out) {
            Cover.Values called = new Cover.Values();
            theirs.forEach((column, each) -> {
                called.add(each.name().text(), cover.in(column, each.when()), column);
                each.colours().forEach(fact -> colours.add(fact.value().toString(), cover.in(column, each.when(),
                        fact.when()), column));
            });
            number = numbers.take(called.isEmpty() ? theirs.values().iterator().next().name().text()
                    : called.common());
            String title = theirs.values().stream().map(Circuit::title).filter(each -> !each.isEmpty()).findFirst()
                    .orElse("");
            boolean differs = theirs.values().stream().map(this::called).distinct().count() > 1
                    || !called.common().equals(number);
            if (differs) {
                String words = number + (colours.isEmpty() ? "" : " " + colours.common()) + " stands for " + String
                        .join(", ", theirs.entrySet().stream().map(each -> called(each.getValue()) + " of "
                                + cover.views.get(each.getKey()).name()).toList());
                choices.add(new Choice(Choice.Kind.NAME, "circuit " + number, words));
                out.append("    // Number and colour were chosen; the years have their own.\n");
            }
            if (!cover.whole.implies(own)) {
                choices.add(new Choice(Choice.Kind.PARTIAL, "circuit " + number, "for " + cover.words(own)
                        + "; elsewhere its wires are left out, so that nothing is live"));
            }
            Block block = new Block(cover, own, "circuit " + number + Block.quoted(title)
                    + (colours.isEmpty() ? "" : " " + colours.common()));
            if (differs) {
                theirs.forEach((column, each) -> block.line("stands for " + called(each) + " of "
                        + cover.views.get(column).name()));
            }
            splices.forEach(block::line);
            alike.wires().forEach(row -> wire(new TreeMap<>(row), block));
            block.write("    ", cover.whole, out);
        }

        private String called(Circuit circuit) {
            return circuit.name().text() + circuit.colours().stream().findFirst().map(fact -> " " + fact.value())
                    .orElse("");
        }

        private void findSplices() {
            Map<String, Map<Integer, Circuit.Splice>> bySpot = new LinkedHashMap<>();
            theirs.forEach((column, circuit) -> {
                Map<String, Integer> count = new HashMap<>();
                for (Circuit.Splice each : circuit.splices()) {
                    String spot = spot(column, each.at());
                    bySpot.computeIfAbsent(spot + "\n" + count.merge(spot, 1, Integer::sum), key -> new TreeMap<>())
                            .put(column, each);
                }
            });
            bySpot.forEach((spot, row) -> {
                Circuit.Splice first = row.values().iterator().next();
                String name = names.take(first.name().text());
                row.forEach((column, each) -> ends.get(column).put(each.name().text(), name));
                Condition when = cover.whole.vehicles().anyOf(row.entrySet().stream().map(each -> cover.in(
                        each.getKey(), theirs.get(each.getKey()).when(), each.getValue().when())).toList());
                splices.add("splice " + name + " at " + spot.substring(0, spot.indexOf('\n'))
                        + row.values().stream().flatMap(each -> each.method().stream()).findFirst()
                                .map(ref -> " by " + ref).orElse("") + cover.when(when, own));
            });
        }

        /** A point of ours; for a station along a run the end or start of it. */
        private String spot(int column, Location at) {
            return at.point().or(at::run).map(Ref::text).map(point -> runs.point(column, point)).orElse("");
        }

        private void wire(Map<Integer, Circuit.Wire> row, Block circuit) {
            Circuit.Wire first = row.values().iterator().next();
            Condition has = cover.whole.vehicles().anyOf(row.entrySet().stream()
                    .map(each -> in(each.getKey(), each.getValue())).toList());
            Cover.Values from = new Cover.Values();
            Cover.Values to = new Cover.Values();
            Cover.Values lengths = new Cover.Values();
            Cover.Values cables = new Cover.Values();
            Cover.Values own = new Cover.Values();
            for (Map.Entry<Integer, Circuit.Wire> each : row.entrySet()) {
                int column = each.getKey();
                Circuit.Wire wire = each.getValue();
                boolean turned = isTurned(column, wire, from, to);
                add(wire.from(), end -> end(column, end), turned ? to : from, column, wire);
                add(wire.to(), end -> end(column, end), turned ? from : to, column, wire);
                add(wire.lengths(), length -> length.value().map(value -> value.written()).orElse("unknown"), lengths,
                        column, wire);
                add(wire.cables(), Ref::toString, cables, column, wire);
                add(wire.colours(), Colour::toString, own, column, wire);
            }
            String name = wires.letter(first.name().text());
            Block wire = new Block(cover, has, "wire " + name);
            Cover.Values sizes = new Cover.Values();
            boolean link = row.entrySet().stream().anyMatch(each -> isLink(each.getKey(), each.getValue()));
            if (link) {
                row.forEach((column, each) -> add(each.sizes(), ConductorSize::written, sizes, column, each));
                choices.add(new Choice(Choice.Kind.GAUGE, "wire " + number + name, "as in each drawing: a fusible link"
                        + " that is thicker does not protect what it did"));
                circuit.line("// A fusible link in some years: each keeps its own size.");
                sizes.all().forEach((text, when) -> wire.line("size " + text + cover.when(when, has)));
            }
            String size = link ? "" : size(row, name, circuit);
            wire.head(size.isEmpty() ? "" : " " + size).head(own.isEmpty() || own.common().equals(colours.common())
                    ? "" : " " + own.common());
            wire.fact("from", from).fact("to", to).fact("length", lengths).fact("cable", cables);
            StringBuilder text = new StringBuilder();
            wire.write("", this.own, text);
            text.toString().lines().forEach(circuit::line);
        }

        private Condition in(int column, Circuit.Wire wire) {
            return cover.in(column, theirs.get(column).when(), wire.when());
        }

        private <T> void add(List<Fact<T>> facts, Function<T, String> text, Cover.Values values, int column,
                Circuit.Wire wire) {
            facts.forEach(fact -> values.add(text.apply(fact.value()), cover.in(column, theirs.get(column).when(),
                    wire.when(), fact.when()), column));
        }

        /** Whether a drawing states the ends of the wire the other way round than those before it. */
        private boolean isTurned(int column, Circuit.Wire wire, Cover.Values from, Cover.Values to) {
            return wire.from().stream().map(fact -> end(column, fact.value())).anyMatch(to.all()::containsKey)
                    && wire.to().stream().map(fact -> end(column, fact.value())).noneMatch(to.all()::containsKey)
                    || wire.to().stream().map(fact -> end(column, fact.value())).anyMatch(from.all()::containsKey)
                    && wire.from().stream().map(fact -> end(column, fact.value())).noneMatch(from.all()::containsKey);
        }

        private String end(int column, Circuit.End end) {
            String target = end.target().text();
            String ours = ends.get(column).getOrDefault(target, end.target().toString());
            return end.cavity().text().isEmpty() ? ours : ours + ":" + end.cavity().text();
        }

        private boolean isLink(int column, Circuit.Wire wire) {
            return cover.views.get(column).wires().stream().filter(view -> view.wire() == wire)
                    .flatMap(view -> view.cables().stream()).anyMatch(each -> each.value().kind() == Part.Kind
                            .FUSIBLE_LINK);
        }

        /** The largest size that any vehicle has. */
        private String size(Map<Integer, Circuit.Wire> row, String wire, Block circuit) {
            ConductorSize largest = null;
            int of = -1;
            Map<String, TreeSet<Integer>> all = new LinkedHashMap<>();
            for (Map.Entry<Integer, Circuit.Wire> each : row.entrySet()) {
                for (Fact<ConductorSize> fact : each.getValue().sizes()) {
                    all.computeIfAbsent(fact.value().written(), key -> new TreeSet<>()).add(each.getKey());
                    if (largest == null || fact.value().areaMm2() > largest.areaMm2()) {
                        largest = fact.value();
                        of = each.getKey();
                    }
                }
            }
            if (largest == null) {
                return "";
            }
            if (all.size() > 1) {
                String written = largest.written();
                String words = written + " as in " + cover.views.get(of).name() + "; " + String.join(", ", all
                        .entrySet().stream().filter(each -> !each.getKey().equals(written)).map(each -> each.getKey()
                                + " in " + cover.names(each.getValue())).toList());
                choices.add(new Choice(Choice.Kind.GAUGE, "wire " + number + wire, words));
                circuit.line("// " + words + ".");
            }
            return largest.written();
        }
    }
}
