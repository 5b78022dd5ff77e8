// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Platform;

/**
 * The plain way: every vehicle of a small platform without breaks, one after the other, and conditions decided vehicle
 * by vehicle. A vehicle is a map from {@code year}, group or option to the member that it has.
 */
final class EveryVehicle {

    private static final String NOT = "not ";

    private final List<Map<String, String>> possible = new ArrayList<>();

    EveryVehicle(Platform platform) {
        Map<String, List<String>> axes = new LinkedHashMap<>();
        platform.years().ifPresent(years -> axes.put("year",
                IntStream.rangeClosed(years.first(), years.last()).mapToObj(Integer::toString).toList()));
        platform.groups().forEach(group -> axes.put(group.name().text(),
                group.members().stream().map(member -> member.name().text()).toList()));
        for (boolean upgrade : new boolean[] {false, true}) {
            platform.options().stream().filter(option -> option.upgrade() == upgrade).forEach(option -> axes
                    .put(option.name().text(), List.of(NOT + option.name().text(), option.name().text())));
        }
        extend(new ArrayList<>(axes.keySet()), axes, new LinkedHashMap<>(), platform.constraints());
    }

    private void extend(List<String> left, Map<String, List<String>> axes, Map<String, String> vehicle,
            List<Platform.Constraint> constraints) {
        if (left.isEmpty()) {
            if (constraints.stream().allMatch(each -> !holds(each.never(), vehicle)
                    || each.needed().filter(needed -> holds(needed, vehicle)).isPresent())) {
                possible.add(new LinkedHashMap<>(vehicle));
            }
            return;
        }
        for (String member : axes.get(left.getFirst())) {
            vehicle.put(left.getFirst(), member);
            extend(left.subList(1, left.size()), axes, vehicle, constraints);
        }
        vehicle.remove(left.getFirst());
    }

    /** The vehicles that can exist. */
    List<Map<String, String>> possible() {
        return possible;
    }

    /** Whether a condition holds for a vehicle. */
    static boolean holds(Expression expression, Map<String, String> vehicle) {
        return switch (expression) {
            case Expression.Always always -> true;
            case Expression.Choice choice -> vehicle.containsValue(choice.name());
            case Expression.Compare compare -> compare(compare, vehicle);
            case Expression.Range range -> Integer.parseInt(vehicle.get("year")) >= Integer.parseInt(range.from())
                    && Integer.parseInt(vehicle.get("year")) <= Integer.parseInt(range.to());
            case Expression.Not not -> !holds(not.operand(), vehicle);
            case Expression.And and -> and.operands().stream().allMatch(operand -> holds(operand, vehicle));
            case Expression.Or or -> or.operands().stream().anyMatch(operand -> holds(operand, vehicle));
        };
    }

    private static boolean compare(Expression.Compare compare, Map<String, String> vehicle) {
        String has = vehicle.get(compare.group());
        int order = compare.group().equals("year")
                ? Integer.compare(Integer.parseInt(has), Integer.parseInt(compare.member()))
                : has.equals(compare.member()) ? 0 : 1;
        return switch (compare.relation()) {
            case LT -> order < 0;
            case LE -> order <= 0;
            case EQ -> order == 0;
            case NE -> order != 0;
            case GE -> order >= 0;
            case GT -> order > 0;
        };
    }
}
