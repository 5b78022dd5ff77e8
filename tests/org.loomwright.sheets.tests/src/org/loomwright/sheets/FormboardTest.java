// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.harness.link.WiringView;
import org.loomwright.sheets.board.Board;
import org.loomwright.sheets.compose.BoardPicture;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Paper;

/** The formboard drawing, measured on paper as poppler renders it. */
class FormboardTest {

    private static final int DPI = 300;
    private static final double PIXEL = 25.4 / DPI;
    /** The ink of bundles. */
    private static final int BUNDLE = 206 << 16 | 210 << 8 | 214;
    private static final double TRUE = 0.005;
    private static Examples examples;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() {
        examples = new Examples();
    }

    /** A picture as poppler writes it. */
    private record Picture(int width, int height, int[] pixels) {

        static Picture of(Path ppm) throws Exception {
            byte[] bytes = Files.readAllBytes(ppm);
            String head = new String(bytes, 0, 64, StandardCharsets.ISO_8859_1);
            String[] parts = head.split("\\s+", 5);
            int width = Integer.parseInt(parts[1]);
            int height = Integer.parseInt(parts[2]);
            int from = bytes.length - 3 * width * height;
            int[] pixels = new int[width * height];
            for (int i = 0; i < pixels.length; i++) {
                pixels[i] = (bytes[from + 3 * i] & 255) << 16 | (bytes[from + 3 * i + 1] & 255) << 8
                        | bytes[from + 3 * i + 2] & 255;
            }
            return new Picture(width, height, pixels);
        }

        boolean is(int x, int y, int ink) {
            return pixels[y * width + x] == ink;
        }

        int count(int y, int ink) {
            int count = 0;
            for (int x = 0; x < width; x++) {
                count += is(x, y, ink) ? 1 : 0;
            }
            return count;
        }
    }

    /** poppler's pdftoppm at 300 dpi: trunk and branches are as long on paper as the source says, to 0.5 %. */
    @Test
    @Tag("outside")
    void lengthsMeasuredOnPaperAreTrue() throws Exception {
        Outside.needs("pdftoppm");
        Opened opened = examples.text(folder, """
                platform p "P" {
                    place a
                    place b
                    place c
                }
                catalogue k {
                    cable thick "Cable" {
                        size 6 ga diameter 6.4 mm
                    }
                }
                harness h "Harness" of p {
                    cable thick
                    datum a
                    trunk main {
                        breakout one at 120 mm
                        breakout two at 220 mm
                    }
                    branch up from one to b 60 mm
                    branch down from two to c 50 mm
                    connector A at a
                    connector B at b
                    connector C at c
                    circuit 1 RD {
                        wire a 6 ga from A:1 to B:1
                        wire b 6 ga from A:2 to B:2
                        wire c 6 ga from A:3 to C:1
                        wire d 6 ga from A:4 to C:2
                    }
                }
                """);
        List<SheetFile> files = examples.files(opened, "h", "", SheetChoice.of(Paper.A3, SheetKind.FORMBOARD));
        Map<String, Path> paths = Examples.write(folder, files);
        int last = files.getFirst().pages();
        Outside.run("pdftoppm", "-r", "" + DPI, "-f", "" + last, "-l", "" + last, "-singlefile",
                paths.get("h-formboard.pdf").toString(), folder.resolve("board").toString());
        Picture picture = Picture.of(folder.resolve("board.ppm"));
        int trunk = 0;
        for (int y = 0; y < picture.height(); y++) {
            trunk = picture.count(y, BUNDLE) > picture.count(trunk, BUNDLE) ? y : trunk;
        }
        int left = picture.width();
        int right = 0;
        for (int x = 0; x < picture.width(); x++) {
            if (picture.is(x, trunk, BUNDLE)) {
                left = Math.min(left, x);
                right = x;
            }
        }
        int top = picture.height();
        int bottom = 0;
        for (int y = 0; y < picture.height(); y++) {
            if (picture.count(y, BUNDLE) > 20) {
                top = Math.min(top, y);
                bottom = y;
            }
        }
        double thick = 1.2 * Math.sqrt(2 * 6.4 * 6.4);
        assertEquals(220, (right - left + 1) * PIXEL, 220 * TRUE + thick, "trunk, with half of a branch at its end");
        assertEquals(110, (bottom - top + 1) * PIXEL, 110 * TRUE, "one branch up, the other one down");
        int runs = 0;
        for (int y = picture.height() * 3 / 4; y < picture.height(); y++) {
            runs += Math.abs(longestRun(picture, y) * PIXEL - 100) <= 100 * TRUE ? 1 : 0;
        }
        assertTrue(runs > 0, "a ruler of 100 mm");
    }

    private static int longestRun(Picture picture, int y) {
        int longest = 0;
        int run = 0;
        for (int x = 0; x < picture.width(); x++) {
            run = (picture.pixels()[y * picture.width() + x] & 255) < 100 ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    @Test
    void theBoardIsOneDrawingAndNotOneTextOfItIsLostOnPaper() throws Exception {
        List<SheetFile> files = examples.files(examples.example("orrin"), "front", "",
                SheetChoice.of(Paper.A4, SheetKind.FORMBOARD));
        Map<String, Path> paths = Examples.write(folder, files);
        String svg = Files.readString(paths.get("front-formboard.svg"));
        assertTrue(svg.contains("viewBox=\"0 0 ") && svg.endsWith("</svg>\n"));
        String text = Outside.text(paths.get("front-formboard.pdf"));
        for (String label : List.of("tray 370", "leftWing 975", "bHeadL 280", "clip3 1300", "S20 S90", "H1", "J1")) {
            assertTrue(svg.contains(">" + label), label + " on the board");
            assertTrue(text.contains(label), label + " on paper");
        }
    }

    @Test
    void everyEndAndEverySpliceHasItsNameOnTheBoard() throws Exception {
        Opened opened = examples.example("orrin");
        for (String name : List.of("front", "rear", "hazard", "engineLead")) {
            WiringView view = opened.project().wiring(name).orElseThrow();
            String svg = new String(examples.files(opened, name, "", SheetChoice.of(Paper.A4, SheetKind.FORMBOARD))
                    .stream().filter(each -> each.name().endsWith(".svg")).findFirst().orElseThrow().bytes(),
                    StandardCharsets.UTF_8);
            Set<String> words = new TreeSet<>();
            Pattern.compile("<text[^>]*>([^<]*)<").matcher(svg).results().forEach(each ->
                    words.addAll(List.of(each.group(1).split(" "))));
            Set<String> expected = new TreeSet<>(view.connectors().keySet());
            expected.addAll(view.studs().keySet());
            expected.addAll(view.devices().keySet());
            expected.addAll(view.splices().keySet());
            assertTrue(expected.size() > 1, name);
            expected.removeAll(words);
            assertEquals(Set.of(), expected, name + ": not on the board among " + words);
        }
    }

    @Test
    void aPointOnTheBoardNamesTheBranchThatRunsThere() throws Exception {
        BoardPicture picture = BoardPicture.of(new Examples().order(new Examples().example("orrin"), "front",
                "year 1970 and halogen").harnesses().getFirst(), 2440, 1220);
        assertTrue(picture.fits() && picture.paths().size() > 8, picture.paths().keySet().toString());
        picture.paths().forEach((name, path) -> {
            Point on = Board.at(path, 0.53 * Board.length(path));
            assertEquals(Optional.of(name), picture.nearest(on.plus(0.2, 0.2), 3));
        });
        assertEquals(Optional.empty(), picture.nearest(new Point(-500, -500), 3));
    }
}
