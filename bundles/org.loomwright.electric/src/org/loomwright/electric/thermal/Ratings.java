// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.thermal;

import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;
import org.loomwright.geometry.Section;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.ConductorSize;

/**
 * What the wires of a network may carry. In the bundle of a wire counts the wire itself and each neighbour that carries
 * more than 20 % of its own free-air figure at the ambient of its zone. For one thread.
 */
public final class Ratings {

    /** A neighbour that carries more than this share of its own free-air figure counts. */
    public static final double COUNTS = 0.20;
    /** The ambient that is taken where no zone states one, in C: that of the table. */
    public static final double AMBIENT = 30;
    /** The class that is taken where no cable states one, in C: the lowest of the table. */
    public static final double CLASS = 60;

    private final Schematic schematic;
    private final Ampacity ampacity;
    private final Map<Integer, Around> around = new HashMap<>();
    /** By piece, what it may carry with so many wires in its bundle. */
    private final Map<Integer, Map<Integer, Optional<Allowance>>> allowances = new HashMap<>();
    private final Map<WireView, Set<Integer>> piecesOf = new IdentityHashMap<>();
    private final Map<WireView, List<Stretch>> stretches = new IdentityHashMap<>();
    private final Map<Section, List<Section.Occupant>> inside = new IdentityHashMap<>();
    /** How many wires of other networks there are in a section, by when they are there. */
    private final Map<Section, Map<Condition, Integer>> strangers = new IdentityHashMap<>();
    private final Map<Condition, Map<Section, Integer>> outside = new IdentityHashMap<>();
    private final Map<Condition, Map<Condition, Boolean>> there = new IdentityHashMap<>();
    private final Map<Section, Integer> counts = new IdentityHashMap<>();
    private final Map<WireView, Boolean> carrying = new IdentityHashMap<>();
    private Condition vehicles;
    private double[] currents;
    private final Set<WireView> others = Collections.newSetFromMap(new IdentityHashMap<>());

    /** A section that a wire runs through, and the wire in it. */
    private record Stretch(Section section, Section.Occupant own) {
    }

    /** Prepares the ratings of a network on one basis. */
    public Ratings(Schematic schematic, Ampacity ampacity) {
        this(schematic, ampacity, List.of());
    }

    /**
     * Prepares the ratings of a part of a network.
     *
     * @param others wires that are not part of it and count as neighbours that carry current
     */
    public Ratings(Schematic schematic, Ampacity ampacity, Collection<WireView> others) {
        this.schematic = schematic;
        this.ampacity = ampacity;
        this.others.addAll(others);
        for (Piece piece : schematic.pieces()) {
            if (piece.model() instanceof Model.Copper && piece.subject().wire().isPresent()) {
                piecesOf.computeIfAbsent(piece.subject().wire().get(), key -> new HashSet<>()).add(piece.index());
            }
        }
    }

    /** Returns whether wires of other networks count as neighbours. */
    public boolean hasOthers() {
        return !others.isEmpty();
    }

    /** Returns what a wire has around it. */
    public Around around(Piece piece) {
        return around.computeIfAbsent(piece.index(), key -> {
            WireView wire = piece.subject().wire().orElseThrow();
            WiringView view = schematic.fitment().fitted().get(wire.owner()).view();
            return Around.of(view, wire, piece.subject().part(), schematic.layout(wire.owner()).route(wire),
                    piece.when());
        });
    }

    /** Returns the ambient of a wire in C. */
    public double ambient(Piece piece) {
        return around(piece).ambientC().orElse(AMBIENT);
    }

    /** Returns what a wire may carry alone in free air at its ambient; empty for a size outside of the table. */
    public Optional<Allowance> free(Piece piece) {
        return allowed(piece, 1);
    }

    private Optional<Allowance> allowed(Piece piece, int wires) {
        return allowances.computeIfAbsent(piece.index(), key -> new HashMap<>()).computeIfAbsent(wires,
                key -> computed(piece, wires));
    }

    private Optional<Allowance> computed(Piece piece, int wires) {
        return piece.model() instanceof Model.Copper copper && piece.subject().wire().isPresent()
                ? ampacity.allowed(copper.size(), around(piece).classC().orElse(CLASS), ambient(piece), wires)
                : Optional.empty();
    }

