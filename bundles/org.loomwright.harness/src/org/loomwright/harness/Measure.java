// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.Optional;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;

/**
 * A length as a drawing gives it: the value, how far to trust it, and what it is measured to.
 *
 * @param value      the length as written; empty when the source says {@code unknown} or gives no usable length
 * @param tolerance  the tolerance stated with it, else empty: the drawing's default applies
 * @param provenance where the figure comes from
 * @param samples    number of samples measured, 0 when the source does not say
 * @param end        what the far end of the length is
 * @param path       true for a length along the path, false for a length as made (its slack is in it)
 * @param pinned     true when planning must leave this length as it is
 * @param span       the span of the whole statement
 */
public record Measure(Optional<Quantity> value, Optional<Tolerance> tolerance, Provenance provenance, int samples,
        MeasuredTo end, boolean path, boolean pinned, Span span) {

    /** Where a length comes from. */
    public enum Provenance {
        /** Printed on the factory sheet. */
        SHEET("from sheet"),
        /** Measured on one or more samples. */
        SAMPLE("on sample"),
        /** Scaled off a drawing that does not state it. */
        SCALED("scaled"),
        /** Not known; nothing may be concluded from it. */
        UNKNOWN("unknown");

        private final String words;

        Provenance(String words) {
            this.words = words;
        }

        /** The words of the language. */
        public String words() {
            return words;
        }
    }

    /** What a length is measured to. */
    public enum MeasuredTo {
        /** The tip of the terminal. */
        TIP,
        /** The back of the housing. */
        HOUSING,
        /** The mating face of the connector. */
        FACE,
        /** The source does not say. */
        UNSTATED
    }

    /** The length in exact nanometres; empty when it is unknown. */
    public Optional<Length> length() {
        return value.map(quantity -> new Length(quantity.nanometres()));
    }
}
