// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.sheets.content.Readings;
import org.loomwright.sheets.page.Paper;

/** What the documents say of the Orrin, read back by poppler's pdftotext. */
class SheetsSayTest {

    private static final String ESTATE = "year 1970 and estate and towBar and deluxe";
    private static Examples examples;
    private static Opened orrin;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() throws Exception {
        examples = new Examples();
        orrin = examples.example("orrin");
    }

    private String text(String kit, String vehicles, SheetKind kind, String file) throws Exception {
        Map<String, Path> files = Examples.write(folder,
                examples.files(orrin, kit, vehicles, SheetChoice.of(Paper.A4, kind)));
        return Outside.text(files.get(file)).replaceAll("\\s+", " ");
    }

    @Test
    @Tag("outside")
    void anEstateIsToldWhichBranchIsCappedAndWhereItIsParked() throws Exception {
        String text = text("rearKit", ESTATE, SheetKind.INSTALLATION, "rearKit-installation.pdf");
        assertTrue(text.contains("Branch bPlate: put a cap on its end, tape it, parked at Ground stud, right of the"
                + " boot"), text);
        assertTrue(text.contains("plug P2 Tailgate lead into Number plate lamp of the tailgate"), text);
        assertFalse(text.contains("plug P1"), "the lamp on the bumper is for other bodies");
        assertTrue(text.indexOf("Disconnect the battery's ground first") < text.indexOf("What is in the box"),
                "cautions first");
        assertTrue(text.contains("Rear body, estate, 1970") || text.contains("rearEstate70"), "what comes out");
        assertFalse(text.contains("rearCoupe"), "the coupe's wiring is not in an estate");
    }

    /** A housing of 34 mm does not pass a bore of 22 mm, one of 12 mm does, and of the third nobody knows. */
    @Test
    @Tag("outside")
    void whatDoesNotPassAnOpeningIsLeftOffUntilItIsThrough() throws Exception {
        Opened opened = examples.text(folder, """
                catalogue c {
                    opening bush "Bush" {
                        bore 22 mm
                    }
                    housing wide "Wide" {
                        diameter 34 mm
                        cavities 1
                    }
                    housing slim "Slim" {
                        diameter 12 mm
                        cavities 1
                    }
                }
                platform p "P" {
                    place a
                    place b
                    place d
                }
                harness h "Harness" of p {
                    datum a
                    trunk main {
                        barrier wall at 60 mm
                        breakout one at 300 mm
                    }
                    branch left from one to b 100 mm
                    branch right from one to d 100 mm
                    fit bush1 is bush on main at 60 mm
                    connector A at a is wide
                    connector B on left is wide
                    connector C on right is slim
                    connector D on right
                    circuit 1 RD {
                        wire a 1 mm2 from A:1 to B:1
                    }
                }
                """);
        String text = Outside.text(Examples.write(folder, examples.files(opened, "h", "", SheetChoice.of(Paper.A4,
                SheetKind.INSTALLATION))).get("h-installation.pdf")).replaceAll("\\s+", " ");
        assertTrue(text.contains("through wall (60 mm from the datum). Leave off until through, tag each end with its"
                + " cavity: B. Try whether these pass"), text);
        assertTrue(text.contains("not in the catalogue: D."), text);
        assertTrue(text.indexOf("Thread the trunk") < text.indexOf("Seat bush1"), text);
        assertEquals(2, text.split("Leave off until through", -1).length, "said once");
    }

    /** Whom a kit is not for, and for whom it was not asked, are two things. */
    @Test
    @Tag("outside")
    void theChartTellsWhoIsNotCoveredFromWhoWasNotAskedFor() throws Exception {
        String every = text("engineKit", "", SheetKind.APPLICATION, "engineKit-application.pdf");
        assertTrue(every.contains("not covered, because the") && every.contains("kit is not for them"), every);
        assertFalse(every.contains("not asked for"), every);
        String some = text("frontKit", "year 1970", SheetKind.APPLICATION, "frontKit-application.pdf");
        assertTrue(some.contains("covered by this kit, but not asked for"), some);
        assertFalse(some.contains("not covered"), some);
    }

    @Test
    @Tag("outside")
    void aGroupThatGoesOnOnTheNextPageIsNamedThereAgain() throws Exception {
        Path pdf = Examples.write(folder, examples.files(orrin, "frontKit", "", SheetChoice.of(Paper.A4,
                SheetKind.WIRE_LIST))).get("front-wire-list.pdf");
        String first = Outside.run("pdftotext", "-layout", "-f", "1", "-l", "1", pdf.toString(), "-");
        String second = Outside.run("pdftotext", "-layout", "-f", "2", "-l", "2", pdf.toString(), "-");
        assertTrue(first.contains("16 ga, crossLinked125") && !first.contains("(continued)"), first);
        assertTrue(second.contains("our reels (continued)"), second);
    }

