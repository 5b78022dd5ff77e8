// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.mode.Modes;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Project;

/**
 * The electrical network of one choice of what is fitted, for all its vehicles at once. Potentials are counted from the
 * grounded pole toward the insulated one, so that they are positive whichever pole is grounded. Built from the
 * connections and the lengths, never from text; immutable; linear in the connections but for conditions.
 */
public final class Schematic {

    private final Fitment fitment;
    private final List<Piece> pieces;
    private final List<Remark> remarks;
    private final Junction reference;
    private final List<Mode> modes;
    private final double nominal;
    private final Map<String, Layout> layouts;
    private final List<Boundary> boundaries;
    private final List<Condition> conditions = new ArrayList<>();
    private final int[] conditionOf;
    private final Map<Junction, Integer> places = new HashMap<>();
    private final List<Junction> junctions = new ArrayList<>();
    private final List<List<Piece>> meeting = new ArrayList<>();
    private final int[] from;
    private final int[] to;

    Schematic(Fitment fitment, List<Piece> pieces, List<Remark> remarks, Junction reference, double nominal,
            Map<String, Layout> layouts, List<Boundary> boundaries) {
        this(fitment, pieces, remarks, reference, nominal, layouts, boundaries, Modes.of(fitment.platform()));
    }

    private Schematic(Fitment fitment, List<Piece> pieces, List<Remark> remarks, Junction reference, double nominal,
            Map<String, Layout> layouts, List<Boundary> boundaries, List<Mode> modes) {
        this.fitment = fitment;
        this.pieces = List.copyOf(pieces);
        this.remarks = List.copyOf(remarks);
        this.reference = reference;
        this.modes = modes;
        this.nominal = nominal;
        this.layouts = Map.copyOf(layouts);
        this.boundaries = List.copyOf(boundaries);
        this.conditionOf = new int[pieces.size()];
        this.from = new int[pieces.size()];
        this.to = new int[pieces.size()];
        place(reference);
        Map<Condition, Integer> known = new IdentityHashMap<>();
        for (Piece piece : pieces) {
            conditionOf[piece.index()] = known.computeIfAbsent(piece.when(), key -> {
                conditions.add(key);
                return conditions.size() - 1;
            });
            from[piece.index()] = place(piece.from());
            to[piece.index()] = place(piece.to());
        }
        junctions.forEach(each -> meeting.add(new ArrayList<>()));
        for (Piece piece : pieces) {
            meeting.get(from(piece)).add(piece);
            if (to(piece) != from(piece)) {
                meeting.get(to(piece)).add(piece);
            }
        }
    }

    private int place(Junction junction) {
        return places.computeIfAbsent(junction, key -> {
            junctions.add(key);
            return junctions.size() - 1;
        });
    }

    /** Builds the network of a choice of harnesses. */
    public static Schematic of(Connections connections, Map<String, Part> parts) {
        Map<String, Layout> layouts = new LinkedHashMap<>();
        connections.fitment().fitted().forEach((name, each) -> layouts.put(name, Layout.of(each.view(), parts)));
        return new SchematicBuilder(connections, parts, layouts).build();
    }

    /** Builds the networks of a project: the factory's, and those with each kit and harness of ours. */
    public static List<Schematic> of(Project project) {
        List<Schematic> all = new ArrayList<>();
        project.platforms().values().forEach(platform -> Fitment.of(project, platform).stream()
                .flatMap(each -> each.parts().stream()).filter(each -> !each.fitted().isEmpty())
                .forEach(each -> all.add(of(Connections.of(each), project.parts()))));
        return all;
    }

    /**
     * Returns the network of some of its pieces alone; each has the place in it that it has in the list.
     *
     * @param some pieces of this network, in order
     */
    public Schematic of(List<Piece> some) {
        List<Piece> renumbered = new ArrayList<>();
        for (Piece each : some) {
            renumbered.add(new Piece(renumbered.size(), each.from(), each.to(), each.when(), each.role(),
                    each.subject(), each.gate(), each.model(), each.rating(), each.basis()));
        }
        return new Schematic(fitment, renumbered, List.of(), reference, nominal, layouts, boundaries,
                modes);
    }

    /** Returns what is fitted. */
    public Fitment fitment() {
        return fitment;
    }

    /** Returns all pieces; a piece's index is its place here. */
    public List<Piece> pieces() {
        return pieces;
    }

    /** Returns what is missing or cannot be. */
    public List<Remark> remarks() {
        return remarks;
    }

    /** Returns what is assumed to lie behind cavities whose other half nobody describes. */
    public List<Boundary> boundaries() {
        return boundaries;
    }

    /** Returns the junction whose potential is 0: the ground node of the battery, else its grounded pole. */
    public Junction reference() {
        return reference;
    }

    /** Returns all junctions, the reference first. */
    public List<Junction> junctions() {
        return Collections.unmodifiableList(junctions);
    }

    /** Returns the place of a junction among them; empty when nothing ends there. */
    public Optional<Integer> placeOf(Junction junction) {
        return Optional.ofNullable(places.get(junction));
    }

    /** Returns the place of the junction at which a piece begins. */
    public int from(Piece piece) {
        return from[piece.index()];
    }

    /** Returns the place of the junction at which a piece ends. */
    public int to(Piece piece) {
        return to[piece.index()];
    }

    /** Returns the pieces that end at a junction, in order. */
    public List<Piece> meeting(int junction) {
        return Collections.unmodifiableList(meeting.get(junction));
    }

    /** Returns the modes of the platform. */
    public List<Mode> modes() {
        return modes;
    }

    /** Returns the mode of that name. */
    public Optional<Mode> mode(String name) {
        return modes.stream().filter(each -> each.name().equals(name)).findFirst();
    }

    /** Returns the nominal voltage of the supply in V. */
    public double nominal() {
        return nominal;
    }

    /** Returns how the wires of a drawing or harness of that name lie. */
    public Layout layout(String owner) {
        return layouts.get(owner);
    }

    /** Returns the conditions of all pieces, each once. */
    public List<Condition> conditions() {
        return List.copyOf(conditions);
    }

    /** Returns the place of a piece's condition among them. */
    public int conditionOf(Piece piece) {
        return conditionOf[piece.index()];
    }

    /**
     * Returns which conditions hold for some vehicles that do not differ in any of them.
     *
     * @throws IllegalArgumentException if they do differ
     */
    public BitSet holding(Condition vehicles) {
        BitSet holding = new BitSet();
        for (int i = 0; i < conditions.size(); i++) {
            if (vehicles.implies(conditions.get(i))) {
                holding.set(i);
            } else if (!vehicles.excludes(conditions.get(i))) {
                throw new IllegalArgumentException("these vehicles are not wired alike");
            }
        }
        return holding;
    }
}
