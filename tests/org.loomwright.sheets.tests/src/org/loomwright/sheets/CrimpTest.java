// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
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
        Set<String> told = new TreeSet<>();
        for (String record : records.subList(1, records.size())) {
            String[] cells = record.split("\t", -1);
            boolean thick = List.of("6 ga", "4 ga", "2 ga").contains(cells[headings.indexOf("size")]);
            assertEquals(thick, cells[headings.indexOf("least pull")].equals("maker's sheet"), record);
            boolean open = cells[headings.indexOf("terminal")].isEmpty();
            for (String heading : List.of("strip", "tool or note", "crimp height")) {
                String cell = cells[headings.indexOf(heading)];
                assertFalse(cell.isEmpty(), heading + " of " + record);
                assertEquals(open, cell.equals("maker's sheet"), heading + " of " + record);
            }
            String title = cells[headings.indexOf("title")];
            if (open) {
                told.add(title);
            } else {
                crimps++;
            }
        }
        assertTrue(crimps > 5, records.toString());
        // 12 ga is 3.0 mm2 (SAE J1128, 5,833 circular mils): too thick for the ring of 0.5 to 2.5 mm2
        assertTrue(told.contains("ring for the stud, by its thread ring5, ring6 or ring8"), told.toString());
        assertTrue(told.contains("to fit Blade fuse, medium, 7.5 A, brown"), told.toString());
        assertTrue(told.contains("to fit Relay, 40 A or Link plug for a relay socket"), told.toString());
    }

    @Test
    @Tag("outside")
    void thePartsListHasARingForEachWireOnAStud() throws Exception {
        Examples examples = new Examples();
        var files = Examples.write(folder, examples.files(examples.example("orrin"), "frontKit", "",
                SheetChoice.of(Paper.A4, SheetKind.PARTS)));
        List<String> rings = Outside.records(files.get("frontKit-parts-and-bags.csv")).stream()
                .filter(each -> each.contains("ring for the stud")).toList();
        String all = String.join("; ", rings);
        for (String end : List.of("G1 (90e)", "G2 (91d)", "G1 (92a)", "G3 (93a)", "G3 (93b)")) {
            assertEquals(2, all.split(Pattern.quote(end), -1).length, end + " in " + all);
        }
        assertTrue(rings.stream().filter(each -> each.contains("92a")).allMatch(each ->
                each.contains("electricFan")), all);
    }
}
