// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.condition.Condition;
import org.loomwright.electric.Example;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.solve.Netlist;
import org.loomwright.electric.solve.NewtonSolver;
import org.loomwright.electric.solve.Outcome;
import org.loomwright.electric.solve.Spice;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;

/** Every mode of several vehicles of the example, with each kit that fits, against a general-purpose solver. */
@Tag("outside")
class OrrinAgainstSpiceTest {

    private static final List<String> VEHICLES = List.of("1964 saloon standard", "1967 coupe deluxe heater",
            "1968 estate towBar halogen", "1970 estate deluxe heater fogLamps electricFan ledTail hazardLights");
    private static final double RELATIVE = 1e-6;

    @Test
    void everyModeOfSeveralVehiclesHasTheSamePotentials(@TempDir Path folder)
            throws BadCall, IOException, InterruptedException {
        assumeTrue(Spice.isThere(), "ngspice is not installed");
        Project project = Example.of("orrin");
        PlatformView platform = project.platforms().get("orrin");
        List<Netlist> netlists = new ArrayList<>();
        List<Outcome.Solution> ours = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Schematic schematic : Schematic.of(project)) {
            for (String words : VEHICLES) {
                Condition vehicle = Example.vehicle(platform, words);
                if (schematic.fitment().platform() != platform || !vehicle.implies(schematic.fitment().domain())) {
                    continue;
                }
                PointSolver solver = new PointSolver(schematic, Optional.of(new Ratings(schematic, Ampacity.cfr())), 20,
                        netlist -> {
                            Outcome outcome = new NewtonSolver().solve(netlist);
                            if (outcome instanceof Outcome.Solution solution) {
                                netlists.add(netlist);
                                ours.add(solution);
                            }
                            return outcome;
                        });
                for (Mode mode : schematic.modes()) {
                    OperatingPoint point = solver.solve(vehicle, mode);
                    assertTrue(point.solved(), words + " " + mode.name() + " " + point.troubles());
                    assertTrue(point.residual() < NewtonSolver.GOOD, words + " " + mode.name());
                    while (names.size() < netlists.size() - 1) {
                        netlists.remove(names.size());
                        ours.remove(names.size());
                    }
                    names.add(schematic.fitment().words() + ": " + words + ", " + mode.name());
                }
            }
        }
        assertTrue(names.size() > 150, "hardly any: " + names.size());
        List<Netlist> sides = new ArrayList<>();
        for (int i = 0; i < netlists.size(); i++) {
            sides.add(Spice.onOneSide(netlists.get(i), ours.get(i).potentials()));
        }
        List<double[]> theirs = Spice.potentials(sides,
                ours.stream().map(Outcome.Solution::potentials).toList(), folder);
        for (int i = 0; i < netlists.size(); i++) {
            assertTrue(Spice.sameSides(netlists.get(i), theirs.get(i), ours.get(i).potentials()), names.get(i));
            for (int node = 0; node < netlists.get(i).nodes(); node++) {
                double wanted = theirs.get(i)[node];
                assertTrue(Double.isFinite(wanted), "ngspice found nothing for " + names.get(i));
                assertEquals(wanted, ours.get(i).potentials()[node], RELATIVE * Math.max(1e-2, Math.abs(wanted)),
                        names.get(i) + " node " + node);
            }
        }
    }
}
