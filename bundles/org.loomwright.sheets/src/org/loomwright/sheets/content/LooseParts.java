// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.DeviceView;

/**
 * What lies loose in the box of a kit, and how many of each part a vehicle uses.
 *
 * @param lines one for each line of the kit that is no harness
 */
public record LooseParts(List<Line> lines) {

    private static final int MOST = 256;

    /**
     * One line of the box.
     *
     * @param item  name of the part or harness
     * @param part  the catalogue part; empty when the project has none of that name
     * @param quantity how many are in the box
     * @param when  the vehicles whose box has it
     * @param used  how many of them are used, by vehicles; none when nothing in the sources is that part
     * @param where what they are used for
     */
    public record Line(String item, Optional<Part> part, int quantity, Condition when, Map<Integer, Condition> used,
            List<String> where) {
    }

    /** Reads the box of a kit. Linear in lines times devices, but for conditions. */
    public static LooseParts of(Order order) {
        List<Line> lines = new ArrayList<>();
        for (Kit.Content content : order.kit().map(Kit::contents).orElse(List.of())) {
            String item = content.item().text();
            Condition when = order.platform().vehicles().resolve(content.when()).condition().and(order.vehicles());
            boolean harness = order.project().wiring(item).isPresent();
            if (!harness && !when.isNever()) {
                lines.add(line(order, content, item, when));
            }
        }
        return new LooseParts(List.copyOf(lines));
    }

    private static Line line(Order order, Kit.Content content, String item, Condition when) {
        List<Condition> uses = new ArrayList<>();
        List<String> where = new ArrayList<>();
        Optional<Part> catalogued = Optional.ofNullable(order.project().parts().get(item));
        for (LaidHarness harness : order.harnesses()) {
            FuseWay.of(harness).stream().filter(way -> catalogued.filter(way::takes).isPresent())
                    .forEach(way -> use(way.when().and(when), way.label() + " of " + harness.name(), uses, where));
            harness.view().devices().values().forEach(each -> uses(each, item, harness.name(), when, uses, where));
            harness.view().wiring().placed().stream().filter(each -> each.part().text().equals(item)
                    && each.to().isEmpty()).forEach(each -> use(harness.resolve(each.when()).and(when),
                            each.name().text() + " of " + harness.name(), uses, where));
        }
        order.platform().devices().values().forEach(each -> uses(each, item, "", when, uses, where));
        return new Line(item, catalogued, content.quantity(), when,
                counts(when, uses, content.quantity()), List.copyOf(where));
    }

    private static void uses(DeviceView device, String item, String harness, Condition when, List<Condition> uses,
            List<String> where) {
        for (Case<Part> part : device.parts()) {
            if (part.value().name().text().equals(item)) {
                use(part.when().and(device.when()).and(when), device.name()
                        + (harness.isEmpty() ? "" : " of " + harness), uses, where);
            }
        }
    }

    private static void use(Condition when, String name, List<Condition> uses, List<String> where) {
        if (!when.isNever()) {
            uses.add(when);
            where.add(name);
        }
    }

    /** How many are used, by vehicles, never more than there are in the box. */
    private static Map<Integer, Condition> counts(Condition when, List<Condition> uses, int quantity) {
        Map<Integer, Condition> counts = new LinkedHashMap<>();
        if (uses.isEmpty()) {
            return counts;
        }
        Cells cells = when.split(uses, MOST);
        if (cells.complete()) {
            for (Cell cell : cells.list()) {
                counts.merge(Math.min(quantity, cell.holding().size()), cell.vehicles(), Condition::or);
            }
        }
        return counts;
    }
}
