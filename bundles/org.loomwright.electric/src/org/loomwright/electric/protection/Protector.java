// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import java.util.OptionalDouble;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Dimension;

/**
 * What a fuse, a breaker or a fusible link is said to do. Pure.
 *
 * @param piece the device
 */
public record Protector(Piece piece) {

    /** Returns whether its rating is the current that blows it, about twice what it carries (common practice). */
    public boolean blow() {
        return piece.subject().part().flatMap(part -> part.word(Part.WordKind.BASIS)).filter("blow"::equals)
                .isPresent();
    }

    /** Returns the current in A that it carries for ever; 0 where it states no rating. */
    public double carries() {
        return blow() ? piece.rating() / 2 : piece.rating();
    }

    /** Returns the greatest current in A that it breaks; empty where its part states none. */
    public OptionalDouble breaks() {
        return piece.subject().part().flatMap(part -> part.figure(Part.FigureKind.BREAKING)).map(Part.Figure::from)
                .filter(each -> each.unit().dimension() == Dimension.CURRENT).map(each -> each.si())
                .map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    /** Returns whether it closes again by itself when it has cooled: such a breaker clears nothing. */
    public boolean resets() {
        return piece.role() == Role.BREAKER && piece.subject().part().flatMap(part -> part.word(Part.WordKind.TYPE))
                .filter("selfResetting"::equals).isPresent();
    }

    /**
     * Returns the current in A that the wires behind it must bear for ever: what it carries, and a little more; of a
     * breaker that closes again by itself, which cycles, the current that opens it (common practice: with that it is as
     * warm as while it cycles).
     */
    public double lasting() {
        return (resets() ? OpeningTimes.OPENS : OpeningTimes.FOR_EVER) * carries();
    }

    /** Returns what it is, for people: {@code fuse F1 of 10 A}. */
    public String words() {
        String sort = switch (piece.role()) {
            case BREAKER -> "breaker ";
            case LINK -> "fusible link ";
            default -> "fuse ";
        };
        return sort + piece.subject().label() + (piece.rating() > 0 ? " of " + Figure.of(piece.rating()) + " A" : "");
    }
}