    /** What is for one vehicle does not say in each row that it is for all of them. */
    @Test
    void sheetsForOneVehicleHaveNoColumnOfVehicles() throws Exception {
        String one = text("frontKit", "year 1970 and saloon and deluxe and rhd and not heater and fogLamps"
                + " and not towBar and halogen and headlampRelays and not electricFan and not ledTail"
                + " and not electronicFlasher and not electronicIgnition", SheetKind.CONTINUITY,
                "front-continuity.pdf");
        assertTrue(one.contains("(1 vehicle)"), one);
        assertFalse(one.contains("Hand meter Vehicles") || one.contains("nulled all"), one);
        String two = text("frontKit", "year 1970", SheetKind.CONTINUITY, "front-continuity.pdf");
        assertTrue(two.contains("Hand meter Vehicles"), two);
    }

    @Test
    @Tag("outside")
    void looseFusesAreCountedAgainstTheirSockets() throws Exception {
        Map<String, Path> files = Examples.write(folder,
                examples.files(orrin, "frontKit", "", SheetChoice.of(Paper.A4, SheetKind.PARTS)));
        List<String> records = Outside.records(files.get("frontKit-parts-and-bags.csv"));
        List<String> fuses = records.stream().filter(each -> each.contains("\tblade7_5\t")
                && each.startsWith("Bag ")).toList();
        assertEquals(1, fuses.size(), records.toString());
        assertTrue(fuses.getFirst().startsWith("Bag B, fuses and links\t4\tpc\t"), fuses.getFirst());
        assertTrue(fuses.getFirst().contains("4 used: F1 of front, F2 of front, F3 of front, F4 of front"),
                fuses.getFirst());
        String block = records.stream().filter(each -> each.contains("\tblade20\t")).findFirst().orElseThrow();
        assertTrue(block.contains("1 used: FB:lamps of front"), block);
        String fan = records.stream().filter(each -> each.contains("\tblade15\t")).findFirst().orElseThrow();
        assertTrue(fan.contains("1 used: FB:fan of front"), fan);
    }

    @Test
    @Tag("outside")
    void theFuseChartNamesEachWayOfABlockWithItsFuse() throws Exception {
        String text = text("frontKit", "electricFan", SheetKind.INSTALLATION, "frontKit-installation.pdf");
        assertTrue(text.matches(".*FB:lamps Fuse block.* 20 A 3 Headlamp feed.*"), text);
        assertTrue(text.matches(".*FB:fan Fuse block.* 15 A 60 Cooling fan.*"), text);
    }

    @Test
    @Tag("outside")
    void theOldNumberAndColourLeadToOurs() throws Exception {
        String text = text("frontKit", "year 1970", SheetKind.APPLICATION, "frontKit-application.pdf");
        assertTrue(text.contains("56b YE"), text);
        assertTrue(text.contains("16 DIP L"), text);
        assertTrue(text.contains("covered by this kit, but not asked for"), text);
        assertTrue(text.contains("Flasher and hazard light kit (flasherKit)"), text);
    }

    @Test
    @Tag("outside")
    void everyWireStandsInTheDiagramOfItsCircuit() throws Exception {
        Map<String, Path> files = Examples.write(folder,
                examples.files(orrin, "front", "year 1970 and halogen", SheetChoice.of(Paper.A4, SheetKind.CIRCUITS)));
        String text = Outside.text(files.get("front-circuit-diagrams.pdf"));
        examples.order(orrin, "front", "year 1970 and halogen").harnesses().getFirst().pieces().forEach(piece ->
                assertTrue(text.contains(piece.wire() + " " + piece.colour() + " " + piece.written()), piece.wire()));
    }

    @Test
    @Tag("outside")
    void theStampIsOnEveryPage() throws Exception {
        SheetChoice stamped = new SheetChoice(EnumSet.of(SheetKind.WIRE_LIST), Paper.LETTER,
                Optional.of("HAS ERRORS"), SheetChoice.USUAL_BOARD);
        List<SheetFile> files = examples.files(orrin, "front", "", stamped);
        Path pdf = Examples.write(folder, files).get("front-wire-list.pdf");
        Outside.needs("pdftoppm");
        Outside.run("pdftoppm", "-r", "40", pdf.toString(), folder.resolve("page").toString());
        int pages = 0;
        try (Stream<Path> pictures = Files.list(folder)) {
            for (Path picture : pictures.filter(each -> each.toString().endsWith(".ppm")).toList()) {
                byte[] bytes = Files.readAllBytes(picture);
                int red = 0;
                for (int i = 15; i + 2 < bytes.length; i += 3) {
                    boolean stamp = (bytes[i] & 255) == 225 && (bytes[i + 1] & 255) == 140
                            && (bytes[i + 2] & 255) == 140;
                    red += stamp ? 1 : 0;
                }
                assertTrue(red > 150, picture + " has " + red + " dots of the stamp's ink");
                pages++;
            }
        }
        assertEquals(files.getFirst().pages(), pages);
    }

