// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.point;

import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;

/**
 * One vehicle in one mode. The arrays are by piece and by junction of the schematic; do not write to them.
 *
 * @param schematic  the network
 * @param vehicles   the vehicles, which do not differ in it
 * @param mode       the mode
 * @param potentials in V by junction; NaN where nothing leads to the reference
 * @param currents   in A by piece, from its first end to its second; 0 where it is absent or open
 * @param conducts   by piece: whether it is there and closed
 * @param celsius    temperature of conductors by piece, in C
 * @param relays     by owner and name: whether the relay is pulled
 * @param drawn      in A by junction: what the rest of the vehicle draws there, where it is not part of the network
 * @param residual   the greatest sum of currents at a junction, in A
 * @param steps      Newton steps taken in all
 * @param troubles   what could not be solved, one sentence each
 */
public record OperatingPoint(Schematic schematic, Condition vehicles, Mode mode, double[] potentials,
        double[] currents, boolean[] conducts, double[] celsius, Map<String, Boolean> relays,
        Map<Integer, Double> drawn, double residual, int steps, List<Trouble> troubles) {

    /** Something that has no answer: a chattering relay, a network without operating point. */
    public record Trouble(int piece, String words) {
    }

    /** Returns the potential of a junction in V; 0 where nothing leads to the reference. */
    public double potential(int junction) {
        return Double.isNaN(potentials[junction]) ? 0 : potentials[junction];
    }

    /** Returns the voltage across a piece in V, from its first end to its second. */
    public double volts(Piece piece) {
        double from = potentials[schematic.from(piece)];
        double to = potentials[schematic.to(piece)];
        return Double.isNaN(from) || Double.isNaN(to) ? 0 : from - to;
    }

    /** Returns the current through a piece in A. */
    public double amps(Piece piece) {
        return currents[piece.index()];
    }

    /** Returns whether it is there and closed. */
    public boolean conducts(Piece piece) {
        return conducts[piece.index()];
    }

    /** Returns the share of its design voltage that a load gets. */
    public double share(Piece load) {
        return load.model() instanceof Model.Working working ? volts(load) / working.volts() : 0;
    }

    /** Returns whether all was solved. */
    public boolean solved() {
        return troubles.isEmpty();
    }
}
