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
import org.loomwright.harness.Limit;

/**
 * Which junctions are joined to a source, and which to ground, by conductors and closed contacts alone. A load between
 * one of each is meant to work; another that carries current gets it through some other load. A resistance on purpose,
 * a ballast or a sender, passes on too, but does not make ground of what a source holds: the field of a generator is
 * one that leads there.
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
        double dropping = schematic.fitment().platform().limits().si(Limit.DROPPING_RESISTANCE);
        List<List<Integer>> firm = new ArrayList<>();
        for (int i = 0; i < junctions; i++) {
            next.add(new ArrayList<>());
            firm.add(new ArrayList<>());
        }
        List<Integer> sources = new ArrayList<>();
        for (Piece piece : schematic.pieces()) {
            if (point.conducts(piece) && piece.role().passes()) {
                join(next, piece);
                if (!(piece.model() instanceof Model.Fixed fixed) || fixed.ohms() < dropping) {
                    join(firm, piece);
                }
            } else if (point.conducts(piece) && (piece.role() == Role.BATTERY || piece.role() == Role.MACHINE)) {
                sources.add(schematic.from(piece));
            }
        }
        BitSet held = reach(firm, sources, reach(firm, List.of(0), new BitSet()));
        ground = reach(next, List.of(0), held);
        live = reach(next, sources, ground);
    }

    private void join(List<List<Integer>> lists, Piece piece) {
        lists.get(schematic.from(piece)).add(schematic.to(piece));
        lists.get(schematic.to(piece)).add(schematic.from(piece));
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

    /** Returns whether a source leads to a junction. */
    public boolean isFed(int junction) {
        return live.get(junction);
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
