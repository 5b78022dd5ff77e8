// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.point;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Gate;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.solve.Netlist;
import org.loomwright.electric.solve.NetworkSolver;
import org.loomwright.electric.solve.NewtonSolver;
import org.loomwright.electric.solve.Outcome;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Dimension;

/**
 * Solves a network for vehicles that do not differ in it. Relays begin at rest and follow their coils until nothing
 * changes; a relay that never settles is named. The temperature of wires and their resistance are iterated. What
 * nothing joins to the reference carries no current. For one thread.
 */
public final class PointSolver {

    /** Pull-in voltage of a relay that states none, as a share of the supply (from memory, ISO 7588-1: 8 of 12 V). */
    static final double PULL_IN = 0.67;
    /** Drop-out voltage of a relay that states none, as a share of the supply (from memory). */
    static final double DROP_OUT = 0.1;
    private static final double HOT_COIL = 80;
    private static final int MOST_ROUNDS = 12;
    private static final int WARMINGS = 6;
    private static final double SAME_CELSIUS = 0.05;
    private static final double HOTTEST = 1000;

    private final Schematic schematic;
    private final NetworkSolver solver;
    private final Optional<Ratings> ratings;
    private final double[] start;
    private long solves;

    /**
     * @param ratings for the temperature of wires; empty leaves them at {@code celsius}
     * @param celsius where wires start, or stay, in C
     */
    public PointSolver(Schematic schematic, Optional<Ratings> ratings, double celsius) {
        this(schematic, ratings, celsius, new NewtonSolver());
    }

    /** The same with another solver for its networks. */
    public PointSolver(Schematic schematic, Optional<Ratings> ratings, double celsius, NetworkSolver solver) {
        this.schematic = schematic;
        this.solver = solver;
        this.ratings = ratings;
        this.start = new double[schematic.pieces().size()];
        for (Piece piece : schematic.pieces()) {
            boolean wire = piece.model() instanceof Model.Copper && piece.subject().wire().isPresent();
            start[piece.index()] = wire ? ratings.map(each -> each.ambient(piece)).orElse(celsius) : celsius;
        }
    }

    /** Returns how many networks were solved, for tests that guard growth. */
    public long solves() {
        return solves;
    }

    /** Solves one mode as it is. */
    public OperatingPoint solve(Condition vehicles, Mode mode) {
        return solve(vehicles, schematic.holding(vehicles), mode, Alteration.NONE);
    }

    /**
     * Solves one mode.
     *
     * @param vehicles vehicles that do not differ
     * @param holding  which of {@link Schematic#conditions} hold for them
     */
    public OperatingPoint solve(Condition vehicles, BitSet holding, Mode mode, Alteration alteration) {
        double[] celsius = start.clone();
        OperatingPoint point = settle(vehicles, holding, mode, alteration, celsius);
        for (int i = 0; ratings.isPresent() && i < WARMINGS && point.solved(); i++) {
            double[] warmer = warm(point, celsius);
            double most = 0;
            for (int k = 0; k < warmer.length; k++) {
                most = Math.max(most, Math.abs(warmer[k] - celsius[k]));
            }
            celsius = warmer;
            if (most < SAME_CELSIUS) {
                break;
            }
            point = settle(vehicles, holding, mode, alteration, celsius);
        }
        return point;
    }

    private double[] warm(OperatingPoint point, double[] before) {
        double[] celsius = before.clone();
        for (Piece piece : schematic.pieces()) {
            double amps = Math.abs(point.currents()[piece.index()]);
            if (amps > 0 && piece.model() instanceof Model.Copper && piece.subject().wire().isPresent()) {
                Optional<Allowance> free = ratings.get().free(piece);
                boolean cool = free.filter(each -> amps < 0.02 * each.amps()).isPresent();
                celsius[piece.index()] = cool ? ratings.get().ambient(piece)
                        : ratings.get().allowed(piece, point.vehicles(), point.currents())
                                .map(each -> Math.min(HOTTEST, Ratings.temperature(each, amps)))
                                .orElse(before[piece.index()]);
            }
        }
        return celsius;
    }

