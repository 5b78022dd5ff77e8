// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Unit;

/**
 * A harness with a figure for every station and length that a planner is free to choose, so that what the drawings ask
 * can be read with the tools that judge a finished one. What is asked does not depend on those figures.
 */
final class Provisional {

    private static final int STEP_MM = 100;

    private Provisional() {
    }

    static WiringView of(WiringView view) {
        Wiring wiring = view.wiring();
        Wiring filled = new Wiring(wiring.kind(), wiring.name(), wiring.title(), wiring.platform(), wiring.position(),
                wiring.when(), wiring.sheets(), wiring.defaults(), wiring.datum(),
                wiring.runs().stream().map(Provisional::filled).toList(), wiring.connectors(), wiring.studs(),
                wiring.devices(), wiring.circuits(), wiring.placed(), wiring.ours(), wiring.span());
        return new WiringView(filled, view.platform(), view.when(), view.connectors(), view.splices(), view.studs(),
                view.devices(), view.circuits(), view.wires(), view.covers());
    }

    private static Run filled(Run run) {
        List<Run.Breakout> breakouts = new ArrayList<>();
        for (Run.Breakout each : run.breakouts()) {
            breakouts.add(isFixed(each.at()) ? each : new Run.Breakout(each.name(), Optional.empty(),
                    measure(each.at(), STEP_MM * (breakouts.size() + 1)), each.when(), each.span()));
        }
        boolean open = run.kind() == Run.Kind.BRANCH && run.length().filter(Provisional::isFixed).isEmpty();
        Optional<Measure> length = open ? Optional.of(run.length().map(each -> measure(each, STEP_MM))
                .orElse(new Measure(Optional.of(millimetres(STEP_MM)), Optional.empty(), Provenance.SHEET, 0,
                        Measure.MeasuredTo.UNSTATED, false, false, run.span()))) : run.length();
        return new Run(run.kind(), run.name(), run.from(), run.to(), length, breakouts, run.barriers(), run.slacks(),
                run.bends(), run.when(), run.span());
    }

    /** True for a length that a person has fixed. */
    static boolean isFixed(Measure measure) {
        return measure.pinned() && measure.value().isPresent();
    }

    private static Measure measure(Measure open, int mm) {
        Optional<Quantity> value = open.value().filter(each -> each.unit() == Unit.IN || each.unit() == Unit.FT)
                .map(each -> Quantity.of(BigDecimal.valueOf(mm / 25), Unit.IN));
        return new Measure(Optional.of(value.orElse(millimetres(mm))), open.tolerance(), Provenance.SHEET, 0,
                open.end(), open.path(), false, open.span());
    }

    private static Quantity millimetres(int mm) {
        return Quantity.of(BigDecimal.valueOf(mm), Unit.MM);
    }
}
