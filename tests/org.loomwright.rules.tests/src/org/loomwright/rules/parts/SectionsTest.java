// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.rules.WrittenBench;

class SectionsTest {

    private static final List<String> SIZES = List.of("1 mm2", "2.5 mm2", "16 ga", "14 awg");

    /** The sets of conductors are those that a look at one vehicle after the other finds. */
    @Test
    void partsTheVehiclesAsTheyAre() {
        Random random = new Random(63);
        for (int round = 0; round < 20; round++) {
            WrittenBench bench = new WrittenBench().upgrade("a").upgrade("b").upgrade("c")
                    .part(Part.Kind.HOUSING, "way2", "pins 1 2");
            bench.harness("front", wires -> wires.connector("J1", "is way2").circuit("12", "", cut -> {
                for (int i = 0; i < 4; i++) {
                    String choice = choice(random);
                    cut.wire("w" + i, "from J1:1", "to J1:2", "size " + size(random) + " when " + choice,
                            "size " + size(random) + " when not " + choice + (random.nextBoolean() ? " and c" : ""),
                            "when " + (random.nextBoolean() ? "year > 1967" : choice(random)));
                }
            }));
            WiringView view = bench.project().wirings().get("front");
            List<WireEnd> ends = WireEnd.of(view).stream().filter(WireEnd::start).toList();
            Condition all = view.platform().vehicles().all();
            List<Sections> sets = Sections.of(ends, all);
            for (Assignment vehicle : all.assignments(List.of("year", "a", "b", "c"), 100).list()) {
                Condition one = view.platform().vehicles().where(vehicle);
                List<ConductorSize> expected = new ArrayList<>();
                boolean complete = true;
                for (WireEnd end : ends) {
                    if (!end.when().excludes(one)) {
                        List<ConductorSize> there = end.wire().sizes().stream()
                                .filter(size -> !size.when().excludes(one)).map(Case::value).toList();
                        complete &= !there.isEmpty();
                        expected.addAll(there);
                    }
                }
                expected.sort(null);
                List<Sections> found = sets.stream().filter(set -> !set.when().excludes(one)).toList();
                assertEquals(expected.isEmpty() ? 0 : 1, found.size());
                for (Sections set : found) {
                    assertEquals(expected, set.sizes());
                    assertEquals(complete, set.complete());
                }
            }
        }
    }

    private static String choice(Random random) {
        return List.of("a", "b", "c").get(random.nextInt(3));
    }

    private static String size(Random random) {
        return SIZES.get(random.nextInt(SIZES.size()));
    }

    @Test
    void gaugeSizesMayBeOff() {
        Condition all = new WrittenBench().project().platforms().get("orrin").vehicles().all();
        Sections set = new Sections(List.of(ConductorSize.metric("1"), ConductorSize.awg("14")), true, all);
        assertEquals(1 + 2.0809, set.area(0), 1e-4);
        assertEquals(1 + 0.9 * 2.0809, set.area(-0.1), 1e-4);
        assertEquals("1 mm2 + 14 awg (2.08 mm2) = 3.08 mm2", set.sum());
    }
}
