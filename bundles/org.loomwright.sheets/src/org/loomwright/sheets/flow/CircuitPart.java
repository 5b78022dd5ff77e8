// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.TreeSet;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;

/**
 * The part of a solved network that belongs to one circuit: its wires, all that lies on the way of the current of each
 * load that they feed, from a source to ground, and what hangs on them without current, such as an open switch.
 * Contacts of connectors and terminals are no pieces of their own here; they join junctions to one spot.
 */
final class CircuitPart {

    /** A current in A below which nothing is said to flow. */
    static final double NOTHING = 5e-4;

    private final OperatingPoint point;
    private final Schematic schematic;
    private final BitSet there = new BitSet();
    private final int[] root;
    private final TreeSet<Integer> chosen = new TreeSet<>();

    private CircuitPart(OperatingPoint point) {
        this.point = point;
        this.schematic = point.schematic();
        BitSet holding = schematic.holding(point.vehicles());
        root = new int[schematic.junctions().size()];
        Arrays.setAll(root, i -> i);
        for (Piece piece : schematic.pieces()) {
            if (holding.get(schematic.conditionOf(piece))) {
                there.set(piece.index());
                if (joins(piece)) {
                    root[spot(schematic.from(piece))] = spot(schematic.to(piece));
                }
            }
        }
    }

    /** Finds the part of a circuit. Linear in the pieces of the network for each load that the circuit feeds. */
    static CircuitPart of(OperatingPoint point, String circuit) {
        CircuitPart part = new CircuitPart(point);
        part.choose(circuit);
        return part;
    }

    /** Whether two ends are the same spot for people. */
    private static boolean joins(Piece piece) {
        return piece.role() == Role.CONTACT || piece.role() == Role.GROUND_JOINT && piece.subject().wire().isPresent();
    }

    /** Whether it is drawn as a line, not as a box. */
    static boolean isLine(Piece piece) {
        return piece.subject().wire().isPresent() && (piece.role() == Role.WIRE || piece.role() == Role.LINK);
    }

    /** Whether it gives current. */
    static boolean isSource(Piece piece) {
        return piece.role() == Role.BATTERY || piece.role() == Role.MACHINE;
    }

    /** Whether current flows. */
    boolean flows(Piece piece) {
        return point.conducts(piece) && Math.abs(point.amps(piece)) > NOTHING;
    }

    /** The spot that a junction belongs to, by one of its junctions. */
    int spot(int junction) {
        int at = junction;
        while (root[at] != at) {
            root[at] = root[root[at]];
            at = root[at];
        }
        return at;
    }

    /** The spot from which a piece is drawn: where the current comes from. */
    int start(Piece piece) {
        return spot(turned(piece) ? schematic.to(piece) : schematic.from(piece));
    }

    /** The spot to which a piece is drawn. */
    int end(Piece piece) {
        return spot(turned(piece) ? schematic.from(piece) : schematic.to(piece));
    }

    private boolean turned(Piece piece) {
        return point.amps(piece) < -NOTHING && !isSource(piece);
    }

    /** The pieces, in the order of the network. */
    List<Piece> pieces() {
        return chosen.stream().map(schematic.pieces()::get).toList();
    }

    /** The junctions of a spot. */
    List<Integer> junctions(int spot) {
        List<Integer> junctions = new ArrayList<>();
        for (int i = 0; i < root.length; i++) {
            if (spot(i) == spot) {
                junctions.add(i);
            }
        }
        return junctions;
    }

    private void choose(String circuit) {
        BitSet own = new BitSet();
        BitSet touched = new BitSet();
        for (Piece piece : schematic.pieces()) {
            if (there.get(piece.index()) && isLine(piece)
                    && piece.subject().wire().get().circuit().name().text().equals(circuit)) {
                own.set(piece.index());
                chosen.add(piece.index());
                touched.set(spot(schematic.from(piece)));
                touched.set(spot(schematic.to(piece)));
            }
        }
        for (Piece piece : schematic.pieces()) {
            if ((piece.role() == Role.LOAD || piece.role() == Role.COIL) && flows(piece)) {
                Trail trail = Trail.of(point, piece);
                if (trail.steps().stream().anyMatch(step -> own.get(step.piece().index()))) {
                    trail.steps().stream().map(Trail.Step::piece).filter(each -> !joins(each))
                            .forEach(each -> chosen.add(each.index()));
                }
            }
        }
        idle(touched);
        sources();
    }

    /** What hangs on the circuit's wires without current. */
    private void idle(BitSet touched) {
        for (Piece piece : schematic.pieces()) {
            if (there.get(piece.index()) && !joins(piece) && !isLine(piece) && !isSource(piece) && !flows(piece)) {
                boolean from = touched.get(spot(schematic.from(piece)));
                boolean to = touched.get(spot(schematic.to(piece)));
                boolean ends = piece.role() == Role.LOAD || piece.role() == Role.COIL || piece.role() == Role.SWITCH
                        || piece.role() == Role.RELAY_CONTACT;
                boolean ground = spot(schematic.from(piece)) == spot(0) || spot(schematic.to(piece)) == spot(0);
                if (from && to || ends && (from || to) && !(ground && only(piece, touched))) {
                    chosen.add(piece.index());
                }
            }
        }
    }

    /** Whether a piece meets the circuit at ground only, where everything meets. */
    private boolean only(Piece piece, BitSet touched) {
        int from = spot(schematic.from(piece));
        int to = spot(schematic.to(piece));
        return !(touched.get(from) && from != spot(0)) && !(touched.get(to) && to != spot(0));
    }

    /** The batteries and machines whose live side is among what was chosen. */
    private void sources() {
        BitSet spots = new BitSet();
        pieces().forEach(each -> {
            spots.set(spot(schematic.from(each)));
            spots.set(spot(schematic.to(each)));
        });
        for (Piece piece : schematic.pieces()) {
            if (isSource(piece) && there.get(piece.index()) && spots.get(spot(schematic.from(piece)))) {
                chosen.add(piece.index());
            }
        }
    }
}