    /** Returns what the table allows a wire of another size in the same place, in A before factors. */
    public Optional<Double> base(Piece piece, ConductorSize size) {
        return ampacity.allowed(size, around(piece).classC().orElse(CLASS), ambient(piece), 1).map(Allowance::base);
    }

    /** Returns the basis of the figures. */
    public Ampacity ampacity() {
        return ampacity;
    }

    /**
     * Returns how many wires count in the thickest bundle that a wire runs through.
     *
     * @param vehicles some vehicles that do not differ
     * @param currents in A, by piece
     */
    public int bundle(Piece piece, Condition vehicles, double[] currents) {
        if (vehicles != this.vehicles || currents != this.currents) {
            this.vehicles = vehicles;
            this.currents = currents;
            counts.clear();
            carrying.clear();
        }
        WireView wire = piece.subject().wire().orElseThrow();
        int more = carries(wire) ? 0 : 1;
        int most = 1;
        for (Stretch stretch : stretches.computeIfAbsent(wire, this::stretches)) {
            if (isThere(stretch.own().when())) {
                most = Math.max(most, more + counts.computeIfAbsent(stretch.section(), this::count));
            }
        }
        return most;
    }

    private List<Stretch> stretches(WireView wire) {
        return schematic.layout(wire.owner()).sections(wire).stream().flatMap(section -> section.wires().stream()
                .filter(each -> each.wire() == wire).map(own -> new Stretch(section, own))).toList();
    }

    private boolean isThere(Condition when) {
        return there.computeIfAbsent(vehicles, key -> new IdentityHashMap<>()).computeIfAbsent(when,
                key -> !key.excludes(vehicles));
    }

    private int count(Section section) {
        int count = others.isEmpty() ? 0 : outside.computeIfAbsent(vehicles, key -> new IdentityHashMap<>())
                .computeIfAbsent(section, this::outside);
        for (Section.Occupant each : inside.computeIfAbsent(section, key -> key.wires().stream()
                .filter(one -> piecesOf.containsKey(one.wire())).toList())) {
            if (carries(each.wire()) && isThere(each.when())) {
                count++;
            }
        }
        return count;
    }

    private int outside(Section section) {
        int count = 0;
        for (Map.Entry<Condition, Integer> each : strangers.computeIfAbsent(section, this::strangers).entrySet()) {
            count += isThere(each.getKey()) ? each.getValue() : 0;
        }
        return count;
    }

    private Map<Condition, Integer> strangers(Section section) {
        Map<Condition, Integer> strangers = new IdentityHashMap<>();
        for (Section.Occupant each : section.wires()) {
            if (others.contains(each.wire())) {
                strangers.merge(each.when(), 1, Integer::sum);
            }
        }
        return strangers;
    }

    private boolean carries(WireView wire) {
        return carrying.computeIfAbsent(wire, this::isCarrying);
    }

    /**
     * Returns the temperature in C of a conductor at a current: Ta + (Tr - Ta) (I / I_allowed(Ta))². Where the ambient
     * reaches the rating and nothing is allowed, what that comes to in the limit: Ta + (Tr - 30) (I / I_30)², with the
     * table's figure for 30 C and the same bundle.
     */
    public static double temperature(Allowance allowed, double amps) {
        if (allowed.amps() > 0) {
            return allowed.temperature(amps);
        }
        double share = amps / (allowed.base() * allowed.bundle().value());
        return allowed.ambientC() + (allowed.rating() - AMBIENT) * share * share;
    }

    private boolean isCarrying(WireView wire) {
        for (int index : piecesOf.getOrDefault(wire, Set.of())) {
            double amps = Math.abs(currents[index]);
            if (amps > 0 && free(schematic.pieces().get(index))
                    .filter(each -> amps <= COUNTS * each.amps()).isEmpty()) {
                return true;
            }
        }
        return false;
    }

    /** Returns what a wire may carry with its neighbours as they are; empty for a size outside of the table. */
    public Optional<Allowance> allowed(Piece piece, Condition vehicles, double[] currents) {
        return allowed(piece, bundle(piece, vehicles, currents));
    }
}
