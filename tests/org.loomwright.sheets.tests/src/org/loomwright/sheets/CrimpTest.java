// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.sheets.content.PullForce;
import org.loomwright.sheets.page.Paper;

/** What a crimp must hold, and that the rows of the Orrin say all that the bench needs. */
class CrimpTest {

    @TempDir
    private Path folder;

    /** IEC 60352-2, table of tensile strength, from memory: the row that is not thicker than the conductor. */
    @Test
    void theLeastForceIsThatOfTheNextThinnerRow() {
        assertEquals(OptionalDouble.of(60), PullForce.newtons(0.5));
        assertEquals(OptionalDouble.of(150), PullForce.newtons(1.5));
        assertEquals(OptionalDouble.of(150), PullForce.newtons(1.8));
        assertEquals(OptionalDouble.of(230), PullForce.newtons(2.5));
        assertEquals(OptionalDouble.of(360), PullForce.newtons(6));
        assertEquals(OptionalDouble.empty(), PullForce.newtons(16));
        assertEquals(OptionalDouble.empty(), PullForce.newtons(0.03));
    }

    @Test
    @Tag("outside")
    void everyCrimpOfTheOrrinHasStripToolHeightAndPull() throws Exception {
        Examples examples = new Examples();
        var files = Examples.write(folder, examples.files(examples.example("orrin"), "front", "",
                SheetChoice.of(Paper.A4, SheetKind.CRIMPS)));
        List<String> records = Outside.records(files.get("front-crimp-and-splice.csv"));
        List<String> headings = List.of(records.getFirst().split("\t"));
        int crimps = 0;
        for (String record : records.subList(1, records.size())) {
            String[] cells = record.split("\t", -1);
            boolean thick = List.of("6 ga", "4 ga", "2 ga").contains(cells[headings.indexOf("size")]);
            assertEquals(thick, cells[headings.indexOf("least pull")].isEmpty(), record);
            if (cells[headings.indexOf("terminal")].isEmpty()) {
                continue; // studs and pins of devices
            }
            crimps++;
            for (String heading : List.of("strip", "tool or note", "crimp height")) {
                assertFalse(cells[headings.indexOf(heading)].isEmpty(), heading + " of " + record);
            }
        }
        assertTrue(crimps > 5, records.toString());
    }
}
