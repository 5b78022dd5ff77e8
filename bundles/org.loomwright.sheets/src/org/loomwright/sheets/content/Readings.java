// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.thermal.Ratings;

/**
 * What a meter shows in a car once its battery is connected, the engine standing: the volts across each load that hangs
 * on a harness of the order, and what the whole car draws with the key off. From the same networks as the checks.
 * Linear in the modes, each solved once. Immutable.
 *
 * @param loads in the order of the modes of the platform, each load in the first mode in which it works
 * @param drain what the battery gives with the key off, in A; empty where that was not solved
 */
public record Readings(List<AtLoad> loads, Optional<Double> drain) {

    /** A load that gets less than this share of the supply is off: a lamp beside another one sees some millivolts. */
    private static final double WORKS = 0.25;

    /**
     * One load.
     *
     * @param mode  which switches are on, in words
     * @param load  the load and its pins, in words
     * @param volts across it, in V
     * @param amps  through it, in A
     */
    public record AtLoad(String mode, String load, double volts, double amps) {
    }

    public Readings {
        loads = List.copyOf(loads);
    }

    /** The readings of an order; empty when its vehicles are not wired alike, so that there is no one answer. */
    public static Optional<Readings> of(Order order) {
        Condition vehicles = order.vehicles();
        Optional<Schematic> found = fitment(order).map(each -> Schematic.of(Connections.of(each),
                order.project().parts()));
        return found.filter(schematic -> schematic.conditions().stream()
                .allMatch(when -> vehicles.implies(when) || vehicles.excludes(when)))
                .map(schematic -> solved(order, schematic));
    }

    private static Optional<Fitment> fitment(Order order) {
        List<String> names = order.harnesses().stream().map(LaidHarness::name).toList();
        String words = order.kit().map(each -> "with kit " + order.name()).orElse("");
        return Fitment.of(order.project(), order.platform()).stream().filter(each -> each.words().startsWith(words))
                .flatMap(each -> each.parts().stream()).filter(each -> order.vehicles().implies(each.domain())
                        && each.fitted().keySet().containsAll(names)).findFirst();
    }

    private static Readings solved(Order order, Schematic schematic) {
        Set<String> ours = new HashSet<>(order.harnesses().stream().map(LaidHarness::name).toList());
        PointSolver solver = new PointSolver(schematic, Optional.of(new Ratings(schematic, Ampacity.cfr())), 20);
        Set<Integer> seen = new HashSet<>();
        List<AtLoad> loads = new ArrayList<>();
        Optional<Double> drain = Optional.empty();
        for (Mode mode : schematic.modes()) {
            if (mode.flat() || mode.engine() == Engine.CRANK || mode.engine() == Engine.TURNING) {
                continue;
            }
            OperatingPoint point = solver.solve(order.vehicles(), new Mode(mode.name(), mode.title(), Engine.STOPPED,
                    false, mode.states(), mode.written(), mode.place()));
            if (!point.solved()) {
                continue;
            }
            if (mode.name().equals("keyOff")) {
                drain = schematic.pieces().stream().filter(each -> each.role() == Role.BATTERY)
                        .map(each -> Math.abs(point.amps(each))).reduce(Double::sum);
            }
            for (Piece piece : schematic.pieces()) {
                if (piece.role() == Role.LOAD && point.conducts(piece)
                        && Math.abs(point.volts(piece)) > WORKS * schematic.nominal() && !seen.contains(piece.index())
                        && hangs(point, piece, ours)) {
                    seen.add(piece.index());
                    loads.add(new AtLoad(mode.words(), piece.subject().label(), Math.abs(point.volts(piece)),
                            Math.abs(point.amps(piece))));
                }
            }
        }
        return new Readings(loads, drain);
    }

    private static boolean hangs(OperatingPoint point, Piece load, Set<String> ours) {
        return Trail.of(point, load).steps().stream().map(each -> each.piece().subject())
                .anyMatch(each -> each.wire().isPresent() && ours.contains(each.owner()));
    }
}
