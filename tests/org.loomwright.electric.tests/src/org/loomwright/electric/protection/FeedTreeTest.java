// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.condition.Condition;
import org.loomwright.electric.Example;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.fault.FaultStudy;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.Project;

/** The bounds of short circuits against networks in which the short is put and solved. */
class FeedTreeTest {

    @Test
    void theLeastCurrentIsNoMoreThanWhatTheSolverFindsAndNotFarBelow() throws BadCall {
        Project project = Example.of("orrin");
        List<String> wrong = new ArrayList<>();
        int compared = 0;
        for (Schematic schematic : Schematic.of(project).stream()
                .filter(each -> each.fitment().platform().name().equals("orrin")).limit(2).toList()) {
            Ratings ratings = new Ratings(schematic, Ampacity.cfr());
            PointSolver solver = new PointSolver(schematic, Optional.of(ratings), 20);
            for (String words : List.of("1970 estate deluxe")) {
                Condition vehicle = Example.vehicle(schematic.fitment().platform(), words);
                if (!vehicle.implies(schematic.fitment().domain())) {
                    continue;
                }
                for (String name : List.of("parkingLights", "braking")) {
                    Mode mode = schematic.mode(name).orElseThrow();
                    OperatingPoint point = solver.solve(vehicle, mode);
                    FeedTree feeds = FeedTree.of(point).orElseThrow();
                    FaultStudy study = FaultStudy.of(schematic, vehicle, mode, ratings);
                    for (FaultStudy.Shorted each : study.shorts()) {
                        int far = feeds.far(each.wire());
                        if (far > 0 && each.device().isPresent()) {
                            compared++;
                            double least = feeds.least(far);
                            boolean standing = mode.engine() == Engine.STOPPED;
                            if (least > each.least() * 1.005 || standing && least < each.least() * 0.7
                                    || feeds.most(far) < each.most() * 0.999) {
                                wrong.add(words + " " + name + " " + each.wire().subject().label() + ": " + least
                                        + " of " + each.least() + ", " + feeds.most(far) + " of " + each.most());
                            }
                            List<String> before = feeds.devices(far).stream().map(piece -> piece.subject().label())
                                    .toList();
                            assertEquals(each.device().get().subject().label(), before.getLast());
                        }
                    }
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(compared > 20, "shorts compared: " + compared);
    }
}
