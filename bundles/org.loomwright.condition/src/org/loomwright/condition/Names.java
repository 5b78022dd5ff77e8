// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Range;
import org.loomwright.condition.Problem.Kind;
import org.loomwright.quantity.Spelling;

/** What the names in a condition mean on a platform. */
final class Names {
    /** What a name or a comparison means. */
    sealed interface Meaning {
    }

    /** Some members of an axis. */
    record Members(int axis, BitSet members) implements Meaning {
    }

    /** Nothing, for this reason. */
    record Mistake(Kind kind, String message, String subject, Optional<String> candidate) implements Meaning {
        Problem at(Expression expression) {
            return new Problem(kind, message, subject, expression.offset(), expression.length(), candidate);
        }
    }

    private final Choices choices;
    private final YearParts years;
    private final Map<String, Members> byChoice = new LinkedHashMap<>();

    Names(Choices choices) {
        this.choices = choices;
        this.years = new YearParts(choices);
        for (int axis = 0; axis < choices.axes().size(); axis++) {
            Axis described = choices.axes().get(axis);
            List<String> members = described.isYesOrNo() ? List.of(described.name()) : described.members();
            for (String member : members) {
                int index = described.members().indexOf(member);
                if (described.kind() != Axis.Kind.YEAR || years.startingBreak(index).isPresent()) {
                    byChoice.put(member, new Members(axis, run(index, index)));
                }
            }
        }
    }

    Meaning choice(Choice choice) {
        String name = choice.name();
        Members members = byChoice.get(name);
        if (members != null) {
            return members;
        }
        Optional<Axis> group = choices.axis(name);
        if (group.isPresent()) {
            String message = name + " is a group; name one of its members";
            return new Mistake(Kind.UNKNOWN_CHOICE, message, name, Optional.empty());
        }
        if (years.start(name) >= 0) {
            String message = name + " alone says too little";
            return new Mistake(Kind.UNKNOWN_CHOICE, message, name, Optional.of(Choices.YEAR + " = " + name));
        }
        return new Mistake(Kind.UNKNOWN_CHOICE, "nothing that can be chosen is called " + name, name,
                Spelling.nearest(name, byChoice.keySet()));
    }

    Meaning compare(Compare compare) {
        int axis = group(compare.group());
        if (axis < 0) {
            return noGroup(compare.group());
        }
        if (choices.axes().get(axis).kind() != Axis.Kind.YEAR) {
            return compare.relation().needsOrder()
                    ? notOrdered(compare.group())
                    : compareMember(axis, compare.member(), compare.relation());
        }
        int start = years.start(compare.member());
        if (start < 0) {
            return noYear(compare.member());
        }
        int end = years.end(start);
        int last = years.count() - 1;
        BitSet parts = switch (compare.relation()) {
            case LT -> run(0, start - 1);
            case LE -> run(0, end);
            case EQ, NE -> run(start, end);
            case GE -> run(start, last);
            case GT -> run(end + 1, last);
        };
        return members(axis, parts, compare.relation() == Relation.NE);
    }

    private Meaning compareMember(int axis, String member, Relation relation) {
        List<String> members = choices.axes().get(axis).members();
        int index = members.indexOf(member);
        if (index < 0) {
            String message = choices.axes().get(axis).name() + " has no member " + member;
            return new Mistake(Kind.UNKNOWN_MEMBER, message, member, Spelling.nearest(member, members));
        }
        return members(axis, run(index, index), relation == Relation.NE);
    }

    private Members members(int axis, BitSet members, boolean opposite) {
        if (opposite) {
            members.flip(0, choices.axes().get(axis).members().size());
        }
        return new Members(axis, members);
    }

    Meaning range(Range range) {
        int axis = group(range.group());
        if (axis < 0) {
            return noGroup(range.group());
        }
        if (choices.axes().get(axis).kind() != Axis.Kind.YEAR) {
            return notOrdered(range.group());
        }
        int start = years.start(range.from());
        int to = years.start(range.to());
        if (start < 0 || to < 0) {
            return noYear(start < 0 ? range.from() : range.to());
        }
        if (years.end(to) < start) {
            String written = range.from() + " .. " + range.to();
            return new Mistake(Kind.EMPTY_RANGE, written + " ends before it starts", written,
                    Optional.of(range.to() + " .. " + range.from()));
        }
        return new Members(axis, run(start, years.end(to)));
    }

    private int group(String name) {
        List<Axis> axes = choices.axes();
        for (int axis = 0; axis < axes.size(); axis++) {
            if (axes.get(axis).name().equals(name) && !axes.get(axis).isYesOrNo()) {
                return axis;
            }
        }
        return -1;
    }

    private Mistake noGroup(String name) {
        if (byChoice.containsKey(name)) {
            return new Mistake(Kind.UNKNOWN_GROUP, name + " is no group and has no members", name, Optional.empty());
        }
        List<String> groups = new ArrayList<>();
        choices.axes().stream().filter(axis -> !axis.isYesOrNo()).forEach(axis -> groups.add(axis.name()));
        return new Mistake(Kind.UNKNOWN_GROUP, "no group is called " + name, name, Spelling.nearest(name, groups));
    }

    private static Mistake notOrdered(String group) {
        String message = "the members of " + group + " have no order; only = and != compare them";
        return new Mistake(Kind.NOT_ORDERED, message, group, Optional.empty());
    }

    private Mistake noYear(String name) {
        Choices.Years span = choices.years().orElseThrow();
        if (name.chars().allMatch(Character::isDigit)) {
            String message = name + " is outside the years " + span.first() + " .. " + span.last();
            return new Mistake(Kind.OUTSIDE_YEARS, message, name, Optional.empty());
        }
        List<String> breaks = choices.breaks().stream().map(Choices.Break::name).toList();
        return new Mistake(Kind.UNKNOWN_MEMBER, name + " is neither a year nor a break in one", name,
                Spelling.nearest(name, breaks));
    }

    private static BitSet run(int from, int to) {
        BitSet members = new BitSet();
        members.set(from, Math.max(from, to + 1));
        return members;
    }
}
