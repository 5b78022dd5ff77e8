// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.sheets.Outside.Word;
import org.loomwright.sheets.page.Paper;

/** What holds for every document of a set, whatever it says. */
class WholeSetTest {

    private static final double SLACK = 0.35;
    private static Examples examples;
    private static Opened orrin;
    private static List<SheetFile> all;

    @TempDir
    private Path folder;

    @BeforeAll
    static void print() throws Exception {
        examples = new Examples();
        orrin = examples.example("orrin");
        all = examples.files(orrin, "frontKit", "", SheetChoice.all(Paper.A4));
    }

    /** poppler's pdftotext -bbox again, for the other kits of the project. */
    @Test
    @Tag("outside")
    void noTextIsPrintedOverAnotherInTheOtherKits() throws Exception {
        for (String kit : List.of("rearKit", "flasherKit", "engineKit")) {
            List<SheetFile> files = examples.files(orrin, kit, "", SheetChoice.all(Paper.A4)).stream()
                    .filter(each -> each.name().endsWith(".pdf")).toList();
            assertEquals(List.of(), overlaps(Examples.write(folder, files)), kit);
        }
    }

    private Map<String, Path> pdfs() throws Exception {
        Map<String, Path> files = Examples.write(folder, all);
        files.keySet().removeIf(name -> !name.endsWith(".pdf"));
        return files;
    }

    /** poppler's pdftotext -bbox: no word lies on another, and none leaves the page. */
    @Test
    @Tag("outside")
    void noTextIsPrintedOverAnother() throws Exception {
        assertEquals(List.of(), overlaps(pdfs()));
    }

    static List<String> overlaps(Map<String, Path> pdfs) throws Exception {
        List<String> found = new ArrayList<>();
        for (Map.Entry<String, Path> file : pdfs.entrySet()) {
            List<Word> words = Outside.words(file.getValue());
            assertTrue(words.size() > 20, file.getKey());
            for (int i = 0; i < words.size(); i++) {
                for (int j = i + 1; j < words.size() && words.get(j).page() == words.get(i).page(); j++) {
                    if (overlap(words.get(i), words.get(j))) {
                        found.add(file.getKey() + " page " + words.get(i).page() + ": " + words.get(i).text() + " and "
                                + words.get(j).text());
                    }
                }
            }
        }
        return found;
    }

    /** Boxes are as tall as the font's tallest letters, so lines that follow each other touch; a share is allowed. */
    private static boolean overlap(Word one, Word other) {
        double across = Math.min(one.right(), other.right()) - Math.max(one.left(), other.left());
        double down = Math.min(one.bottom(), other.bottom()) - Math.max(one.top(), other.top());
        double height = Math.min(one.bottom() - one.top(), other.bottom() - other.top());
        return across > 0.5 && down > SLACK * height;
    }

    /** poppler's pdffonts. */
    @Test
    @Tag("outside")
    void allFontsAreEmbedded() throws Exception {
        Outside.needs("pdffonts");
        for (Map.Entry<String, Path> file : pdfs().entrySet()) {
            List<String> fonts = Outside.run("pdffonts", file.getValue().toString()).lines().skip(2).toList();
            assertTrue(!fonts.isEmpty(), file.getKey());
            for (String font : fonts) {
                assertTrue(font.contains("LiberationSans") && font.matches(".* yes +yes +yes +\\d+ +\\d+ *"),
                        file.getKey() + ": " + font);
            }
        }
    }

    /** poppler's pdftotext: page x of y on every page. */
    @Test
    @Tag("outside")
    void everyPageHasItsNumber() throws Exception {
        for (Map.Entry<String, Path> file : pdfs().entrySet()) {
            int pages = all.stream().filter(each -> each.name().equals(file.getKey())).findFirst().orElseThrow()
                    .pages();
            String text = Outside.text(file.getValue());
            for (int page = 1; page <= pages; page++) {
                assertTrue(text.contains("Page " + page + " of " + pages), file.getKey() + " page " + page);
            }
        }
    }

    @Test
    void equalInputGivesEqualBytesWhateverLocaleTimeZoneAndThreads() throws Exception {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kathmandu"));
            List<SheetFile> again = new Examples(3).files(orrin, "frontKit", "", SheetChoice.all(Paper.A4));
            assertEquals(all.size(), again.size());
            for (int i = 0; i < all.size(); i++) {
                assertEquals(all.get(i).name(), again.get(i).name());
                assertArrayEquals(all.get(i).bytes(), again.get(i).bytes(), all.get(i).name());
            }
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }
}
