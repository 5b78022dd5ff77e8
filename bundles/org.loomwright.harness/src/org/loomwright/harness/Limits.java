// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;

/**
 * The limits that hold for one platform: what its practice sets, else the defaults. Immutable.
 *
 * @param set what a practice sets, at most one of a kind
 */
public record Limits(Map<Limit, Own> set) {

    /** What a practice sets, and the name of the practice. */
    public record Own(String practice, Practice.Setting setting) {
    }

    /** The defaults. */
    private static final Limits USUAL = new Limits(Map.of());

    public Limits {
        set = set.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(set));
    }

    /** The defaults. */
    public static Limits usual() {
        return USUAL;
    }

    /** The figure. */
    public Quantity value(Limit limit) {
        return own(limit).map(own -> own.setting().value()).orElse(limit.usual());
    }

    /**
     * The figure as a length.
     *
     * @throws IllegalStateException if it is no length
     */
    public Length length(Limit limit) {
        return Length.of(value(limit));
    }

    /** The figure in the SI unit of its dimension; 1 is the whole of a share. */
    public double si(Limit limit) {
        return value(limit).si();
    }

    /** What the figure rests on, a few words: {@code common practice}, {@code practice orrinPractice: own habit}. */
    public String cite(Limit limit) {
        return own(limit).map(own -> "practice " + own.practice() + ": " + own.setting().source())
                .orElseGet(() -> limit.basis().split(":", 2)[0]);
    }

    /** Where a practice sets it; {@link Span#NONE} where none does. */
    public Span place(Limit limit) {
        return own(limit).map(own -> own.setting().span()).orElse(Span.NONE);
    }

    private Optional<Own> own(Limit limit) {
        return Optional.ofNullable(set.get(limit));
    }
}
