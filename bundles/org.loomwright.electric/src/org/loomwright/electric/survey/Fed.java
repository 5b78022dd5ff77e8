// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;

/**
 * Which junctions are joined to a source, and which to ground, by conductors and closed contacts alone. A load between
 * one of each is meant to work; another that carries current gets it through some other load.
 */
public final class Fed {

    private final Schematic schematic;
    private final BitSet live;
    private final BitSet ground;
    private final List<List<Integer>> next = new ArrayList<>();

    /** Looks at one operating point. */
    public Fed(OperatingPoint point) {
        schematic = point.schematic();
        int junctions = schematic.junctions().size();
        for (int i = 0; i < junctions; i++) {
            next.add(new ArrayList<>());
        }
        List<Integer> sources = new ArrayList<>();
        for (Piece piece : schematic.pieces()) {
            if (point.conducts(piece) && piece.role().passes()) {
                next.get(schematic.from(piece)).add(schematic.to(piece));
                next.get(schematic.to(piece)).add(schematic.from(piece));
            } else if (point.conducts(piece) && (piece.role() == Role.BATTERY || piece.role() == Role.MACHINE)) {
                sources.add(schematic.from(piece));
            }
        }
        ground = reach(next, List.of(0), new BitSet());
        live = reach(next, sources, ground);
    }

    private static BitSet reach(List<List<Integer>> next, List<Integer> starts, BitSet except) {
        BitSet seen = new BitSet();
        Deque<Integer> queue = new ArrayDeque<>();
        for (int start : starts) {
            if (!except.get(start) && !seen.get(start)) {
                seen.set(start);
                queue.add(start);
            }
        }
        while (!queue.isEmpty()) {
            for (int other : next.get(queue.remove())) {
                if (!seen.get(other) && !except.get(other)) {
                    seen.set(other);
                    queue.add(other);
                }
            }
        }
        return seen;
    }

    /** Returns whether a load lies between source and ground. */
    public boolean works(Piece load) {
        int from = schematic.from(load);
        int to = schematic.to(load);
        return live.get(from) && ground.get(to) || live.get(to) && ground.get(from);
    }

    /** Returns whether conductors and closed contacts join two junctions otherwise than by ground. */
    public boolean joins(int one, int other) {
        return reach(next, List.of(one), ground).get(other);
    }

    /** Returns whether one side of a load is fed, and the other joined to neither source nor ground. */
    public boolean hangs(Piece load) {
        int from = schematic.from(load);
        int to = schematic.to(load);
        return live.get(from) && loose(to) || live.get(to) && loose(from);
    }

    private boolean loose(int junction) {
        return !live.get(junction) && !ground.get(junction);
    }

    /** Returns what share of its design current a load carries. */
    public static double currentShare(OperatingPoint point, Piece load) {
        return load.model() instanceof Model.Working working ? Math.abs(point.amps(load)) / working.amps() : 0;
    }
}
