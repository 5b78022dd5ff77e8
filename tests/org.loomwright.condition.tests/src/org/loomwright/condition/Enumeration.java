// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Expression.Always;
import org.loomwright.condition.Expression.And;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Not;
import org.loomwright.condition.Expression.Or;
import org.loomwright.condition.Expression.Range;

/**
 * The plain way: every vehicle of a small platform as a map from axis to member, one after the other, and conditions
 * decided vehicle by vehicle. Years are points in time here, not numbered parts: a part starts at its year and a
 * hundredth for each break before it.
 */
final class Enumeration {
    private final Choices choices;
    private final List<Map<String, String>> possible = new ArrayList<>();

    Enumeration(Choices choices) {
        this.choices = choices;
        extend(0, new LinkedHashMap<>());
    }

    private void extend(int axis, Map<String, String> vehicle) {
        if (axis == choices.axes().size()) {
            if (choices.constraints().stream().allMatch(constraint -> allows(constraint, vehicle))) {
                possible.add(new LinkedHashMap<>(vehicle));
            }
            return;
        }
        Axis chosen = choices.axes().get(axis);
        for (String member : chosen.members()) {
            vehicle.put(chosen.name(), member);
            extend(axis + 1, vehicle);
        }
        vehicle.remove(chosen.name());
    }

    private boolean allows(Constraint constraint, Map<String, String> vehicle) {
        return switch (constraint) {
            case Constraint.Never never -> !holds(never.expression(), vehicle);
            case Constraint.Require require -> !holds(require.when(), vehicle) || holds(require.then(), vehicle);
        };
    }

    List<Map<String, String>> possible() {
        return possible;
    }

    List<Map<String, String>> with(Expression expression) {
        return possible.stream().filter(vehicle -> holds(expression, vehicle)).toList();
    }

    boolean holds(Expression expression, Map<String, String> vehicle) {
        return switch (expression) {
            case Always always -> true;
            case Choice choice -> vehicle.containsValue(choice.name());
            case Compare compare -> compare(compare, vehicle);
            case Range range -> time(vehicle) >= start(range.from()) && time(vehicle) < end(range.to());
            case Not not -> !holds(not.operand(), vehicle);
            case And and -> and.operands().stream().allMatch(operand -> holds(operand, vehicle));
            case Or or -> or.operands().stream().anyMatch(operand -> holds(operand, vehicle));
        };
    }

    private boolean compare(Compare compare, Map<String, String> vehicle) {
        if (!compare.group().equals("year")) {
            boolean same = vehicle.get(compare.group()).equals(compare.member());
            return same == (compare.relation() == Relation.EQ);
        }
        double time = time(vehicle);
        double start = start(compare.member());
        double end = end(compare.member());
        return switch (compare.relation()) {
            case LT -> time < start;
            case LE -> time < end;
            case EQ -> time >= start && time < end;
            case NE -> time < start || time >= end;
            case GE -> time >= start;
            case GT -> time >= end;
        };
    }

    private double time(Map<String, String> vehicle) {
        return start(vehicle.get("year").split(" ")[0]);
    }

    private double start(String name) {
        return breakPosition(name) < 0 ? Integer.parseInt(name) : breakYear(name) + breakPosition(name) / 100.0;
    }

    private double end(String name) {
        if (breakPosition(name) < 0) {
            return Integer.parseInt(name) + 1;
        }
        boolean last = choices.breaks().stream()
                .noneMatch(other -> other.year() == breakYear(name)
                        && breakPosition(other.name()) > breakPosition(name));
        return last ? breakYear(name) + 1 : start(name) + 0.01;
    }

    private int breakYear(String name) {
        return choices.breaks().stream()
                .filter(change -> change.name().equals(name))
                .findFirst()
                .orElseThrow()
                .year();
    }

    /** Returns 1 for the first break of its year, and so on; -1 for what is no break. */
    private int breakPosition(String name) {
        int position = 0;
        int year = Integer.MIN_VALUE;
        for (Choices.Break change : choices.breaks()) {
            position = change.year() == year ? position + 1 : 1;
            year = change.year();
            if (change.name().equals(name)) {
                return position;
            }
        }
        return -1;
    }
}
