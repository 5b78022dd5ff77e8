// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.Optional;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;

/**
 * A length that was put together from stated dimensions: how long, how exactly, and how far to trust it. In a chain the
 * tolerances add up worst case and the provenance is the worst of all links (unknown, then scaled, sample, sheet).
 *
 * @param length     the nominal length; empty exactly when the provenance is {@link Provenance#UNKNOWN}
 * @param tolerance  how far it may stray; none when the length is unknown
 * @param provenance the worst of its links
 */
public record Distance(Optional<Length> length, Tolerance tolerance, Provenance provenance) {

    /** The distance from a spot to itself. */
    public static final Distance ZERO = new Distance(Optional.of(Length.ZERO), Tolerance.NONE, Provenance.SHEET);

    /** A distance of which nothing is known. */
    public static final Distance UNKNOWN = new Distance(Optional.empty(), Tolerance.NONE, Provenance.UNKNOWN);

    /** No dimension of a vehicle's harness is longer; what is stated beyond it is taken for a slip of the pen. */
    public static final Length LONGEST = Length.ofMetres(1_000);

    public Distance {
        if (length.isEmpty() || provenance == Provenance.UNKNOWN) {
            length = Optional.empty();
            tolerance = Tolerance.NONE;
            provenance = Provenance.UNKNOWN;
        }
    }

    /**
     * The distance that a dimension states. A negative one, and one beyond {@link #LONGEST}, is unknown.
     *
     * @param measure the dimension
     * @param usual   the tolerance that holds when it states none
     */
    public static Distance of(Measure measure, Tolerance usual) {
        return new Distance(measure.value().flatMap(Distance::usable), measure.tolerance().orElse(usual),
                measure.provenance()).bounded();
    }

    /** The length that a quantity states; empty when it is no length, negative, or beyond {@link #LONGEST}. */
    public static Optional<Length> usable(Quantity quantity) {
        if (quantity.unit().dimension() != Dimension.LENGTH || quantity.signum() < 0
                || Math.abs(quantity.si()) > LONGEST.toMetres()) {
            return Optional.empty();
        }
        return Optional.of(Length.of(quantity));
    }

    private Distance bounded() {
        return tolerance.minus().compareTo(LONGEST) > 0 || tolerance.plus().compareTo(LONGEST) > 0 ? UNKNOWN : this;
    }

    /** True when the length is known. */
    public boolean isKnown() {
        return length.isPresent();
    }

    /** The chain of this and another distance. */
    public Distance plus(Distance other) {
        if (!isKnown() || !other.isKnown()) {
            return UNKNOWN;
        }
        return new Distance(Optional.of(length.get().plus(other.length.get())), tolerance.plus(other.tolerance),
                worse(provenance, other.provenance));
    }

    /** What is left of this distance behind another one; may be negative. Tolerances add up all the same. */
    public Distance minus(Distance other) {
        if (!isKnown() || !other.isKnown()) {
            return UNKNOWN;
        }
        return new Distance(Optional.of(length.get().minus(other.length.get())),
                tolerance.plus(other.tolerance.flipped()), worse(provenance, other.provenance));
    }

    /** The same distance counted so that it is not negative. */
    public Distance abs() {
        return isKnown() && length.get().isNegative()
                ? new Distance(Optional.of(length.get().negated()), tolerance.flipped(), provenance) : this;
    }

    /** The worse of two provenances. */
    public static Provenance worse(Provenance one, Provenance other) {
        return one.compareTo(other) >= 0 ? one : other;
    }
}
