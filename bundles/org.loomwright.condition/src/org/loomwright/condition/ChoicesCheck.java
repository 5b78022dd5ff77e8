// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Choices.Break;
import org.loomwright.condition.Choices.Years;
import org.loomwright.condition.Problem.Kind;

/** Makes {@link Choices} of what was declared: keeps what can stand, reports the rest. */
final class ChoicesCheck {
    private final List<Problem> problems = new ArrayList<>();
    private final Set<String> axisNames = new HashSet<>(Set.of(Choices.YEAR));
    private final Set<String> choiceNames = new HashSet<>();
    private final Optional<Years> years;
    private final List<Break> breaks;
    private final List<Axis> axes = new ArrayList<>();

    ChoicesCheck(
            Optional<Years> years, List<Break> breaks, List<Axis> groups, List<String> options, List<String> upgrades) {
        this.years = years.filter(this::isPossible);
        this.breaks = breaks.stream()
                .sorted(Comparator.comparingInt(Break::year))
                .filter(this::isPossible)
                .toList();
        if (this.years.isPresent()) {
            axes.add(new Axis(Choices.YEAR, Axis.Kind.YEAR, YearParts.labels(this.years.get(), this.breaks)));
        }
        groups.forEach(this::addGroup);
        options.forEach(name -> addYesOrNo(name, Axis.Kind.OPTION));
        upgrades.forEach(name -> addYesOrNo(name, Axis.Kind.UPGRADE));
    }

    Choices choices(List<Constraint> constraints) {
        return new Choices(years, breaks, axes, constraints, problems);
    }

    private boolean isPossible(Years span) {
        String subject = span.first() + " .. " + span.last();
        if (span.last() < span.first()) {
            problem(Kind.IMPOSSIBLE_YEARS, "the years " + subject + " run backwards", subject);
            return false;
        }
        if ((long) span.last() - span.first() >= Choices.MOST_YEARS) {
            problem(Kind.IMPOSSIBLE_YEARS, subject + " are more than " + Choices.MOST_YEARS + " model years", subject);
            return false;
        }
        return true;
    }

    private boolean isPossible(Break change) {
        if (years.isEmpty() || !years.get().contains(change.year())) {
            String message = change.name() + " falls in " + change.year() + ", which is no year of the platform";
            problem(Kind.BREAK_OUTSIDE_YEARS, message, change.name());
            return false;
        }
        return isFree(change.name(), choiceNames);
    }

    private void addGroup(Axis group) {
        List<String> members = new ArrayList<>();
        if (group.members().size() > Choices.MOST_MEMBERS) {
            String message = group.name() + " has more than " + Choices.MOST_MEMBERS + " members";
            problem(Kind.TOO_LARGE, message, group.name());
            return;
        }
        if (!isFree(group.name(), axisNames)) {
            return;
        }
        for (String member : group.members()) {
            if (isFree(member, choiceNames)) {
                members.add(member);
            }
        }
        if (members.isEmpty()) {
            problem(Kind.EMPTY_GROUP, "the group " + group.name() + " has no members", group.name());
        } else {
            axes.add(new Axis(group.name(), group.kind(), members));
        }
    }

    private void addYesOrNo(String name, Axis.Kind kind) {
        if (choiceNames.contains(name)) {
            isFree(name, choiceNames);
        } else if (isFree(name, axisNames)) {
            choiceNames.add(name);
            axes.add(new Axis(name, kind, List.of("not " + name, name)));
        }
    }

    private boolean isFree(String name, Set<String> names) {
        boolean free = names.add(name);
        if (!free) {
            problem(Kind.DUPLICATE_NAME, name + " already means something else on this platform", name);
        }
        return free;
    }

    private void problem(Kind kind, String message, String subject) {
        problems.add(new Problem(
                kind, message, subject, Expression.NOWHERE, Expression.NOWHERE, Optional.empty()));
    }
}
