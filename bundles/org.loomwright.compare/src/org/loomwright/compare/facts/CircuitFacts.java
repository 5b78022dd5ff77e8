// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Wiring;

/** What a drawing or harness states of its circuits and wires. */
final class CircuitFacts {

    private final Wiring wiring;
    private final String owner;
    private final Names names;
    private final Map<String, List<Value>> ends = new HashMap<>();

    CircuitFacts(Wiring wiring, Names names) {
        this.wiring = wiring;
        this.owner = wiring.name().text();
        this.names = names;
        for (Circuit circuit : wiring.circuits()) {
            for (Circuit.Wire wire : circuit.wires()) {
                wire.from().forEach(end -> note(circuit, wire, end.value()));
                wire.to().forEach(end -> note(circuit, wire, end.value()));
            }
        }
    }

    private void note(Circuit circuit, Circuit.Wire wire, Circuit.End end) {
        List<Fact<Colour>> colours = wire.colours().isEmpty() ? circuit.colours() : wire.colours();
        String colour = colours.isEmpty() ? "" : colours.getFirst().value().toString();
        ends.computeIfAbsent(end.target().text(), any -> new ArrayList<>()).add(Value.word("holds ")
                .and(Value.mention(Sort.CIRCUIT, owner, circuit.name().text()))
                .and(" " + colour + " in " + end.cavity().text()));
    }

    /** The wires that end at a connector, stud or device. */
    List<Value> endsAt(String name) {
        return ends.getOrDefault(name, List.of());
    }

    void read(Consumer<ItemBuilder> sink) {
        for (Circuit circuit : wiring.circuits()) {
            String name = circuit.name().text();
            ItemBuilder item = new ItemBuilder(Sort.CIRCUIT, owner, name, circuit.span()).exists(circuit.when())
                    .word(Property.TITLE, circuit.title())
                    .all(Property.COLOUR, circuit.colours(), colour -> Value.word(colour.toString()));
            circuit.origins().forEach(each -> item.put(new Slot(Property.ORIGIN,
                    Value.mention(Sort.WIRING, "", each.drawing().text())),
                    origin(each),
                    new Expression.Always(), each.span()));
            asFactory(circuit.asFactory(), item);
            for (Circuit.Wire wire : circuit.wires()) {
                wire.from().forEach(end -> item.neighbour(Value.word("ends at ").and(names.end(end.value()))));
                wire.to().forEach(end -> item.neighbour(Value.word("ends at ").and(names.end(end.value()))));
            }
            sink.accept(item);
            circuit.splices().forEach(each -> sink.accept(splice(circuit, each)));
            circuit.wires().forEach(each -> sink.accept(wire(name, each)));
        }
    }

    private Value origin(Circuit.Origin origin) {
        Value circuit = names.circuit(origin.drawing().text(), origin.number());
        return origin.colour().map(colour -> circuit.and(" " + colour)).orElse(circuit);
    }

    private ItemBuilder splice(Circuit circuit, Circuit.Splice splice) {
        ItemBuilder item = new ItemBuilder(Sort.SPLICE, owner, splice.name().text(), splice.span())
                .exists(splice.when())
                .put(Property.CIRCUIT, Value.mention(Sort.CIRCUIT, owner, circuit.name().text()), splice.span())
                .put(Property.AT, names.location(splice.at()), splice.span())
                .ref(Property.METHOD, splice.method(), Sort.PART, "");
        endsAt(splice.name().text()).forEach(item::neighbour);
        return item;
    }

    private ItemBuilder wire(String circuit, Circuit.Wire wire) {
        ItemBuilder item = new ItemBuilder(Sort.WIRE, owner + "/" + circuit, wire.name().text(), wire.span())
                .exists(wire.when())
                .all(Property.SIZE, wire.sizes(), size -> Value.word(size.written()))
                .parts(Property.CABLE, wire.cables())
                .all(Property.COLOUR, wire.colours(), colour -> Value.word(colour.toString()))
                .all(Property.FROM, wire.from(), names::end)
                .all(Property.TO, wire.to(), names::end)
                .all(Property.LENGTH, wire.lengths(), Measures::of)
                .word(Property.LEGEND, wire.legend());
        asFactory(wire.asFactory(), item);
        return item;
    }

    private static void asFactory(Optional<Fact<String>> reason, ItemBuilder item) {
        reason.ifPresent(each -> item.put(Slot.of(Property.AS_FACTORY), Value.word(each.value()), each.when(),
                each.span()));
    }
}
