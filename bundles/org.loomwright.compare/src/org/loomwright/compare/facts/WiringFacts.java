// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Wiring;

/** What a drawing or harness states, but for its runs and circuits. */
final class WiringFacts {

    private static final Expression ALWAYS = new Expression.Always();
    private static final Value YES = Value.word("yes");

    private final Wiring wiring;
    private final String owner;
    private final String platform;
    private final Names names;
    private final Consumer<ItemBuilder> sink;

    WiringFacts(Wiring wiring, Names names, Consumer<ItemBuilder> sink) {
        this.wiring = wiring;
        this.owner = wiring.name().text();
        this.platform = wiring.platform().text();
        this.names = names;
        this.sink = sink;
    }

    void read() {
        CircuitFacts circuits = new CircuitFacts(wiring, names);
        sink.accept(own());
        new RunFacts(wiring, names).read(sink);
        wiring.connectors().forEach(each -> sink.accept(connector(each, circuits)));
        for (Wiring.Stud each : wiring.studs()) {
            ItemBuilder stud = new ItemBuilder(Sort.STUD, owner, each.name().text(), each.span()).exists(each.when())
                    .ref(Property.PLACE, each.place(), Sort.PLACE, platform)
                    .ref(Property.BRANCH, each.branch(), Sort.RUN, owner)
                    .ref(Property.GROUND, each.ground(), Sort.GROUND, platform);
            circuits.endsAt(each.name().text()).forEach(stud::neighbour);
            sink.accept(stud);
        }
        wiring.devices().forEach(each -> {
            ItemBuilder device = PlatformFacts.device(each, owner, platform);
            circuits.endsAt(each.name().text()).forEach(device::neighbour);
            sink.accept(device);
        });
        circuits.read(sink);
        for (Wiring.Placed each : wiring.placed()) {
            ItemBuilder placed = new ItemBuilder(Sort.PLACED, owner, each.name().text(), each.span())
                    .exists(each.when()).ref(Property.PART, Optional.of(each.part()), Sort.PART, "")
                    .put(Property.AT, names.location(each.from()), each.span());
            each.to().ifPresent(to -> placed.put(Property.UNTIL_AT, names.location(to), each.span()));
            sink.accept(placed);
        }
    }

    private ItemBuilder own() {
        ItemBuilder item = new ItemBuilder(Sort.WIRING, "", owner, wiring.span()).exists(wiring.when())
                .word(Property.KIND, wiring.isHarness() ? "harness" : "drawing").word(Property.TITLE, wiring.title())
                .ref(Property.PLATFORM, Optional.of(wiring.platform()), Sort.PLATFORM, "")
                .ref(Property.POSITION, wiring.position(), Sort.POSITION, platform)
                .ref(Property.DATUM, wiring.datum(), Sort.PLACE, platform)
                .all(Property.TOLERANCE, wiring.defaults().tolerance(), Measures::of)
                .parts(Property.CABLE, wiring.defaults().cable());
        wiring.sheets().forEach(each -> item.put(new Slot(Property.SHEET, Value.word(each.number())),
                Value.word(each.issue().isEmpty() ? "no issue" : "issue " + each.issue()), ALWAYS, each.span()));
        Ours ours = wiring.ours();
        ours.covers().forEach(each -> item.put(new Slot(Property.COVERS,
                Value.mention(Sort.WIRING, "", each.text())), YES, ALWAYS, each.span()));
        for (Ours.Setting each : ours.settings()) {
            Value kind = Value.word(words(each.kind()));
            Value subject = each.place().map(place -> kind.and(" at ")
                    .and(Value.mention(Sort.PLACE, platform, place.text()))).orElse(kind);
            each.value().map(Value::quantity).or(() -> each.tolerance().map(Measures::of)).ifPresent(value ->
                    item.put(new Slot(Property.SETTING, subject), value, ALWAYS, each.span()));
        }
        for (Ours.Cap each : ours.caps()) {
            Value value = Value.word("yes");
            if (each.parkedAt().isPresent()) {
                value = Value.word("at ").and(Value.mention(Sort.PLACE, platform, each.parkedAt().get().text()));
            }
            if (each.within().isPresent()) {
                value = value.and(" within ").and(Value.quantity(each.within().get()));
            }
            item.put(new Slot(Property.CAP, Value.mention(Sort.RUN, owner, each.branch().text())), value, each.when(),
                    each.span());
        }
        item.word(Property.OBJECTIVES, ours.order().stream().map(WiringFacts::words)
                .collect(Collectors.joining(", ")));
        wiring.connectors().forEach(each -> item.neighbour(Value.word("connector " + each.name())));
        wiring.circuits().forEach(each -> item.neighbour(Value.word("circuit " + each.name())));
        wiring.runs().forEach(each -> item.neighbour(Value.word("run " + each.name())));
        return item;
    }

    private ItemBuilder connector(Connector connector, CircuitFacts circuits) {
        ItemBuilder item = new ItemBuilder(Sort.CONNECTOR, owner, connector.name().text(), connector.span())
                .exists(connector.when()).word(Property.TITLE, connector.title())
                .ref(Property.PLACE, connector.place(), Sort.PLACE, platform)
                .ref(Property.BRANCH, connector.branch(), Sort.RUN, owner)
                .parts(Property.HOUSING, connector.housing()).all(Property.MATES, connector.mates(), names::mate);
        for (Connector.CavityFact fact : connector.cavities()) {
            Value cavity = Value.word(fact.cavity().text());
            Value part = Value.mention(Sort.PART, "", fact.value().text());
            switch (fact.kind()) {
                case MAP -> item.put(new Slot(Property.MAP, cavity), Value.word(fact.value().text()), fact.when(),
                        fact.span());
                case TERMINAL -> item.put(new Slot(Property.TERMINAL, cavity), part, fact.when(), fact.span());
                case SEAL -> item.put(new Slot(Property.SEAL, cavity), part, fact.when(), fact.span());
                case PLUG -> item.put(new Slot(Property.PLUG, cavity), part, fact.when(), fact.span());
            }
        }
        connector.covers().forEach(each -> item.put(new Slot(Property.COVERS,
                Value.mention(Sort.WIRING, "", each.text())), YES, ALWAYS, each.span()));
        circuits.endsAt(connector.name().text()).forEach(item::neighbour);
        return item;
    }

    /** {@code service loop} for {@code SERVICE_LOOP}. */
    private static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
