// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.Kit;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/** What is known of a whole drawing, harness or kit. */
final class WholeHover {

    private WholeHover() {
    }

    static String describe(Moment moment, Symbol symbol, List<Row> rows, Cancel cancel) {
        Optional<WiringView> view = moment.project().wiring(symbol.name());
        if (view.isPresent() && (symbol.kind() == Symbol.Kind.DRAWING || symbol.kind() == Symbol.Kind.HARNESS)) {
            return symbol.words() + wiring(moment, view.get(), rows, cancel);
        }
        Kit kit = moment.project().kits().get(symbol.name());
        if (kit != null && symbol.kind() == Symbol.Kind.KIT) {
            rows.add(new Row("revision", kit.revision()));
            kit.contents().forEach(each -> rows.add(new Row("contains", each.item() + (each.quantity() == 1 ? ""
                    : " x " + each.quantity()))));
            return symbol.words() + title(kit.title());
        }
        return symbol.words();
    }

    private static String wiring(Moment moment, WiringView view, List<Row> rows, Cancel cancel) {
        rows.add(new Row("platform", view.platform().name() + title(view.platform().platform().title())));
        view.wiring().position().ifPresent(position -> rows.add(new Row("fills", position.text())));
        if (!view.covers().isEmpty()) {
            rows.add(new Row("covers", String.join(", ", view.covers())));
        }
        rows.add(new Row("", view.wires().size() + " wires in " + view.circuits().size() + " circuits, "
                + view.connectors().size() + " connectors, " + view.splices().size() + " splices"));
        if (view.wiring().isHarness() && !view.covers().isEmpty()) {
            try {
                FitReport report = moment.fit(view, cancel);
                rows.add(new Row("fit", report.words()));
            } catch (TooManyCombinations e) {
                rows.add(new Row("fit", "too many combinations to judge"));
            }
        }
        rows.add(new Row("vehicles", Vehicles.of(view.when())));
        return title(view.wiring().title());
    }

    private static String title(String title) {
        return title.isEmpty() ? "" : ", " + title;
    }
}
