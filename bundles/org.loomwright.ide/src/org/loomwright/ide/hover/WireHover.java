// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.HarnessLayout.LaidWire;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.Shown;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Unit;

/** What is computed of a wire: what it is, how long it is cut, what current it may carry, and in which vehicles. */
final class WireHover {

    private WireHover() {
    }

    static String describe(Moment moment, Symbol symbol, List<Row> rows, Shown shown) {
        int slash = symbol.owner().indexOf('/');
        String owner = symbol.owner().substring(0, slash);
        String circuit = symbol.owner().substring(slash + 1);
        Optional<WiringView> view = moment.project().wiring(owner);
        Optional<WireView> wire = view.stream().flatMap(each -> each.wires().stream())
                .filter(each -> each.circuit().name().text().equals(circuit)
                        && each.wire().name().text().equals(symbol.name())).findFirst();
        if (wire.isEmpty()) {
            return symbol.words();
        }
        WireView found = wire.get();
        Condition whole = found.when();
        rows.add(new Row("circuit", circuit + (found.circuit().title().isEmpty() ? ""
                : ", " + found.circuit().title())));
        cases("size", found.sizes(), whole, size -> size.toString(), rows);
        cases("colour", found.colours(), whole, Object::toString, rows);
        cases("cable", found.cables(), whole, part -> part.name() + (part.title().isEmpty() ? ""
                : ", " + part.title()), rows);
        cases("from", found.from(), whole, Node::label, rows);
        cases("to", found.to(), whole, Node::label, rows);
        moment.layout(view.get()).wires().stream().filter(laid -> laid.wire() == found).findFirst()
                .ifPresent(laid -> lengths(laid, whole, shown.unit(), rows));
        WireAmpacity.of(moment, view.get(), found, shown.secondTable())
                .forEach(step -> rows.add(new Row("may carry", step)));
        FlowRows.wire(moment, view.get().platform(), found, rows);
        rows.add(new Row("vehicles", Vehicles.of(whole)));
        return "wire " + found.label() + " of " + owner;
    }

    private static <T> void cases(String label, List<Case<T>> cases, Condition whole, Function<T, String> words,
            List<Row> rows) {
        for (Case<T> each : cases) {
            String when = Vehicles.brief(each.when(), whole);
            rows.add(new Row(label, words.apply(each.value()) + (when.isEmpty() ? "" : " when " + when)));
        }
    }

    private static void lengths(LaidWire laid, Condition whole, Unit unit, List<Row> rows) {
        for (CutLength each : laid.lengths()) {
            String when = Vehicles.brief(each.when(), whole);
            String figure = each.cut().map(cut -> cut + " " + each.tolerance() + (unit == Unit.IN
                    ? " (" + cut.show(Unit.IN, 2) + ")" : "")).orElse("unknown");
            String terms = each.terms().size() < 2 ? "" : " = " + String.join(" + ",
                    each.terms().stream().map(CutLength.Term::toString).toList());
            rows.add(new Row("cut length", figure + terms + (each.stated() ? ", stated" : "")
                    + (when.isEmpty() ? "" : " when " + when)));
        }
        if (!laid.unknown().isNever()) {
            rows.add(new Row("cut length", "not known when " + Vehicles.brief(laid.unknown(), laid.unknown().not())));
        }
    }
}
