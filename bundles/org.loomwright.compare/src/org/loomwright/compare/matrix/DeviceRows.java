// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Locale;
import java.util.Set;
import org.loomwright.compare.matrix.RowMatcher.MatchedRow;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Device;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.WiringView;

/** The rows of in-line devices: name, part, place. Alike are those of one title, place and part. */
final class DeviceRows {

    private final RowMatcher<Device> matcher = new RowMatcher<>(true);

    void add(int column, WiringView view) {
        List<Item<Device>> items = new ArrayList<>();
        for (Device each : view.wiring().devices()) {
            Set<String> features = new LinkedHashSet<>();
            each.place().ifPresent(place -> features.add("at " + place.text()));
            each.part().forEach(part -> features.add("is " + part.value().text()));
            if (!each.title().isEmpty()) {
                features.add("for " + each.title().toLowerCase(Locale.ROOT));
            }
            items.add(new Item<>(column, each.name().text(), features, each));
        }
        matcher.add(items);
    }

    void write(RowList rows, Ends ends) {
        List<MatchedRow<Device>> matched = matcher.rows();
        for (int i = 0; i < matched.size(); i++) {
            MatchedRow<Device> row = matched.get(i);
            int number = i;
            row.items().forEach(item -> ends.put(item.column(), item.name(), Section.DEVICES, number));
            rows.element(Section.DEVICES, RowList.title(row, Device::title));
            rows.add("", "name", row, item -> Stated.one(item.name(), item.element().when()));
            rows.add("", "part", row, item -> Stated.cell(item.element().part(), "", ref -> Value.of(ref.text(), "")));
            rows.add("", "at", row, item -> item.element().place().map(Ref::text)
                    .map(place -> Stated.one(place, new Expression.Always())).orElse(Cell.ABSENT));
        }
    }

    /** By row and column the device. */
    List<Map<Integer, Device>> elements() {
        return matcher.rows().stream().map(RowMatcher.MatchedRow::byColumn).toList();
    }

    long compared() {
        return matcher.compared();
    }
}
