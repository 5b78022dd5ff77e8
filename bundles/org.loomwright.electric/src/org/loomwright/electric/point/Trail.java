// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.point;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;

/**
 * The way of the current of one load: from the source of most of it, through the load, back to ground. At a junction it
 * goes where most of the current comes from, or goes to.
 *
 * @param steps the pieces in order, the load among them
 */
public record Trail(List<Step> steps) {

    /**
     * One piece on the way.
     *
     * @param piece  the piece
     * @param before potential in V on the side of the source
     * @param after  potential in V on the side of ground
     * @param amps   the current in A that it carries along the way
     */
    public record Step(Piece piece, double before, double after, double amps) {

        /** Returns what it loses, in V. */
        public double drop() {
            return before - after;
        }
    }

    public Trail {
        steps = List.copyOf(steps);
    }

    /** Follows the current of a load both ways, as far as conductors lead. */
    public static Trail of(OperatingPoint point, Piece load) {
        return of(point, load, false);
    }

    /** Follows the current of a load both ways, through other loads too. */
    public static Trail throughLoads(OperatingPoint point, Piece load) {
        return of(point, load, true);
    }

    private static Trail of(OperatingPoint point, Piece load, boolean loads) {
        Schematic schematic = point.schematic();
        boolean forward = point.amps(load) >= 0;
        int high = forward ? schematic.from(load) : schematic.to(load);
        int low = forward ? schematic.to(load) : schematic.from(load);
        List<Step> up = walk(point, high, load, true, loads);
        Collections.reverse(up);
        List<Step> all = new ArrayList<>(up);
        all.add(step(point, load, high));
        all.addAll(walk(point, low, load, false, loads));
        return new Trail(all);
    }

    private static Step step(OperatingPoint point, Piece piece, int first) {
        Schematic schematic = point.schematic();
        int other = schematic.from(piece) == first ? schematic.to(piece) : schematic.from(piece);
        return new Step(piece, point.potential(first), point.potential(other), Math.abs(point.amps(piece)));
    }

    private static List<Step> walk(OperatingPoint point, int start, Piece load, boolean up, boolean loads) {
        Schematic schematic = point.schematic();
        List<Step> steps = new ArrayList<>();
        Set<Integer> seen = new HashSet<>(List.of(load.index()));
        int at = start;
        while (at != 0) {
            Piece best = null;
            double most = 0;
            for (Piece piece : schematic.meeting(at)) {
                int to = schematic.to(piece);
                if (point.conducts(piece) && !seen.contains(piece.index())
                        && (piece.role().passes() || isSource(piece) || loads && isLoad(piece))) {
                    double into = to == at ? point.amps(piece) : -point.amps(piece);
                    double along = up ? into : -into;
                    if (along > most) {
                        most = along;
                        best = piece;
                    }
                }
            }
            if (best == null || isSource(best)) {
                break;
            }
            seen.add(best.index());
            int next = schematic.from(best) == at ? schematic.to(best) : schematic.from(best);
            steps.add(step(point, best, up ? next : at));
            at = next;
        }
        return steps;
    }

    private static boolean isLoad(Piece piece) {
        return piece.role() == Role.LOAD || piece.role() == Role.COIL;
    }

    private static boolean isSource(Piece piece) {
        return piece.role() == Role.BATTERY || piece.role() == Role.MACHINE;
    }

    /** Returns what is lost between the source and the load, in V. */
    public double feed() {
        return drop(true);
    }

    /** Returns what is lost between the load and ground, in V. */
    public double back() {
        return drop(false);
    }

    private double drop(boolean feed) {
        double sum = 0;
        boolean before = true;
        for (Step step : steps) {
            if (!step.piece().role().passes()) {
                before = false;
            } else if (before == feed) {
                sum += step.drop();
            }
        }
        return sum;
    }
}
