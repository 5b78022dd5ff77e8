// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.inlay;

import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.names.Around;
import org.loomwright.ide.project.Flows;
import org.loomwright.ide.project.Flows.Flow;
import org.loomwright.ide.project.Meant;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.WordLines;

/**
 * What flows, beside a wire and a device: currents in A and voltages in V of the worst vehicle and mode. Shows nothing
 * until that is solved, and does not wait for it.
 */
final class FlowInlays {

    private static final double PERCENT = 100;

    private final Moment moment;
    private final WordLines lines;
    private final Map<WiringView, Map<String, WireView>> wires = new IdentityHashMap<>();

    FlowInlays(Moment moment, WordLines lines) {
        this.moment = moment;
        this.lines = lines;
    }

    /** Beside the line of a wire or device; empty for others, and for what is not in a network that was solved. */
    Optional<Inlay> at(Line line) {
        if (!line.rule().equals("Wire") && !line.rule().equals("Device")) {
            return Optional.empty();
        }
        Around around = Around.of(lines, line);
        Optional<Flows> flows = Meant.platform(moment, lines, line).flatMap(moment::flowsSomeTime);
        int end = line.words().getLast().end();
        if (line.rule().equals("Wire")) {
            return flows.flatMap(known -> moment.project().wiring(around.wiring())
                    .map(view -> wires.computeIfAbsent(view, FlowInlays::byLabel)
                            .get(WireView.label(around.circuit(), around.wire())))
                    .flatMap(known::wire).map(flow -> wire(known, flow, end)));
        }
        return flows.flatMap(known -> device(known, known.device(around.wiring().isEmpty() ? around.platform()
                        : around.wiring(), around.device()), end));
    }

    private static Map<String, WireView> byLabel(WiringView view) {
        Map<String, WireView> byLabel = new HashMap<>();
        view.wires().forEach(each -> byLabel.putIfAbsent(each.label(), each));
        return byLabel;
    }

    private static Inlay wire(Flows flows, Flow most, int end) {
        return new Inlay(end, Figure.of(most.amps(), 2) + " A, loses " + Figure.of(most.volts(), 3) + " V",
                "at most, in " + most.where() + (most.share() > 0 ? "; " + percent(most) + " of what it may carry there"
                        : "") + ", " + Figure.of(most.celsius(), 0) + " C\n" + flows.basis());
    }

    private static Optional<Inlay> device(Flows flows, List<Flow> loads, int end) {
        return loads.stream().min(Comparator.comparingDouble(Flow::share)).map(least -> new Inlay(end,
                Figure.of(least.volts(), 2) + " V, " + Figure.of(least.amps(), 2) + " A", loads.stream()
                        .map(each -> each.label() + ": " + Figure.of(each.volts(), 2) + " V at least, " + percent(each)
                                + " of its design, " + Figure.of(each.amps(), 2) + " A, in " + each.where())
                        .collect(Collectors.joining("\n")) + "\n" + flows.basis()));
    }

    private static String percent(Flow flow) {
        return Figure.of(flow.share() * PERCENT, 0) + " %";
    }
}
