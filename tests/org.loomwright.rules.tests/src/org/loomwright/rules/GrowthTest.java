// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Project;

/** Work grows with the size of a harness, not with its square and not with the number of vehicles. */
class GrowthTest {

    private static Bench harness(int circuits, String... upgrades) {
        Bench bench = new Bench().upgrade(upgrades).upgrade("fan").ground("body", false).place("box", "")
                .part(Part.Kind.SOURCE, "battery12", "pos").part(Part.Kind.HOUSING, "way4", "1", "2", "3", "4")
                .device("battery", "battery12", "box", "body", "");
        return bench.harness("front", wiring -> {
            for (int i = 0; i < circuits; i++) {
                String name = "c" + i;
                wiring.connector("J" + i, "way4", "box", "", "")
                        .circuit(name, i % 2 == 0 ? "" : "fan", circuit -> circuit
                                .splice("S" + name, "box", "")
                                .wire("a", "14 ga", "battery:pos", "S" + name, "")
                                .wire("b", "18 ga", "S" + name, "J" + name.substring(1) + ":1", "")
                                .wire("c", "18 ga", "S" + name, "J" + name.substring(1) + ":2", "fan"));
            }
        });
    }

    private static long steps(Bench bench) {
        Project project = bench.project();
        Connections network = Connections.of(Fitment.of(project, project.platforms().get("orrin")).getFirst());
        return network.fed(supply -> true, edge -> true).steps();
    }

    @Test
    void reachTakesTenTimesTheStepsForTenTimesTheWires() {
        long small = steps(harness(20));
        long large = steps(harness(200));
        assertTrue(large <= 11 * small, small + " and " + large);
    }

    @Test
    void moreVehiclesTakeNoMoreSteps() {
        String[] upgrades = new String[30];
        for (int i = 0; i < upgrades.length; i++) {
            upgrades[i] = "u" + i;
        }
        assertEquals(steps(harness(20)), steps(harness(20, upgrades)));
    }

    @Test
    void checksAndDraftsGrowWithTheHarness() {
        Report.Work small = harness(20).check().work();
        Report.Work large = harness(200).check().work();
        assertTrue(large.checks() <= 11 * small.checks(), small + " and " + large);
        assertTrue(large.drafts() <= 11 * small.drafts(), small + " and " + large);
        assertTrue(large.targets() <= 11 * small.targets(), small + " and " + large);
    }
}
