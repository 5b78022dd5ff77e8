// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.List;
import java.util.Optional;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WireView;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.project.Flows;
import org.loomwright.ide.project.Flows.Flow;
import org.loomwright.ide.project.Moment;

/** What flows in a wire and what a load gets, in the worst mode and vehicle. */
final class FlowRows {

    private static final double PERCENT = 100;

    private FlowRows() {
    }

    static void wire(Moment moment, PlatformView platform, WireView wire, List<Row> rows) {
        of(moment, platform, "carries", rows).filter(flows -> flows.knows(wire)).ifPresent(flows -> {
            Optional<Flow> most = flows.wire(wire);
            rows.add(new Row("carries", most.map(each -> Figure.of(each.amps(), 2) + " A at most"
                    + (each.share() > 0 ? ", " + percent(each) + " of what it may there" : "") + "; loses "
                    + Figure.of(each.volts(), 3) + " V, " + Figure.of(each.celsius(), 0) + " C; " + each.where())
                    .orElse("nothing in any mode")));
            basis(flows, rows);
        });
    }

    static void device(Moment moment, PlatformView platform, String owner, String device, List<Row> rows) {
        of(moment, platform, "gets", rows).filter(flows -> !flows.device(owner, device).isEmpty()).ifPresent(flows -> {
            for (Flow each : flows.device(owner, device)) {
                rows.add(new Row("gets", Figure.of(each.volts(), 2) + " V at least, " + percent(each)
                        + " of its design, " + Figure.of(each.amps(), 2) + " A; " + each.label() + ", "
                        + each.where()));
            }
            basis(flows, rows);
        });
    }

    private static Optional<Flows> of(Moment moment, PlatformView platform, String label, List<Row> rows) {
        Optional<Flows> known = moment.flows(platform);
        if (known.isEmpty()) {
            rows.add(new Row(label, moment.hasSolvingFailed() ? "could not be computed, by a fault of Loomwright"
                    : "is being computed; look again in a moment"));
        }
        return known;
    }

    private static String percent(Flow flow) {
        return Figure.of(flow.share() * PERCENT, 0) + " %";
    }

    private static void basis(Flows flows, List<Row> rows) {
        rows.add(new Row("", flows.basis()));
    }
}
