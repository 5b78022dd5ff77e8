// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.geometry.Copper;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.Reels;
import org.loomwright.sheets.page.Paper;

/** The wire list, read back by programs that know nothing of it. */
class WireListTest {

    private static final String CAR = "year 1970 and saloon and deluxe and rhd and not heater and fogLamps"
            + " and not towBar and halogen and headlampRelays and not electricFan and not ledTail"
            + " and not electronicFlasher and not electronicIgnition";
    private static final SheetChoice LIST = SheetChoice.of(Paper.A4, SheetKind.WIRE_LIST);
    private static Examples examples;
    private static Opened orrin;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() throws Exception {
        examples = new Examples();
        orrin = examples.example("orrin");
    }

    /** poppler's pdftotext. */
    @Test
    @Tag("outside")
    void everyWireOfOneCarIsPrintedExactlyOnce() throws Exception {
        Map<String, Path> files = Examples.write(folder, examples.files(orrin, "frontKit", CAR, LIST));
        List<String> first = new ArrayList<>();
        TreeMap<String, Integer> printed = new TreeMap<>();
        Order order = examples.order(orrin, "frontKit", CAR);
        List<String> expected = order.harnesses().getFirst().pieces().stream().map(Piece::wire).sorted().toList();
        TreeSet<String> names = new TreeSet<>(expected);
        for (Outside.Word word : Outside.words(files.get("front-wire-list.pdf"))) {
            // the first column begins at the margin of 12 mm, with a padding of 1.1 mm
            if (word.left() < 13.5 / 25.4 * 72 && names.contains(word.text())) {
                printed.merge(word.text(), 1, Integer::sum);
                first.add(word.text());
            }
        }
        assertTrue(expected.size() > 30, expected.toString());
        assertEquals(expected, first.stream().sorted().toList(), printed.toString());
        assertEquals(expected.size(), names.size(), "one car has each wire in one way");
    }

    /** openpyxl and python's csv module. */
    @Test
    @Tag("outside")
    void workbookAndFileOfValuesSayTheSame() throws Exception {
        Map<String, Path> files = Examples.write(folder, examples.files(orrin, "front", "", LIST));
        List<String> records = Outside.records(files.get("front-wire-list.csv"));
        List<String> cells = Outside.cells(files.get("front-wire-list.xlsx"));
        List<String> headings = List.of(records.getFirst().split("\t"));
        int length = headings.indexOf("cut length mm") + 1;
        TreeMap<String, String> cut = new TreeMap<>();
        for (String cell : cells) {
            String[] parts = cell.split("\t", 5);
            if (parts[0].equals("wires")) {
                cut.put(parts[1] + "/" + parts[2], parts[3] + parts[4]);
            }
        }
        for (int row = 1; row < records.size(); row++) {
            String[] record = records.get(row).split("\t", -1);
            assertEquals("s" + record[0], cut.get((row + 1) + "/1"));
            double mm = Double.parseDouble(record[length - 1]);
            assertEquals(mm, Double.parseDouble(cut.get((row + 1) + "/" + length).substring(1)), 1e-9);
            assertEquals('n', cut.get((row + 1) + "/" + length).charAt(0), "a length is a number");
        }
        assertTrue(records.size() > 60, records.toString());
    }

    /**
     * 33 CFR 183.425 Table 5 and its like give gauges only; section 1.1837 mm2 of SAE 16 ga from its least 2,336
     * circular mils (vendors' reprints of SAE J1128), density of copper 8.96 g/cm3 (CRC Handbook).
     */
    @Test
    @Tag("outside")
    void massOfCopperIsSectionTimesLengthTimesDensity() throws Exception {
        Order order = examples.order(orrin, "front", CAR);
        Reels reels = Reels.of(order.harnesses().getFirst().pieces(), Copper.HANDBOOK);
        double length = 0;
        double copper = 0;
        for (Reels.Reel reel : reels.list()) {
            if (reel.size().equals("16 ga")) {
                length += reel.length().toMetres();
                copper += reel.copper();
            }
        }
        assertTrue(length > 5, "metres of 16 ga: " + length);
        assertEquals(2_336 * 5.067_075e-4 * 8.96 * length, copper, 0.001 * copper);
    }

    @Test
    @Tag("outside")
    void nothingInACellBecomesAFormula() throws Exception {
        Opened opened = examples.text(folder, """
                platform p "P" {
                    place a
                    place b
                }
                harness h "Harness" of p {
                    datum a
                    branch lead from a to b 300 mm
                    connector A at a
                    connector B at b
                    circuit 1 "=1+1" RD {
                        wire a 1 mm2 from A:1 to B:1 {
                            legend "@SUM(A1)"
                        }
                    }
                    circuit 2 "-2+3" BK {
                        wire a 1 mm2 from A:2 to B:2 {
                            legend "+44"
                        }
                    }
                }
                """);
        Map<String, Path> files = Examples.write(folder, examples.files(opened, "h", "", LIST));
        List<String> cells = Outside.cells(files.get("h-wire-list.xlsx"));
        assertTrue(cells.stream().anyMatch(cell -> cell.endsWith("\ts\t=1+1")), cells.toString());
        assertFalse(cells.stream().anyMatch(cell -> cell.split("\t")[3].equals("f")), cells.toString());
        String csv = Files.readString(files.get("h-wire-list.csv"));
        assertTrue(csv.contains(",'=1+1,") && csv.contains(",'-2+3,") && csv.contains("'@SUM(A1)")
                && csv.contains("'+44"), csv);
    }
}
