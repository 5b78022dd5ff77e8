// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.sheets.flow.CircuitPicture;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.guard.OffUi;

/**
 * A circuit of one vehicle in one mode, solved and drawn. The vehicle is the first of the chosen ones that has the
 * circuit.
 *
 * @param circuits the circuits that can be shown
 * @param modes    the modes of the platform
 * @param fitted   what can be fitted to the vehicle, in words
 * @param shown    what of these is shown
 * @param picture  the circuit; empty when there is none
 * @param words    what is shown
 */
record CircuitPage(List<String> circuits, List<String> modes, List<String> fitted, Wanted shown,
        Optional<CircuitPicture> picture, String words) {

    /** Where conductors begin to get warm, in C, where the sources state nothing. */
    private static final double ROOM = 20;

    CircuitPage {
        circuits = List.copyOf(circuits);
        modes = List.copyOf(modes);
        fitted = List.copyOf(fitted);
    }

    /**
     * What is asked for; empty for the usual.
     *
     * @param circuit name of a circuit; usually the one at the cursor
     * @param mode    name of a mode; usually the one in which most flows
     * @param fitted  what is fitted; usually what has the drawing or harness at the cursor
     */
    record Wanted(String circuit, String mode, String fitted) {
    }

    private static CircuitPage none(String words) {
        return new CircuitPage(List.of(), List.of(), List.of(), new Wanted("", "", ""), Optional.empty(), words);
    }

    static CircuitPage of(Project project, String wiring, Wanted wanted, Choice choice, Cancel cancel) {
        OffUi.require("solving a circuit");
        Optional<WiringView> found = project.wiring(wiring).or(() -> project.wirings().values().stream().findFirst());
        if (found.isEmpty()) {
            return none("No drawing and no harness of this project has a circuit.");
        }
        WiringView view = found.get();
        Condition chosen = choice.of(view.platform().vehicles(), view.platform().name());
        Condition having = chosen.and(view.when());
        if (having.isNever()) {
            return none(view.name() + " is in none of the chosen vehicles: " + choice.words() + ".");
        }
        Condition wired = view.platform().vehicles().anyOf(view.wires().stream()
                .filter(each -> each.circuit().name().text().equals(wanted.circuit())).map(WireView::when).toList())
                .and(having);
        Condition vehicle = view.platform().vehicles().where((wired.isNever() ? having : wired).example()
                .orElseThrow());
        List<Fitment> parts = Fitment.of(project, view.platform()).stream().flatMap(each -> each.parts().stream())
                .filter(each -> !each.fitted().isEmpty() && vehicle.implies(each.domain())).toList();
        cancel.check();
        Fitment fitment = parts.stream().filter(each -> each.words().equals(wanted.fitted())).findFirst()
                .or(() -> parts.stream().filter(each -> each.fitted().containsKey(view.name())
                        && !vehicle.excludes(each.fitted().get(view.name()).when())).findFirst())
                .or(() -> parts.stream().findFirst()).orElse(null);
        return fitment == null ? none("Nothing is wired in this vehicle: " + words(vehicle) + ".")
                : of(project, fitment, parts, vehicle, wanted, cancel);
    }

    private static CircuitPage of(Project project, Fitment fitment, List<Fitment> parts, Condition vehicle,
            Wanted wanted, Cancel cancel) {
        TreeSet<String> circuits = new TreeSet<>(new NaturalOrder());
        fitment.fitted().values().stream().filter(each -> !vehicle.excludes(each.when()))
                .flatMap(each -> each.view().wires().stream()).filter(each -> !vehicle.excludes(each.when()))
                .forEach(each -> circuits.add(each.circuit().name().text()));
        String circuit = circuits.contains(wanted.circuit()) || circuits.isEmpty() ? wanted.circuit()
                : circuits.first();
        Schematic schematic = Schematic.of(Connections.of(fitment), project.parts());
        PointSolver solver = new PointSolver(schematic, Optional.of(new Ratings(schematic, Ampacity.cfr())), ROOM);
        List<OperatingPoint> points = new ArrayList<>();
        for (Mode mode : schematic.mode(wanted.mode()).map(List::of).orElse(schematic.modes())) {
            cancel.check();
            points.add(solver.solve(vehicle, mode));
        }
        OperatingPoint best = points.getFirst();
        for (OperatingPoint point : points) {
            best = most(point, circuit) > most(best, circuit) ? point : best;
        }
        CircuitPicture picture = CircuitPicture.of(best, circuit);
        return new CircuitPage(List.copyOf(circuits), schematic.modes().stream().map(Mode::name).toList(),
                parts.stream().map(Fitment::words).distinct().toList(), new Wanted(circuit, best.mode().name(),
                fitment.words()), Optional.of(picture), words(best, circuit, picture, vehicle));
    }

    /** The greatest current in A in a wire of a circuit. */
    private static double most(OperatingPoint point, String circuit) {
        return point.schematic().pieces().stream().filter(each -> point.conducts(each) && each.subject().wire()
                .filter(wire -> wire.circuit().name().text().equals(circuit)).isPresent())
                .mapToDouble(each -> Math.abs(point.amps(each))).max().orElse(0);
    }

    private static String words(OperatingPoint point, String circuit, CircuitPicture picture, Condition vehicle) {
        if (!point.solved()) {
            return "Not solved: " + point.troubles().getFirst().words() + ".";
        }
        double most = most(point, circuit);
        return "Circuit " + circuit + ", " + point.mode().words() + ", in " + words(vehicle) + ", "
                + point.schematic().fitment().words() + ": " + (picture.items().isEmpty()
                ? "this vehicle has none of its wires." : most == 0 ? "nothing flows." : "up to "
                + CircuitPicture.amps(most) + ".") + " Computed, not measured. Page Up and Page Down go through it,"
                + " Enter or a click opens the line, + and - zoom, 0 shows all, 1 what can be"
                + " read, arrow keys move it.";
    }

    private static String words(Condition vehicle) {
        return vehicle.example().map(Assignment::members).map(members -> members.values().stream()
                .filter(each -> !each.startsWith("not ")).collect(Collectors.joining(", "))).orElse("");
    }
}
