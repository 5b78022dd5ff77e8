// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;

/** What a drawing or harness states of its trunks and branches. */
final class RunFacts {

    private static final Expression ALWAYS = new Expression.Always();

    private final Wiring wiring;
    private final String owner;
    private final String platform;
    private final Names names;
    private final Map<String, List<Value>> served = new HashMap<>();
    private final Map<String, List<Value>> carried = new HashMap<>();

    RunFacts(Wiring wiring, Names names) {
        this.wiring = wiring;
        this.owner = wiring.name().text();
        this.platform = wiring.platform().text();
        this.names = names;
        for (Run run : wiring.runs()) {
            if (run.from().isPresent() && run.to().isPresent()) {
                served.computeIfAbsent(run.from().get().text(), any -> new ArrayList<>())
                        .add(Value.word("serves ").and(names.point(run.to().get())));
            }
        }
        for (Connector connector : wiring.connectors()) {
            connector.branch().ifPresent(branch -> carried.computeIfAbsent(branch.text(), any -> new ArrayList<>())
                    .add(Value.word("carries ").and(Value.mention(Sort.CONNECTOR, owner, connector.name().text()))));
        }
    }

    void read(Consumer<ItemBuilder> sink) {
        for (Run run : wiring.runs()) {
            ItemBuilder item = new ItemBuilder(Sort.RUN, owner, run.name().text(), run.span()).exists(run.when())
                    .word(Property.KIND, run.kind() == Run.Kind.TRUNK ? "trunk" : "branch")
                    .ref(Property.SERVES, run.to(), Sort.PLACE, platform);
            run.from().ifPresent(from -> item.put(Property.LEAVES, names.point(from), from.span()));
            run.length().ifPresent(length -> item.put(Property.LENGTH, Measures.of(length), length.span()));
            run.slacks().forEach(each -> item.put(new Slot(Property.SLACK,
                    Value.mention(Sort.BREAKOUT, owner, each.before().text())), Value.quantity(each.atMost()), ALWAYS,
                    each.span()));
            run.bends().forEach(each -> item.put(new Slot(Property.BEND, Value.word(each.name().text())),
                    Value.word("radius ").and(Value.quantity(each.radius())).and(" at ").and(Measures.of(each.at())),
                    each.when(), each.span()));
            order(run, item);
            carried.getOrDefault(run.name().text(), List.of()).forEach(item::neighbour);
            sink.accept(item);
            int at = 0;
            for (Run.Breakout each : run.breakouts()) {
                sink.accept(breakout(run, each, ++at));
            }
            run.barriers().forEach(each -> sink.accept(
                    new ItemBuilder(Sort.BARRIER, owner, each.name().text(), each.span())
                            .put(Property.ON, Value.mention(Sort.RUN, owner, run.name().text()), each.span())
                            .put(Property.STATION, Measures.of(each.at()), each.span())));
        }
    }

    private ItemBuilder breakout(Run run, Run.Breakout breakout, int at) {
        ItemBuilder item = new ItemBuilder(Sort.BREAKOUT, owner, breakout.name().text(), breakout.span())
                .exists(breakout.when())
                .put(Property.ON, Value.mention(Sort.RUN, owner, run.name().text()), breakout.span())
                .put(Property.STATION, Measures.of(breakout.at()), breakout.span())
                .ref(Property.AFTER, breakout.after(), Sort.BREAKOUT, owner);
        if (breakout.at().length().isEmpty()) {
            item.word(Property.SEQUENCE, Integer.toString(at));
        }
        served.getOrDefault(breakout.name().text(), List.of()).forEach(item::neighbour);
        return item;
    }

    /** The breakouts by station; in the order of the source where one is not known. */
    private void order(Run run, ItemBuilder item) {
        Map<String, Long> stations = new HashMap<>();
        for (Run.Breakout each : run.breakouts()) {
            Long before = each.after().isEmpty() ? Long.valueOf(0) : stations.get(each.after().get().text());
            if (before != null && each.at().length().isPresent()) {
                stations.put(each.name().text(), before + each.at().length().get().nanometres());
            }
        }
        List<String> order = new ArrayList<>(run.breakouts().stream().map(each -> each.name().text()).toList());
        if (stations.keySet().containsAll(order)) {
            order.sort(Comparator.comparing(stations::get));
        }
        if (order.size() > 1) {
            item.put(Slot.of(Property.ORDER), new Value(order.stream().map(name -> (Value.Token)
                    new Value.Mention(new ItemId(Sort.BREAKOUT, owner, name), false)).toList()), ALWAYS, run.span());
        }
    }
}