    private OperatingPoint settle(Condition vehicles, BitSet holding, Mode mode, Alteration alteration,
            double[] celsius) {
        Map<String, Boolean> relays = new TreeMap<>();
        Set<Map<String, Boolean>> seen = new HashSet<>();
        int steps = 0;
        OperatingPoint point = null;
        for (int round = 0; round < MOST_ROUNDS && seen.add(new HashMap<>(relays)); round++) {
            point = once(vehicles, holding, mode, alteration, celsius, relays);
            steps += point.steps();
            Map<String, Boolean> next = follow(point, relays);
            if (!point.solved() || next.equals(relays)) {
                return point;
            }
            relays = next;
        }
        List<OperatingPoint.Trouble> troubles = new ArrayList<>(point.troubles());
        Map<String, Boolean> last = relays;
        for (Piece piece : schematic.pieces()) {
            if (piece.role() == Role.COIL && point.conducts(piece)
                    && !last.getOrDefault(key(piece), false).equals(point.relays().getOrDefault(key(piece), false))) {
                troubles.add(new OperatingPoint.Trouble(piece.index(), "relay " + piece.subject().element()
                        + " never settles: its coil pulls in, and loses its voltage when it has"));
            }
        }
        return new OperatingPoint(schematic, vehicles, mode, point.potentials(), point.currents(), point.conducts(),
                point.celsius(), point.relays(), point.drawn(), point.residual(), steps, troubles);
    }

    private static String key(Piece coil) {
        return coil.subject().owner() + ":" + coil.subject().element();
    }

    private Map<String, Boolean> follow(OperatingPoint point, Map<String, Boolean> before) {
        Map<String, Boolean> next = new TreeMap<>();
        for (Piece piece : schematic.pieces()) {
            if (piece.role() == Role.COIL && point.conducts(piece)) {
                boolean pulled = before.getOrDefault(key(piece), false);
                double volts = Math.abs(point.volts(piece));
                boolean now = pulled ? volts >= dropOut(piece) : volts >= pullIn(piece);
                if (now) {
                    next.put(key(piece), true);
                }
            }
        }
        return next;
    }

    /** The voltage in V at which a relay with a hot coil pulls in: a warm coil takes less current. */
    public double pullIn(Piece coil) {
        double cold = figure(coil, Part.FigureKind.PULL_IN).orElse(PULL_IN * schematic.nominal());
        return cold * org.loomwright.quantity.Metal.COPPER.factor(HOT_COIL);
    }

    /** The voltage in V at which a relay lets go. */
    public double dropOut(Piece coil) {
        return figure(coil, Part.FigureKind.DROP_OUT).orElse(DROP_OUT * schematic.nominal());
    }

    private static Optional<Double> figure(Piece piece, Part.FigureKind kind) {
        return piece.subject().part().flatMap(part -> part.figure(kind)).map(Part.Figure::from)
                .filter(each -> each.unit().dimension() == Dimension.VOLTAGE).map(each -> each.si());
    }

    private boolean closed(Piece piece, Mode mode, Map<String, Boolean> relays) {
        return switch (piece.gate()) {
            case Gate.Open open -> true;
            case Gate.Cranking cranking -> mode.engine() == org.loomwright.electric.mode.Engine.CRANK;
            case Gate.Keyed keyed -> mode.isKeyed();
            case Gate.Turning machine -> mode.engine().charges() == machine.turning();
            case Gate.While state -> state.relay()
                    ? relays.getOrDefault(state.owner() + ":" + state.device(), false) != state.states()
                            .contains(state.rest())
                    : state.states().contains(mode.state(state.device(), state.rest()));
        };
    }

