// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.FactComparer;
import org.loomwright.harness.link.Project;

/** A file without its project is compared as text: names and conditions as they are written. */
class OneFileTest {

    private final Sides sides = new Sides();

    private List<String> told(String from, String to) {
        Map<String, String> one = Map.of("front-harness.loom", Sides.orrin().get("front-harness.loom"));
        Project old = sides.project(one);
        Project now = sides.project(Sides.edited(one, from, to));
        return new FactComparer().compare(old, now).changes().stream()
                .map(change -> change.sentence() + " | " + change.felt().words()).toList();
    }

    @Test
    void aLengthIsToldWithoutVehiclesThatNobodyKnows() {
        assertEquals(List.of("branch bHeadL of front: length 280 mm -> 266 mm | all of front"),
                told("headlampLeft 280 mm", "headlampLeft 266 mm"));
    }

    @Test
    void aConditionIsToldAsWritten() {
        assertEquals(List.of("connector P1 of front: for fogLamps -> fogLamps and year >= 1970 | "
                + "as written: fogLamps; fogLamps and year >= 1970"),
                told("mates fogPair when fogLamps {", "mates fogPair when fogLamps and year >= 1970 {"));
    }

    @Test
    void aRenameIsARename() {
        assertEquals(List.of("branch bMarkL of front renamed bMarkerL | none"),
                everywhere("bMarkL", "bMarkerL"));
    }

    /** A wire has no direction. */
    @Test
    void aWireThatIsWrittenFromItsOtherEndIsNoElectricalChange() {
        String line = Sides.orrin().get("front-harness.loom").lines()
                .filter(each -> each.matches(" +wire \\w+ .* from \\S+ to \\S+")).findFirst().orElseThrow();
        String turned = line.replaceFirst(" from (\\S+) to (\\S+)", " from $2 to $1");
        List<String> told = told(line + "\n", turned + "\n");
        assertEquals(1, told.size(), told.toString());
        assertTrue(told.getFirst().endsWith(": written from its other end | none"), told.toString());
    }

    private List<String> everywhere(String from, String to) {
        Map<String, String> one = Map.of("front-harness.loom", Sides.orrin().get("front-harness.loom"));
        Map<String, String> renamed = Map.of("front-harness.loom", one.get("front-harness.loom").replace(from, to));
        return new FactComparer().compare(sides.project(one), sides.project(renamed)).changes().stream()
                .map(change -> change.sentence() + " | " + change.felt().words()).toList();
    }
}
