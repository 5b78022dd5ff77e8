// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.math.BigInteger;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A set of vehicles that can exist on one platform. Always relative to the possible vehicles: two conditions of one
 * {@link Vehicles} are equal exactly if they hold for the same possible vehicles, however they came about.
 *
 * <p>Immutable and safe for use by several threads. Conditions of different {@link Vehicles} are never equal, and
 * combining them throws {@link IllegalArgumentException}. Any method but {@link #isNever}, {@link #isAlways}, {@link
 * #equals} and {@link #hashCode} may throw {@link TooManyCombinations}.
 */
public final class Condition {
    private final Vehicles vehicles;
    private final int node;
    private volatile Wording wording;
    private int hash;

    Condition(Vehicles vehicles, int node) {
        this.vehicles = vehicles;
        this.node = node;
    }

    int node() {
        return node;
    }

    /** Returns the vehicles it is about. */
    public Vehicles vehicles() {
        return vehicles;
    }

    /** Returns whether no vehicle is meant. */
    public boolean isNever() {
        return equals(vehicles.none());
    }

    /** Returns whether every possible vehicle is meant; true of never, too, if no vehicle is possible. */
    public boolean isAlways() {
        return equals(vehicles.all());
    }

    /** Returns the vehicles for which both hold. */
    public Condition and(Condition other) {
        return vehicles.and(this, other);
    }

    /** Returns the vehicles for which at least one holds. */
    public Condition or(Condition other) {
        return vehicles.or(this, other);
    }

    /** Returns the vehicles for which this holds and the other does not. */
    public Condition minus(Condition other) {
        return vehicles.minus(this, other);
    }

    /** Returns the possible vehicles for which it does not hold. */
    public Condition not() {
        return vehicles.all().minus(this);
    }

    /** Returns whether the other holds for every vehicle for which this holds. */
    public boolean implies(Condition other) {
        return vehicles.implies(this, other);
    }

    /** Returns whether no vehicle has both. */
    public boolean excludes(Condition other) {
        return vehicles.excludes(this, other);
    }

    /** Returns how many vehicles it holds for, exactly. */
    public BigInteger count() {
        return vehicles.count(this);
    }

    /** Returns how many of how many, for people: {@code 312 of 4,608 vehicles}. */
    public String tally() {
        return Tally.of(count(), vehicles.count());
    }

    /**
     * Returns the names of axes that suffice to tell whether it holds for a possible vehicle, in the order of {@link
     * Choices#axes}; none of them could be left out alone. Where choices are tied to each other and either would do,
     * the one declared earlier stays.
     */
    public Set<String> support() {
        return vehicles.support(this);
    }

    /**
     * Returns a text for machines that conditions of equal choices share, in this run and in any other, exactly if they
     * hold for the same vehicles.
     */
    public String canonical() {
        return vehicles.canonical(this);
    }

    /**
     * Returns the shortest words for it; see {@link Wording} for what short means. Exact while the axes that
     * constraints tie to its support span at most 16,384 combinations, else exact on its support while that does.
     * Irredundant beyond, and where the exact search comes upon more than 500 widest terms, 1,000 smallest sets of
     * them, or a bound on its steps. At most 256 terms then. The same condition has the same words in every run.
     */
    public Wording wording() {
        Wording known = wording;
        if (known == null) {
            known = vehicles.wording(this);
            wording = known;
        }
        return known;
    }

    /** Returns {@link Wording#words} of {@link #wording}. */
    public String words() {
        return wording().words();
    }

    /**
     * Returns one of its vehicles: the first in order of axes and members, so the earliest year first and options left
     * off where possible; nothing if there is none.
     */
    public Optional<Assignment> example() {
        return vehicles.example(this);
    }

    /**
     * Returns the different ways in which its vehicles choose on some axes, in order of axes and members.
     *
     * @param axes names of axes; other names are ignored
     * @param cap the most assignments to list
     */
    public Assignments assignments(Collection<String> axes, int cap) {
        return vehicles.assignments(this, axes, cap);
    }

    /**
     * Takes it apart by what holds: for each combination of conditions that holds for some of its vehicles exactly, a
     * cell with these vehicles. Grows with the number of cells times that of conditions, not with that of vehicles.
     *
     * @param conditions what is asked
     * @param cap the most cells to list
     */
    public Cells split(List<Condition> conditions, int cap) {
        return vehicles.split(this, conditions, cap);
    }

    /**
     * Returns whether the other holds for the same vehicles; each {@link Vehicles} has one condition for them at a
     * time.
     */
    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    /** Returns a hash that depends on nothing but how many vehicles there are, so that it is the same in every run. */
    @Override
    public int hashCode() {
        if (hash == 0) {
            hash = count().hashCode();
        }
        return hash;
    }

    /** Returns {@link #words}. */
    @Override
    public String toString() {
        return words();
    }
}
