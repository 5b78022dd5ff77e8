// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Gate;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;

/**
 * The pieces of a network that may carry current in a mode: they conduct in it, and lie on a way that leads round
 * through a source. Whether the others are there makes no difference to any current.
 */
public final class Live {

    private Live() {
    }

    /** The conditions on which the currents of a mode depend, each once. */
    public static List<Condition> conditions(Schematic schematic, Mode mode) {
        Set<Condition> conditions = new LinkedHashSet<>();
        pieces(schematic, mode).forEach(each -> conditions.add(each.when()));
        return List.copyOf(conditions);
    }

    /** The pieces that may carry current in a mode in some vehicle, in order. */
    public static List<Piece> pieces(Schematic schematic, Mode mode) {
        List<Piece> pieces = new ArrayList<>();
        int[] ends = new int[schematic.junctions().size()];
        for (Piece piece : schematic.pieces()) {
            if (mayClose(piece.gate(), mode) && piece.model().element(mode, 20).isPresent()) {
                pieces.add(piece);
                ends[schematic.from(piece)]++;
                ends[schematic.to(piece)]++;
            }
        }
        BitSet gone = new BitSet();
        for (boolean changed = true; changed;) {
            changed = false;
            for (int i = 0; i < pieces.size(); i++) {
                int from = schematic.from(pieces.get(i));
                int to = schematic.to(pieces.get(i));
                boolean stub = from != 0 && ends[from] < 2 || to != 0 && ends[to] < 2;
                if (!gone.get(i) && stub) {
                    gone.set(i);
                    ends[from]--;
                    ends[to]--;
                    changed = true;
                }
            }
        }
        List<Piece> live = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            if (!gone.get(i)) {
                live.add(pieces.get(i));
            }
        }
        return live;
    }

    /**
     * The pieces that conduct in a mode in some vehicle and that a condition decides on which currents depend, in
     * order: the live ones, and dead ends that share a condition with them.
     */
    static List<Piece> conducting(Schematic schematic, Mode mode) {
        Set<Condition> conditions = new HashSet<>(conditions(schematic, mode));
        return schematic.pieces().stream().filter(each -> mayClose(each.gate(), mode)
                && each.model().element(mode, 20).isPresent() && conditions.contains(each.when())).toList();
    }

    private static boolean mayClose(Gate gate, Mode mode) {
        return switch (gate) {
            case Gate.Open open -> true;
            case Gate.Cranking cranking -> mode.engine() == Engine.CRANK;
            case Gate.Keyed keyed -> mode.isKeyed();
            case Gate.Turning machine -> mode.engine().charges() == machine.turning();
            case Gate.While state -> state.relay()
                    || state.states().contains(mode.state(state.device(), state.rest()));
        };
    }
}
