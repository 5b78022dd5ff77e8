// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Everything that can be chosen about a vehicle of one platform, and which combinations cannot exist. Immutable; two
 * descriptions are equal when they list the same things in the same order.
 *
 * <p>{@code year} is the group of model years. A year with breaks falls into parts: from its start up to the first
 * break, from each break to the next, from the last break to its end. A year number means all its parts. Without years,
 * there is no {@code year}.
 *
 * <p>What cannot stand (a name used twice, an empty group, years that run backwards) is left out and reported in
 * {@link #problems}; the rest stays usable.
 *
 * @param years first and last model year, if the platform has years
 * @param breaks the breaks that stand, in order of time
 * @param axes what is chosen: years first, then groups, options and upgrades in order of declaration
 * @param constraints what cannot exist, as declared; names in them are checked by {@link Vehicles}
 * @param problems what was left out and why
 */
public record Choices(
        Optional<Years> years,
        List<Break> breaks,
        List<Axis> axes,
        List<Constraint> constraints,
        List<Problem> problems) {
    /** The name of the group of model years. */
    public static final String YEAR = "year";

    /** The most model years that a platform can have. */
    public static final int MOST_YEARS = 200;

    /** The most members of one group. */
    public static final int MOST_MEMBERS = 1_000;

    /**
     * The model years of a platform.
     *
     * @param first the first
     * @param last the last, not before the first
     */
    public record Years(int first, int last) {
        public boolean contains(int year) {
            return first <= year && year <= last;
        }
    }

    /**
     * A change within a model year: {@code break late66 in 1966 "from car 12345"}.
     *
     * @param name its name, a choice like any other
     * @param year the model year it falls in
     * @param title what it means on the vehicle, for people: {@code from car 12345}
     */
    public record Break(String name, int year, String title) {
    }

    public Choices {
        breaks = List.copyOf(breaks);
        axes = List.copyOf(axes);
        constraints = List.copyOf(constraints);
        problems = List.copyOf(problems);
    }

    /** Returns a builder for an empty platform. */
    public static Builder builder() {
        return new Builder();
    }

    /** Returns the axis of this name. */
    public Optional<Axis> axis(String name) {
        return axes.stream().filter(axis -> axis.name().equals(name)).findFirst();
    }

    /** Collects a description. Methods may be called in any order; order counts only among things of one kind. */
    public static final class Builder {
        private Years years;
        private final List<Break> breaks = new ArrayList<>();
        private final List<Axis> groups = new ArrayList<>();
        private final List<String> options = new ArrayList<>();
        private final List<String> upgrades = new ArrayList<>();
        private final List<Constraint> constraints = new ArrayList<>();

        private Builder() {
        }

        /** Sets the first and last model year. */
        public Builder years(int first, int last) {
            years = new Years(first, last);
            return this;
        }

        /** Adds a break within a year, after those of the same year that are there already. */
        public Builder yearBreak(String name, int year, String title) {
            breaks.add(new Break(name, year, title));
            return this;
        }

        /** Adds a group of which every vehicle has exactly one member. */
        public Builder group(String name, List<String> members) {
            groups.add(new Axis(name, Axis.Kind.GROUP, members));
            return this;
        }

        public Builder group(String name, String... members) {
            return group(name, List.of(members));
        }

        /** Adds something that the factory could fit or not. */
        public Builder option(String name) {
            options.add(name);
            return this;
        }

        /** Adds something that an owner can add or not. */
        public Builder upgrade(String name) {
            upgrades.add(name);
            return this;
        }

        /** Adds {@code never EXPR}. */
        public Builder never(Expression expression) {
            return constraint(new Constraint.Never(expression));
        }

        /** Adds {@code require THEN when WHEN}. */
        public Builder require(Expression then, Expression when) {
            return constraint(new Constraint.Require(then, when));
        }

        public Builder constraint(Constraint constraint) {
            constraints.add(constraint);
            return this;
        }

        /** Returns the description; never throws for what a person wrote. */
        public Choices build() {
            return new ChoicesCheck(Optional.ofNullable(years), breaks, groups, options, upgrades).choices(constraints);
        }
    }
}
