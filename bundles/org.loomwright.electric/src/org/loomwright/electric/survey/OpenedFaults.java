// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.Alteration;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.thermal.Ratings;

/**
 * Opens every ground, strap and protective device that carries current, one at a time, and looks at what wakes though
 * it is off. Solved is only where conductors could lead current through loads in series, which takes no solving to see.
 */
public final class OpenedFaults implements Inspector {

    private static final String RULE = "wakes-when-opened";
    private static final double WARM = 50;
    private static final double NOTHING = 1e-3;
    private static final int TOLD = 3;

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        PointSolver solver = null;
        for (Piece piece : point.solved() ? point.schematic().pieces() : List.<Piece>of()) {
            if (opens(point, piece) && Series.of(point, piece).mayWake(fed)) {
                solver = solver == null ? new PointSolver(point.schematic(), Optional.empty(), WARM) : solver;
                OperatingPoint bad = solver.solve(point.vehicles(), point.schematic().holding(point.vehicles()),
                        point.mode(), new Alteration(Set.of(piece.index()), Map.of(), OptionalInt.empty(), 0,
                                point.drawn()));
                List<Awake> awake = Awake.of(point, fed, bad);
                if (!awake.isEmpty()) {
                    faults.add(fault(piece, awake));
                }
            }
        }
        return faults;
    }

    /** Returns whether something is opened: a ground, a strap or a protective device that carries current. */
    public static boolean opens(OperatingPoint point, Piece piece) {
        return (piece.role() == Role.GROUND_JOINT || piece.role() == Role.STRAP || piece.role().protects())
                && point.conducts(piece) && Math.abs(point.amps(piece)) > NOTHING;
    }

    private static Fault fault(Piece piece, List<Awake> awake) {
        String more = awake.size() > TOLD ? ", and " + (awake.size() - TOLD) + " more wake" : "";
        return new Fault(RULE, piece, Math.min(1, awake.getFirst().share()), "when " + piece.subject().label()
                + " opens, " + awake.stream().limit(TOLD).map(Awake::words).collect(Collectors.joining(", ")) + more
                + " though off", awake.stream().limit(TOLD).map(Awake::way).distinct()
                        .map(each -> "the way: " + each).toList(),
                "give each of them a ground of its own, or look at this connection first when they glow");
    }

    /**
     * What conductors and closed contacts join when one piece is open, and which of that is joined by loads alone.
     *
     * @param point what it was before
     * @param root  one junction for all that conductors join
     */
    private record Series(OperatingPoint point, int[] root) {

        static Series of(OperatingPoint point, Piece open) {
            Schematic schematic = point.schematic();
            int[] root = new int[schematic.junctions().size()];
            Arrays.setAll(root, i -> i);
            for (Piece piece : schematic.pieces()) {
                if (piece != open && point.conducts(piece) && piece.role().passes()) {
                    root[find(root, schematic.from(piece))] = find(root, schematic.to(piece));
                }
            }
            return new Series(point, root);
        }

        private static int find(int[] root, int junction) {
            int place = junction;
            while (root[place] != place) {
                root[place] = root[root[place]];
                place = root[place];
            }
            return place;
        }

        /** Whether loads in series lie between source and ground, one of them off before. */
        boolean mayWake(Fed fed) {
            Schematic schematic = point.schematic();
            BitSet held = new BitSet();
            held.set(find(root, 0));
            List<Piece> loads = new ArrayList<>();
            for (Piece piece : schematic.pieces()) {
                if (point.conducts(piece) && (piece.role() == Role.BATTERY || piece.role() == Role.MACHINE)) {
                    held.set(find(root, schematic.from(piece)));
                    held.set(find(root, schematic.to(piece)));
                } else if (point.conducts(piece) && (piece.role() == Role.LOAD || piece.role() == Role.COIL)) {
                    loads.add(piece);
                }
            }
            int[] group = root.clone();
            for (Piece load : loads) {
                int from = find(root, schematic.from(load));
                int to = find(root, schematic.to(load));
                if (!held.get(from) && !held.get(to)) {
                    group[find(group, from)] = find(group, to);
                }
            }
            BitSet live = new BitSet();
            BitSet ground = new BitSet();
            BitSet off = new BitSet();
            for (Piece load : loads) {
                int from = find(root, schematic.from(load));
                int to = find(root, schematic.to(load));
                for (int[] ends : new int[][] {{from, to}, {to, from}}) {
                    if (!held.get(ends[0])) {
                        int place = find(group, ends[0]);
                        boolean grounded = ends[1] == find(root, 0);
                        (grounded ? ground : live).set(place, held.get(ends[1]) || (grounded ? ground : live)
                                .get(place));
                        off.set(place, off.get(place) || !fed.works(load));
                    }
                }
            }
            live.and(ground);
            live.and(off);
            return !live.isEmpty();
        }
    }
}
