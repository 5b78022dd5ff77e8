// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.sheets.content.Jumper;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.page.Paper;

/** Jumpers in the application chart: which vehicles need which, and that nothing else is taken for one. */
class JumperTest {

    /** The branch is 300 mm long; the late drawing wants 500 mm. */
    private static final String PROJECT = """
            platform p "P" {
                years 1970 .. 1971
                place a "Bulkhead"
                place b "Lamp"
                position main "Main wiring"
            }
            drawing early "Early" of p fills main when year <= 1970 {
                datum a
                branch lead from a to b 300 mm
                connector A at a
                connector B on lead
                circuit 1 RD {
                    wire a 1 mm2 from A:1 to B:1
                }
            }
            drawing late "Late" of p fills main when year >= 1971 {
                datum a
                branch lead from a to b 500 mm
                connector A at a
                connector B on lead
                circuit 1 RD {
                    wire a 1 mm2 from A:1 to B:1
                }
            }
            harness h "Ours" of p fills main {
                covers early, late
                datum a
                branch lead from a to b 300 mm
                connector A at a
                connector B on lead mates X of longer when year >= 1971
                circuit 1 RD {
                    wire a 1 mm2 from A:1 to B:1
                }
            }
            harness %s "Extension lead" of p when year >= 1971 {
                datum b
                branch lead from b to b 220 mm
                connector X at b mates B of h
                connector Y on lead
                %s
                circuit 1 RD {
                    wire a 1 mm2 from X:1 to %s
                }
            }
            kit k "Kit" revision "A" of p {
                contains h
                contains %s when year >= 1971
            }
            """;

    @TempDir
    private Path folder;
    private final Examples examples = new Examples();

    @Test
    @Tag("outside")
    void theLateCarTakesTheJumperAndTheEarlyOneNone() throws Exception {
        var opened = examples.text(folder, PROJECT.formatted("longer", "", "Y:1", "longer"));
        Order order = examples.order(opened, "k", "");
        LaidHarness ours = order.harnesses().stream().filter(each -> each.name().equals("h")).findFirst()
                .orElseThrow();
        List<Jumper> jumpers = Jumper.of(order.project(), ours);
        assertEquals(1, jumpers.size(), jumpers.toString());
        assertEquals(Set.of("lead"), jumpers.getFirst().branches());
        assertEquals(Set.of("B"), jumpers.getFirst().connectors());
        assertEquals("year = 1971", jumpers.getFirst().when().words());
        String text = Outside.text(Examples.write(folder, examples.files(opened, "k", "",
                SheetChoice.of(Paper.A4, SheetKind.APPLICATION))).get("k-application.pdf")).replaceAll("\\s+", " ");
        assertTrue(text.contains("none Extension lead (longer)"), text);
        assertTrue(text.contains("none covered"), text);
        assertTrue(text.contains("covered with a jumper on"), text);
    }

    @Test
    @Tag("outside")
    void withoutTheJumperTheLateCarIsNotCoveredAndTheChartSaysWhy() throws Exception {
        String alone = PROJECT.substring(0, PROJECT.indexOf("harness %s")).replace(
                " mates X of longer when year >= 1971", "")
                + "kit k \"Kit\" revision \"A\" of p {\n    contains h\n}\n";
        var opened = examples.text(folder, alone);
        String text = Outside.text(Examples.write(folder, examples.files(opened, "k", "",
                SheetChoice.of(Paper.A4, SheetKind.APPLICATION))).get("k-application.pdf")).replaceAll("\\s+", " ");
        assertTrue(text.contains("not covered, because lead too short"), text);
    }

    @Test
    void aLeadThatFeedsSomethingIsNoJumper() throws Exception {
        var opened = examples.text(folder, PROJECT.formatted("longer", "device F \"Fuse\" at b", "F:line", "longer"));
        Order order = examples.order(opened, "k", "");
        LaidHarness ours = order.harnesses().stream().filter(each -> each.name().equals("h")).findFirst()
                .orElseThrow();
        assertEquals(List.of(), Jumper.of(order.project(), ours));
    }
}
