// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;

/** Which pieces carry all current to what lies behind them: the bridges of a graph (R. E. Tarjan 1974). Linear. */
final class Bridges {

    private final Schematic schematic;
    private final List<List<Piece>> at;
    private final int[] entered;
    private final int[] lowest;
    private final BitSet found = new BitSet();
    private int clock;

    /** Looks from a junction on; the reference, junction 0, is not crossed. */
    Bridges(Schematic schematic, List<List<Piece>> at, int start) {
        this.schematic = schematic;
        this.at = at;
        this.entered = new int[at.size()];
        this.lowest = new int[at.size()];
        Arrays.fill(entered, -1);
        walk(start);
    }

    BitSet found() {
        return found;
    }

    /** Goes down and up again without recursion, since harnesses may be long chains. */
    private void walk(int start) {
        int[] stack = new int[at.size() + 1];
        int[] next = new int[at.size()];
        int[] by = new int[at.size()];
        int depth = 0;
        stack[0] = start;
        by[start] = -1;
        enter(start);
        while (depth >= 0) {
            int here = stack[depth];
            List<Piece> pieces = here == 0 && here != start ? List.of() : at.get(here);
            if (next[here] < pieces.size()) {
                Piece piece = pieces.get(next[here]++);
                int other = schematic.from(piece) == here ? schematic.to(piece) : schematic.from(piece);
                if (piece.index() == by[here]) {
                    continue;
                }
                if (entered[other] >= 0) {
                    lowest[here] = Math.min(lowest[here], entered[other]);
                } else {
                    by[other] = piece.index();
                    enter(other);
                    stack[++depth] = other;
                }
            } else {
                depth--;
                if (depth >= 0) {
                    int before = stack[depth];
                    lowest[before] = Math.min(lowest[before], lowest[here]);
                    if (lowest[here] > entered[before]) {
                        found.set(by[here]);
                    }
                }
            }
        }
    }

    private void enter(int junction) {
        entered[junction] = clock;
        lowest[junction] = clock++;
    }
}
