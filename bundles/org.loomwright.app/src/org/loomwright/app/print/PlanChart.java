// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.VehicleWords;
import org.loomwright.condition.Condition;
import org.loomwright.fit.plan.PlanModel;

/** The application chart of a plan: the vehicles of each drawing in words, and the harness or jumper that they take. */
final class PlanChart {

    private static final int MOST_WORDS = 3;

    private PlanChart() {
    }

    /** The vehicles of a drawing, and what they take. */
    record Line(String drawing, String vehicles, String takes) {
    }

    /** A line for each covered drawing, in order. */
    static List<Line> lines(Planned planned) {
        Map<String, Condition> vehicles = new LinkedHashMap<>();
        planned.model().asked().columns().forEach(each -> vehicles.merge(each.drawing(), each.vehicles(),
                Condition::or));
        List<Line> lines = new ArrayList<>();
        vehicles.forEach((drawing, when) -> lines.add(new Line(drawing, VehicleWords.of(when), takes(planned,
                drawing))));
        planned.harness().covers().stream().filter(each -> !vehicles.containsKey(each)).forEach(each -> lines.add(
                new Line(each, "none", "not covered, because no vehicle has both the drawing and the harness")));
        return lines;
    }

    /** For people. */
    static void append(Planned planned, String indent, StringBuilder out) {
        out.append(indent).append("which vehicles take what\n");
        lines(planned).forEach(each -> out.append(indent).append("  ").append(Cells.printable(each.drawing()))
                .append(" (").append(Cells.printable(each.vehicles())).append("): ").append(Cells.printable(each
                        .takes())).append('\n'));
    }

    static void json(Planned planned, JsonWriter json) throws IOException {
        json.name("chart").beginArray();
        for (Line each : lines(planned)) {
            json.beginObject();
            json.name("drawing").value(each.drawing());
            json.name("vehicles").value(each.vehicles());
            json.name("takes").value(each.takes());
            json.endObject();
        }
        json.endArray();
    }

    private static String takes(Planned planned, String drawing) {
        if (planned.refusal().isPresent()) {
            return RefusalText.takes(planned, planned.refusal().get(), planned.refusal().get().drawings().indexOf(
                    drawing));
        }
        if (planned.plan().found().isEmpty()) {
            return "not known, because no harness was found in time";
        }
        List<PlanModel.Open> open = planned.model().open().stream().filter(each -> each.drawing().equals(drawing))
                .toList();
        return planned.harness().name() + (open.isEmpty() ? "" : ", not answered for " + open.stream().limit(MOST_WORDS)
                .map(each -> each.branch() + " (" + each.words() + ")").collect(Collectors.joining(", "))
                + (open.size() > MOST_WORDS ? " and " + (open.size() - MOST_WORDS) + " more" : ""));
    }
}
