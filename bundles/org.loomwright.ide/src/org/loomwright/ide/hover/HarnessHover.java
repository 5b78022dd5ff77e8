// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.Shown;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/** What is known of the things of a drawing or harness: ends of wires, circuits, trunks and branches. */
final class HarnessHover {

    private static final int MOST = 30;

    private HarnessHover() {
    }

    static String describe(Moment moment, Symbol symbol, List<Row> rows, Shown shown, Cancel cancel) {
        Optional<WiringView> view = moment.project().wiring(symbol.owner());
        if (view.isEmpty()) {
            return symbol.kind() == Symbol.Kind.DEVICE ? PlatformHover.describe(moment, symbol, rows, shown, cancel)
                    : symbol.words();
        }
        WiringView found = view.get();
        String name = symbol.name();
        String title = switch (symbol.kind()) {
            case CONNECTOR -> connector(found, found.connectors().get(name), rows);
            case SPLICE -> splice(found, found.splices().get(name), rows);
            case STUD -> stud(found, found.studs().get(name), rows);
            case DEVICE -> {
                String words = device(found.devices().get(name), rows);
                FlowRows.device(moment, found.platform(), found.name(), name, rows);
                yield words;
            }
            case CIRCUIT -> circuit(found, name, rows);
            case RUN -> found.run(name).map(run -> run(moment, found, run, rows, shown, cancel)).orElse("");
            case BREAKOUT -> breakout(moment, found, name, rows, shown, cancel);
            default -> placed(found, name, rows);
        };
        String sort = found.run(name).filter(run -> symbol.kind() == Symbol.Kind.RUN).map(run ->
                run.kind() == Run.Kind.TRUNK ? "trunk" : "branch").orElse(symbol.kind().words());
        return sort + symbol.words().substring(symbol.kind().words().length()) + (title.isEmpty() ? ""
                : ", " + title);
    }

    private static String connector(WiringView view, ConnectorView connector, List<Row> rows) {
        if (connector == null) {
            return "";
        }
        connector.connector().place().ifPresent(place -> rows.add(new Row("at", place(view, place))));
        connector.connector().branch().ifPresent(branch -> rows.add(new Row("on", branch + view.run(branch.text())
                .flatMap(Run::to).map(to -> ", at " + place(view, to)).orElse(""))));
        for (Case<org.loomwright.harness.Part> each : connector.housings()) {
            rows.add(new Row("housing", each.value().name() + title(each.value().title()) + when(each.when(),
                    connector.when())));
        }
        for (Case<ConnectorView.Mate> each : connector.mates()) {
            rows.add(new Row("mates", each.value().element() + " of " + each.value().owner()
                    + when(each.when(), connector.when())));
        }
        cavities(view, connector).forEach((cavity, wires) -> rows.add(new Row(cavity, wires)));
        rows.add(new Row("vehicles", Vehicles.of(connector.when())));
        return connector.connector().title();
    }

    /** What is in each cavity. */
    private static Map<String, String> cavities(WiringView view, ConnectorView connector) {
        Map<String, String> cavities = new LinkedHashMap<>();
        connector.housings().forEach(each -> each.value().pins()
                .forEach(pin -> cavities.put("cavity " + pin.name(), title(pin.title()).replaceFirst("^, ", ""))));
        for (WireView wire : view.wires()) {
            Stream.concat(wire.from().stream(), wire.to().stream()).filter(end -> end.value().kind() == Node.Kind.CAVITY
                            && end.value().element().equals(connector.name()))
                    .forEach(end -> cavities.merge("cavity " + end.value().pin(), "wire " + wire.label() + " "
                            + String.join(" or ", wire.colours().stream().map(each -> each.value().toString())
                                    .distinct().toList()) + when(end.when(), connector.when()),
                            (one, other) -> one.isEmpty() ? other : one + "; " + other));
        }
        cavities.replaceAll((cavity, text) -> text.isEmpty() ? "free" : text);
        return cavities;
    }

    private static String splice(WiringView view, WiringView.SpliceView splice, List<Row> rows) {
        if (splice == null) {
            return "";
        }
        rows.add(new Row("circuit", splice.circuit().name() + title(splice.circuit().title())));
        splice.splice().at().point().ifPresent(point -> rows.add(new Row("at", point.text())));
        splice.splice().at().run().ifPresent(run -> rows.add(new Row("on", run + splice.splice().at().station()
                .map(at -> " at " + measure(at)).orElse(""))));
        splice.splice().method().ifPresent(method -> rows.add(new Row("by", method.text())));
        wires(view, splice.node(), rows);
        rows.add(new Row("vehicles", Vehicles.of(splice.when())));
        return "";
    }

    private static String stud(WiringView view, WiringView.StudView stud, List<Row> rows) {
        if (stud == null) {
            return "";
        }
        stud.stud().place().ifPresent(place -> rows.add(new Row("at", place(view, place))));
        stud.stud().ground().ifPresent(ground -> rows.add(new Row("on", "ground " + ground)));
        wires(view, stud.node(), rows);
        rows.add(new Row("vehicles", Vehicles.of(stud.when())));
        return "";
    }