    private OperatingPoint once(Condition vehicles, BitSet holding, Mode mode, Alteration alteration,
            double[] celsius, Map<String, Boolean> relays) {
        List<Piece> pieces = schematic.pieces();
        boolean[] conducts = new boolean[pieces.size()];
        Element[] elements = new Element[pieces.size()];
        int[] root = new int[schematic.junctions().size()];
        Arrays.setAll(root, i -> i);
        for (Piece piece : pieces) {
            int i = piece.index();
            if (holding.get(schematic.conditionOf(piece)) && !alteration.opened().contains(i)
                    && closed(piece, mode, relays)) {
                Optional<Element> element = piece.model().element(mode, celsius[i]);
                Double more = alteration.added().get(i);
                elements[i] = element.map(each -> more != null && each instanceof Element.Resistor resistor
                        ? new Element.Resistor(resistor.ohms() + more) : each).orElse(null);
                conducts[i] = element.isPresent();
                if (conducts[i]) {
                    root[find(root, schematic.from(piece))] = find(root, schematic.to(piece));
                }
            }
        }
        int[] node = new int[root.length];
        Arrays.fill(node, -1);
        node[0] = 0;
        int nodes = 1;
        Netlist.Builder builder = Netlist.builder().hold(0, 0);
        List<Integer> at = new ArrayList<>();
        for (Piece piece : pieces) {
            int i = piece.index();
            if (conducts[i] && find(root, schematic.from(piece)) == find(root, 0)) {
                for (int end : new int[] {schematic.from(piece), schematic.to(piece)}) {
                    if (node[end] < 0) {
                        node[end] = nodes++;
                    }
                }
                builder.add(node[schematic.from(piece)], node[schematic.to(piece)], elements[i]);
                at.add(i);
            }
        }
        alteration.shorted().ifPresent(place -> {
            if (node[place] > 0) {
                builder.add(node[place], 0, new Element.Resistor(alteration.ohms()));
            }
        });
        alteration.drawn().forEach((place, amps) -> {
            if (node[place] > 0) {
                builder.add(node[place], 0, new Element.Draw(amps));
            }
        });
        return result(vehicles, mode, alteration.drawn(), conducts, celsius, relays, node, at,
                solver.solve(builder.build()));
    }

    private OperatingPoint result(Condition vehicles, Mode mode, Map<Integer, Double> drawn, boolean[] conducts,
            double[] celsius, Map<String, Boolean> relays, int[] node, List<Integer> at, Outcome outcome) {
        solves++;
        double[] potentials = new double[node.length];
        Arrays.fill(potentials, Double.NaN);
        double[] currents = new double[conducts.length];
        List<OperatingPoint.Trouble> troubles = new ArrayList<>();
        double residual = 0;
        int steps = 0;
        switch (outcome) {
            case Outcome.Solution solution -> {
                for (int i = 0; i < node.length; i++) {
                    potentials[i] = node[i] < 0 ? Double.NaN : solution.potentials()[node[i]];
                }
                for (int i = 0; i < at.size(); i++) {
                    currents[at.get(i)] = solution.currents()[i];
                }
                residual = solution.residual();
                steps = solution.steps();
            }
            case Outcome.Floating floating -> troubles.add(new OperatingPoint.Trouble(-1,
                    "nothing holds the potential of " + named(node, floating.nodes().getFirst())));
            case Outcome.Unsolved unsolved -> troubles.add(new OperatingPoint.Trouble(-1,
                    "no operating point was found; currents do not add up at " + named(node, unsolved.node())));
        }
        return new OperatingPoint(schematic, vehicles, mode, potentials, currents, conducts, celsius, relays, drawn,
                residual, steps, troubles);
    }

    private String named(int[] node, int wanted) {
        for (int i = 0; i < node.length; i++) {
            if (node[i] == wanted) {
                return schematic.junctions().get(i).toString();
            }
        }
        return "a junction";
    }

    private static int find(int[] root, int junction) {
        int place = junction;
        while (root[place] != place) {
            root[place] = root[root[place]];
            place = root[place];
        }
        return place;
    }
}
