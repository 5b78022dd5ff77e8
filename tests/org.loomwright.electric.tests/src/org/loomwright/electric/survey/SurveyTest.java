// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Condition;
import org.loomwright.electric.Example;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;

/** Vehicles that are told apart against a list of all of them, one by one. */
class SurveyTest {

    @Test
    void agreesWithTheEnumerationOfEveryVehicle() throws BadCall {
        Project project = Example.of("orrin");
        List<Schematic> small = Schematic.of(project).stream()
                .filter(each -> each.fitment().platform().name().equals("orrin900")).toList();
        assertEquals(2, small.size());
        for (Schematic schematic : small) {
            Survey survey = Survey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, Cancel.NEVER);
            Map<String, Condition> told = new TreeMap<>();
            survey.found().forEach(each -> told.merge(name(each.fault()), each.when(), Condition::or));
            Map<String, Condition> listed = new TreeMap<>();
            Ratings ratings = new Ratings(schematic, Ampacity.cfr());
            PointSolver solver = new PointSolver(schematic, Optional.of(ratings), 20);
            List<Condition> vehicles = vehicles(schematic);
            for (Condition vehicle : vehicles) {
                for (Mode mode : schematic.modes()) {
                    OperatingPoint point = solver.solve(vehicle, mode);
                    Fed fed = new Fed(point);
                    Inspectors.all().stream().flatMap(each -> each.inspect(point, fed, ratings).stream())
                            .forEach(each -> listed.merge(name(each), vehicle, Condition::or));
                }
            }
            assertTrue(!listed.isEmpty());
            assertEquals(listed.keySet(), told.keySet());
            listed.forEach((name, when) -> assertEquals(when, told.get(name), name));
            assertTrue(survey.assignments() < (long) vehicles.size() * schematic.modes().size(),
                    "vehicles that are alike were solved more than once");
            assertTrue(survey.bounded().isEmpty());
        }
    }

    @Test
    void saysWhichModesWereCutOff() throws BadCall {
        Schematic schematic = Schematic.of(Example.of("orrin")).stream()
                .filter(each -> each.fitment().platform().name().equals("orrin900")).findFirst().orElseThrow();
        Survey survey = Survey.of(schematic, schematic.modes(), Inspectors.all(), 1, Cancel.NEVER);
        assertTrue(!survey.bounded().isEmpty());
        assertEquals(schematic.modes().size(), survey.assignments());
    }

    private static String name(Fault fault) {
        return fault.rule() + " " + fault.piece().subject().owner() + " " + fault.piece().subject().label();
    }

    private static List<Condition> vehicles(Schematic schematic) {
        var all = schematic.fitment().platform().vehicles();
        Stream<String> axes = all.choices().axes().stream().map(Axis::name);
        return schematic.fitment().domain().assignments(axes.toList(), 1000).list().stream()
                .map((Assignment each) -> all.where(each)).toList();
    }
}