    @Test
    @Tag("outside")
    void otherAlphabetsArePrintedAndWhatNoFontHasIsAQuestionMark() throws Exception {
        Opened opened = examples.text(folder, """
                platform p "P" {
                    place a
                    place b
                }
                harness h "Ωμέγα Жгут \u96fb" of p {
                    datum a
                    branch lead from a to b 300 mm
                    connector A "Überlanges" at a
                    connector B at b
                    circuit 1 "%s" RD {
                        wire a 1 mm2 from A:1 to B:1
                    }
                }
                """.formatted("A-word-that-is-far-too-long-for-any-column-of-the-list-".repeat(4)));
        Map<String, Path> files = Examples.write(folder, examples.files(opened, "h", "",
                SheetChoice.of(Paper.A4, SheetKind.WIRE_LIST)));
        List<Outside.Word> words = Outside.words(files.get("h-wire-list.pdf"));
        String text = String.join(" ", words.stream().map(Outside.Word::text).toList());
        assertTrue(text.contains("Ωμέγα Жгут ?"), text);
        for (Outside.Word word : words) {
            assertTrue(word.right() < 297 / 25.4 * 72 - 30, word.toString());
        }
    }

    /**
     * 13 CCR 1249(c): no less than 85 % of the design voltage at a lamp's socket, the engine running; a lead-acid cell
     * at rest has at most 2.15 V (common practice). The network itself is held against ngspice in its own room.
     */
    @Test
    @Tag("outside")
    void theInstallerIsToldWhatAMeterShows() throws Exception {
        String one = "year 1970 and saloon and deluxe and rhd and not heater and fogLamps and not towBar and halogen"
                + " and headlampRelays and not electricFan and not ledTail and not electronicFlasher"
                + " and not electronicIgnition";
        Readings readings = Readings.of(examples.order(orrin, "frontKit", one)).orElseThrow();
        String text = text("frontKit", one, SheetKind.INSTALLATION, "frontKit-installation.pdf");
        assertTrue(readings.loads().size() >= 9, readings.toString());
        for (Readings.AtLoad load : readings.loads()) {
            assertTrue(load.amps() > 0.01 && load.volts() < 6 * 2.15, load.toString());
            assertTrue(!load.load().contains("lamp") || load.volts() > 0.85 * 12, load.toString());
            assertTrue(text.contains(String.format(Locale.ROOT, "%.1f V", load.volts())), load + "\n" + text);
        }
        assertEquals(4, readings.loads().stream().filter(each -> each.load().contains("headlamp")).count(),
                "dip and main beam of two");
        double clock = readings.loads().stream().filter(each -> each.load().equals("Clock")).findFirst().orElseThrow()
                .amps();
        assertEquals(clock, readings.drain().orElseThrow(), 1e-6, "the clock alone runs with the key off");
        String all = text("frontKit", "", SheetKind.INSTALLATION, "frontKit-installation.pdf");
        assertTrue(all.contains("Make the sheets for one vehicle"), all);
    }

    @Test
    @Tag("outside")
    void theViewOfAConnectorIsOnThePageOfItsTable() throws Exception {
        Map<String, Path> files = Examples.write(folder,
                examples.files(orrin, "front", "", SheetChoice.of(Paper.A4, SheetKind.END_VIEWS)));
        List<Outside.Word> words = Outside.words(files.get("front-end-views.pdf"));
        for (String page : words.stream().map(each -> Integer.toString(each.page())).distinct().toList()) {
            List<Outside.Word> here = words.stream().filter(each -> each.page() == Integer.parseInt(page)).toList();
            double views = here.stream().filter(each -> each.text().equals("SIDE")).mapToDouble(Outside.Word::top)
                    .max().orElse(0);
            double tables = here.stream().filter(each -> each.text().equals("Cavity")).mapToDouble(Outside.Word::top)
                    .max().orElse(0);
            assertTrue(tables >= views, "page " + page + " ends with a view whose table is on the next");
        }
    }
}
