// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.sheets.page.Paper;

/** Whatever is too long in any document wraps: nothing is printed over anything, nothing leaves the page. */
class LongTextsTest {

    private static final double POINTS_IN_MM = 72 / 25.4;
    /** No printer prints nearer to the edge, in points. */
    private static final double MARGIN = 20;
    /** Words with blanks and one without, each longer than any column. */
    private static final String BLANKS = "a title of many words that nobody would want to read on paper "
            .repeat(4).strip();
    private static final String SOLID = "A-word-that-is-far-too-long-for-any-column-".repeat(4);

    @TempDir
    private Path folder;

    private static String project(String words) {
        return """
                catalogue c {
                    cable wide "%1$s" {
                        size 1 mm2 diameter 2.1 mm
                    }
                    terminal pin "%1$s" {
                        takes 0.5 mm2 .. 2.5 mm2
                        strip 5 mm
                        note "%1$s"
                    }
                    housing box "%1$s" {
                        cavities 1 "%1$s", 2 "%1$s"
                    }
                    fuse blade "%1$s" {
                        rating 10 A
                        basis continuous
                        family bladeC
                        pins line, load
                    }
                    spliceMethod weld "%1$s"
                    source accumulator "%1$s" {
                        type battery
                        pins plus, minus
                    }
                }
                platform p "%1$s" {
                    years 1970 .. 1971
                    ground body "%1$s"
                    place a "%1$s"
                    place b "%1$s"
                    position main "%1$s"
                    device battery "%1$s" is accumulator at a
                }
                drawing old "%1$s" of p fills main {
                    datum a
                    branch lead from a to b 300 mm
                    connector B "%1$s" on lead
                    circuit 7 "%1$s" RD/WH {
                        wire a 1 mm2 from battery:plus to B:1
                    }
                }
                harness h "%1$s" of p fills main {
                    covers old
                    cable wide
                    datum a
                    trunk main {
                        breakout one at 400 mm
                    }
                    branch lead from one to b 300 mm
                    connector B "%1$s" on lead is box {
                        terminal 1 is pin
                        terminal 2 is pin
                    }
                    stud G at b on body
                    device F "%1$s" is blade at a
                    circuit 1 "%1$s" RD/WH {
                        stands for 7 RD/WH of old
                        splice S on main at 200 mm by weld
                        wire a 1 mm2 from battery:plus to F:line
                        wire b 1 mm2 from F:load to S {
                            legend "%1$s"
                        }
                        wire c 1 mm2 from S to B:1
                        wire d 1 mm2 from S to B:2 when year >= 1971
                    }
                    circuit 2 "%1$s" BK {
                        wire a 1 mm2 from B:2 to G when year <= 1970
                    }
                }
                kit k "%1$s" revision "A" of p {
                    contains h
                    contains blade quantity 2
                }
                """.formatted(words);
    }

    /** poppler's pdftotext -bbox. */
    @Test
    @Tag("outside")
    void nothingIsPrintedOverAnythingAndNothingLeavesThePage() throws Exception {
        look(BLANKS, Paper.LETTER);
        look(SOLID, Paper.A4);
    }

    private void look(String words, Paper paper) throws Exception {
        Examples examples = new Examples();
        Opened opened = examples.text(folder, project(words));
        assertTrue(opened.project().problems().isEmpty(), opened.project().problems().toString());
        Map<String, Path> pdfs = new TreeMap<>(Examples.write(folder, examples.files(opened, "k", "",
                SheetChoice.all(paper)).stream().filter(each -> each.name().endsWith(".pdf")).toList()));
        assertTrue(pdfs.size() > 10, pdfs.keySet().toString());
        assertEquals(List.of(), WholeSetTest.overlaps(pdfs));
        double longest = POINTS_IN_MM * Math.max(paper.width(), paper.height());
        List<String> outside = new ArrayList<>();
        for (Map.Entry<String, Path> each : pdfs.entrySet()) {
            boolean lying = Outside.run("pdfinfo", each.getValue().toString()).lines()
                    .filter(line -> line.startsWith("Page size:"))
                    .anyMatch(line -> Double.parseDouble(line.split(" +")[2]) > longest - 2);
            double width = POINTS_IN_MM * (lying ? paper.height() : paper.width());
            Outside.words(each.getValue()).stream()
                    .filter(word -> word.left() < MARGIN || word.right() > width - MARGIN)
                    .forEach(word -> outside.add(each.getKey() + " " + word));
        }
        assertEquals(List.of(), outside);
    }
}
