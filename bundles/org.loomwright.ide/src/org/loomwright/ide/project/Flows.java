// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.project;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.Alteration;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.survey.Live;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.Cancel;

/**
 * What flows in the circuits of a platform: for each wire where most does, for each load where it gets least. Looks at
 * every choice of what is fitted in every mode, and of each at no more than {@link #MOST} sets of vehicles; whether
 * that were all is said. Immutable.
 */
public final class Flows {

    /** The most sets of vehicles of a mode that are looked at, for an answer while somebody waits. */
    static final int MOST = 8;
    private static final double NOTHING = 5e-4;
    /** What gets less of its voltage is not switched on but in series with what is. */
    private static final double WORKS = 0.3;

    /**
     * The worst operating point of something.
     *
     * @param label   words for people, of one load of several in a device
     * @param amps    the current in A, without its direction
     * @param volts   the voltage across it in V
     * @param share   of a wire the share of what it may carry there, of a load that of its design voltage; 0 where
     *                that is not known
     * @param celsius of a wire: its temperature in C
     * @param mode    the mode
     * @param vehicle one of the vehicles, by its choices
     * @param fitted  what is fitted
     */
    public record Flow(String label, double amps, double volts, double share, double celsius, Mode mode,
            String vehicle, String fitted) {

        /** The mode, the vehicle and what is fitted, in words. */
        public String where() {
            return "mode " + mode.name() + ", " + vehicle + ", " + fitted;
        }
    }

    private final Map<WireView, Flow> wires = new IdentityHashMap<>();
    private final Map<String, Map<String, Flow>> loads = new LinkedHashMap<>();
    private final IdentityHashMap<WireView, Boolean> looked = new IdentityHashMap<>();
    private boolean whole = true;
    private int solves;

    private Flows() {
    }

    /** Solves the circuits of a platform, as far as it gets. Linear in what can be fitted and its modes. */
    static Flows of(Project project, PlatformView platform, Cancel cancel) {
        Flows flows = new Flows();
        try {
            for (Fitment fitment : Fitment.of(project, platform)) {
                for (Fitment part : fitment.parts()) {
                    cancel.check();
                    if (!part.fitted().isEmpty()) {
                        flows.add(Schematic.of(Connections.of(part), project.parts()), cancel);
                    }
                }
            }
        } catch (TooManyCombinations e) {
            flows.whole = false;
        }
        return flows;
    }

    private void add(Schematic schematic, Cancel cancel) {
        Map<Condition, Integer> places = new IdentityHashMap<>();
        schematic.conditions().forEach(each -> places.put(each, places.size()));
        Ratings ratings = new Ratings(schematic, Ampacity.cfr());
        PointSolver solver = new PointSolver(schematic, Optional.of(ratings), 20);
        for (Mode mode : schematic.modes()) {
            List<Condition> conditions = Live.conditions(schematic, mode);
            Cells cells = schematic.fitment().domain().split(conditions, MOST);
            whole &= cells.complete();
            for (Cell cell : cells.list()) {
                cancel.check();
                BitSet holding = new BitSet();
                cell.holding().forEach(each -> holding.set(places.get(conditions.get(each))));
                take(solver.solve(cell.vehicles(), holding, mode, Alteration.NONE), ratings);
                solves++;
            }
        }
    }

    private void take(OperatingPoint point, Ratings ratings) {
        if (!point.solved()) {
            return;
        }
        String vehicle = null;
        for (Piece piece : point.schematic().pieces()) {
            piece.subject().wire().ifPresent(wire -> looked.put(wire, true));
            double amps = Math.abs(point.amps(piece));
            if (!point.conducts(piece) || amps <= NOTHING) {
                continue;
            }
            vehicle = vehicle == null ? words(point.vehicles()) : vehicle;
            if (piece.subject().wire().isPresent() && piece.model() instanceof Model.Copper) {
                Flow known = wires.get(piece.subject().wire().get());
                if (known == null || amps > known.amps()) {
                    double share = ratings.allowed(piece, point.vehicles(), point.currents())
                            .map(each -> amps / each.amps()).orElse(0.0);
                    wires.put(piece.subject().wire().get(), flow(point, piece, share, vehicle));
                }
            } else if (piece.role() == Role.LOAD && piece.subject().device().isPresent()
                    && point.share(piece) > WORKS) {
                Map<String, Flow> of = loads.computeIfAbsent(piece.subject().owner() + "/"
                        + piece.subject().device().get().name(), key -> new LinkedHashMap<>());
                Flow known = of.get(piece.subject().label());
                if (known == null || point.share(piece) < known.share()) {
                    of.put(piece.subject().label(), flow(point, piece, point.share(piece), vehicle));
                }
            }
        }
    }

    private static Flow flow(OperatingPoint point, Piece piece, double share, String vehicle) {
        return new Flow(piece.subject().label(), Math.abs(point.amps(piece)), Math.abs(point.volts(piece)), share,
                point.celsius()[piece.index()], point.mode(), vehicle, point.schematic().fitment().words());
    }

    private static String words(Condition vehicles) {
        return vehicles.example().map(Assignment::members).map(members -> members.values().stream()
                .filter(member -> !member.startsWith("not ")).collect(Collectors.joining(", "))).orElse("");
    }

    /** Where most flows in a wire; empty where nothing does. */
    public Optional<Flow> wire(WireView wire) {
        return Optional.ofNullable(wires.get(wire));
    }

    /** Whether a wire is in a network that was solved. */
    public boolean knows(WireView wire) {
        return looked.containsKey(wire);
    }

    /** Where each load of a device of a platform or wiring gets least while it works. */
    public List<Flow> device(String owner, String device) {
        return List.copyOf(new ArrayList<>(loads.getOrDefault(owner + "/" + device, Collections.emptyMap()).values()));
    }

    /** Whether every vehicle was looked at. */
    public boolean isWhole() {
        return whole;
    }

    /** What the figures are, in words. */
    public String basis() {
        return "computed from what the sources state, not measured; " + (whole
                ? "the worst of all modes and vehicles" : "the worst of all modes and of the vehicles looked at");
    }

    /** How many networks were solved, for tests that guard growth. */
    public int solves() {
        return solves;
    }
}