    private static void wires(WiringView view, Node node, List<Row> rows) {
        List<String> wires = new ArrayList<>();
        for (WireView wire : view.wires()) {
            if (Stream.concat(wire.from().stream(), wire.to().stream()).anyMatch(end -> end.value().equals(node))) {
                wires.add(wire.label() + wire.sizes().stream().findFirst().map(size -> " " + size.value()).orElse(""));
            }
        }
        rows.add(new Row("wires", wires.isEmpty() ? "none" : String.join(", ", wires)));
    }

    static String device(DeviceView device, List<Row> rows) {
        if (device == null) {
            return "";
        }
        for (Case<org.loomwright.harness.Part> each : device.parts()) {
            rows.add(new Row("is", each.value().kind().word() + " " + each.value().name() + title(each.value().title())
                    + when(each.when(), device.when())));
        }
        device.device().place().ifPresent(place -> rows.add(new Row("at", place.text())));
        device.device().grounded().ifPresent(ground -> rows.add(new Row("case on", "ground " + ground)));
        rows.add(new Row("vehicles", Vehicles.of(device.when())));
        return device.device().title();
    }

    private static String circuit(WiringView view, String name, List<Row> rows) {
        String title = "";
        for (WiringView.CircuitView each : view.circuits()) {
            if (each.circuit().name().text().equals(name)) {
                title = each.circuit().title();
                each.circuit().colours().forEach(colour -> rows.add(new Row("colour", colour.value().toString())));
                List<String> wires = view.wires().stream().filter(wire -> wire.circuit() == each.circuit())
                        .map(HarnessHover::ends).toList();
                wires.stream().limit(MOST).forEach(wire -> rows.add(new Row("", wire)));
                rows.add(new Row("vehicles", Vehicles.of(each.when())));
            }
        }
        return title;
    }

    private static String ends(WireView wire) {
        return wire.label() + wire.sizes().stream().findFirst().map(size -> " " + size.value()).orElse("") + " from "
                + labels(wire.from()) + " to " + labels(wire.to());
    }

    private static String labels(List<Case<Node>> ends) {
        return ends.isEmpty() ? "nowhere" : String.join(" or ", ends.stream().map(each -> each.value().label())
                .distinct().toList());
    }

    private static String run(Moment moment, WiringView view, Run run, List<Row> rows, Shown shown, Cancel cancel) {
        run.from().ifPresent(from -> rows.add(new Row("from", from.text())));
        run.to().ifPresent(to -> rows.add(new Row("to", place(view, to))));
        run.length().ifPresent(length -> rows.add(new Row("length", measure(length))));
        if (run.kind() == Run.Kind.TRUNK && !run.breakouts().isEmpty()) {
            rows.add(new Row("breakouts", String.join(", ", run.breakouts().stream().map(each -> each.name().text())
                    .toList())));
        }
        run.to().ifPresent(to -> FitRows.of(moment, view, to.text(), run.name().text(), shown, cancel)
                .forEach(rows::add));
        rows.add(new Row("vehicles", Vehicles.of(view.platform().vehicles().resolve(run.when()).condition()
                .and(view.when()))));
        return "";
    }

    private static String breakout(Moment moment, WiringView view, String name, List<Row> rows, Shown shown,
            Cancel cancel) {
        for (Run run : view.wiring().runs()) {
            for (Run.Breakout breakout : run.breakouts()) {
                if (breakout.name().text().equals(name)) {
                    rows.add(new Row("on", run.name().text()));
                    rows.add(new Row(breakout.after().map(after -> "after " + after).orElse("station"),
                            measure(breakout.at())));
                }
            }
        }
        List<String> branches = view.wiring().runs(Run.Kind.BRANCH).stream()
                .filter(run -> run.from().map(Ref::text).filter(name::equals).isPresent())
                .map(run -> run.name().text()).toList();
        rows.add(new Row("branches", branches.isEmpty() ? "none" : String.join(", ", branches)));
        FitRows.ofBreakout(moment, view, name, shown, cancel).forEach(rows::add);
        return "";
    }

    private static String placed(WiringView view, String name, List<Row> rows) {
        view.wiring().placed().stream().filter(each -> each.name().text().equals(name)).findFirst()
                .map(Wiring.Placed::part).ifPresent(part -> rows.add(new Row("is", part.text())));
        return "";
    }

    /** A length as written, in millimetres too where it is written otherwise, and how far to trust it. */
    static String measure(Measure measure) {
        String written = measure.value().map(Object::toString).orElse("unknown");
        String exact = measure.length().map(Object::toString).filter(each -> !each.equals(written))
                .map(each -> " = " + each).orElse("");
        return written + exact + measure.tolerance().map(each -> " " + each).orElse("")
                + (measure.value().isEmpty() ? "" : ", " + measure.provenance().words());
    }

    private static String place(WiringView view, Ref place) {
        return place + view.platform().place(place.text()).map(each -> title(each.title())).orElse("");
    }

    private static String title(String title) {
        return title.isEmpty() ? "" : ", " + title;
    }

    static String when(Condition when, Condition whole) {
        String words = Vehicles.brief(when, whole);
        return words.isEmpty() ? "" : " when " + words;
    }
}
