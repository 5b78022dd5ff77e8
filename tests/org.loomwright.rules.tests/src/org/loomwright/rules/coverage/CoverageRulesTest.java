// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;

class CoverageRulesTest {

    private static List<String> found(Bench bench, String rule) {
        return bench.check(rule).stream().map(finding -> finding.element() + ": " + words(finding)).toList();
    }

    private static String words(Finding finding) {
        return finding.affected().map(each -> each.words() + ", " + each.tally()).orElse("");
    }

    @Test
    void vehiclesBetweenTwoDrawings() {
        Bench bench = new Bench().group("body", "saloon", "coupe").never("coupe and year < 1967").position("front", "")
                .drawing("front64", "front", "year <= 1966", wiring -> { })
                .drawing("front68", "front", "year >= 1968 and saloon", wiring -> { });
        assertEquals(List.of("orrin:front: year = 1967 or coupe, 6 of 13 vehicles"),
                found(bench, "vehicle-without-drawing"));
        assertEquals(bench.at("orrin:front"), bench.check("vehicle-without-drawing").getFirst().place().span());
    }

    @Test
    void aPositionCountsOnlyInVehiclesThatHaveIt() {
        Bench bench = new Bench().upgrade("fan").position("fanWiring", "fan and year <= 1966").position("rear", "")
                .drawing("fan64", "fanWiring", "fan", wiring -> { });
        assertEquals(List.of(), found(bench, "vehicle-without-drawing"));
    }

    @Test
    void aHarnessOfOursIsNoDrawing() {
        Bench bench = new Bench().position("front", "").drawing("front64", "front", "year <= 1966", wiring -> { })
                .wiring(org.loomwright.harness.Wiring.Kind.HARNESS, "ours", "front", "", wiring -> { });
        assertEquals(List.of("orrin:front: year >= 1967, 5 of 8 vehicles"), found(bench, "vehicle-without-drawing"));
        assertEquals(List.of(), found(bench, "drawings-overlap"));
    }

    @Test
    void everyPairOfDrawingsForOneVehicle() {
        Bench bench = new Bench().upgrade("fan").position("front", "")
                .drawing("a", "front", "year <= 1966", wiring -> { })
                .drawing("b", "front", "year >= 1966 and fan", wiring -> { })
                .drawing("c", "front", "year >= 1966 and not fan", wiring -> { })
                .drawing("d", "rear", "", wiring -> { });
        assertEquals(List.of("b: year = 1966 and fan, 1 of 16 vehicles",
                "c: year = 1966 and not fan, 1 of 16 vehicles"),
                found(bench, "drawings-overlap"));
    }
}
