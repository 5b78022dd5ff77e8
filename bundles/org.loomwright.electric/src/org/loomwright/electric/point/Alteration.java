// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.point;

import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What is done to a network before it is solved.
 *
 * @param opened  pieces that are open
 * @param added   resistance in ohm that is put in series with pieces
 * @param shorted the place of a junction that is joined to the reference
 * @param ohms    with what resistance, in ohm
 * @param drawn   current in A that the rest of the vehicle draws, by the place of the junction where it does
 */
public record Alteration(Set<Integer> opened, Map<Integer, Double> added, OptionalInt shorted, double ohms,
        Map<Integer, Double> drawn) {

    /** Nothing is altered. */
    public static final Alteration NONE = new Alteration(Set.of(), Map.of(), OptionalInt.empty(), 0, Map.of());

    public Alteration {
        opened = Set.copyOf(opened);
        added = Map.copyOf(added);
        drawn = Map.copyOf(drawn);
    }

    /** Opens one piece. */
    public static Alteration open(int piece) {
        return new Alteration(Set.of(piece), Map.of(), OptionalInt.empty(), 0, Map.of());
    }

    /** Joins a junction to the reference. */
    public static Alteration shortAt(int junction, double ohms) {
        return new Alteration(Set.of(), Map.of(), OptionalInt.of(junction), ohms, Map.of());
    }

    /** Puts a resistance in series with a piece. */
    public static Alteration resist(int piece, double ohms) {
        return new Alteration(Set.of(), Map.of(piece, ohms), OptionalInt.empty(), 0, Map.of());
    }

    /** Lets the rest of the vehicle draw current, in A by the place of the junction where it does. */
    public static Alteration draw(Map<Integer, Double> amps) {
        return new Alteration(Set.of(), Map.of(), OptionalInt.empty(), 0, amps);
    }
}
