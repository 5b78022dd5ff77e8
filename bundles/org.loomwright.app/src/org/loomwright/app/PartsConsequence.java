// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.loomwright.app.sheet.PartsList;
import org.loomwright.app.sheet.Table;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.consequence.Consequence;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.Effect.Line;
import org.loomwright.compare.consequence.Revision;
import org.loomwright.geometry.HarnessLayout;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** What a revision changes in the parts list of each harness that both sides have. */
public final class PartsConsequence implements Consequence {

    private static final List<String> KEY = List.of("sort", "part", "size", "colour");

    @Override
    public Effect of(Revision revision, Cancel cancel, Progress progress) {
        List<Line> lines = new ArrayList<>();
        for (WiringView before : revision.old().harnesses()) {
            revision.comparison().matching().after(new ItemId(Sort.WIRING, "", before.name()))
                    .flatMap(id -> revision.now().wiring(id.name())).filter(view -> view.wiring().isHarness())
                    .ifPresent(after -> {
                        progress.report("comparing the parts of " + after.name(), 0, 1);
                        cancel.check();
                        lines(after.name(), rows(before, revision.old()), rows(after, revision.now()), lines);
                    });
        }
        return new Effect("parts", "parts lists", lines, Optional.empty());
    }

    /** Quantities by part and vehicles. */
    private static Map<String, Map<String, String>> rows(WiringView view, Project project) {
        Table table = PartsList.of(HarnessLayout.of(view, project.parts()));
        int quantity = table.headers().indexOf("quantity");
        int unit = table.headers().indexOf("unit");
        int vehicles = table.headers().indexOf("vehicles");
        Map<String, Map<String, String>> rows = new LinkedHashMap<>();
        for (List<String> row : table.rows()) {
            String part = String.join(" ", KEY.stream().map(each -> row.get(table.headers().indexOf(each)))
                    .filter(each -> !each.isEmpty()).toList());
            rows.computeIfAbsent(part, any -> new LinkedHashMap<>())
                    .put(row.get(vehicles), row.get(quantity) + " " + row.get(unit));
        }
        return rows;
    }

    private static void lines(String harness, Map<String, Map<String, String>> before,
            Map<String, Map<String, String>> after, List<Line> lines) {
        TreeSet<String> parts = new TreeSet<>(new NaturalOrder());
        parts.addAll(before.keySet());
        parts.addAll(after.keySet());
        for (String part : parts) {
            Map<String, String> then = before.getOrDefault(part, Map.of());
            Map<String, String> here = after.getOrDefault(part, Map.of());
            TreeSet<String> vehicles = new TreeSet<>(then.keySet());
            vehicles.addAll(here.keySet());
            for (String each : vehicles) {
                String was = then.getOrDefault(each, "none");
                String is = here.getOrDefault(each, "none");
                if (!was.equals(is)) {
                    lines.add(new Line(Direction.OTHER, harness, part, was, is, each.equals("all") ? "" : each,
                            Optional.empty()));
                }
            }
        }
    }
}
