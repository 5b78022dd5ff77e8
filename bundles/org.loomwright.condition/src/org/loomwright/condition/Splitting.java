// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.IntFunction;

/** Takes a set of vehicles apart by which of some conditions hold, depth first, the vehicles with a condition first. */
final class Splitting {
    /** Vehicles that are decided for the first conditions. */
    private record Piece(int node, int decided, Piece parent, boolean holds) {
        SortedSet<Integer> holding() {
            SortedSet<Integer> holding = new TreeSet<>();
            for (Piece piece = this; piece.parent() != null; piece = piece.parent()) {
                if (piece.holds()) {
                    holding.add(piece.decided() - 1);
                }
            }
            return holding;
        }
    }

    private final Space space;
    private final int[] conditions;
    private final int cap;

    Splitting(Space space, int[] conditions, int cap) {
        this.space = space;
        this.conditions = conditions;
        this.cap = cap;
    }

    Cells cells(int whole, IntFunction<Condition> condition) {
        List<Cell> cells = new ArrayList<>();
        Deque<Piece> open = new ArrayDeque<>();
        push(open, whole, 0, null, false);
        while (!open.isEmpty() && cells.size() < cap) {
            Piece piece = open.pop();
            if (piece.decided() == conditions.length) {
                cells.add(new Cell(condition.apply(piece.node()), piece.holding()));
                continue;
            }
            int decided = piece.decided() + 1;
            int with = space.and(piece.node(), conditions[piece.decided()]);
            push(open, space.minus(piece.node(), with), decided, piece, false);
            push(open, with, decided, piece, true);
        }
        return new Cells(cells, open.isEmpty());
    }

    private static void push(Deque<Piece> open, int node, int decided, Piece parent, boolean holds) {
        if (node != Space.NONE) {
            open.push(new Piece(node, decided, parent, holds));
        }
    }
}
